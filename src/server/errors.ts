// How does what went wrong reach the caller? Faults as they are, with the status their code stands for; anything
// unknown is written to the log under a reference and answered without its own words.
import { randomUUID } from 'node:crypto';
import type { FastifyError, FastifyInstance, FastifyReply } from 'fastify';
import type { Fault } from '../shared/fault.ts';
import { requestFaults, schemaFaults } from './faults.ts';
import { TooMany } from './rate-limit.ts';
import { recordsFaults } from './records-errors.ts';

/** Codes with a status of their own; every other fault is about the content: 422. */
const statusByCode: Readonly<Record<string, number>> = {
  REQUEST_FIELD: 400,
  REQUEST_JSON: 400,
  ACCOUNT_NEEDED: 401,
  ACCOUNT_LOCKED: 401,
  ACCOUNT_WRONG: 401,
  ACCOUNT_PASSKEY: 401,
  REQUEST_TEXT: 400,
  REQUEST_FOREIGN: 403,
  OVERRIDE_ABSOLUTE: 403,
  PLACEMENT_ROLE: 403,
  ACCOUNT_ROLE: 403,
  ACCOUNT_PROVE: 403,
  REQUEST_UNKNOWN: 404,
  PLACEMENT_UNKNOWN: 404,
  ENQUIRY_UNKNOWN: 404,
  ANIMAL_UNKNOWN: 404,
  OVERLAY_UNKNOWN: 404,
  HAND_UNKNOWN: 404,
  PLAN_UNKNOWN: 404,
  PACK_UNKNOWN: 404,
  PACK_ERASED: 410,
  LOG_UNKNOWN: 404,
  INSTRUMENT_UNKNOWN: 404,
  KEEPER_LINK: 404,
  LIVE_SOURCE: 404,
  CALENDAR_FEED: 404,
  AFTERCARE_NOT_RELEASED: 409,
  AFTERCARE_TASK: 409,
  AFTERCARE_EVENT: 409,
  ACCOUNT_UNKNOWN: 404,
  ACCOUNT_SET_UP: 409,
  ACCOUNT_CHANGED: 409,
  ACCOUNT_LAST_OWNER: 409,
  ENQUIRY_CHANGED: 409,
  ERASURE_DONE: 409,
  ERASURE_OPEN: 409,
  ERASURE_NOT_DUE: 409,
  SHELF_CHANGED: 409,
  SHELF_VERSION: 404,
  ANIMAL_ENTRY_UNKNOWN: 409,
  PLACEMENT_ANIMAL_GONE: 409,
  PLACEMENT_STATE: 409,
  OVERRIDE_NEEDLESS: 409,
  RELEASE_SHUT: 409,
  REQUEST_TOO_LARGE: 413,
  REQUEST_BYTES: 415,
  REQUEST_TYPE: 415,
  LOG_TOO_LARGE: 413,
  LOG_TOO_MANY_ROWS: 413,
  ENQUIRY_TOO_LARGE: 413,
  REQUEST_VERSION_MISSING: 428,
  REQUEST_TOO_MANY: 429,
  ACCOUNT_WAIT: 429,
  ACCOUNT_PIN_SPENT: 429,
  SERVER_FAILED: 500,
  RECORDS_AWAY: 503,
  RECORDS_BUSY: 503,
  RECORDS_FULL: 507,
  PLAN_BUSY: 503,
  PROOF_BUSY: 503,
  PROOF_STOPPED: 409,
  WORK_STOPPED: 409,
};

export function statusOf(faults: readonly Fault[]): number {
  return statusByCode[faults[0]?.code ?? ''] ?? 422;
}

export async function sendFaults(reply: FastifyReply, faults: readonly Fault[]): Promise<FastifyReply> {
  return reply.code(statusOf(faults)).type('application/json').send(JSON.stringify({ faults }));
}

export function handleErrors(app: FastifyInstance): void {
  app.setErrorHandler(async (error: FastifyError, request, reply) => {
    const faults = knownFaults(error, request.routeOptions.bodyLimit ?? 0);
    if (faults !== null) return await sendFaults(reply, faults);
    const reference = randomUUID().slice(0, 8);
    request.log.error({ err: error, reference, method: request.method, path: request.routeOptions.url }, 'failed');
    return await sendFaults(reply, [requestFaults.ours(reference)]);
  });
}

function knownFaults(error: FastifyError, bodyLimitBytes: number): Fault[] | null {
  if (error instanceof TooMany) return [requestFaults.tooMany(error.perMinute)];
  if (error.validation !== undefined) return schemaFaults(error.validation, error.validationContext ?? 'body');
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE') return [requestFaults.tooLarge(bodyLimitBytes)];
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE') return [requestFaults.notThisType];
  const unreadable = ['FST_ERR_CTP_EMPTY_JSON_BODY', 'FST_ERR_CTP_INVALID_JSON_BODY'];
  if (unreadable.includes(error.code) || error instanceof SyntaxError) return [requestFaults.notJson(error.message)];
  const records = recordsFaults(error);
  if (records !== null) return records;
  if (error.statusCode === 400) return [requestFaults.notJson(error.message)];
  return null;
}
