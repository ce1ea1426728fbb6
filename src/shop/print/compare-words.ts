import type { Agreement } from '../../core/print/agreement.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { counted, percent } from '../phrase.ts';
import { spotsPerSquare, squareWords } from './reading-words.ts';

/** Shares of a zone that differ by less than this, 0 to 1, are the same to a scraper. Common practice, no source. */
export const sameShare = 0.1;

/** A zone's share, 0 to 1; undefined or null where it is not known. */
export type Share = number | null | undefined;

export interface ZoneChange {
  /** From 0. */
  readonly zone: number;
  readonly before: Share;
  readonly now: Share;
  /** Percentage points, plus is more blue now; absent where one of them is not known. */
  readonly points?: number;
  /** Told apart by more than the same. */
  readonly differs: boolean;
}

/** Zone by zone, what was and what is. */
export const zoneChanges = (before: readonly Share[], now: readonly Share[]): ZoneChange[] =>
  now.map((share, zone) => {
    const was = before[zone];
    if (typeof was !== 'number' || typeof share !== 'number')
      return { zone, before: was, now: share, differs: false };
    return {
      zone,
      before: was,
      now: share,
      points: 100 * (share - was),
      differs: Math.abs(share - was) > sameShare,
    };
  });

/** A foretold share as the range that holds two times in three: "36 to 98 %"; without its doubt the share alone. */
export const shareRange = (share: Share, sd: Share): string | undefined => {
  if (typeof share !== 'number') return undefined;
  if (typeof sd !== 'number') return percent(share);
  const [low, high] = [Math.max(0, share - sd), Math.min(1, share + sd)];
  return `${Math.round(100 * low)} to ${percent(high)}`;
};

/** "+6", "−4", "0": points with their sign. */
export const signedPoints = (points: number): string => {
  const whole = Math.round(points);
  return whole === 0 ? '0' : `${whole > 0 ? '+' : '−'}${Math.abs(whole)}`;
};

const named = (changes: readonly ZoneChange[]): string => {
  const zones = changes.map(({ zone }) => String(zone + 1));
  const [last] = zones.slice(-1);
  return zones.length === 1 ? `zone ${last}` : `zones ${zones.slice(0, -1).join(', ')} and ${last}`;
};

/** What became of a pad's blue since the last photo of it. */
export function changeSentence(changes: readonly ZoneChange[], round: number, endWords: string): string {
  const known = changes.filter(({ points }) => points !== undefined);
  if (known.length === 0) return `Nothing of round ${round} can be held against this photo.`;
  const more = known.filter(({ differs, points }) => differs && points! > 0);
  const less = known.filter(({ differs, points }) => differs && points! < 0);
  if (more.length + less.length === 0) return `No zone changed by more than 10 points since round ${round}.`;
  const parts = [
    ...(more.length ? [`more blue in ${named(more)}`] : []),
    ...(less.length ? [`less in ${named(less)}`] : []),
  ];
  return `Since round ${round}: ${parts.join(', ')}, counted from the ${endWords}.`;
}

/** Where the print that came disagrees with the one that was planned. */
export function planSentence(changes: readonly ZoneChange[], endWords: string): string {
  const known = changes.filter(({ points }) => points !== undefined);
  if (known.length === 0) return 'No zone can be held against the plan.';
  const off = known.filter(({ differs }) => differs);
  if (off.length === 0) return 'The print came out as the last plan said, within 10 points in every zone.';
  const worst = off.reduce((a, b) => (Math.abs(b.points!) > Math.abs(a.points!) ? b : a));
  const where = `Zone ${worst.zone + 1} from the ${endWords}: planned ${percent(worst.before!)}, seen ${percent(worst.now!)}.`;
  const agree = known.length - off.length;
  return `The print agrees with the last plan in ${agree} of ${counted(known.length, 'zone')}. ${where}`;
}

/** One zone against the plan, in a word. */
export const planWord = ({ points, differs }: ZoneChange): string =>
  points === undefined ? 'not known' : !differs ? 'as planned' : points > 0 ? 'more' : 'less';

/**
 * Whether another photo of the same print says the same: zone by zone, and by the doubts of both where the earlier one has been read
 * again (`agreement`).
 */
export function agreementSentence(
  changes: readonly ZoneChange[],
  endWords: string,
  agreement?: Agreement,
): string {
  const known = changes.filter(({ points }) => points !== undefined);
  if (known.length === 0) return 'No zone can be held against the photo before it.';
  const off = known.filter(({ differs }) => differs);
  if (off.length === 0 && (agreement?.agrees ?? true))
    return 'It agrees with the photo before it of this print, within 10 points in every zone.';
  const where = off.length
    ? ` in ${named(off)}, counted from the ${endWords}`
    : ': its figures lie apart by more than their doubts';
  const first = `It does not agree with the photo before it of this print${where}.`;
  if (off.length && agreesEndForEnd(changes))
    return `${first} Turned end for end it does: look which end is which in both photos, and turn the corners round.`;
  return `${first} Look at the corners of both, and at the blue; then take the worse one again.`;
}

/** Whether every zone of one photo is that of the other counted from the far end: the corners of one are the wrong way round. */
function agreesEndForEnd(changes: readonly ZoneChange[]): boolean {
  const pairs = changes.map(({ now }, k) => [now, changes[changes.length - 1 - k]!.before] as const);
  return pairs.every(
    ([now, before]) =>
      typeof now === 'number' && typeof before === 'number' && Math.abs(now - before) <= sameShare,
  );
}

/** "Less the photo before it: bearing −0.6 ± 1.9 points, +0.2 ± 0.9 spots a 25 mm square; 1 of 28 squares apart." */
export function agreementFigures(
  { bearing_pct, density_per_25mm, squares_apart, squares }: Agreement,
  units: UnitSystem,
): string {
  const off = ({ value, sd }: { value: number; sd: number }) =>
    `${signedTenths(value)}\u202f±\u00a0${(2 * sd).toFixed(1)}`;
  const scale = spotsPerSquare(1, units);
  const spots = { value: density_per_25mm.value * scale, sd: density_per_25mm.sd * scale };
  const apart = squares_apart.length === 0 ? 'none' : String(squares_apart.length);
  return `Less the photo before it: bearing ${off(bearing_pct)} points, ${off(spots)} spots ${squareWords(units)}; ${apart} of ${counted(squares, 'square')} apart by more than chance.`;
}

const signedTenths = (value: number): string => {
  const text = Math.abs(value).toFixed(1);
  return text === '0.0' ? '0' : `${value < 0 ? '−' : '+'}${text}`;
};
