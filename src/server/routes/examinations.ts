// The HTTP doors onto the look-over, the daily round and calls after a sale.
import { mergeRound, readRound } from '../../desk/daily-round.ts';
import { finishExamination, readExamination, saveExamination } from '../../desk/examine-animal.ts';
import { takeCall } from '../../desk/take-call.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { animalParams, anyAnswer, callBody, examinationBody, roundBody } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import type { App, Doors } from '../types.ts';

const tags = ['animals'];
const answers = { 200: anyAnswer };

export function examinationRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/animals/:id/examination',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Steps, draft and last look-over', params: animalParams, response: answers },
    },
    async (request, reply) => {
      const read = await readExamination(doors.desk(request), request.params.id);
      return read.ok ? reply.send(read.value) : await sendFaults(reply, read.faults);
    },
  );
  app.put(
    '/api/animals/:id/examination',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Keep a look-over that is half done',
        params: animalParams,
        body: examinationBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const saved = await saveExamination(doors.desk(request), request.params.id, request.body);
      return saved.ok ? reply.send({}) : await sendFaults(reply, saved.faults);
    },
  );
  app.post(
    '/api/animals/:id/examination',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Finish the look-over',
        params: animalParams,
        body: examinationBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const done = await finishExamination(doors.desk(request), request.params.id, request.body);
      return done.ok ? reply.code(201).send(done.value) : await sendFaults(reply, done.faults);
    },
  );
  app.get(
    '/api/round',
    { config: { who: 'desk' }, schema: { tags, summary: 'Every enclosure of the branch today', response: answers } },
    async (request) => readRound(doors.desk(request)),
  );
  app.post(
    '/api/round',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Checks of the round, also late ones; sent twice they are written once',
        body: roundBody,
        response: answers,
      },
    },
    async (request) => ({ merged: await mergeRound(doors.desk(request), request.body.checks) }),
  );
  app.get(
    '/api/triage',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Complaints, questions and red flags of a call', response: answers },
    },
    async () => allFacts().care.triage,
  );
  app.post(
    '/api/triage',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'What first, when somebody calls', body: callBody, response: answers },
    },
    async (request, reply) => {
      const taken = await takeCall(doors.desk(request), request.body);
      return taken.ok ? reply.send(taken.value) : await sendFaults(reply, taken.faults);
    },
  );
}
