// The HTTP doors onto animals: take in, list, show, correct the register, write and correct entries, photographs.
import { correctRegister } from '../../desk/correct-register.ts';
import { keepPhoto, readPhoto } from '../../desk/keep-photo.ts';
import { listAnimals, preyForDays } from '../../desk/list-animals.ts';
import { moveUpOf, showAnimal } from '../../desk/show-animal.ts';
import { takeInAnimal } from '../../desk/take-in-animal.ts';
import { correctEntry, writeEntry } from '../../desk/write-entry.ts';
import {
  animalParams,
  anyAnswer,
  correctionBody,
  daysQuery,
  entryBody,
  entryParams,
  listQuery,
  moveUpQuery,
  photoBody,
  photoParams,
  registerBody,
  takeInBody,
} from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import type { App, Doors } from '../types.ts';

const tags = ['animals'];
const answers = { 200: anyAnswer };

export function animalRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/animals',
    {
      config: { who: 'register' },
      schema: { tags, summary: 'Animals of the branch', querystring: listQuery, response: answers },
    },
    async (request) => listAnimals(doors.desk(request), { all: request.query.all === 'yes' }),
  );
  app.get(
    '/api/prey',
    { config: { who: 'desk' }, schema: { tags, summary: 'Prey needed', querystring: daysQuery, response: answers } },
    async (request) => preyForDays(doors.desk(request), Math.max(1, Number(request.query.days ?? 28))),
  );
  app.post(
    '/api/animals',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Take an animal in', body: takeInBody, response: { 201: anyAnswer } },
    },
    async (request, reply) => {
      const { values, enclosure, quarantine } = request.body;
      const taken = await takeInAnimal(doors.desk(request), { values, enclosure, quarantine });
      return taken.ok ? reply.code(201).send(taken.value) : await sendFaults(reply, taken.faults);
    },
  );
  app.get(
    '/api/animals/:id',
    {
      config: { who: 'register' },
      schema: { tags, summary: 'One animal on one sheet', params: animalParams, response: answers },
    },
    async (request, reply) => {
      const shown = await showAnimal(doors.desk(request), request.params.id);
      return shown.ok ? reply.send(shown.value) : await sendFaults(reply, shown.faults);
    },
  );
  app.get(
    '/api/animals/:id/move-up',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'When it outgrows a box',
        params: animalParams,
        querystring: moveUpQuery,
        response: answers,
      },
    },
    async (request, reply) => {
      const { boxLengthCm, lengthShare } = request.query;
      const found = await moveUpOf(doors.desk(request), request.params.id, Number(boxLengthCm), Number(lengthShare));
      return found.ok ? reply.send({ moveUp: found.value }) : await sendFaults(reply, found.faults);
    },
  );
  app.put(
    '/api/animals/:id/register',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Say or correct what the register holds',
        params: animalParams,
        body: registerBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const changed = await correctRegister(doors.desk(request), { id: request.params.id, ...request.body });
      return changed.ok ? reply.send(changed.value) : await sendFaults(reply, changed.faults);
    },
  );
  entryRoutes(app, doors);
}

function entryRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/animals/:id/entries',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Write an entry; a client key makes sending it twice safe',
        params: animalParams,
        body: entryBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const written = await writeEntry(doors.desk(request), { animalId: request.params.id, ...request.body });
      return written.ok ? reply.code(201).send(written.value) : await sendFaults(reply, written.faults);
    },
  );
  app.post(
    '/api/animals/:id/entries/:entryId/correction',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Correct or withdraw an entry; the old one stays',
        params: entryParams,
        body: correctionBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const { id: animalId, entryId } = request.params;
      const corrected = await correctEntry(doors.desk(request), { animalId, entryId, ...request.body });
      return corrected.ok ? reply.code(201).send(corrected.value) : await sendFaults(reply, corrected.faults);
    },
  );
  app.post(
    '/api/animals/:id/photos',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Keep a photograph',
        params: animalParams,
        body: photoBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const kept = await keepPhoto(doors.desk(request), request.params.id, request.body.data, request.body.of);
      return kept.ok ? reply.code(201).send(kept.value) : await sendFaults(reply, kept.faults);
    },
  );
  app.get(
    '/api/animals/:id/photos/:photoId',
    { config: { who: 'register' }, schema: { tags, summary: 'A photograph', params: photoParams } },
    async (request, reply) => {
      const photo = await readPhoto(doors.desk(request), request.params.id, request.params.photoId);
      if (!photo.ok) return await sendFaults(reply, photo.faults);
      // Never changes under its name; shown as nothing but the picture that its bytes are.
      const headers = { 'cache-control': 'private, max-age=31536000, immutable', 'content-disposition': 'inline' };
      return reply
        .headers({ ...headers, 'x-content-type-options': 'nosniff' })
        .header('content-security-policy', "default-src 'none'; sandbox")
        .type(photo.value.mediaType)
        .send(photo.value.bytes);
    },
  );
}
