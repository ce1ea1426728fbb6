import type { Entry } from '../core/ledger/entry.ts';
import { foldJob, type Job } from '../core/ledger/job.ts';
import type { SentEntry } from './entry.ts';
import { planFits } from './plan-fits.ts';
import { beginFits, truthFits } from './practice-fits.ts';
import { readingFits } from './reading-fits.ts';
import { benchFits, machineSetFits, rebuildUndoFits, resultFits, stepFits } from './rebuild-fits.ts';
import { BadInput, type Issue, issueText, quoted } from './refusal.ts';

/** What an entry is held to: the plan and the round as they stand, and the entries that can be undone. */
type JobSoFar = Pick<Job, 'plan' | 'round' | 'entries'>;

/** Nothing is written about a round that has not begun. Earlier ones may still be put right. */
function roundFits(job: JobSoFar, entry: SentEntry): Issue[] {
  if (!('round' in entry) || entry.round === undefined || entry.round <= job.round) return [];
  const expected = `at most ${job.round}, the round that is being worked`;
  return [{ path: 'round', found: String(entry.round), expected }];
}

/** What was read before must still have its set-up, its stops and its zones once the plan is another. */
function pastFits(job: JobSoFar, entry: SentEntry, path: string): Issue[] {
  const next: Entry = { ...entry, seq: (job.entries.at(-1)?.seq ?? 0) + 1 };
  const after = foldJob([next], job);
  for (const past of after.live) {
    const [issue] = readingFits(after.plan, past);
    if (issue)
      return [
        {
          path,
          found: `a plan that no longer fits entry ${past.seq}, ${past.kind} (${issueText(issue)})`,
          expected: 'a plan that keeps the set-ups, stops, pads and zones of what was read',
        },
      ];
  }
  return [];
}

function undoFits(job: JobSoFar, entry: SentEntry & { readonly kind: 'undone' }): Issue[] {
  const named = job.entries.find((one) => one.id === entry.entry);
  if (!named)
    return [{ path: 'entry', found: quoted(entry.entry), expected: 'the id of an entry of this job' }];
  if (named.kind === 'job made')
    return [
      {
        path: 'entry',
        found: 'the entry that made the job',
        expected: 'any other: a job cannot undo itself',
      },
    ];
  if (named.kind === 'practice begun')
    return [
      {
        path: 'entry',
        found: 'the entry that began the practice machine',
        expected: 'any other: a job stays what it was begun as',
      },
    ];
  return [
    ...(named.kind === 'plan amended' || named.kind === 'undone' ? pastFits(job, entry, 'entry') : []),
    ...(named.kind === 'machine set' || named.kind === 'undone' ? rebuildUndoFits(job.entries, entry) : []),
  ];
}

function issuesOf(job: JobSoFar, entry: SentEntry): Issue[] {
  switch (entry.kind) {
    case 'job made':
      return [
        {
          path: 'kind',
          found: '"job made"',
          expected: 'no second one: a job is made once; amend its plan instead',
        },
      ];
    case 'plan amended': {
      const wrong = planFits({ ...job.plan, ...entry.change }, 'change');
      return wrong.length ? wrong : pastFits(job, entry, 'change');
    }
    case 'undone':
      return undoFits(job, entry);
    case 'practice begun':
      return beginFits(job, entry);
    case 'truth shown':
      return [...roundFits(job, entry), ...truthFits(job)];
    case 'machine set':
      return machineSetFits(job.entries, entry);
    case 'step told':
    case 'bench opened':
      return stepFits(job.entries, entry);
    case 'bench of':
      return benchFits(job.entries, entry);
    case 'result taken':
      return resultFits(entry);
    default:
      return [...roundFits(job, entry), ...readingFits(job.plan, entry)];
  }
}

/**
 * Holds an entry to the job it is written into: its round has begun, its set-up exists, its lists have a number for each
 * zone or stop, what it undoes is there, and what was read before still fits.
 * @throws BadInput
 */
export function entryFits(job: JobSoFar, entry: SentEntry): void {
  const issues = issuesOf(job, entry);
  if (issues.length) throw new BadInput(issues);
}
