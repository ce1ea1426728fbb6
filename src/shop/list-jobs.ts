import type { Job } from '../core/ledger/job.ts';
import { benchOf, machineOf, stepRecords } from '../core/ledger/rebuild-record.ts';
import { progress } from '../core/order/progress.ts';
import { folded } from './folded.ts';
import { practiceOf } from './practise/practice-of.ts';
import type { JobLine, Store } from './store.ts';

/** A job as a list shows it. */
export interface JobListed {
  readonly id: string;
  readonly title: string;
  readonly template: string;
  readonly demo?: string;
  /** It is a practice machine. */
  readonly practice?: true;
  /** It is about a whole machine: steps that stand, of all. */
  readonly machine?: { readonly title: string; readonly done: number; readonly steps: number };
  /** It is the bench of a step of that job's machine. */
  readonly bench_of?: string;
  readonly rounds: number;
  readonly entries: number;
  readonly changed: string;
}

/** What was said of a job, and of which state of its ledger. */
interface Said {
  readonly last: string;
  readonly listed: JobListed;
}

const known = new WeakMap<Store, Map<string, Said>>();

/**
 * Every job of the workshop, in the order they were made. What was said of a job is said again as long as its ledger ends where it
 * did: entries are only ever added, by whatever server, so only ledgers that went on are read.
 */
export async function listJobs(store: Store): Promise<JobListed[]> {
  const said = known.get(store) ?? new Map<string, Said>();
  known.set(store, said);
  const lines = await store.jobs();
  const listed = await Promise.all(lines.map((line) => sayOf(store, said, line)));
  if (said.size > lines.length) {
    const there = new Set(lines.map(({ id }) => id));
    for (const id of said.keys()) if (!there.has(id)) said.delete(id);
  }
  return listed;
}

async function sayOf(store: Store, said: Map<string, Said>, line: JobLine): Promise<JobListed> {
  const before = said.get(line.id);
  if (before && before.last === line.last && before.listed.entries === line.entries) return before.listed;
  // The ledger may have gone on since the line was read: what is said is of the entries that were read.
  const job = folded(store, line.id, (await store.entries(line.id)) ?? []);
  const listed = listedOf(line.id, job);
  said.set(line.id, { last: job.entries.at(-1)!.id, listed });
  return listed;
}

function listedOf(id: string, job: Job): JobListed {
  const { plan, round, entries } = job;
  return {
    id,
    title: plan.title,
    template: plan.template,
    ...(plan.demo === undefined ? {} : { demo: plan.demo }),
    ...(practiceOf(job) ? { practice: true as const } : {}),
    ...wholeOf(job),
    rounds: round,
    entries: entries.length,
    changed: entries.at(-1)!.at,
  };
}

/** What a list says of a job about a whole machine, or of the bench of one. */
function wholeOf({ live }: Job): Pick<JobListed, 'machine' | 'bench_of'> {
  const link = benchOf(live);
  const machine = machineOf(live);
  if (!machine) return link ? { bench_of: link.job } : {};
  const states = progress(machine, stepRecords(live));
  const done = states.filter((one) => one.status === 'done').length;
  return {
    machine: { title: machine.title, done, steps: states.length },
    ...(link ? { bench_of: link.job } : {}),
  };
}
