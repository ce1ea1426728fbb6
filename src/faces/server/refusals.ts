import type { FastifyError, FastifyInstance, FastifyReply } from 'fastify';
import { BadInput, type Issue } from '../../contract/refusal.ts';
import type { NoAnswer } from '../../core/plan/problem.ts';
import { Fault } from '../../shop/store.ts';
import { Gone } from './gone.ts';

/** What every refusal looks like on the wire. */
export interface RefusalBody {
  readonly code: string;
  readonly message: string;
  readonly issues: readonly Issue[];
}

/** Larger than any entry; a whole job with years of entries fits too. */
export const bodyLimit_bytes = 4 * 1024 * 1024;

export const refusalBody = (code: string, message: string, issues: readonly Issue[] = []): RefusalBody => ({
  code,
  message,
  issues,
});

/** 422: well-formed, but no answer exists. */
export const sendNoAnswer = (reply: FastifyReply, answer: NoAnswer): FastifyReply =>
  reply
    .status(422)
    .send({ ...refusalBody('no answer', answer.text), limits: answer.limits, why: answer.why });

/** What the disk or the file did, with its status; docs/http.md says what to do. */
export const faultStatus: Record<Fault['code'], number> = {
  'disk full': 507,
  'read only': 507,
  busy: 503,
  'not a workshop': 503,
  'newer workshop': 503,
  damaged: 503,
  unreachable: 503,
};

/** Turns every failure into a refusal in words: bad input names its fields, a fault says what to do. */
export function answerFailures(app: FastifyInstance): void {
  app.setErrorHandler((failure: FastifyError | BadInput | Fault, request, reply) => {
    if (failure instanceof BadInput)
      return reply.status(400).send(refusalBody('bad input', failure.message, failure.issues));
    if (failure instanceof Fault)
      return reply.status(faultStatus[failure.code]).send(refusalBody(failure.code, failure.message));
    // Nobody hears it; 499 is what logs of servers commonly call a request that was given up.
    if (failure instanceof Gone) return reply.status(499).send(refusalBody('gone', failure.message));
    const status = failure.statusCode ?? 500;
    if (status === 413)
      return reply
        .status(413)
        .send(refusalBody('too large', `the body is larger than ${bodyLimit_bytes} bytes; nothing was kept`));
    if (status === 415)
      return reply
        .status(415)
        .send(refusalBody('not JSON', 'a body is sent as application/json; nothing was kept'));
    if (status < 500)
      return reply.status(status).send(refusalBody(failure.code ?? 'refused', failure.message));
    request.log.error(failure);
    return reply
      .status(500)
      .send(refusalBody('our mistake', 'something broke on our side; nothing was written'));
  });
  app.setNotFoundHandler((request, reply) =>
    reply
      .status(404)
      .send(refusalBody('not found', `there is nothing at ${request.method} ${request.url.slice(0, 200)}`)),
  );
}
