// Nonsense at every door: requests made from the program's own description of itself, and files that are no logger files.
// Nothing may be answered with "failed on our side", and no answer may tell what the program is made of.
import fc from 'fast-check';
import type { App } from '../../src/server/types.ts';

export interface FuzzDone {
  readonly sent: number;
  readonly byStatus: Readonly<Record<string, number>>;
  readonly failed: readonly string[];
  readonly leaks: readonly string[];
}

interface Door {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
}

type Json = Record<string, unknown>;

/** What only the inside knows: places in the sources, words of the database, traces. */
const inside =
  /node_modules|\.ts:\d|\.mjs:\d|at async |select .* from |relation "|syntax error at|violates|pg_catalog|\/home\/|\/root\/|\/tmp\/|stack/i;

const nasty = fc.oneof(
  fc.string({ maxLength: 60 }),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    '\u0000',
    '\ud800',
    "'; drop table enquiry; --",
    '../../../etc/passwd',
    '<script>alert(1)</script>',
    '1e999',
    '-0',
    'NaN',
    '9'.repeat(400),
    '\u202e',
    '{}',
    '__proto__',
    'constructor',
  ),
);
const anyValue: fc.Arbitrary<unknown> = fc.oneof(
  { depthSize: 'small' },
  nasty,
  fc.integer(),
  fc.double(),
  fc.boolean(),
  fc.constant(null),
  fc.array(nasty, { maxLength: 3 }),
  fc.dictionary(nasty, nasty, { maxKeys: 3 }),
);
const ids = (known: readonly string[]) => fc.oneof(fc.constantFrom(...known), fc.uuid(), nasty);

export function doorsOf(openapi: Json): Door[] {
  return Object.entries(openapi.paths as Record<string, Json>).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, how]) => {
      const content = ((how as Json).requestBody as Json | undefined)?.content as Json | undefined;
      return {
        method: method.toUpperCase(),
        path,
        body: (content?.['application/json'] as Json | undefined)?.schema ?? null,
      };
    }),
  );
}

/** A value that mostly fits the schema, with something wrong in it now and then. */
function fitting(schema: Json | undefined, depth = 0): fc.Arbitrary<unknown> {
  if (schema === undefined || depth > 6) return anyValue;
  const usual = (() => {
    const choices = (schema.anyOf ?? schema.oneOf) as Json[] | undefined;
    if (choices !== undefined) return fc.oneof(...choices.map((one) => fitting(one, depth + 1)));
    if (schema.const !== undefined) return fc.constant(schema.const);
    if (Array.isArray(schema.enum)) return fc.constantFrom(...(schema.enum as unknown[]));
    if (schema.type === 'object') {
      const fields = Object.entries((schema.properties ?? {}) as Record<string, Json>);
      return fc.record(Object.fromEntries(fields.map(([name, one]) => [name, fitting(one, depth + 1)])), {
        requiredKeys: ((schema.required as string[]) ?? []) as never[],
      });
    }
    if (schema.type === 'array') return fc.array(fitting(schema.items as Json, depth + 1), { maxLength: 4 });
    if (schema.type === 'integer') return fc.integer({ min: -2, max: 100_000 });
    if (schema.type === 'number') return fc.double({ min: -1000, max: 1e6, noNaN: true });
    if (schema.type === 'boolean') return fc.boolean();
    if (schema.format === 'uuid') return fc.uuid();
    return nasty;
  })();
  return fc.oneof({ weight: 14, arbitrary: usual }, { weight: 1, arbitrary: anyValue });
}

