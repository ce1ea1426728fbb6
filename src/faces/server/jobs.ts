import type { FastifyPluginAsync, FastifyReply } from 'fastify';
import { sentEntry } from '../../contract/entry.ts';
import { importQuery, jobFile, jobFileText } from '../../contract/job-file.ts';
import type { Known } from '../../contract/known-fits.ts';
import { newJob } from '../../contract/new-job.ts';
import type { Template } from '../../contract/template.ts';
import { writtenSteerInput } from '../../contract/written-steer.ts';
import type { TestList } from '../../core/chart/acceptance-test.ts';
import type { HeightsRecord } from '../../core/ledger/rebuild-record.ts';
import { steerInput } from '../../core/ledger/steer-input.ts';
import { exportJob, importJob, makeJob, openJob, writeEntry } from '../../shop/keep-job.ts';
import { listJobs } from '../../shop/list-jobs.ts';
import { heightsAskOf } from '../../shop/order/rebuild.ts';
import type { Kept, Store } from '../../shop/store.ts';
import type { AnswerOf } from './kept-answers.ts';
import { refusalBody } from './refusals.ts';

export interface JobParams {
  Params: { id: string };
}

export const noSuchJob = (reply: FastifyReply, id: string): FastifyReply =>
  reply.status(404).send(refusalBody('no such job', `there is no job ${JSON.stringify(id.slice(0, 80))}`));

/** 201 for what is new, 200 for what was there already, 409 for another thing under the same id. */
export function sendKept(
  reply: FastifyReply,
  id: string,
  kept: Kept,
  body: Record<string, unknown> = {},
): FastifyReply {
  if (kept.kind === 'no such job') return noSuchJob(reply, id);
  if (kept.kind === 'conflict')
    return reply
      .status(409)
      .send(refusalBody('conflict', 'something else was written under this id before; nothing was changed'));
  return reply.status(kept.again ? 200 : 201).send({ seq: kept.seq, ...body });
}

/** Jobs and their ledgers. */
export const jobRoutes =
  (
    store: Store,
    templates: readonly Template[],
    answerOf: AnswerOf,
    lists: readonly TestList[],
  ): FastifyPluginAsync =>
  async (app) => {
    const known: Known = {
      templates,
      lists,
      heightsFit: (record, machine) => void heightsAskOf(machine, record as HeightsRecord, templates),
    };
    app.get('/api/templates', async () => templates);
    app.get('/api/jobs', async () => ({ jobs: await listJobs(store) }));
    app.post('/api/jobs', async (request, reply) => {
      const asked = newJob(request.body);
      return sendKept(reply, asked.id, await makeJob(store, templates, asked), { id: asked.id });
    });
    app.get<JobParams>('/api/jobs/:id', async ({ params: { id } }, reply) => {
      const job = await openJob(store, id);
      return job ? { id, seq: job.seq, entries: job.entries } : noSuchJob(reply, id);
    });
    app.post<JobParams>('/api/jobs/:id/entries', async ({ params: { id }, body }, reply) =>
      sendKept(reply, id, await writeEntry(store, id, sentEntry(body), known)),
    );
    app.get<JobParams>(
      '/api/jobs/:id/answer',
      async ({ params: { id } }, reply) => (await answerOf(id)) ?? noSuchJob(reply, id),
    );
    app.get<JobParams>('/api/jobs/:id/steer-input', async ({ params: { id } }, reply) => {
      const job = await openJob(store, id);
      return job ? writtenSteerInput(steerInput(job)) : noSuchJob(reply, id);
    });
    app.get<JobParams>('/api/jobs/:id/export', async ({ params: { id } }, reply) => {
      const file = await exportJob(store, id);
      if (!file) return noSuchJob(reply, id);
      return reply
        .header('content-disposition', `attachment; filename="${id}.waywright.json"`)
        .type('application/json')
        .send(jobFileText(file));
    });
    app.post('/api/import', async (request, reply) => {
      const file = jobFile(request.body);
      const { as: id = file.id } = importQuery(request.query);
      return sendKept(reply, id, await importJob(store, { ...file, id }), { id });
    });
  };
