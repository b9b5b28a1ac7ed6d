// The HTTP doors onto the readings of a home at the desk: files, instruments, the proof. Typed readings: typed-readings.ts.

import { Readable } from 'node:stream';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { CheckInput } from '../../desk/instruments.ts';
import { addInstrument, checkInstrument, listInstruments } from '../../desk/instruments.ts';
import { proofLater, proveLater } from '../../desk/proof-later.ts';
import { proveEnquiry, showProof } from '../../desk/prove-enquiry.ts';
import { startProver } from '../../desk/prover.ts';
import { showCurves } from '../../desk/show-curves.ts';
import {
  answerFile,
  filesSetAside,
  setFileAside,
  showFiles,
  takeFileBack,
  takeReadingFile,
} from '../../desk/take-reading-file.ts';
import type { LogHints } from '../../proving/files/understood.ts';
import { checkSteps } from '../../proving/instrument-check.ts';
import type { ProofRule } from '../../proving/verdict/rule.ts';
import type { Queue } from '../../records/queue.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { requestFaults } from '../faults.ts';
import { gone } from '../gone.ts';
import {
  asideBody,
  checkBody,
  fileParams,
  fileQuery,
  hintsBody,
  homeParams,
  instrumentBody,
  proofBody,
} from '../reading-schemas.ts';
import type { App, Doors } from '../types.ts';
import { workQuery } from '../work-id.ts';

const tags = ['readings'];
const answers = { 200: anyAnswer };

export function readingRoutes(app: App, doors: Doors): void {
  const prover = startProver();
  app.addHook('onClose', async () => await prover.close());
  app.register(async (scope) => fileDoor(scope.withTypeProvider<TypeBoxTypeProvider>(), doors));
  app.get(
    '/api/enquiries/:id/reading-files',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Files of a home, as they are understood', params: homeParams, response: answers },
    },
    async (request, reply) => {
      const shown = await showFiles(doors.desk(request), request.params.id);
      if (!shown.ok) return await sendFaults(reply, shown.faults);
      const aside = await filesSetAside(doors.desk(request), request.params.id);
      return aside.ok ? reply.send({ files: shown.value, aside: aside.value }) : await sendFaults(reply, aside.faults);
    },
  );
  app.put(
    '/api/enquiries/:id/reading-files/:fileId/answers',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Answer what a file leaves open',
        params: fileParams,
        body: hintsBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const { id, fileId } = request.params;
      const answered = await answerFile(doors.desk(request), id, fileId, request.body as LogHints);
      return answered.ok ? reply.send(answered.value) : await sendFaults(reply, answered.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/reading-files/:fileId/aside',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Set a file aside; it is kept but no longer counts',
        params: fileParams,
        body: asideBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const { id, fileId } = request.params;
      const done = await setFileAside(doors.desk(request), id, fileId, request.body.why);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/reading-files/:fileId/back',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'A file set aside counts again', params: fileParams, response: answers },
    },
    async (request, reply) => {
      const { id, fileId } = request.params;
      const done = await takeFileBack(doors.desk(request), id, fileId);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/proof',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Prove the home by its readings',
        params: homeParams,
        querystring: workQuery,
        body: proofBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const { enclosure, ...rule } = request.body;
      const wait = { workId: request.query.work, signal: gone(reply) };
      const asked = { rule: rule as Partial<ProofRule>, ...wait, ...(enclosure === undefined ? {} : { enclosure }) };
      const proven = await proveEnquiry(doors.desk(request), prover, request.params.id, asked);
      return proven.ok ? reply.send(proven.value) : await sendFaults(reply, proven.faults);
    },
  );
  app.get(
    '/api/enquiries/:id/proof',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'The newest proof, and whether it is of the home as it stands',
        params: homeParams,
        response: answers,
      },
    },
    async (request, reply) => {
      const shown = await showProof(doors.desk(request), request.params.id);
      return shown.ok ? reply.send(shown.value) : await sendFaults(reply, shown.faults);
    },
  );
  const { queue } = doors;
  if (queue !== undefined) laterRoutes(app, doors, queue);
  app.get(
    '/api/enquiries/:id/readings',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'What was read, thinned to curves', params: homeParams, response: answers },
    },
    async (request, reply) => {
      const curves = await showCurves(doors.desk(request), request.params.id);
      return curves.ok ? reply.send(curves.value) : await sendFaults(reply, curves.faults);
    },
  );
  app.get(
    '/api/instruments',
    { config: { who: 'desk' }, schema: { tags, summary: 'Instruments of the branch', response: answers } },
    async (request) => ({
      instruments: await listInstruments(doors.desk(request)),
      steps: { ice: checkSteps('ice', true), salt: checkSteps('salt', true) },
    }),
  );
  app.post(
    '/api/instruments',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Add an instrument', body: instrumentBody, response: { 201: anyAnswer } },
    },
    async (request, reply) => {
      const added = await addInstrument(doors.desk(request), request.body.name);
      return added.ok ? reply.code(201).send(added.value) : await sendFaults(reply, added.faults);
    },
  );
  app.post(
    '/api/instruments/:id/checks',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Check an instrument at a known point',
        params: homeParams,
        body: checkBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const done = await checkInstrument(doors.desk(request), request.params.id, request.body as CheckInput);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
}

/** Proofs that may wait: many at once, from several branches, without anybody being told "busy". */
function laterRoutes(app: App, doors: Doors, queue: Queue): void {
  app.post(
    '/api/enquiries/:id/proof-jobs',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Prove the home when its turn comes',
        params: homeParams,
        querystring: workQuery,
        body: proofBody,
        response: { 202: anyAnswer },
      },
    },
    async (request, reply) => {
      const { enclosure, ...rule } = request.body;
      const { work: workId } = request.query;
      const asked = {
        rule: rule as Partial<ProofRule>,
        ...(enclosure === undefined ? {} : { enclosure }),
        ...(workId === undefined ? {} : { workId }),
      };
      const later = await proveLater(doors.desk(request), queue, request.params.id, asked);
      return later.ok ? reply.code(202).send(later.value) : await sendFaults(reply, later.faults);
    },
  );
  app.get(
    '/api/proof-jobs/:id',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Where a proof stands that waits', params: homeParams, response: answers },
    },
    async (request, reply) => {
      const found = await proofLater(doors.desk(request), queue, request.params.id);
      if (found === null) return await sendFaults(reply, [requestFaults.unknownPath('this proof')]);
      return reply.send(found);
    },
  );
}

/** Its own parser, and no other: a file comes as it is, the desk reads it as a stream and stops at its own limit. */
function fileDoor(app: App, doors: Doors): void {
  app.removeAllContentTypeParsers();
  app.addContentTypeParser('application/octet-stream', (_request, payload, done) => done(null, payload));
  app.addContentTypeParser('*', (_request, _payload, done) => done(null, null));
  app.post(
    '/api/enquiries/:id/reading-files',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Take a logger file in; the body is the file',
        params: homeParams,
        querystring: fileQuery,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      if (!(request.body instanceof Readable)) {
        return await sendFaults(reply, [requestFaults.notBytes(request.headers['content-type'] ?? 'nothing')]);
      }
      const { name = 'log', work } = request.query;
      const file = { name, chunks: request.body as AsyncIterable<Uint8Array>, hints: {} };
      const wait = { workId: work, signal: gone(reply) };
      const taken = await takeReadingFile(doors.desk(request), request.params.id, file, wait);
      return taken.ok ? reply.code(201).send(taken.value) : await sendFaults(reply, taken.faults);
    },
  );
}
