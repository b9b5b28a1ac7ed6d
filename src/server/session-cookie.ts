// The cookie that holds a session's token: only for this program's own pages and never readable by a script.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { absoluteMs } from '../desk/accounts/sessions.ts';

/** "__Host-" is refused by browsers without https, so plain http on this machine has a name of its own. */
const nameFor = (https: boolean): string => (https ? '__Host-warmstead' : 'warmstead-session');

const isHttps = (request: FastifyRequest): boolean => request.protocol === 'https';

export const sessionToken = (request: FastifyRequest): string | undefined => request.cookies[nameFor(isHttps(request))];

export function putSessionCookie(request: FastifyRequest, reply: FastifyReply, token: string): void {
  const secure = isHttps(request);
  const maxAge = absoluteMs / 1000;
  void reply.setCookie(nameFor(secure), token, { path: '/', httpOnly: true, sameSite: 'strict', secure, maxAge });
}

export function dropSessionCookie(request: FastifyRequest, reply: FastifyReply): void {
  const secure = isHttps(request);
  void reply.clearCookie(nameFor(secure), { path: '/', httpOnly: true, sameSite: 'strict', secure });
}

/** What kind of device asks, without saying which make: for the list of a person's own sessions. */
export function deviceKind(agent: string | undefined): 'phone' | 'tablet' | 'computer' | 'program' {
  const text = agent ?? '';
  if (!text.startsWith('Mozilla/')) return 'program';
  if (/\bTablet\b|Pad\b/.test(text)) return 'tablet';
  return /Mobi/.test(text) ? 'phone' : 'computer';
}
