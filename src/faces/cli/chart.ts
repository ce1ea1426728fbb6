import type { Command } from 'commander';
import type { ChartFile } from '../../contract/chart.ts';
import { chartOver } from '../../contract/chart-asked.ts';
import { jobFile } from '../../contract/job-file.ts';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import type { TestList } from '../../core/chart/acceptance-test.ts';
import { foldJob, type Job } from '../../core/ledger/job.ts';
import { chartFileOf } from '../../core/ledger/rebuild-record.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { chartPaper } from '../../draw/chart-paper.ts';
import { chartSheet } from '../../draw/chart-sheet.ts';
import { svgFile } from '../../draw/shape.ts';
import { answerJob } from '../../shop/answer-job.ts';
import { type ChartFrom, chartFrom, type JobDoor } from '../../shop/chart/bench-jobs.ts';
import { chartReport } from '../../shop/chart/chart-report.ts';
import { chartWorking } from '../../shop/chart/chart-working.ts';
import { dayText } from '../../shop/chart/job-account.ts';
import { type PaperName, type Piece, type Press, papers } from '../../shop/chart/paper.ts';
import { openJob } from '../../shop/keep-job.ts';
import { about } from './about.ts';
import { chartCsv } from './chart-csv.ts';
import { chartText } from './chart-text.ts';
import { type Doors, refuse, refused } from './doors.ts';
import type { Register } from './run.ts';
import { workingText } from './working-text.ts';

const example = `
Examples:
  waywright chart demo-saddle                                      a job's own lines
  waywright chart demo-saddle --list engine-lathe --pdf chart.pdf  beside the lathe's tests
  waywright chart saddle.job.json --results lathe.chart.json --paper letter --units inch --pdf chart.pdf
  waywright chart lathe.chart.json --csv chart.csv                 results by hand, without a job
The file of results is in docs/contract.md, \`chart\`.`;

/** What a chart needs of the world beside the usual doors. */
export interface ChartDoors {
  readonly testLists: () => readonly TestList[];
  readonly press: Press;
  /** A style rule that brings the drawings' face along. */
  readonly faceRule: () => Promise<string>;
  readonly writeBytes: (file: string, bytes: Uint8Array) => Promise<void>;
  /** A print's photo made small enough for paper; undefined when it is not kept here. */
  readonly paperPhoto: (
    hash: string,
  ) => Promise<
    { readonly jpeg: Uint8Array; readonly width_px: number; readonly height_px: number } | undefined
  >;
}

interface Options {
  readonly list?: string;
  readonly class?: string;
  readonly results?: string;
  readonly pdf?: string;
  readonly svg?: string;
  readonly csv?: string;
  readonly json?: boolean;
  readonly working?: boolean;
  readonly paper: string;
  readonly units: string;
}

/** A job of the workshop is called by its id; anything with a dot, a slash or a dash alone is a file. */
const isJobId = (given: string): boolean => /^[A-Za-z0-9_-]+$/.test(given) && given !== '-';

/** A file's JSON, refused under the file's own name. */
async function read<T>(doors: Doors, file: string, take: (value: unknown) => T): Promise<T> {
  const text = await doors.readText(file);
  try {
    return take(parsedJson(text));
  } catch (failure) {
    if (failure instanceof BadInput) refuse(doors, file, failure);
    throw failure;
  }
}

interface Given {
  readonly job?: Job;
  readonly from?: ChartFrom;
  readonly results?: unknown;
}

/** What was given: a job of the workshop with its benches, a job's file, or a file of results. */
async function given(doors: Doors, what: string): Promise<Given> {
  const answer = (_id: string, job: Job) => answerJob(job, doors.solve);
  const told = async (id: string, job: Job, open: JobDoor['open']): Promise<Given> => {
    const from = await chartFrom(id, job, { open, answer });
    return { job, ...(from ? { from } : {}) };
  };
  if (isJobId(what)) {
    const found = await doors.withStore(async (store) => {
      const job = await openJob(store, what);
      return job && told(what, job, (id) => openJob(store, id));
    });
    return found
      ? found
      : refused(
          doors,
          `job: ${JSON.stringify(what)}; expected a job of this workshop, or a file as chart.json`,
        );
  }
  const file = await read(doors, what, (value) =>
    typeof value === 'object' && value !== null && 'format' in value ? jobFile(value) : { results: value },
  );
  // A file holds one job: benches that are jobs of their own are not in it, and the chart says so.
  return 'results' in file ? file : told(file.id, foldJob(file.entries), async () => undefined);
}

