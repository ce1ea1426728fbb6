import type { Job } from '../core/ledger/job.ts';
import type { SentEntry } from './entry.ts';
import { planFits } from './plan-fits.ts';
import { BadInput, type Issue, quoted } from './refusal.ts';

/** What an entry is held to: the plan as it stands, and the entries that can be undone. */
type JobSoFar = Pick<Job, 'plan' | 'entries'>;

const listed = (names: readonly string[]): string => names.map((n) => JSON.stringify(n)).join(', ') || 'none';

/** Numbers per pad must name pads of the slide, with one number for each zone. */
function zonesFit(
  job: JobSoFar,
  values: Readonly<Record<string, readonly unknown[]>>,
  path: string,
): Issue[] {
  const pads = job.plan.slide.pads;
  return Object.entries(values).flatMap(([key, list]): Issue[] => {
    const pad = pads.find((one) => one.name === key);
    const at = `${path}[${JSON.stringify(key)}]`;
    if (!pad)
      return [
        {
          path: at,
          found: 'a pad that the slide does not have',
          expected: `one of ${listed(pads.map((p) => p.name))}`,
        },
      ];
    if (list.length === pad.zones) return [];
    return [{ path: at, found: quoted(list), expected: `${pad.zones} numbers, one for each zone` }];
  });
}

function setupFits(
  job: JobSoFar,
  entry: { readonly setup: string },
  kind: 'sweep' | 'level' | 'height',
): Issue[] {
  const setups = job.plan.setups.filter((setup) => setup.kind === kind);
  if (setups.some((setup) => setup.id === entry.setup)) return [];
  return [
    {
      path: 'setup',
      found: quoted(entry.setup),
      expected: `a ${kind} of the job: ${listed(setups.map((s) => s.id))}`,
    },
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
    case 'plan amended':
      return planFits({ ...job.plan, ...entry.change }, 'change');
    case 'sweep taken': {
      const wrong = setupFits(job, entry, 'sweep');
      if (wrong.length) return wrong;
      const setup = job.plan.setups.find((one) => one.id === entry.setup);
      if (setup?.kind !== 'sweep' || setup.points === entry.readings.length) return [];
      return [
        {
          path: 'readings',
          found: quoted(entry.readings),
          expected: `${setup.points} readings, one for each stop`,
        },
      ];
    }
    case 'level read':
      return setupFits(job, entry, 'level');
    case 'height read':
      return setupFits(job, entry, 'height');
    case 'print read':
      return [...zonesFit(job, entry.share, 'share'), ...zonesFit(job, entry.tapped ?? {}, 'tapped')];
    case 'pass made':
      return zonesFit(job, entry.zones, 'zones');
    case 'undone': {
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
      return [];
    }
    default:
      return [];
  }
}

/**
 * Holds an entry to the job it is written into: its set-up exists, its lists have a number for each zone or stop, what it
 * undoes is there.
 * @throws BadInput
 */
export function entryFits(job: JobSoFar, entry: SentEntry): void {
  const issues = issuesOf(job, entry);
  if (issues.length) throw new BadInput(issues);
}
