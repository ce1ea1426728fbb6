import type { Entry } from '../core/ledger/entry.ts';
import { liveEntries } from '../core/ledger/job.ts';
import { benchOf, machineOf } from '../core/ledger/rebuild-record.ts';
import type { SentEntry } from './entry.ts';
import { machineFaults } from './machine-fits.ts';
import { type Issue, pathText, quoted } from './refusal.ts';

type Sent<K extends SentEntry['kind']> = Extract<SentEntry, { readonly kind: K }>;

/** Steps that something happened to, or whose bench was opened: a machine that is edited keeps them. */
const steppedOn = (live: readonly Entry[]): string[] => [
  ...new Set(
    live.flatMap((entry) =>
      entry.kind === 'step told' || entry.kind === 'bench opened' ? [entry.step] : [],
    ),
  ),
];

/**
 * A machine that is set must hang together and keep every step that something happened to. What its slides ask of their
 * templates is looked at by whoever has the templates (contract/machine.ts).
 */
export function machineSetFits(entries: readonly Entry[], { machine }: Sent<'machine set'>): Issue[] {
  const wrong = machineFaults(machine).map(
    (fault): Issue => ({
      path: pathText(['machine', ...fault.path]),
      found: quoted(fault.found),
      expected: fault.expected,
    }),
  );
  const ids = machine.steps.map((step) => step.id);
  const lost = steppedOn(liveEntries(entries)).filter((step) => !ids.includes(step));
  return [
    ...wrong,
    ...lost.map(
      (step): Issue => ({
        path: 'machine.steps',
        found: `no step ${quoted(step)}`,
        expected: 'every step that is in the ledger already: undo its entries first, or keep it',
      }),
    ),
  ];
}

/** What is told of a step must be of a step that the job's machine has. */
export function stepFits(
  entries: readonly Entry[],
  entry: Sent<'step told'> | Sent<'bench opened'>,
): Issue[] {
  const machine = machineOf(liveEntries(entries));
  if (!machine)
    return [
      {
        path: 'kind',
        found: `"${entry.kind}" in a job without a whole machine`,
        expected: 'a "machine set" before it',
      },
    ];
  const step = machine.steps.find((one) => one.id === entry.step);
  if (!step)
    return [
      {
        path: 'step',
        found: quoted(entry.step),
        expected: `one of ${machine.steps.map((one) => one.id).join(', ')}`,
      },
    ];
  if (entry.kind === 'bench opened')
    return step.bench
      ? []
      : [{ path: 'step', found: quoted(entry.step), expected: 'a step that is scraped on a bench' }];
  return entry.what === 'worked' && entry.hours === undefined
    ? [{ path: 'hours', found: 'nothing', expected: 'the hours worked, 0 to 10000' }]
    : [];
}

/** A job is the bench of one step, and of that one for good. */
export function benchFits(entries: readonly Entry[], entry: Sent<'bench of'>): Issue[] {
  const is = benchOf(liveEntries(entries));
  return is === undefined || (is.job === entry.job && is.step === entry.step)
    ? []
    : [
        {
          path: 'step',
          found: quoted(entry.step),
          expected: `${quoted(is.step)} of ${quoted(is.job)}, whose bench this job is`,
        },
      ];
}

/** A result's own fields against each other; what its line asks is looked at by whoever has the lists. */
export function resultFits({ result }: Sent<'result taken'>): Issue[] {
  const { shared_um, doubt_um } = result;
  return shared_um !== undefined && !(doubt_um !== undefined && shared_um <= doubt_um)
    ? [
        {
          path: 'result.shared_um',
          found: String(shared_um),
          expected: 'no more than doubt_um, of which it is a part',
        },
      ]
    : [];
}

/** What is undone may not leave deeds of steps behind that no machine has. */
export function rebuildUndoFits(entries: readonly Entry[], undone: SentEntry): Issue[] {
  const seq = (entries.at(-1)?.seq ?? 0) + 1;
  const after = liveEntries([...entries, { ...undone, seq } as Entry]);
  const steps = machineOf(after)?.steps.map((step) => step.id) ?? [];
  return steppedOn(after)
    .filter((step) => !steps.includes(step))
    .slice(0, 1)
    .map((step) => ({
      path: 'entry',
      found: `a machine that step ${quoted(step)} belongs to`,
      expected: 'that step’s own entries to be undone first',
    }));
}
