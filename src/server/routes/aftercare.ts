// The HTTP doors onto aftercare: what is due today, the tasks of a placement, calendars, the keeper's answers, own figures.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { fetchFeed, giveFeed, listFeeds, placementCalendar, takeBackFeed } from '../../desk/aftercare/calendar-feed.ts';
import { showAftercare } from '../../desk/aftercare/show-aftercare.ts';
import { type AftercareStep, takeStep } from '../../desk/aftercare/take-step.ts';
import {
  answerFromKeeper,
  type KeeperAnswer,
  keeperCalendar,
  openKeeperAftercare,
} from '../../desk/keeper-aftercare.ts';
import { ownFigures } from '../../desk/own-figures.ts';
import { showToday } from '../../desk/show-today.ts';
import type { FeedUnits } from '../../records/calendar-feeds.ts';
import type { Result } from '../../shared/result.ts';
import {
  branchFeedParams,
  feedBody,
  feedParams,
  feedSecretParams,
  keeperAnswerBody,
  placementParams,
  stepBody,
  todayQuery,
} from '../aftercare-schemas.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { askedUnits, paperQuery } from '../paper-query.ts';
import { atMost } from '../rate-limit.ts';
import { secretParams } from '../reading-schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['aftercare'];
const answers = { 200: anyAnswer };
const desk = { who: 'desk' } as const;
const link = { who: 'link', rateLimit: atMost(120) } as const;

const sent = async (reply: FastifyReply, result: Result<object>, code = 200) =>
  result.ok ? reply.code(code).send(result.value) : await sendFaults(reply, result.faults);

export function aftercareRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/today',
    { config: desk, schema: { tags, summary: 'What is to be done today', querystring: todayQuery, response: answers } },
    async (request) => {
      const { to, placementId, key } = request.query;
      const behind = to && placementId && key ? { to, placementId, key } : null;
      return await showToday(doors.desk(request), behind);
    },
  );
  app.get(
    '/api/own-figures',
    { config: desk, schema: { tags, summary: "The shop's own deaths and returns", response: answers } },
    async (request) => await ownFigures(doors.desk(request)),
  );
  app.get(
    '/api/placements/:id/aftercare',
    {
      config: desk,
      schema: { tags, summary: 'What follows one placement', params: placementParams, response: answers },
    },
    async (request, reply) => await sent(reply, await showAftercare(doors.desk(request), request.params.id)),
  );
  app.post(
    '/api/placements/:id/aftercare',
    {
      config: desk,
      schema: {
        tags,
        summary: 'An answer told at the desk, nobody reached, set aside, taken back, looked at',
        params: placementParams,
        body: stepBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const { token } = request.body;
      const step = request.body.step as AftercareStep;
      return await sent(
        reply,
        await takeStep(doors.desk(request), request.params.id, step, { token, via: 'desk' }),
        201,
      );
    },
  );
  calendarRoutes(app, doors);
  keeperAnswerRoutes(app, doors);
}

function calendarRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/placements/:id/calendar.ics',
    {
      config: desk,
      schema: { tags, summary: 'Its tasks as a calendar file', params: placementParams, querystring: paperQuery },
    },
    async (request, reply) => {
      const { id } = request.params;
      const made = await placementCalendar(doors.desk(request), id, askedUnits(request.query), 'desk');
      return await calendarSent(request, reply, made, `aftercare-${id.slice(0, 8)}.ics`);
    },
  );
  app.get(
    '/api/calendar/:secret',
    {
      config: link,
      schema: { tags, summary: 'The calendar behind an address', params: feedSecretParams },
    },
    async (request, reply) => {
      const made = await fetchFeed(doors.stranger, request.params.secret.replace(/\.ics$/, ''));
      return await calendarSent(request, reply, made, 'aftercare.ics');
    },
  );
  app.get(
    '/api/calendar-feeds',
    { config: desk, schema: { tags, summary: 'Calendar addresses of the branch', response: answers } },
    async (request) => ({ feeds: await listFeeds(doors.desk(request), null) }),
  );
  app.post(
    '/api/calendar-feeds',
    {
      config: desk,
      schema: {
        tags,
        summary: 'An address for the calendar of the branch; its secret is told once',
        body: feedBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) =>
      await sent(reply, await giveFeed(doors.desk(request), null, feedUnits(request.body)), 201),
  );
  app.post(
    '/api/calendar-feeds/:feedId/withdraw',
    {
      config: desk,
      schema: { tags, summary: 'Take back a calendar address', params: branchFeedParams, response: answers },
    },
    async (request, reply) => await sent(reply, await takeBackFeed(doors.desk(request), null, request.params.feedId)),
  );
  app.post(
    '/api/placements/:id/calendar-feeds',
    {
      config: desk,
      schema: {
        tags,
        summary: 'An address for the calendar of one placement; its secret is told once',
        params: placementParams,
        body: feedBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) =>
      await sent(reply, await giveFeed(doors.desk(request), request.params.id, feedUnits(request.body)), 201),
  );
  app.post(
    '/api/placements/:id/calendar-feeds/:feedId/withdraw',
    { config: desk, schema: { tags, summary: 'Take back a calendar address', params: feedParams, response: answers } },
    async (request, reply) => {
      const { id, feedId } = request.params;
      return await sent(reply, await takeBackFeed(doors.desk(request), id, feedId));
    },
  );
}

function keeperAnswerRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/keeper/:secret/aftercare',
    {
      config: link,
      schema: { tags, summary: 'What a keeper is asked', params: secretParams, response: answers },
    },
    async (request, reply) => {
      const { db, clock } = doors.stranger;
      void reply.header('cache-control', 'no-store');
      return await sent(reply, await openKeeperAftercare(db, clock, request.params.secret));
    },
  );
  app.post(
    '/api/keeper/:secret/aftercare',
    {
      config: link,
      schema: {
        tags,
        summary: 'An answer of a keeper; sent twice it is written once',
        params: secretParams,
        body: keeperAnswerBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const { db, clock } = doors.stranger;
      return await sent(
        reply,
        await answerFromKeeper(db, clock, request.params.secret, request.body as KeeperAnswer),
        201,
      );
    },
  );
  app.get(
    '/api/keeper/:secret/calendar.ics',
    {
      config: link,
      schema: {
        tags,
        summary: "A keeper's tasks as a calendar",
        params: secretParams,
        querystring: paperQuery,
      },
    },
    async (request, reply) => {
      const { db, clock } = doors.stranger;
      const made = await keeperCalendar(db, clock, request.params.secret, askedUnits(request.query));
      return await calendarSent(request, reply, made, 'calendar.ics');
    },
  );
}

const feedUnits = (body: Pick<FeedUnits, 'language'> & Partial<FeedUnits>): FeedUnits => ({
  temperature: null,
  length: null,
  mass: null,
  ...body,
});

async function calendarSent(request: FastifyRequest, reply: FastifyReply, made: Result<string>, name: string) {
  if (!made.ok) return await sendFaults(reply, made.faults);
  const inline = request.url.startsWith('/api/calendar/');
  return reply
    .headers({
      'cache-control': 'no-store',
      'content-disposition': `${inline ? 'inline' : 'attachment'}; filename="${name}"`,
      'x-content-type-options': 'nosniff',
    })
    .type('text/calendar; charset=utf-8')
    .send(made.value);
}
