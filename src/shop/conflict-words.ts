import type { Conflict } from '../core/ledger/conflicts.ts';
import type { Entry, JobPlan } from '../core/ledger/entry.ts';
import { entryWords } from './entry-words.ts';
import { capital } from './phrase.ts';

/** One of the entries, and those that are struck when it is the one that is to stand. */
export interface Standing {
  readonly entry: Entry;
  readonly words: string;
  readonly strikes: readonly string[];
}

/** A conflict as it is asked of a person: what happened, and each entry as it may stand. */
export function conflictWords(
  { entries }: Conflict,
  plan: Pick<JobPlan, 'setups'>,
  all: readonly Entry[],
): { readonly say: string; readonly choices: readonly Standing[] } {
  const [first] = entries;
  const round = first && 'round' in first && first.round !== undefined ? ` in round ${first.round}` : '';
  return {
    say: `Written on ${entries.length === 2 ? 'two devices' : `${entries.length} devices`}${round}, each without knowing of the other. Both are kept; the last counts until you choose.`,
    choices: entries.map((entry) => ({
      entry,
      words: capital(valuesOf(entry) ?? entryWords(entry, plan, all)),
      strikes: entries.filter((one) => one.id !== entry.id).map((one) => one.id),
    })),
  };
}

/** A sweep or a bar by what was read: two of the same stops are told apart by nothing else. */
function valuesOf(entry: Entry): string | undefined {
  if (entry.kind === 'sweep taken')
    return `${entry.setup}: ${entry.readings.map((one) => one.typed).join(', ')}`;
  if (entry.kind !== 'bar read') return undefined;
  const { near, far } = entry.reading;
  return `${entry.setup}: near ${near.first_um}, ${near.turned_um}; far ${far.first_um}, ${far.turned_um} µm`;
}
