import type { FastifyPluginAsync, FastifyReply } from 'fastify';
import { newPractice, practiceTurn } from '../../contract/practice.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Job } from '../../core/ledger/job.ts';
import type { Compute } from '../../shop/compute.ts';
import { makePractice, openJob } from '../../shop/keep-job.ts';
import { truthAsked } from '../../shop/practise/practice-of.ts';
import type { Store } from '../../shop/store.ts';
import { noSuchJob, sendKept } from './jobs.ts';
import { refusalBody } from './refusals.ts';

interface JobParams {
  Params: { id: string };
}

const sendReal = (reply: FastifyReply, id: string): FastifyReply =>
  reply
    .status(409)
    .send(refusalBody('not practice', `the job ${JSON.stringify(id)} is of a real part; measure that`));

/** A round that has not begun has no readings: what closed the one before may still be on its way. @throws BadInput */
function roundBegun(job: Job, round: number): void {
  if (round > job.round)
    throw new BadInput([
      {
        path: 'round',
        found: String(round),
        expected: `at most ${job.round}, the round that is being worked`,
      },
    ]);
}

/** Practice machines: made, measured, blued, and their truth once it is asked for. Each answer is worked out from the ledger anew. */
export const practiceRoutes =
  (store: Store, compute: Compute): FastifyPluginAsync =>
  async (app) => {
    app.post('/api/practice', async (request, reply) => {
      const asked = newPractice(request.body);
      return sendKept(reply, asked.id, await makePractice(store, asked), { id: asked.id });
    });
    app.post<JobParams>('/api/jobs/:id/practice/measure', async ({ params: { id }, body }, reply) => {
      const { round, repeat = 0 } = practiceTurn(body);
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      roundBegun(job, round);
      const { entries } = job;
      return (await compute('practice measure', { entries, round, repeat })) ?? sendReal(reply, id);
    });
    app.post<JobParams>('/api/jobs/:id/practice/print', async ({ params: { id }, body }, reply) => {
      const { round } = practiceTurn(body);
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      roundBegun(job, round);
      return (await compute('practice print', { entries: job.entries, round })) ?? sendReal(reply, id);
    });
    app.post<JobParams>('/api/jobs/:id/practice/truth', async ({ params: { id } }, reply) => {
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      const truth = await compute('practice truth', job.entries);
      if (!truth) return sendReal(reply, id);
      if (!truthAsked(job))
        return reply
          .status(409)
          .send(refusalBody('not asked', 'the truth is hidden until an entry "truth shown" asks for it'));
      return truth;
    });
  };