async function photosOf(chart: ChartDoors, report: ReturnType<typeof chartReport>) {
  const photos: Extract<Piece, { kind: 'photos' }>['photos'][number][] = [];
  for (const one of [report.job, ...report.benches.map((bench) => bench.account)].flatMap(
    (account) => account?.photos ?? [],
  )) {
    const photo = await chart.paperPhoto(one.hash);
    if (photo) photos.push({ ...photo, words: `${one.pad}, round ${one.round}` });
  }
  return photos;
}

/** `waywright chart JOB|FILE [--results FILE] [--list ID] [--pdf FILE] [--svg FILE] [--csv FILE] [--json] [--paper] [--units]`. */
export const registerChart =
  (chart: ChartDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('chart')
      .description(about.chart)
      .argument(
        '<job|file>',
        'a job of the workshop, a job’s file, or a file of results (JSON; - reads standard input)',
      )
      .option('--list <id>', 'the machine’s acceptance tests, as engine-lathe')
      .option('--class <id>', 'the class of its limits, as toolroom')
      .option('--results <file>', 'results entered by hand beside the job’s, own tests and limits')
      .option('--pdf <file>', 'the report that a customer keeps')
      .option('--svg <file>', 'the chart as one drawing')
      .option('--csv <file>', 'the chart for a spreadsheet')
      .option('--working', 'how each verdict comes about')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .option('--paper <paper>', 'a4 or letter', 'a4')
      .option('--units <units>', 'metric or inch', 'metric')
      .addHelpText('after', example)
      .action(async (what: string, options: Options) => {
        const { paper, units } = options;
        if (!Object.hasOwn(papers, paper))
          return refused(doors, `--paper: ${JSON.stringify(paper)}; expected a4 or letter`);
        if (units !== 'metric' && units !== 'inch')
          return refused(doors, `--units: ${JSON.stringify(units)}; expected metric or inch`);
        const { job, from, results } = await given(doors, what);
        if (results !== undefined && options.results !== undefined)
          return refused(doors, `--results: ${what} is a file of results already; expected a job before it`);
        const lists = chart.testLists();
        const asked = {
          ...(options.list === undefined ? {} : { list: options.list }),
          ...(options.class === undefined ? {} : { class: options.class }),
        };
        const kept = job && chartFileOf(job.live);
        const take = (value: unknown): ChartFile => chartOver(kept, value, lists, asked);
        let file: ChartFile;
        try {
          file =
            options.results === undefined ? take(results ?? {}) : await read(doors, options.results, take);
        } catch (failure) {
          if (failure instanceof BadInput) refuse(doors, what, failure);
          throw failure;
        }
        const report = chartReport(file, from, units satisfies UnitSystem);
        const made = doors.now();
        if (options.pdf !== undefined) {
          const photos = await photosOf(chart, report);
          await chart.writeBytes(
            options.pdf,
            await chart.press(
              chartPaper(report, { at: made, day: dayText(made) }, photos),
              paper as PaperName,
            ),
          );
        }
        if (options.svg !== undefined)
          await doors.writeText(options.svg, svgFile(chartSheet(report), await chart.faceRule()));
        if (options.csv !== undefined) await doors.writeText(options.csv, chartCsv(report));
        const working = options.working ? chartWorking(report) : undefined;
        if (options.json)
          return doors.say(JSON.stringify(working ? { ...report, working } : report, null, 1));
        doors.say(chartText(report));
        if (working) doors.say(`\n${workingText(working)}`);
        for (const one of [options.pdf, options.svg, options.csv])
          if (one !== undefined) doors.say(`Written to ${one}.`);
      });
  };
