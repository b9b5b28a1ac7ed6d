// The HTTP doors onto what is kept of a buyer: give it out, erase it, and what is due to be erased.
import { Type } from 'typebox';
import { buyerData, dueErasures, eraseBuyer, eraseDue } from '../../desk/privacy/erase-buyer.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { placementParams } from '../placement-schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['privacy'];
const response = { 200: anyAnswer };
const config = { who: 'manager' } as const;
const reasonBody = Type.Object({ reason: Type.String({ maxLength: 300 }) }, { additionalProperties: false });
const uuid = Type.String({ pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$' });
const dueBody = Type.Object({ ids: Type.Array(uuid, { maxItems: 200 }) }, { additionalProperties: false });

export function privacyRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/placements/:id/buyer',
    { config, schema: { tags, summary: 'All that is kept of the buyer', params: placementParams, response } },
    async (request, reply) => {
      const found = await buyerData(doors.desk(request), request.params.id);
      return found.ok ? reply.send(found.value) : await sendFaults(reply, found.faults);
    },
  );
  app.post(
    '/api/placements/:id/buyer/erasure',
    {
      config,
      schema: {
        tags,
        summary: 'Erase the own words of the buyer; the animal’s record stays',
        params: placementParams,
        body: reasonBody,
        response,
      },
    },
    async (request, reply) => {
      const done = await eraseBuyer(doors.desk(request), request.params.id, request.body.reason);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
  app.get(
    '/api/privacy/due',
    { config, schema: { tags, summary: 'Enquiries without a placement whose time of keeping is over', response } },
    async (request, reply) => {
      const due = await dueErasures(doors.desk(request));
      return due.ok ? reply.send(due.value) : await sendFaults(reply, due.faults);
    },
  );
  app.post(
    '/api/privacy/due/erasure',
    { config, schema: { tags, summary: 'Erase what is due', body: dueBody, response } },
    async (request, reply) => {
      const done = await eraseDue(doors.desk(request), request.body.ids);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
}
