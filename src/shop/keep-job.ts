import type { SentEntry } from '../contract/entry.ts';
import { entryFits } from '../contract/entry-fits.ts';
import type { JobFile } from '../contract/job-file.ts';
import { type Known, knownFits } from '../contract/known-fits.ts';
import type { NewJob } from '../contract/new-job.ts';
import type { NewPractice } from '../contract/practice.ts';
import { BadInput } from '../contract/refusal.ts';
import { plannedJob, type Template } from '../contract/template.ts';
import type { Entry } from '../core/ledger/entry.ts';
import type { Job } from '../core/ledger/job.ts';
import { folded } from './folded.ts';
import { practicePlan } from './practise/practice-plan.ts';
import type { Kept, Store } from './store.ts';

/** A job as it stands, or undefined when there is none of this id. */
export async function openJob(store: Store, id: string): Promise<Job | undefined> {
  const entries = await store.entries(id);
  return entries && folded(store, id, entries);
}

/**
 * Makes a job from a template and the user's dimensions. The same request sent twice makes one job.
 * @throws BadInput  a template that is not there, a dimension that cannot be
 */
export async function makeJob(store: Store, templates: readonly Template[], asked: NewJob): Promise<Kept> {
  const template = templates.find((one) => one.id === asked.template);
  if (!template)
    throw new BadInput([
      {
        path: 'template',
        found: JSON.stringify(asked.template),
        expected: `one of ${templates.map((one) => JSON.stringify(one.id)).join(', ')}`,
      },
    ]);
  const plan = plannedJob(template, asked.dimensions, asked.title);
  const made: Entry = { kind: 'job made', plan, id: `${asked.id.slice(0, 59)}-made`, at: asked.at, seq: 1 };
  return store.make(asked.id, [made]);
}

/** Makes a practice machine: an ordinary job, and a second entry that says what the machine is made from. */
export function makePractice(store: Store, asked: NewPractice): Promise<Kept> {
  const { id, at, title, ...record } = asked;
  const short = id.slice(0, 57);
  return store.make(id, [
    { kind: 'job made', plan: practicePlan(record, title), id: `${short}-made`, at, seq: 1 },
    { kind: 'practice begun', ...record, id: `${short}-begun`, at, seq: 2 },
  ]);
}

/**
 * Writes an entry into a job's ledger; when this returns "kept" it is durable.
 * @param known  the program's templates and lists of tests; left out, an entry is not held to them
 * @throws BadInput  the entry does not fit the job
 */
export async function writeEntry(store: Store, id: string, entry: SentEntry, known?: Known): Promise<Kept> {
  const job = await openJob(store, id);
  if (!job) return { kind: 'no such job' };
  // An entry sent again must be taken for what it is before it is held to a ledger that already holds it.
  if (!job.entries.some((one) => one.id === entry.id)) {
    entryFits(job, entry);
    if (known) knownFits(job.live, entry, known);
  }
  return store.append(id, entry);
}

/** A job as its open file, or undefined when there is none of this id. */
export async function exportJob(store: Store, id: string): Promise<JobFile | undefined> {
  const entries = await store.entries(id);
  return entries && { format: 'waywright-job', version: 1, id, entries };
}

/** Brings a job in from its file. One that is there already with the very same entries is left as it is. */
export const importJob = (store: Store, file: JobFile): Promise<Kept> => store.make(file.id, file.entries);
