// The HTTP doors onto readings that somebody typed: the list, typing one at the desk, setting one aside and back.
import { type SentReading, typeReadings } from '../../desk/keeper-page.ts';
import { setReadingAside, takeReadingBack, typedReadings } from '../../desk/typed-readings.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { asideBody, homeParams, readingParams, sentBody } from '../reading-schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['readings'];
const answers = { 200: anyAnswer };

export function typedReadingRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/enquiries/:id/hand-readings',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Typed readings, newest first; those set aside with who, when and why',
        params: homeParams,
        response: answers,
      },
    },
    async (request, reply) => {
      const found = await typedReadings(doors.desk(request), request.params.id);
      return found.ok ? reply.send({ readings: found.value }) : await sendFaults(reply, found.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/hand-readings',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'Type readings in at the desk', params: homeParams, body: sentBody, response: answers },
    },
    async (request, reply) => {
      const done = await typeReadings(doors.desk(request), request.params.id, request.body.readings as SentReading[]);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/hand-readings/:readingId/aside',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Set a typed reading aside; it is kept but no longer counts',
        params: readingParams,
        body: asideBody,
        response: answers,
      },
    },
    async (request, reply) => {
      const { id, readingId } = request.params;
      const done = await setReadingAside(doors.desk(request), id, readingId, request.body.why);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/hand-readings/:readingId/back',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'A typed reading set aside counts again', params: readingParams, response: answers },
    },
    async (request, reply) => {
      const { id, readingId } = request.params;
      const done = await takeReadingBack(doors.desk(request), id, readingId);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
}
