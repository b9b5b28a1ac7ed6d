// Puts the HTTP doors together: security, errors, routes, their description, and the pages of the browser program.
// Leaves out opening the records and listening (main.ts).

import { existsSync } from 'node:fs';
import { join, sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import swagger from '@fastify/swagger';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import Fastify, { type FastifyReply } from 'fastify';
import { versions } from '../records/versions.ts';
import { handleErrors, sendFaults } from './errors.ts';
import { requestFaults } from './faults.ts';
import { overlayRoutes } from './overlays.ts';
import { aftercareRoutes } from './routes/aftercare.ts';
import { animalRoutes } from './routes/animals.ts';
import { enquiryRoutes } from './routes/enquiries.ts';
import { examinationRoutes } from './routes/examinations.ts';
import { factRoutes } from './routes/facts.ts';
import { inspectionRoutes } from './routes/inspection.ts';
import { keeperRoutes } from './routes/keeper.ts';
import { packRoutes } from './routes/pack.ts';
import { placementRoutes } from './routes/placements.ts';
import { planRoutes } from './routes/plan.ts';
import { readingRoutes } from './routes/readings.ts';
import { shelfRoutes } from './routes/shelf.ts';
import { addSecurity } from './security.ts';
import type { App, Doors } from './types.ts';
import { requireWho } from './who.ts';

export interface AppChoice {
  /** Folder of the built pages; left out when it does not exist. */
  readonly webFolder: string;
  readonly hosts: readonly string[];
  readonly log?: boolean;
}

/** An enquiry is at most 256 kB; JSON escapes can double that. */
const bodyLimitBytes = 600_000;

export async function buildApp(doors: Doors, choice: AppChoice): Promise<App> {
  const app = Fastify({
    bodyLimit: bodyLimitBytes,
    logger: choice.log === true ? { level: 'error', stream: process.stderr } : false,
    forceCloseConnections: true,
    // Nothing is bent into shape or dropped: what does not fit is said, all at once.
    ajv: { customOptions: { allErrors: true, coerceTypes: false, removeAdditional: false } },
  }).withTypeProvider<TypeBoxTypeProvider>();
  handleErrors(app as never);
  requireWho(app as never);
  await addSecurity(app as never, { hosts: choice.hosts });
  await app.register(swagger, {
    openapi: { openapi: '3.1.0', info: { title: 'Warmstead', version: versions().program } },
  });
  await app.register(async (scope) => {
    const inside = scope.withTypeProvider<TypeBoxTypeProvider>();
    enquiryRoutes(inside, doors);
    planRoutes(inside, doors);
    factRoutes(inside, doors);
    animalRoutes(inside, doors);
    examinationRoutes(inside, doors);
    inspectionRoutes(inside, doors);
    placementRoutes(inside, doors);
    packRoutes(inside, doors);
    overlayRoutes(inside, doors);
    readingRoutes(inside, doors);
    shelfRoutes(inside, doors);
    keeperRoutes(inside, doors);
    aftercareRoutes(inside, doors);
  });
  app.get('/api/openapi.json', { config: { who: 'self' }, schema: { hide: true } }, async () => app.swagger());
  await addPages(app, choice.webFolder);
  return app;
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
