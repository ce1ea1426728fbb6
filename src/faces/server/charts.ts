import type { FastifyPluginAsync } from 'fastify';
import { chartAsked } from '../../contract/chart-asked.ts';
import type { TestList } from '../../core/chart/acceptance-test.ts';
import { chartFileOf } from '../../core/ledger/rebuild-record.ts';
import { chartFrom } from '../../shop/chart/bench-jobs.ts';
import { type ChartAnswer, chartAnswer, listOffered } from '../../shop/chart/chart-answer.ts';
import { type ChartReport, chartReport } from '../../shop/chart/chart-report.ts';
import type { PaperName } from '../../shop/chart/paper.ts';
import { openJob } from '../../shop/keep-job.ts';
import type { Store } from '../../shop/store.ts';
import { whenGone } from './gone.ts';
import { noSuchJob } from './jobs.ts';
import type { AnswerOf } from './kept-answers.ts';
import { refusalBody } from './refusals.ts';

/** A chart for paper, as data, so that it can be asked of another thread. */
export interface PaperAsk {
  readonly report: ChartReport;
  readonly made: string;
  readonly paper: PaperName;
}

/** No paper was made: too many wait, or it took too long. Nothing is wrong with the chart. */
export class Unpressed extends Error {}

export interface ChartParts {
  readonly lists: readonly TestList[];
  /** @throws Unpressed; what `stop` says when it is stopped */
  readonly press: (ask: PaperAsk, stop?: AbortSignal) => Promise<Uint8Array>;
}

interface Charted {
  readonly answer: ChartAnswer;
  readonly paper: PaperName;
}

interface JobParams {
  Params: { id: string };
}

/** Acceptance charts: the lists of tests, a job's chart, and its paper. */
export const chartRoutes =
  (store: Store, answerOf: AnswerOf, { lists, press }: ChartParts): FastifyPluginAsync =>
  async (app) => {
    /** What the ledger holds of the chart, and in its place what is being typed. */
    async function charted(id: string, body: unknown): Promise<Charted | undefined> {
      const job = await openJob(store, id);
      if (!job) return undefined;
      const asked = chartAsked(body, lists, chartFileOf(job.live));
      const from = await chartFrom(id, job, { open: (other) => openJob(store, other), answer: answerOf });
      return from && { answer: chartAnswer(asked.file, from, asked.units), paper: asked.paper };
    }

    app.get('/api/charts', async () => ({ lists: lists.map(listOffered) }));
    app.post('/api/chart', async ({ body }) => {
      const { file, units } = chartAsked(body, lists);
      return chartReport(file, undefined, units);
    });
    app.post<JobParams>('/api/jobs/:id/chart', async ({ params: { id }, body }, reply) => {
      return (await charted(id, body))?.answer ?? noSuchJob(reply, id);
    });
    app.post<JobParams>('/api/jobs/:id/chart.pdf', async ({ params: { id }, body }, reply) => {
      const chart = await charted(id, body);
      if (!chart) return noSuchJob(reply, id);
      try {
        const made = new Date().toISOString();
        const pdf = await press({ report: chart.answer.report, made, paper: chart.paper }, whenGone(reply));
        return reply
          .header('content-disposition', `attachment; filename="${id}.chart.pdf"`)
          .type('application/pdf')
          .send(Buffer.from(pdf));
      } catch (failure) {
        if (!(failure instanceof Unpressed)) throw failure;
        return reply.status(503).header('retry-after', '5').send(refusalBody('no paper', failure.message));
      }
    });
  };
