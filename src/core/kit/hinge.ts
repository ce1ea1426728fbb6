/** The pivot test: where the part turned about, seen from the end that was pushed, as a share of its length. */
export interface HingeTest {
  /** 0 at the pushed end, 1 at the far end; pushed at the low end of the part's own axis. */
  readonly pushed_first: number;
  /** The same, pushed at the other end. */
  readonly pushed_last?: number;
}

/** What a pivot says of the pressure along a part. */
export interface HingeReading {
  /** From the far end to the pivot, as a share of the length, for each end pushed. */
  readonly from_far: readonly number[];
  readonly bearing: 'even' | 'nearly even' | 'in the middle' | 'at the ends' | 'at one end';
  /** Which end bears more, when the two pivots differ. */
  readonly heavier?: 'first end' | 'last end';
  readonly text: string;
  readonly limits: string;
}

/** Where an evenly bearing part turns, from the far end: 1 − 1/√2 of its length. */
export const evenPivot = 1 - Math.SQRT1_2;

/**
 * Where a part pushed at its end turns, with friction in proportion to pressure:
 *
 *     ∫₀ᵃ w dx = ∫ₐᴸ w dx about the pushed end:   ∫₀ᵃ x w dx = ∫ₐᴸ x w dx
 *
 * @param pressure  of equal cells from the pushed end to the far end, any unit, 0 or above, not all 0
 * @returns         a as a share of the length, from the pushed end; half the first moment of friction lies before it
 * Source: balance of moments about the pushed point (derived); an even part turns at 1/√2.
 */
export function pivotOf(pressure: readonly number[]): number {
  const n = pressure.length;
  // Within a cell the pressure is even, so its first moment grows with the square of the place.
  const moment = (k: number, share: number): number => (pressure[k]! * ((k + share) ** 2 - k ** 2)) / 2;
  const whole = pressure.reduce((sum, _, k) => sum + moment(k, 1), 0);
  if (!(whole > 0)) throw new RangeError('no pressure anywhere; expected some above 0');
  let before = 0;
  for (let k = 0; k < n; k++) {
    const here = moment(k, 1);
    if (before + here >= whole / 2 && here > 0)
      return Math.sqrt(k ** 2 + (2 * (whole / 2 - before)) / pressure[k]!) / n;
    before += here;
  }
  return 1;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** Pivots from the far end: 25 to 33 % even, 20 to 38 % nearly (common practice). */
function bearingOf(from_far: number): HingeReading['bearing'] {
  if (from_far >= 0.25 && from_far <= 0.33) return 'even';
  if (from_far >= 0.2 && from_far <= 0.38) return 'nearly even';
  return from_far > 0.38 ? 'in the middle' : 'at the ends';
}

const meaning: Record<HingeReading['bearing'], string> = {
  even: 'the part bears evenly along its length',
  'nearly even': 'the part bears nearly evenly along its length',
  'in the middle': 'the middle carries most: the part is crowned, or its master hollow',
  'at the ends': 'the ends carry most: the part is hollow, or its master crowned',
  'at one end': 'one end carries most',
};

/** How far apart two pivots may be before they tell of one end: a twelfth of the length, common practice. */
const apart = 0.08;

/**
 * What a pivot test says.
 * @throws RangeError  a share outside 0 to 1
 */
export function readHinge(test: HingeTest): HingeReading {
  const shares = [test.pushed_first, ...(test.pushed_last === undefined ? [] : [test.pushed_last])];
  for (const share of shares)
    if (!(share >= 0 && share <= 1)) throw new RangeError(`pivot ${share} of the length; expected 0 to 1`);
  const from_far = shares.map((share) => 1 - share);
  const [first, last] = from_far as [number, number | undefined];
  const mean = from_far.reduce((sum, one) => sum + one, 0) / from_far.length;
  const isOneSided = last !== undefined && Math.abs(first - last) > apart;
  const bearing = isOneSided ? 'at one end' : bearingOf(mean);
  // Pushed at the first end, a heavy last end holds the pivot near itself: a small distance from the far end.
  const heavier = isOneSided ? (first < last ? 'last end' : 'first end') : undefined;
  const pivots = from_far.map((one) => percent(one)).join(' and ');
  const says = heavier ? `the ${heavier} carries most` : meaning[bearing];
  const single =
    last === undefined ? ' Push the other end too: one pivot cannot tell one heavy end from two.' : '';
  return {
    from_far,
    bearing,
    ...(heavier ? { heavier } : {}),
    text: `It turned ${pivots} of its length from the far end (an even bearing turns at 29 %): ${says}.${single}`,
    limits:
      'It says nothing of twist, nor of the bearing across. It feels a micrometre or two, and warmth: below 5 µm do not judge without a soak, hands and sun off (common practice).',
  };
}
