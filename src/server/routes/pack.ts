// The HTTP door to the keeper's pack of one placement, as A4 pages.

import { Type } from 'typebox';
import { listPacks, packDifferences, readPack } from '../../desk/packs-given.ts';
import { printPack } from '../../desk/print-pack.ts';
import { anyAnswer } from '../animal-schemas.ts';
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
  givenRoutes(app, doors);
}

const tags = ['placements'];
const packParams = Type.Object({ ...placementParams.properties, packId: Type.String({ format: 'uuid' }) });

/** Packs as they were given. */
function givenRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/placements/:id/packs',
    {
      config: { who: 'register' },
      schema: {
        tags,
        summary: 'Packs that were made, newest first, each with its hash',
        params: placementParams,
        response: { 200: anyAnswer },
      },
    },
    async (request, reply) => {
      const found = await listPacks(doors.desk(request), request.params.id);
      return found.ok ? reply.send({ packs: found.value }) : await sendFaults(reply, found.faults);
    },
  );
  app.get(
    '/api/placements/:id/packs/:packId/pack.pdf',
    {
      config: { who: 'register' },
      schema: { tags, summary: 'A pack byte for byte as it was given', params: packParams },
    },
    async (request, reply) => {
      const { id, packId } = request.params;
      const found = await readPack(doors.desk(request), id, packId);
      if (!found.ok) return await sendFaults(reply, found.faults);
      return reply
        .type('application/pdf')
        .header('content-disposition', `inline; filename="pack-${id.slice(0, 8)}.pdf"`)
        .header('cache-control', 'no-store')
        .send(found.value.bytes);
    },
  );
  app.get(
    '/api/placements/:id/packs/:packId/differences',
    {
      config: { who: 'register' },
      schema: {
        tags,
        summary: 'What a pack made today would say otherwise than this one',
        params: packParams,
        response: { 200: anyAnswer },
      },
    },
    async (request, reply) => {
      const { id, packId } = request.params;
      const found = await packDifferences(doors.desk(request), doors.planner, id, packId, gone(reply));
      return found.ok ? reply.send({ differences: found.value }) : await sendFaults(reply, found.faults);
    },
  );
}
