import type { FastifyReply } from 'fastify';

/** Whoever asked went away before the answer: stopped, closed the page, or lost the network. */
export class Gone extends Error {
  constructor() {
    super('whoever asked has gone');
    this.name = 'Gone';
  }
}

/** Tells when whoever asked has gone, so that nobody works on for nobody. Only for questions that change nothing. */
export function whenGone(reply: FastifyReply): AbortSignal {
  const gone = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) gone.abort(new Gone());
  });
  return gone.signal;
}
