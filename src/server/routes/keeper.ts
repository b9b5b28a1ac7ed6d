// The HTTP doors that are open without the desk: a keeper's page behind its link, and live sources behind their secrets.
// And the desk's doors that give such links and secrets out. A flood from one address is turned away.
import {
  giveKeeperLink,
  listKeeperLinks,
  openKeeperPage,
  type SentReading,
  sendFromKeeper,
  takeBackKeeperLink,
} from '../../desk/keeper-page.ts';
import { addLiveSource, hearSource, liveStates, type NewSource, type SaidReading } from '../../desk/live-feed.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { atMost } from '../rate-limit.ts';
import { homeParams, linkBody, linkParams, saidBody, secretParams, sentBody, sourceBody } from '../reading-schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['keeper and live readings'];
const answers = { 200: anyAnswer };

export function keeperRoutes(app: App, doors: Doors): void {
  const calm = { who: 'link', rateLimit: atMost(120) } as const;
  const quick = { who: 'link', rateLimit: atMost(1200) } as const;
  app.get(
    '/api/keeper/:secret',
    {
      config: calm,
      schema: { tags, summary: 'What a keeper sees behind a link', params: secretParams, response: answers },
    },
    async (request, reply) => {
      const { db, clock } = doors.stranger;
      const page = await openKeeperPage(db, clock, request.params.secret);
      void reply.header('cache-control', 'no-store');
      return page.ok ? reply.send(page.value) : await sendFaults(reply, page.faults);
    },
  );
  app.post(
    '/api/keeper/:secret/readings',
    {
      config: calm,
      schema: { tags, summary: 'Readings from a keeper', params: secretParams, body: sentBody, response: answers },
    },
    async (request, reply) => {
      const { db, clock } = doors.stranger;
      const sent = await sendFromKeeper(db, clock, request.params.secret, request.body.readings as SentReading[]);
      return sent.ok ? reply.send(sent.value) : await sendFaults(reply, sent.faults);
    },
  );
  app.post(
    '/api/live/:secret',
    {
      config: quick,
      schema: { tags, summary: 'Readings of a live source', params: secretParams, body: saidBody, response: answers },
    },
    async (request, reply) => {
      const { db, clock } = doors.stranger;
      const body = request.body as SaidReading | { readings: SaidReading[] };
      const heard = await hearSource(db, clock, request.params.secret, 'readings' in body ? body.readings : [body]);
      return heard.ok ? reply.send(heard.value) : await sendFaults(reply, heard.faults);
    },
  );

  app.get(
    '/api/enquiries/:id/live',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'What each live source says now; a silent one is unknown',
        params: homeParams,
        response: answers,
      },
    },
    async (request, reply) => {
      const states = await liveStates(doors.desk(request), request.params.id);
      return states.ok ? reply.send({ sources: states.value }) : await sendFaults(reply, states.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/live-sources',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Connect a live source; its secret is told once',
        params: homeParams,
        body: sourceBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const added = await addLiveSource(doors.desk(request), request.params.id, request.body as NewSource);
      return added.ok ? reply.code(201).send(added.value) : await sendFaults(reply, added.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/keeper-links',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: "Give out a keeper's link; its secret is told once",
        params: homeParams,
        body: linkBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const given = await giveKeeperLink(doors.desk(request), request.params.id, request.body.days);
      return given.ok ? reply.code(201).send(given.value) : await sendFaults(reply, given.faults);
    },
  );
  app.get(
    '/api/enquiries/:id/keeper-links',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: "Keepers' links of a home, without their secrets",
        params: homeParams,
        response: answers,
      },
    },
    async (request, reply) => {
      const links = await listKeeperLinks(doors.desk(request), request.params.id);
      return links.ok ? reply.send({ links: links.value }) : await sendFaults(reply, links.faults);
    },
  );
  app.post(
    '/api/enquiries/:id/keeper-links/:linkId/withdraw',
    {
      config: { who: 'desk' },
      schema: { tags, summary: "Withdraw a keeper's link", params: linkParams, response: answers },
    },
    async (request, reply) => {
      const done = await takeBackKeeperLink(doors.desk(request), request.params.id, request.params.linkId);
      return done.ok ? reply.send(done.value) : await sendFaults(reply, done.faults);
    },
  );
}
