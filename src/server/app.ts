// Puts the HTTP doors together: security, errors, routes, their description, and the pages of the browser program.
// Leaves out opening the records and listening (main.ts).

import { existsSync } from 'node:fs';
import { join, sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import swagger from '@fastify/swagger';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import Fastify, { type FastifyReply } from 'fastify';
import { deskOf } from '../desk/accounts/sessions.ts';
import { versions } from '../records/versions.ts';
import { handleErrors, sendFaults } from './errors.ts';
import { requestFaults } from './faults.ts';
import { addGuard, ownDesk } from './guard.ts';
import { logChoice } from './log.ts';
import { overlayRoutes } from './overlays.ts';
import { addRateLimit, usualPerMinute } from './rate-limit.ts';
import { accountRoutes, peopleRoutes } from './routes/account.ts';
import { aftercareRoutes } from './routes/aftercare.ts';
import { animalRoutes } from './routes/animals.ts';
import { enquiryRoutes } from './routes/enquiries.ts';
import { examinationRoutes } from './routes/examinations.ts';
import { factRoutes } from './routes/facts.ts';
import { inspectionRoutes } from './routes/inspection.ts';
import { keeperRoutes } from './routes/keeper.ts';
import { languageRoutes } from './routes/languages.ts';
import { packRoutes } from './routes/pack.ts';
import { placementRoutes } from './routes/placements.ts';
import { planRoutes } from './routes/plan.ts';
import { privacyRoutes } from './routes/privacy.ts';
import { programRoutes } from './routes/program.ts';
import { readingRoutes } from './routes/readings.ts';
import { sessionRoutes } from './routes/session.ts';
import { shelfRoutes } from './routes/shelf.ts';
import { typedReadingRoutes } from './routes/typed-readings.ts';
import { workRoutes } from './routes/work.ts';
import { addSecurity } from './security.ts';
import type { App, Doors, Ground } from './types.ts';
import { requireWho } from './who.ts';

export interface AppChoice {
  /** Folder of the built pages; left out when it does not exist. */
  readonly webFolder: string;
  readonly hosts: readonly string[];
  readonly log?: boolean;
  /** Addresses of proxies whose word on https and on who asks is believed; none unless named. */
  readonly proxies?: readonly string[];
  /** Requests a minute from one address. */
  readonly perMinute?: number;
}

/** An enquiry is at most 256 kB; JSON escapes can double that. */
const bodyLimitBytes = 600_000;

export async function buildApp(ground: Ground, choice: AppChoice): Promise<App> {
  const app = Fastify({
    bodyLimit: bodyLimitBytes,
    logger: choice.log === true ? logChoice(process.stderr) : false,
    trustProxy: choice.proxies === undefined || choice.proxies.length === 0 ? false : [...choice.proxies],
    forceCloseConnections: true,
    // Nothing is bent into shape or dropped: what does not fit is said, all at once.
    ajv: { customOptions: { allErrors: true, coerceTypes: false, removeAdditional: false } },
  }).withTypeProvider<TypeBoxTypeProvider>();
  // Only JSON is taken, and at one door a file: plain text would be what a form of another site can send.
  app.removeContentTypeParser('text/plain');
  handleErrors(app as never);
  requireWho(app as never);
  await addSecurity(app as never, { hosts: choice.hosts });
  await addRateLimit(app as never, ground.db, choice.perMinute ?? usualPerMinute);
  await addGuard(app as never, { db: ground.db, clock: ground.sessionClock ?? ground.clock });
  const doors = doorsOn(ground);
  await app.register(swagger, {
    openapi: { openapi: '3.1.0', info: { title: 'Warmstead', version: versions().program } },
  });
  await app.register(async (scope) => {
    const inside = scope.withTypeProvider<TypeBoxTypeProvider>();
    enquiryRoutes(inside, doors);
    planRoutes(inside, doors);
    sessionRoutes(inside, doors);
    accountRoutes(inside, doors);
    peopleRoutes(inside, doors);
    programRoutes(inside, doors);
    languageRoutes(inside);
    factRoutes(inside);
    animalRoutes(inside, doors);
    examinationRoutes(inside, doors);
    inspectionRoutes(inside, doors);
    placementRoutes(inside, doors);
    privacyRoutes(inside, doors);
    packRoutes(inside, doors);
    overlayRoutes(inside, doors);
    readingRoutes(inside, doors);
    typedReadingRoutes(inside, doors);
    shelfRoutes(inside, doors);
    keeperRoutes(inside, doors);
    aftercareRoutes(inside, doors);
    workRoutes(inside, doors);
  });
  app.get('/api/openapi.json', { config: { who: 'self' }, schema: { hide: true } }, async () => app.swagger());
  await addPages(app, choice.webFolder);
  return app;
}

function doorsOn(ground: Ground): Doors {
  const { records, branch, planner, queue, db, clock } = ground;
  const stranger = { db, clock };
  const gate = { db, clock: ground.sessionClock ?? clock };
  const own: Doors['own'] = (request) => ownDesk(gate, request);
  const desk: Doors['desk'] = (request) => deskOf(stranger, own(request).session);
  return { records, branch, planner, queue, stranger, gate, own, desk };
}

/** Every address that is not the API's and not a file opens the one page; it finds its way by itself. */
async function addPages(app: App, webFolder: string): Promise<void> {
  const hasPages = existsSync(join(webFolder, 'index.html'));
  if (hasPages) {
    await app.register(fastifyStatic, {
      root: webFolder,
      cacheControl: false,
      setHeaders: cacheHeaders,
      preCompressed: true,
    });
  }
  app.setNotFoundHandler(async (request, reply) => {
    const wantsPage = request.method === 'GET' && (request.headers.accept ?? '').includes('text/html');
    if (hasPages && wantsPage && !request.url.startsWith('/api/')) return reply.sendFile('index.html');
    return await sendFaults(reply, [requestFaults.unknownPath(`${request.method} ${request.url.slice(0, 200)}`)]);
  });
}

/** Built files carry a fingerprint in their names; the page that names them does not. */
function cacheHeaders(reply: FastifyReply, path: string): void {
  const fixed = path.includes(join(sep, 'assets', sep));
  void reply.header('cache-control', fixed ? 'public, max-age=31536000, immutable' : 'no-cache');
}
