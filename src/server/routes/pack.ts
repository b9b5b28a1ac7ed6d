// The HTTP door to the keeper's pack of one placement, as A4 pages.

import { printPack } from '../../desk/print-pack.ts';
import { sendFaults } from '../errors.ts';
import { gone } from '../gone.ts';
import { askedUnits, paperQuery } from '../paper-query.ts';
import { placementParams } from '../placement-schemas.ts';
import type { App, Doors } from '../types.ts';

export function packRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/placements/:id/pack.pdf',
    {
      config: { who: 'register' },
      schema: {
        tags: ['placements'],
        summary: 'The pack for the keeper, 2 to 6 A4 pages; units of the place unless asked for',
        params: placementParams,
        querystring: paperQuery,
      },
    },
    async (request, reply) => {
      const printed = await printPack(
        doors.desk(request),
        doors.planner,
        request.params.id,
        askedUnits(request.query),
        gone(reply),
      );
      if (!printed.ok) return await sendFaults(reply, printed.faults);
      return reply
        .type('application/pdf')
        .header('content-disposition', `inline; filename="pack-${request.params.id.slice(0, 8)}.pdf"`)
        .header('cache-control', 'no-store')
        .send(printed.value);
    },
  );
}
