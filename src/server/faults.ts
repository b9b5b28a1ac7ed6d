// What can be wrong with a request before the desk sees it, said as faults with the fields named.
import type { FastifySchemaValidationError } from 'fastify/types/schema.js';
import type { Fault } from '../shared/fault.ts';

/** One fault for each thing the schema found, all at once. */
export function schemaFaults(found: readonly FastifySchemaValidationError[], where: string): Fault[] {
  return found.map((error) => {
    const params = error.params as Record<string, unknown>;
    const inner = error.instancePath.slice(1).replaceAll('/', '.');
    const named = params.missingProperty ?? params.additionalProperty;
    const field = [where === 'body' ? '' : where, inner, named]
      .filter((part) => part !== '' && part !== undefined)
      .join('.');
    return {
      code: 'REQUEST_FIELD',
      field,
      got: named === undefined ? `a value that ${error.message ?? 'does not fit'}` : String(error.keyword),
      allowed: allowedFor(error.keyword, params),
      say: saidFor(error, field),
      fix: 'Send what /api/openapi.json describes.',
    };
  });
}

function allowedFor(keyword: string, params: Record<string, unknown>): string {
  if (keyword === 'type') return `a value of type ${String(params.type)}`;
  if (keyword === 'additionalProperties') return 'only the fields of the description';
  if (keyword === 'required') return 'all required fields';
  if (params.limit !== undefined) return `${String(params.comparison)} ${String(params.limit)}`;
  return keyword;
}

function saidFor(error: FastifySchemaValidationError, field: string): string {
  if (error.keyword === 'required') return `The field "${field}" is missing.`;
  if (error.keyword === 'additionalProperties') return `The field "${field}" is not known.`;
  return `The ${field === '' ? 'request' : `field "${field}"`} ${error.message ?? 'does not fit'}.`;
}

export const requestFaults = {
  notJson: (got: string): Fault => ({
    code: 'REQUEST_JSON',
    field: '',
    got,
    allowed: 'one JSON value',
    say: 'The request is not JSON that can be read.',
    fix: 'Send valid JSON with the header "content-type: application/json".',
  }),
  notThisType: {
    code: 'REQUEST_TYPE',
    field: 'content-type',
    got: 'another kind of content, or none named',
    allowed: 'application/json',
    say: 'This kind of content is not taken here.',
    fix: 'Send JSON with the header "content-type: application/json".',
  } satisfies Fault,
  notBytes: (got: string): Fault => ({
    code: 'REQUEST_BYTES',
    field: '',
    got: got.slice(0, 100),
    allowed: 'the bytes of a file, as application/octet-stream',
    say: 'No file was sent.',
    fix: 'Send the file as it is with the header "content-type: application/octet-stream".',
  }),
  tooLarge: (limitBytes: number): Fault => ({
    code: 'REQUEST_TOO_LARGE',
    field: '',
    got: `more than ${limitBytes} bytes`,
    allowed: `at most ${limitBytes} bytes`,
    say: 'The request is too large.',
    fix: 'Send only the enquiry or the enclosure.',
  }),
  tooMany: (perMinute: number): Fault => ({
    code: 'REQUEST_TOO_MANY',
    field: '',
    got: `more than ${perMinute} requests a minute`,
    allowed: `at most ${perMinute} a minute from one address`,
    say: 'Too many requests came from this address.',
    fix: 'Wait a minute and try again.',
  }),
  unknownPath: (path: string): Fault => ({
    code: 'REQUEST_UNKNOWN',
    field: '',
    got: path,
    allowed: 'a path of /api/openapi.json',
    say: 'There is nothing at this address.',
    fix: 'Check the address.',
  }),
  versionMissing: (got: string): Fault => ({
    code: 'REQUEST_VERSION_MISSING',
    field: 'If-Match',
    got,
    allowed: 'If-Match with the version that the change was made from, e.g. "3" in quotation marks',
    say: 'A change must say which version it was made from.',
    fix: 'Send the ETag of the enquiry that you read as If-Match.',
  }),
  foreign: (got: string): Fault => ({
    code: 'REQUEST_FOREIGN',
    field: '',
    got,
    allowed: "requests from this program's own pages, to an address that it is known by",
    say: 'This request came from another site, or under an address that the program is not known by.',
    fix: 'Open the address printed at start; name further addresses in WARMSTEAD_HOSTS.',
  }),
  ours: (reference: string): Fault => ({
    code: 'SERVER_FAILED',
    field: '',
    got: 'an error in the program',
    allowed: '',
    say: `Something failed on our side, ref ${reference}.`,
    fix: 'Try again; if it fails again, report it with this reference.',
  }),
} as const;
