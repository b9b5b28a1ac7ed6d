// The HTTP doors onto enquiries: open one, list, read, go on with it, see what it said before.
import type { FastifyReply } from 'fastify';
import { changeEnquiry } from '../../desk/change-enquiry.ts';
import {
  enquiryTitle,
  listEnquiries,
  readEnquiry,
  readEnquiryHistory,
  readPlanResults,
} from '../../desk/find-enquiries.ts';
import { letPlanCount } from '../../desk/kept-plans.ts';
import { openEnquiry } from '../../desk/open-enquiry.ts';
import type { EnquiryDocument, EnquiryRow } from '../../records/enquiries.ts';
import { sendFaults } from '../errors.ts';
import { requestFaults } from '../faults.ts';
import {
  enquiryBody,
  enquiryListSchema,
  enquirySchema,
  historySchema,
  idParams,
  keptPlanSchema,
  planParams,
  planResultsQuery,
  planResultsSchema,
} from '../schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['enquiries'];

export function enquiryRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/enquiries',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Open an enquiry', body: enquiryBody, response: { 201: enquirySchema } },
    },
    async (request, reply) => {
      const opened = await openEnquiry(doors.desk(request), request.body.document as EnquiryDocument);
      if (!opened.ok) return await sendFaults(reply, opened.faults);
      return withTag(reply.code(201), opened.value).send(shown(opened.value));
    },
  );

  app.get(
    '/api/enquiries',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Enquiries of this branch, newest first', response: { 200: enquiryListSchema } },
    },
    async (request) => {
      const rows = await listEnquiries(doors.desk(request));
      return { enquiries: rows.map((row) => shown(row)) };
    },
  );

  app.get(
    '/api/enquiries/:id',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'One enquiry', params: idParams, response: { 200: enquirySchema } },
    },
    async (request, reply) => {
      const found = await readEnquiry(doors.desk(request), request.params.id);
      if (!found.ok) return await sendFaults(reply, found.faults);
      return withTag(reply, found.value).send(shown(found.value));
    },
  );

  app.put(
    '/api/enquiries/:id',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Go on with an enquiry; If-Match names the version that the change was made from',
        params: idParams,
        body: enquiryBody,
        response: { 200: enquirySchema },
      },
    },
    async (request, reply) => {
      const given = request.headers['if-match'];
      const fromVersion = versionOfTag(given);
      if (fromVersion === null) return await sendFaults(reply, [requestFaults.versionMissing(given ?? 'no If-Match')]);
      const document = request.body.document as EnquiryDocument;
      const changed = await changeEnquiry(doors.desk(request), { id: request.params.id, fromVersion, document });
      if (!changed.ok) return await sendFaults(reply, changed.faults);
      return withTag(reply, changed.value).send(shown(changed.value));
    },
  );

  app.get(
    '/api/enquiries/:id/versions',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'All that it ever said', params: idParams, response: { 200: historySchema } },
    },
    async (request, reply) => {
      const found = await readEnquiryHistory(doors.desk(request), request.params.id);
      if (!found.ok) return await sendFaults(reply, found.faults);
      return reply.send({ versions: found.value.map((row) => ({ ...row, at: row.at.toISOString() })) });
    },
  );

  app.get(
    '/api/enquiries/:id/plans',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Answers kept with it, newest first',
        params: idParams,
        querystring: planResultsQuery,
        response: { 200: planResultsSchema },
      },
    },
    async (request, reply) => {
      const { most } = request.query;
      const found = await readPlanResults(
        doors.desk(request),
        request.params.id,
        most === undefined ? null : Number(most),
      );
      if (!found.ok) return await sendFaults(reply, found.faults);
      const results = found.value.map(({ aside, ...row }) => ({
        ...row,
        at: row.at.toISOString(),
        aside: aside && { ...aside, at: aside.at.toISOString() },
      }));
      return reply.send({ results });
    },
  );
  planStandingRoutes(app, doors);
}

/** A kept plan set aside, and counting again. */
function planStandingRoutes(app: App, doors: Doors): void {
  const doing = { aside: 'Set a kept plan aside; it stays to be read', back: 'A plan set aside counts again' } as const;
  for (const way of ['aside', 'back'] as const)
    app.post(
      `/api/enquiries/:id/plans/:planId/${way}`,
      {
        config: { who: 'desk' },
        schema: { tags, summary: doing[way], params: planParams, response: { 200: keptPlanSchema } },
      },
      async (request, reply) => {
        const { id, planId } = request.params;
        const done = await letPlanCount(doors.desk(request), id, planId, way === 'back');
        return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
      },
    );
}

function shown(row: EnquiryRow) {
  return {
    ...row,
    title: enquiryTitle(row),
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}

function withTag<Reply extends FastifyReply>(reply: Reply, row: EnquiryRow): Reply {
  reply.header('etag', `"${row.version}"`);
  return reply;
}

/** "3" in quotation marks or bare; null when it is no version. */
function versionOfTag(tag: string | undefined): number | null {
  const digits = /^(?:W\/)?"?(\d{1,9})"?$/.exec(tag?.trim() ?? '')?.[1];
  return digits === undefined ? null : Number(digits);
}