export async function fuzzRequests(
  app: App,
  openapi: Json,
  known: readonly string[],
  count: number,
  seed: number,
  headers: Record<string, string> = {},
): Promise<FuzzDone> {
  const doors = doorsOf(openapi);
  const each = Math.ceil(count / doors.length);
  const report = newReport();
  // Doors of coming and going last: nonsense there signs the asker out, and the rest would only hear "sign in".
  const going = (door: Door): number => Number(/^\/api\/(session|account|people|set-up)/.test(door.path));
  for (const door of doors.sort((a, b) => going(a) - going(b))) {
    const names = [...door.path.matchAll(/\{([^}]+)\}/g)].map((match) => match[1] ?? '');
    const asked = fc.record({
      ids: fc.tuple(...names.map(() => ids(known))),
      query: fc.oneof(
        fc.constant(''),
        nasty.map((text) => `?${encodeURIComponent(safe(text))}=${encodeURIComponent(safe(text))}`),
      ),
      body: door.body === null ? fc.oneof(fc.constant(undefined), anyValue) : fitting(door.body as Json),
      ifMatch: fc.oneof(fc.constant('"1"'), fc.constant('1'), nasty),
    });
    for (const one of fc.sample(asked, { numRuns: each, seed })) {
      let n = 0;
      const url = door.path.replace(/\{[^}]+\}/g, () => encodeURIComponent(safe(one.ids[n++] ?? ''))) + one.query;
      const payload = one.body === undefined || door.method === 'GET' ? undefined : JSON.stringify(one.body);
      const sent: Record<string, string> = { 'if-match': one.ifMatch.replace(/[^\x20-\x7e]/g, '?'), ...headers };
      if (payload !== undefined) sent['content-type'] = 'application/json';
      await send(app, report, { method: door.method, url, payload, headers: sent });
    }
  }
  return report;
}

const csvLine = fc
  .array(
    fc.oneof(
      nasty,
      fc.double().map(String),
      fc.date({ noInvalidDate: true }).map((day) => day.toISOString()),
    ),
    { maxLength: 6 },
  )
  .map((cells) => cells.join(','));
const textFile = fc.array(csvLine, { maxLength: 30 }).map((lines) => Buffer.from(safe(lines.join('\n')), 'utf8'));
const damaged = (good: Buffer) =>
  fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { minLength: 1, maxLength: 30 }).map((changes) => {
    const bytes = Buffer.from(good);
    for (const [at, value] of changes) bytes[at] = value;
    return bytes;
  });

export async function fuzzFiles(
  app: App,
  enquiryId: string,
  good: Buffer,
  count: number,
  seed: number,
  headers: Record<string, string> = {},
): Promise<FuzzDone> {
  const report = newReport();
  const cut = fc.nat(good.length).map((end) => good.subarray(0, end));
  const bytes = fc.uint8Array({ maxLength: 400 }).map((some) => Buffer.from(some));
  const file = fc.oneof(bytes, textFile, damaged(good), cut);
  for (const payload of fc.sample(file, { numRuns: count, seed })) {
    const url = `/api/enquiries/${enquiryId}/reading-files?name=log.csv`;
    await send(app, report, {
      method: 'POST',
      url,
      payload,
      headers: { 'content-type': 'application/octet-stream', ...headers },
    });
  }
  return report;
}

const safe = (text: string): string => text.replace(/[\ud800-\udfff]/g, '?');

interface Report {
  sent: number;
  byStatus: Record<string, number>;
  failed: string[];
  leaks: string[];
}

const newReport = (): Report => ({ sent: 0, byStatus: {}, failed: [], leaks: [] });

async function send(
  app: App,
  report: Report,
  request: { method: string; url: string; payload?: string | Buffer | undefined; headers: Record<string, string> },
): Promise<void> {
  const { payload, ...rest } = request;
  const answer = await app.inject({ ...rest, ...(payload === undefined ? {} : { payload }) } as never);
  const { statusCode, body } = answer as unknown as { statusCode: number; body: string };
  report.sent++;
  report.byStatus[statusCode] = (report.byStatus[statusCode] ?? 0) + 1;
  const shown = `${request.method} ${request.url.slice(0, 120)} ${typeof payload === 'string' ? payload.slice(0, 200) : ''}`;
  if (statusCode >= 500 && statusCode !== 503) report.failed.push(shown);
  if (statusCode >= 400 && inside.test(body) && !bodyEchoes(body, payload, request.url))
    report.leaks.push(`${shown} -> ${body.slice(0, 200)}`);
}

/** An answer may repeat what was sent. */
function bodyEchoes(body: string, payload: string | Buffer | undefined, url: string): boolean {
  const found = inside.exec(body)?.[0] ?? '';
  return `${String(payload ?? '')} ${decodeURIComponent(url)}`.toLowerCase().includes(found.toLowerCase());
}
