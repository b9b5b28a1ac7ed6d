// The HTTP door onto planning: an enclosure goes in, the verdict on every need comes out.
import { planForDesk } from '../../desk/plan-enclosure.ts';
import { sendFaults } from '../errors.ts';
import { gone } from '../gone.ts';
import { planAnswerSchema, planBody } from '../schemas.ts';
import type { App, Doors } from '../types.ts';
import { workQuery } from '../work-id.ts';

export function planRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/plan',
    {
      config: { who: 'desk' },
      schema: {
        tags: ['plan'],
        summary: 'Will this home work? Verdict on every need, coldest night and hottest day',
        querystring: workQuery,
        body: planBody,
        response: { 200: planAnswerSchema },
      },
    },
    async (request, reply) => {
      const { enclosure, members, seed, standardId, enquiryId } = request.body;
      const asked = {
        enclosure,
        ...(members === undefined ? {} : { members }),
        ...(seed === undefined ? {} : { seed }),
        ...(standardId === undefined ? {} : { standardId }),
        enquiryId: enquiryId ?? null,
      };
      const wait = { workId: request.query.work, signal: gone(reply) };
      const planned = await planForDesk(doors.desk(request), doors.planner, asked, wait);
      return planned.ok ? reply.send(planned.value) : await sendFaults(reply, planned.faults);
    },
  );
}
