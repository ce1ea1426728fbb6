import { z } from 'zod';
import type { Entry } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import { entryId, entrySchema } from './entry.ts';
import { entryFits } from './entry-fits.ts';
import { planFits } from './plan-fits.ts';
import { BadInput, checked, pathText } from './refusal.ts';

/** A whole job in one open file: its ledger and nothing else, since everything shown is computed from it. See docs/job-file.md. */
export interface JobFile {
  readonly format: 'waywright-job';
  readonly version: 1;
  readonly id: string;
  readonly entries: readonly Entry[];
}

export const jobFileSchema = z.strictObject({
  format: z.literal('waywright-job'),
  version: z.literal(1),
  id: entryId,
  entries: z.array(entrySchema).min(1).max(100_000),
});

/**
 * Reads a job file.
 * @throws BadInput  a key, an entry or its place that does not fit, by its path
 */
export function jobFile(value: unknown): JobFile {
  const file = checked(jobFileSchema, value) as unknown as JobFile;
  const refuse = (path: (string | number)[], found: string, expected: string): never => {
    throw new BadInput([{ path: pathText(path), found, expected }]);
  };
  const [first, ...rest] = file.entries;
  if (first!.kind !== 'job made')
    return refuse(['entries', 0, 'kind'], JSON.stringify(first!.kind), '"job made"');
  const wrong = planFits(first!.plan, 'entries[0].plan');
  if (wrong.length) throw new BadInput(wrong);
  const ids = new Set([first!.id]);
  file.entries.forEach((entry, k) => {
    if (entry.seq !== k + 1)
      refuse(['entries', k, 'seq'], String(entry.seq), `${k + 1}: entries stand in order, without gaps`);
  });
  const known: Entry[] = [first!];
  let { plan, round } = foldJob(known);
  rest.forEach((entry, k) => {
    if (ids.has(entry.id))
      refuse(['entries', k + 1, 'id'], JSON.stringify(entry.id), 'an id that no other entry has');
    ids.add(entry.id);
    try {
      entryFits({ plan, round, entries: known }, entry);
    } catch (failure) {
      if (!(failure instanceof BadInput)) throw failure;
      throw new BadInput(
        failure.issues.map((issue) => ({ ...issue, path: `entries[${k + 1}].${issue.path}` })),
      );
    }
    known.push(entry);
    // Only these change what a later entry is held to.
    if (entry.kind === 'plan amended' || entry.kind === 'undone' || entry.kind === 'round closed')
      ({ plan, round } = foldJob(known));
  });
  return file;
}

/** What may be said beside a file that is brought in: `as`, another id for the job. */
const querySchema = z.strictObject({ as: entryId.optional() });

/** @throws BadInput */
export const importQuery = (value: unknown): { readonly as?: string | undefined } =>
  checked(querySchema, value);

/** What may be said when a job is written with its photos: `partial=yes` leaves out what is missing or damaged. */
const archiveSchema = z.strictObject({ partial: z.literal('yes').optional() });

/** @throws BadInput */
export const archiveQuery = (value: unknown): { readonly partial?: 'yes' | undefined } =>
  checked(archiveSchema, value);

/** A job as the text of its file: the same job gives the same bytes. */
export const jobFileText = (file: JobFile): string => `${JSON.stringify(file, null, 1)}\n`;
