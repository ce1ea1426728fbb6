import type { Print } from '../../core/observe/round.ts';
import type { InstrumentShows, PracticeMeasured } from './practice-job.ts';

/** A reading of a practice machine as it would be typed, ready for a job's ledger. */
export type PracticeDeed =
  | {
      readonly kind: 'sweep taken';
      readonly round: number;
      readonly setup: string;
      readonly repeat?: number;
      readonly record: { readonly push?: 'climbed' | 'fell' };
      readonly readings: readonly string[];
    }
  | {
      readonly kind: 'level read';
      readonly round: number;
      readonly setup: string;
      readonly repeat?: number;
      readonly record: Readonly<Record<string, never>>;
      readonly reading: string;
    }
  | { readonly kind: 'print read'; readonly round: number; readonly share: Print };

/** "+1.2", "-0.4", "0": µm of an indicator with its sign, as its window shows it. */
const window = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return '0';
  return `${value < 0 ? '-' : '+'}${text}`;
};

/** What the instruments of a practice machine show, as deeds: sweeps in µm with the sign of the dial and what the push test said, levels in µm/m. */
export const practiceDeeds = ({ round, repeat, setups }: PracticeMeasured): PracticeDeed[] =>
  setups.map((shown) => deedOf(shown, { round, setup: shown.setup, ...(repeat > 0 ? { repeat } : {}) }));

function deedOf(
  { push, values }: InstrumentShows,
  at: { readonly round: number; readonly setup: string; readonly repeat?: number },
): PracticeDeed {
  // Only an indicator has a plunger to push.
  if (push === undefined)
    return { kind: 'level read', ...at, record: {}, reading: `${window(values[0]!, 0)} um/m` };
  return { kind: 'sweep taken', ...at, record: { push }, readings: values.map((um) => window(um, 1)) };
}
