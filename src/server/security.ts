// What may a browser do with our pages, and which requests are turned away before anything is looked at?
// Leaves out who is signed in (guard.ts) and how many requests one address gets (rate-limit.ts).
import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';
import { sendFaults } from './errors.ts';
import { requestFaults } from './faults.ts';

/** The one style sheet that the component library puts into the page itself (touch handling of pressable things). */
const libraryStyle = "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='";

const ownNames = ['127.0.0.1', 'localhost', '[::1]'];

export interface SecurityChoice {
  /** Further host names that the program is reached by; "*" for any. */
  readonly hosts: readonly string[];
}

export async function addSecurity(app: FastifyInstance, choice: SecurityChoice): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'self'"],
        'script-src': ["'self'", "'wasm-unsafe-eval'"],
        'style-src': ["'self'", libraryStyle],
        'img-src': ["'self'", 'data:', 'blob:'],
        'worker-src': ["'self'"],
        'object-src': ["'none'"],
        'base-uri': ["'none'"],
        'form-action': ["'self'"],
        'frame-ancestors': ["'none'"],
      },
    },
    strictTransportSecurity: false, // plain http on this machine; said below where a proxy brings https
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    referrerPolicy: { policy: 'no-referrer' },
  });
  const known = new Set([...ownNames, ...choice.hosts]);
  app.addHook('onRequest', async (request, reply) => {
    if (request.protocol === 'https') void reply.header('strict-transport-security', 'max-age=31536000');
    const foreign = foreignReason(request.method, request.headers, known);
    if (foreign !== null) await sendFaults(reply, [requestFaults.foreign(foreign)]);
  });
}

/** Stops other sites from writing through the user's browser, and names that were made to point here. */
function foreignReason(
  method: string,
  headers: Readonly<Record<string, string | string[] | undefined>>,
  known: ReadonlySet<string>,
): string | null {
  const host = String(headers.host ?? '').replace(/:\d+$/, '');
  if (!known.has('*') && !known.has(host)) return `a request to the host "${host.slice(0, 80)}"`;
  const site = headers['sec-fetch-site'];
  const reads = method === 'GET' || method === 'HEAD';
  if (reads) return null;
  if (site === 'cross-site' || site === 'same-site') return 'a change asked for by another site';
  // Browsers that say nothing of the site name the page's origin with every change.
  const origin = headers.origin;
  const own = site !== undefined || origin === undefined || hostOf(String(origin)) === String(headers.host ?? '');
  return own ? null : 'a change asked for by another site';
}

function hostOf(origin: string): string | null {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
}
