/** Ways that neighbours lead to a reading: which they are, counted from it. */
const ways: readonly (readonly number[])[] = [
  [-1, 1],
  [-2, -1, 1, 2],
  [-2, -1],
  [1, 2],
];

/** A way of leading to a reading: which others, and how much of each. */
export interface Led {
  readonly at: readonly number[];
  readonly shares: readonly number[];
  /** Root of the sum of squares of the reading's own share and its neighbours': how much noise the difference holds. */
  readonly noise: number;
}

/** Whether each reading of a row follows on from its neighbours. */
export interface FollowOn {
  /** The least that the reading is off what some way of leading to it gives, for each unit of a reading's noise in that difference. */
  readonly off: (values: readonly number[], i: number) => number;
  /** What that way leads to. */
  readonly expected: (values: readonly number[], i: number) => number;
  /** The same of the place between i − 1 and i: how far the row breaks there. */
  readonly broken: (values: readonly number[], i: number) => number;
}

/**
 * Each reading is led to by the straight line through its two neighbours, the cubic through four, and the straight lines through the two on
 * either side alone. A bend or a step of the way follows on from one of them; a slip follows on from none.
 *
 * @param places  rising, three or more
 */
export function followOn(places: readonly number[]): FollowOn {
  const led = waysTo(places);
  const away = (values: readonly number[], i: number, one: Led) =>
    Math.abs(values[i]! - ledTo(one, values)) / one.noise;
  const across = places.map((_, i) =>
    // From before the break to after it, or through it; never from one side alone.
    i === 0
      ? []
      : [i - 1, i].flatMap((k) =>
          led[k]!.filter(({ at }) => at.some((one) => one < i !== k < i)).map((one) => ({ k, one })),
        ),
  );
  return {
    off: (values, i) => nearestLead(led[i]!, values, i).off,
    expected: (values, i) => nearestLead(led[i]!, values, i).expected,
    broken: (values, i) => Math.min(...across[i]!.map(({ k, one }) => away(values, k, one))),
  };
}

/** Of every place the ways that lead to it along its row. @param places  rising, two or more */
export function waysTo(places: readonly number[]): Led[][] {
  const last = places.length - 1;
  return places.map((_, i) =>
    ways
      .map((way) => way.map((away) => i + away))
      .filter((at) => at[0]! >= 0 && at.at(-1)! <= last)
      .map((at) => leading(places, i, at)),
  );
}

/** The way that leads nearest to a reading: how far that is off, for each unit of noise, and what it leads to. */
export function nearestLead(
  led: readonly Led[],
  values: readonly number[],
  i: number,
): { readonly off: number; readonly expected: number } {
  let [off, expected] = [Infinity, values[i]!];
  for (const one of led) {
    const leads = ledTo(one, values);
    const its = Math.abs(values[i]! - leads) / one.noise;
    if (its < off) [off, expected] = [its, leads];
  }
  return { off, expected };
}

const ledTo = (one: Led, values: readonly number[]): number =>
  one.at.reduce((sum, at, k) => sum + one.shares[k]! * values[at]!, 0);

/** Lagrange's rule at a place. */
function leading(places: readonly number[], i: number, at: readonly number[]): Led {
  const shares = at.map((a) =>
    at.reduce(
      (share, b) => (b === a ? share : (share * (places[i]! - places[b]!)) / (places[a]! - places[b]!)),
      1,
    ),
  );
  return { at, shares, noise: Math.hypot(1, ...shares) };
}

/** The instrument's division as its readings show it: the largest number that all of them are whole multiples of, six decimals at most. */
export function divisionOf(values: readonly number[]): number {
  const scale = 1e6;
  let common = 0;
  for (const value of values) {
    let [a, b] = [common, Math.abs(Math.round(value * scale))];
    while (b > 0) [a, b] = [b, a % b];
    common = a;
  }
  return common / scale;
}
