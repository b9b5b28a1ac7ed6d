// What does the log hold? What failed, where in the program, under which reference. No names, no addresses of people, no
// tokens: neither headers nor bodies nor the address as it was asked for, only the door's own pattern.
import type { FastifyServerOptions } from 'fastify';

interface ErrorLike {
  readonly message?: unknown;
  readonly stack?: unknown;
  readonly code?: unknown;
}

/** Texts in quotation marks are what a database or a library was handed: they may be a person's. */
const withoutValues = (text: string): string =>
  text
    .replace(/"[^"\n]*"|'[^'\n]*'|`[^`\n]*`/g, '"…"')
    .replace(/=\([^)]*\)/g, '=(…)')
    .replace(/[A-Za-z0-9_-]{20,}/g, '…');

export function logChoice(stream: { write: (line: string) => unknown }): NonNullable<FastifyServerOptions['logger']> {
  return {
    level: 'error',
    stream: { write: (line) => void stream.write(line) },
    redact: [
      'req.headers',
      'req.remoteAddress',
      'req.url',
      'password',
      'pin',
      'code',
      'token',
      '*.password',
      '*.token',
    ],
    serializers: {
      req: (request: { method: string; routeOptions?: { url?: string | undefined } }) => ({
        method: request.method,
        path: request.routeOptions?.url ?? 'unknown',
      }),
      err: (error: ErrorLike) => ({
        type: error.constructor.name,
        code: typeof error.code === 'string' ? error.code : '',
        message: '',
        stack: placesOf(error.stack),
        said: withoutValues(String(error.message ?? '')).slice(0, 300),
      }),
    },
  };
}

/** Where it happened, without the message that heads a stack. */
const placesOf = (stack: unknown): string =>
  String(stack ?? '')
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .join('\n');
