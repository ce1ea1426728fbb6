import type { TestList } from '../core/chart/acceptance-test.ts';
import type { Entry } from '../core/ledger/entry.ts';
import { chartFileOf, machineOf } from '../core/ledger/rebuild-record.ts';
import type { Template } from '../core/ledger/template.ts';
import type { Machine } from '../core/order/machine.ts';
import { axisInput } from './axis.ts';
import { chartFile } from './chart.ts';
import type { SentEntry } from './entry.ts';
import { gibInput } from './gib.ts';
import { machineInput } from './machine.ts';
import { BadInput } from './refusal.ts';

/** What the program comes with, that an entry may name. */
export interface Known {
  readonly templates: readonly Template[];
  readonly lists: readonly TestList[];
  /** Holds a machine's heights to it, as `heights` does. @throws BadInput */
  readonly heightsFit: (heights: unknown, machine: Machine) => void;
}

/** The same refusal with other paths. */
function pathed(look: () => unknown, path: (was: string) => string): void {
  try {
    look();
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    throw new BadInput(failure.issues.map((issue) => ({ ...issue, path: path(issue.path) })));
  }
}

const under = (name: string) => (was: string) => (was === '' ? name : `${name}.${was}`);

/** What an entry is held to, and where in the entry it stands; undefined for those that name nothing of the program's. */
function heldTo(
  live: readonly Entry[],
  entry: SentEntry,
  known: Known,
): readonly [look: () => unknown, path: (was: string) => string] | undefined {
  switch (entry.kind) {
    case 'machine set':
      return [() => machineInput(entry.machine, known.templates), under('machine')];
    case 'axis taken':
      return [() => axisInput(entry.asked), under('asked')];
    case 'gib taken':
      return [() => gibInput(entry.asked), under('asked')];
    case 'heights set': {
      const machine = machineOf(live);
      if (!machine?.heights)
        throw new BadInput([
          { path: 'kind', found: '"heights set"', expected: 'a job whose machine has heights' },
        ]);
      return [() => known.heightsFit(entry.heights, machine), under('heights')];
    }
    case 'chart set':
      return [() => chartFile(entry.chart, known.lists), under('chart')];
    case 'result taken': {
      const { test, when, result } = entry;
      const file = { ...chartFileOf(live), results: [{ test, [when]: result }] };
      return [
        () => chartFile(file, known.lists),
        (was) => was.replace('results[0].test', 'test').replace(`results[0].${when}`, 'result'),
      ];
    }
    default:
      return undefined;
  }
}

/**
 * Holds an entry to the templates and test lists of the program, when it is written: a job file from a shop with others is
 * taken in all the same.
 * @throws BadInput
 */
export function knownFits(live: readonly Entry[], entry: SentEntry, known: Known): void {
  const held = heldTo(live, entry, known);
  if (held) pathed(...held);
}
