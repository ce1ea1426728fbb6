import type { Cause } from '../../core/estimate/cause.ts';
import type { Deed, Entry, JobPlan } from '../../core/ledger/entry.ts';
import { repeatName } from '../../core/ledger/steer-input.ts';
import type { PlacedCause } from './cause-words.ts';

type ByPad = Readonly<Record<string, readonly number[]>>;

/** The same pass with its zones where they were really made; undefined leaves it as it is. */
function madeAt(zones: ByPad, cause: Cause): ByPad | undefined {
  if (cause.kind === 'map end for end')
    return Object.fromEntries(Object.entries(zones).map(([pad, row]) => [pad, row.toReversed()]));
  if (cause.kind === 'flanks swapped') {
    const [a, b] = cause.pads;
    return { ...zones, [a]: zones[b] ?? [], [b]: zones[a] ?? [] };
  }
  if (cause.kind === 'zone missed' && (zones[cause.pad]?.[cause.zone] ?? 0) > 0)
    return {
      ...zones,
      [cause.pad]: zones[cause.pad]!.map((made, z) => (z === cause.zone ? 0 : made)),
    };
  return undefined;
}

/**
 * What puts the record right once a cause is settled with yes: entries that undo the wrong ones and write the right ones.
 * Nothing is changed in place; each can itself be undone.
 *
 * @param live  the job's entries that count
 */
export function mendDeeds(
  { cause, round: k }: Pick<PlacedCause, 'cause' | 'round'>,
  plan: Pick<JobPlan, 'setups' | 'slide'>,
  live: readonly Entry[],
): Deed[] {
  // Causes count rounds from 0: their readings are the ledger's round k + 1, the scraping before them its round k.
  const round = k + 1;
  switch (cause.kind) {
    case 'sweep reversed': {
      const rounds = cause.rounds?.map((one) => one + 1) ?? [round];
      return live.flatMap((entry): Deed[] => {
        if (entry.kind !== 'sweep taken' || !rounds.includes(entry.round)) return [];
        const setup = plan.setups.find((one) => one.id === entry.setup);
        if (!setup || repeatName(setup.name, entry.repeat ?? 0) !== cause.sweep) return [];
        const { id, at: _at, seq: _seq, ...deed } = entry;
        const push = entry.record.push === 'fell' ? 'climbed' : 'fell';
        return [
          { kind: 'undone', entry: id },
          { ...deed, record: { ...entry.record, push } },
        ];
      });
    }
    case 'reference moved':
      return live.flatMap((entry): Deed[] => {
        if (entry.kind !== 'sweep taken' || entry.round !== round) return [];
        const setup = plan.setups.find((one) => one.id === entry.setup);
        return setup?.kind === 'sweep' && setup.face === cause.face
          ? [{ kind: 'undone', entry: entry.id }]
          : [];
      });
    case 'pass too many': {
      const made = live.filter((entry) => entry.kind === 'pass made' && entry.round === round - 1);
      const last = made.reduce(
        (most, entry) => (entry.kind === 'pass made' ? Math.max(most, entry.pass) : most),
        0,
      );
      const zones = Object.fromEntries(
        plan.slide.pads.map((pad) => [
          pad.name,
          Array<number>(pad.zones).fill(pad.name === cause.pad ? 1 : 0),
        ]),
      );
      return [{ kind: 'pass made', round: round - 1, pass: last + 1, zones }];
    }
    case 'not as recorded':
      return [];
    default:
      return live.flatMap((entry): Deed[] => {
        if (entry.kind !== 'pass made' || entry.round !== round - 1) return [];
        const zones = madeAt(entry.zones, cause);
        if (!zones) return [];
        const { id, at: _at, seq: _seq, ...deed } = entry;
        return [
          { kind: 'undone', entry: id },
          { ...deed, zones },
        ];
      });
  }
}
