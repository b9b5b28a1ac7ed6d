// What a database says when it is not there, full, or in somebody's way: as a fault that says what to do, without the
// database's own words.
import type { Fault } from '../shared/fault.ts';

const away = new Set(['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ETIMEDOUT', '57P01', '57P02', '57P03', '53300']);
const inTheWay = new Set(['40001', '40P01', '55P03']);
const full = new Set(['53100', '53000', '53200', 'ENOSPC']);
/** Texts that PostgreSQL cannot hold: a zero byte, half of a pair of surrogates. */
const notText = new Set(['22021', '22P05', '22P02']);

export function recordsFaults(error: unknown): Fault[] | null {
  const { code = '', message = '', syscall } = error as { code?: string; message?: string; syscall?: string };
  if (full.has(code)) return [recordsFull];
  if (inTheWay.has(code)) return [recordsBusy];
  if (notText.has(code)) return [requestText];
  const noSocket = code === 'ENOENT' && syscall === 'connect';
  const broken = /^(Connection terminated|timeout exceeded when trying to connect|Client has encountered)/.test(
    message,
  );
  return away.has(code) || code.startsWith('08') || noSocket || broken ? [recordsAway] : null;
}

const recordsAway: Fault = {
  code: 'RECORDS_AWAY',
  field: '',
  got: 'no answer from the database',
  allowed: '',
  say: 'The records cannot be reached at this moment. What you sent was not kept.',
  fix: 'Keep this page open and send it again in a few seconds.',
};

const recordsFull: Fault = {
  code: 'RECORDS_FULL',
  field: '',
  got: 'no room left for the records',
  allowed: '',
  say: 'The disk of the records is full. What you sent was not kept; what was kept before is safe.',
  fix: 'Keep this page open, make room on that disk, and send it again.',
};

const recordsBusy: Fault = {
  code: 'RECORDS_BUSY',
  field: '',
  got: 'a change by somebody else at the same moment',
  allowed: '',
  say: 'Somebody else changed the same thing at this moment. What you sent was not kept.',
  fix: 'Send it again.',
};

const requestText: Fault = {
  code: 'REQUEST_TEXT',
  field: '',
  got: 'a text with characters that cannot be kept',
  allowed: 'text without zero characters and broken pairs',
  say: 'A text holds characters that cannot be kept.',
  fix: 'Type it anew instead of pasting it.',
};
