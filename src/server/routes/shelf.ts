// The HTTP doors onto the branch's shelf: as data, as a table, changed, brought in, put back.
import { Type } from 'typebox';
import { bringInShelf, keepShelf, putBackShelf, shelfAsCsv, showShelf } from '../../desk/shop-shelf.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import type { App, Doors } from '../types.ts';

const tags = ['shelf'];
const closed = { additionalProperties: false } as const;
const base = Type.Integer({ minimum: 0, description: 'Version that the change was made on; 0 = the starter shelf.' });
const why = Type.String({ maxLength: 300 });
const response = { 200: anyAnswer };
/** 5000 articles with every column filled. */
const largestBytes = 4_000_000;

export function shelfRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/shelf',
    { config: { who: 'self' }, schema: { tags, summary: 'The shelf as it stands, and its changes', response } },
    async (request) => await showShelf(doors.desk(request)),
  );
  app.get(
    '/api/shelf.csv',
    { config: { who: 'self' }, schema: { tags, summary: 'The same as a table, to be brought in again without loss' } },
    async (request, reply) =>
      reply
        .type('text/csv; charset=utf-8')
        .header('content-disposition', 'attachment; filename="shelf.csv"')
        .send(await shelfAsCsv(doors.desk(request))),
  );
  app.put(
    '/api/shelf',
    {
      bodyLimit: largestBytes,
      config: { who: 'manager' },
      schema: {
        tags,
        summary: 'A new shelf in place of the one that stands',
        body: Type.Object({ shelf: Type.Object({}, { additionalProperties: true }), base, why }, closed),
        response,
      },
    },
    async (request, reply) => {
      const { shelf, base: on, why: reason } = request.body;
      const kept = await keepShelf(doors.desk(request), shelf, on, reason);
      return kept.ok ? reply.send(kept.value) : await sendFaults(reply, kept.faults);
    },
  );
  app.post(
    '/api/shelf/table',
    {
      bodyLimit: largestBytes,
      config: { who: 'manager' },
      schema: {
        tags,
        summary: 'A table in place of the shelf; every fault at once, with its line',
        body: Type.Object({ text: Type.String(), base, why }, closed),
        response,
      },
    },
    async (request, reply) => {
      const { text, base: on, why: reason } = request.body;
      const kept = await bringInShelf(doors.desk(request), text, on, reason);
      return kept.ok ? reply.send(kept.value) : await sendFaults(reply, kept.faults);
    },
  );
  app.post(
    '/api/shelf/back',
    {
      config: { who: 'manager' },
      schema: {
        tags,
        summary: 'An earlier shelf stands again',
        body: Type.Object({ version: Type.Integer({ minimum: 0 }), base }, closed),
        response,
      },
    },
    async (request, reply) => {
      const back = await putBackShelf(doors.desk(request), request.body.version, request.body.base);
      return back.ok ? reply.send(back.value) : await sendFaults(reply, back.faults);
    },
  );
}
