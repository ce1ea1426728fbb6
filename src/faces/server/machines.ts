import type { FastifyPluginAsync, FastifyReply } from 'fastify';
import { axisInput } from '../../contract/axis.ts';
import { gibInput } from '../../contract/gib.ts';
import { machineInput } from '../../contract/machine.ts';
import { orderFile } from '../../contract/order.ts';
import { newBench, newRebuild, sentenceUnits } from '../../contract/rebuild.ts';
import type { HeightsRecord } from '../../core/ledger/rebuild-record.ts';
import { machineOf, stepRecords } from '../../core/ledger/rebuild-record.ts';
import type { Template } from '../../core/ledger/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import { orderedSteps } from '../../core/order/needs.ts';
import type { Compute } from '../../shop/compute.ts';
import { gib } from '../../shop/gib.ts';
import { openJob } from '../../shop/keep-job.ts';
import { axis } from '../../shop/order/axis.ts';
import { heights } from '../../shop/order/heights.ts';
import { heightsAsk } from '../../shop/order/machine-chain.ts';
import { order } from '../../shop/order/order.ts';
import { jobHeights, makeRebuild, openBench } from '../../shop/order/rebuild.ts';
import type { Store } from '../../shop/store.ts';
import { noSuchJob, sendKept } from './jobs.ts';
import { refusalBody, sendNoAnswer } from './refusals.ts';

interface JobParams {
  Params: { id: string };
}
interface StepParams {
  Params: { id: string; step: string };
}

const noMachine = (reply: FastifyReply): FastifyReply =>
  reply.status(404).send(refusalBody('no machine', 'this job is about one slide, not about a whole machine'));

const noAnswer = (reply: FastifyReply, text: string): FastifyReply =>
  reply.status(422).send(refusalBody('no answer', text));

/** Whole machines: what there are, jobs about one, the order of work, heights and axes. */
export const machineRoutes =
  (
    store: Store,
    templates: readonly Template[],
    machines: readonly Machine[],
    compute: Compute,
  ): FastifyPluginAsync =>
  async (app) => {
    const axisAnswer = async (
      reply: FastifyReply,
      body: unknown,
      known: readonly Machine[],
      query: unknown,
    ) => {
      const answer = axis(axisInput(body), known, templates, sentenceUnits(query));
      if (!answer.steer_input) return answer;
      const steered = await compute('steer', answer.steer_input);
      return steered.ok ? { ...answer, steer: steered } : sendNoAnswer(reply, steered);
    };

    const gibAnswer = async (
      reply: FastifyReply,
      body: unknown,
      known: readonly Machine[],
      query: unknown,
    ) => {
      const answer = gib(gibInput(body), known, templates, sentenceUnits(query));
      if (!answer.steer_input) return answer;
      const steered = await compute('steer', answer.steer_input);
      return steered.ok ? { ...answer, steer: steered } : sendNoAnswer(reply, steered);
    };

    app.get('/api/machines', async () => ({ machines }));
    app.post('/api/machines/check', async ({ body }) => {
      const machine = machineInput(body, templates);
      const ordered = orderedSteps(machine);
      return { ok: true, title: machine.title, order: ordered.ok ? ordered.order : [] };
    });
    app.post('/api/order', async ({ body }) => {
      const { machine, deeds } = orderFile(body, machines, (value) => machineInput(value, templates));
      return order(machine, deeds);
    });
    app.post('/api/heights', async ({ body, query }, reply) => {
      const answer = heights(heightsAsk(body, machines, templates), sentenceUnits(query));
      return answer.ok ? answer : noAnswer(reply, answer.text);
    });
    app.post('/api/axis', async ({ body, query }, reply) => axisAnswer(reply, body, machines, query));

    app.post('/api/gib', async ({ body, query }, reply) => gibAnswer(reply, body, machines, query));

    app.post('/api/rebuilds', async ({ body }, reply) => {
      const asked = newRebuild(body, machines, templates);
      return sendKept(reply, asked.id, await makeRebuild(store, templates, asked), { id: asked.id });
    });
    app.get<JobParams>('/api/jobs/:id/order', async ({ params: { id } }, reply) => {
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      const machine = machineOf(job.live);
      return machine ? order(machine, stepRecords(job.live)) : noMachine(reply);
    });
    app.post<StepParams>('/api/jobs/:id/steps/:step/bench', async ({ params, body }, reply) => {
      const { id, step } = params;
      const asked = newBench(body);
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      const opened = await openBench(store, job, id, step, templates, asked);
      switch (opened.kind) {
        case 'open':
          return reply.status(opened.again ? 200 : 201).send({ job: opened.job });
        case 'no such step':
          return machineOf(job.live)
            ? reply
                .status(404)
                .send(
                  refusalBody('no such step', `the machine has no step ${JSON.stringify(step.slice(0, 80))}`),
                )
            : noMachine(reply);
        case 'no bench':
          return reply
            .status(404)
            .send(refusalBody('no bench', 'this step is not scraped on a bench; its page says where to go'));
        case 'conflict':
          return sendKept(reply, asked.id, { kind: 'conflict' });
      }
    });
    app.post<JobParams>('/api/jobs/:id/heights', async ({ params: { id }, body, query }, reply) => {
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      const typed = body !== null && typeof body === 'object' && Object.keys(body).length > 0;
      const answer = jobHeights(
        job,
        templates,
        typed ? (body as HeightsRecord) : undefined,
        sentenceUnits(query),
      );
      if (!answer) return noMachine(reply);
      return answer.ok ? answer : noAnswer(reply, answer.text);
    });
    app.post<JobParams>('/api/jobs/:id/gib', async ({ params: { id }, body, query }, reply) => {
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      const machine = machineOf(job.live);
      return gibAnswer(reply, body, machine ? [machine] : machines, query);
    });
    app.post<JobParams>('/api/jobs/:id/axis', async ({ params: { id }, body, query }, reply) => {
      const job = await openJob(store, id);
      if (!job) return noSuchJob(reply, id);
      const machine = machineOf(job.live);
      return axisAnswer(reply, body, machine ? [machine] : machines, query);
    });
  };
