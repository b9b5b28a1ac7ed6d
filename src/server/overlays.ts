// The HTTP doors onto the reference screens and onto a branch's own values.

import { Type } from 'typebox';
import { shopValuesFileOf, showLists, standingValues } from '../desk/list-shop-values.ts';
import { setOverlay } from '../desk/set-overlay.ts';
import { shopValuesPdf } from '../desk/shop-values-page.ts';
import { showFacts } from '../desk/show-facts.ts';
import { withdrawOverlay } from '../desk/withdraw-overlay.ts';
import { anyAnswer } from './animal-schemas.ts';
import { sendFaults } from './errors.ts';
import { askedUnits, paperQuery } from './paper-query.ts';
import type { App, Doors } from './types.ts';

const closed = { additionalProperties: false } as const;
const why = Type.String({ maxLength: 500, description: 'Shown to customers beside the value.' });
const part = Type.Union([Type.Number(), Type.String({ maxLength: 300 })]);
const list = Type.Array(part, { maxItems: 40 });
const overlayBody = Type.Object(
  {
    path: Type.String({ maxLength: 200, description: 'e.g. "species.corn.all.rhPct" or "policy.standardId"' }),
    value: Type.Object(
      {
        low: Type.Optional(part),
        high: Type.Optional(part),
        value: Type.Optional(part),
        values: Type.Optional(list),
      },
      closed,
    ),
    why,
  },
  closed,
);
const tags = ['reference'];
const response = { 200: anyAnswer };

export function overlayRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/reference',
    { config: { who: 'self' }, schema: { tags, summary: 'All species, standards, sources and shop values', response } },
    async (request, reply) => {
      const read = await showFacts(doors.desk(request), null);
      return read.ok ? reply.send(read.value) : await sendFaults(reply, read.faults);
    },
  );
  app.get(
    '/api/reference/:speciesId',
    {
      config: { who: 'self' },
      schema: {
        tags,
        summary: 'One species with sources, standards and shop values',
        params: Type.Object({ speciesId: Type.String({ maxLength: 60 }) }),
        response,
      },
    },
    async (request, reply) => {
      const read = await showFacts(doors.desk(request), request.params.speciesId);
      return read.ok ? reply.send(read.value) : await sendFaults(reply, read.faults);
    },
  );
  app.get(
    '/api/shop-values',
    { config: { who: 'self' }, schema: { tags, summary: 'The branch’s own values that hold now', response } },
    async (request) => await standingValues(doors.desk(request)),
  );
  app.get(
    '/api/shop-values.json',
    { config: { who: 'self' }, schema: { tags, summary: 'The same as a file for the terminal (docs/formats.md)' } },
    async (request, reply) => {
      const file = await shopValuesFileOf(doors.desk(request));
      return reply
        .header('content-disposition', 'attachment; filename="shop-values.json"')
        .type('application/json')
        .send(JSON.stringify(file, null, 2));
    },
  );
  app.get(
    '/api/shop-values.pdf',
    {
      config: { who: 'self' },
      schema: {
        tags,
        summary: 'Every value the branch set, with who, when and why, as A4 pages',
        querystring: paperQuery,
      },
    },
    async (request, reply) => {
      const desk = doors.desk(request);
      const pdf = await shopValuesPdf(desk, askedUnits(request.query));
      return reply
        .type('application/pdf')
        .header('content-disposition', 'inline; filename="shop-values.pdf"')
        .send(pdf);
    },
  );
  app.get(
    '/api/lists',
    {
      config: { who: 'self' },
      schema: { tags, summary: 'Policies, law and kinds of kit with what a shop may overrule in them', response },
    },
    async (request) => await showLists(doors.desk(request)),
  );
  app.post(
    '/api/overlays',
    {
      config: { who: 'manager' },
      schema: { tags, summary: 'The shop overrules a value', body: overlayBody, response: { 201: anyAnswer } },
    },
    async (request, reply) => {
      const set = await setOverlay(doors.desk(request), request.body);
      return set.ok ? reply.code(201).send(set.value) : await sendFaults(reply, set.faults);
    },
  );
  app.post(
    '/api/overlays/:id/withdrawal',
    {
      config: { who: 'manager' },
      schema: {
        tags,
        summary: 'Back to the shipped value',
        params: Type.Object({ id: Type.String({ pattern: '^[0-9a-f-]{36}$' }) }),
        body: Type.Object({ why }, closed),
        response,
      },
    },
    async (request, reply) => {
      const gone = await withdrawOverlay(doors.desk(request), request.params.id, request.body.why);
      return gone.ok ? reply.send(gone.value) : await sendFaults(reply, gone.faults);
    },
  );
}
