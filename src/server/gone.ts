// Has whoever asked hung up before there was an answer? Then long work for them may end. Leaves out who does that work.
import type { FastifyReply } from 'fastify';

/** Aborts when the connection closes under an unanswered request. */
export function gone(reply: FastifyReply): AbortSignal {
  const controller = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  return controller.signal;
}
