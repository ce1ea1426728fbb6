/** Two readings parted into what stayed and what was turned. Doubts add as (u₁² + u₂²)/4 for each. */
export interface Parted {
  /** What did not turn: the machine, the way, the axis. */
  readonly kept: number;
  /** What was turned: the square, the straightedge, the bar; as it counted in the first reading. */
  readonly turned: number;
}

/**
 * A reading with the reference as it is and one with it turned, signs held in space:
 *
 *     I₁ = M + S,   I₂ = M − S   →   M = (I₁ + I₂)/2,   S = (I₁ − I₂)/2
 *
 * Source: Evans, Hocken, Estler, CIRP Annals 45(2), 1996 (from memory); held to in checks/kit-reversal.check.ts.
 */
export const halves = (first: number, second: number): Parted => ({
  kept: (first + second) / 2,
  turned: (first - second) / 2,
});

/**
 * A level turned end for end. Read in space (plus towards the same end of the surface) it is {@link halves}; read against
 * the level's own body its sign turns with it, and sum and difference change places.
 */
export function endsTurned(
  first: number,
  second: number,
  readAgainst: 'surface' | 'body' = 'surface',
): Parted {
  return halves(first, readAgainst === 'surface' ? second : -second);
}

/** Three unknowns seen in pairs: A + B, B + C, A + C → A, B, C. */
export const threeAtOnce = (a_b: number, b_c: number, a_c: number): [a: number, b: number, c: number] => [
  (a_b + a_c - b_c) / 2,
  (a_b + b_c - a_c) / 2,
  (b_c + a_c - a_b) / 2,
];

/** A straightedge parted from the way it lay along, station by station. */
export interface EdgeParted {
  /** The way, against the line through its own ends, µm. */
  readonly way_um: readonly number[];
  /** The straightedge, against the line through its ends, µm. */
  readonly edge_um: readonly number[];
  /** One sd of either, station by station; 0 at the ends, which are the datum. */
  readonly sd_um: readonly number[];
}

/**
 * Straightedge reversal along a way. Where the indicator was zeroed and how the straightedge was tilted are unknown each
 * time, so both profiles come against the line through their ends: turning over cannot give the tilt.
 *
 * @param stations_mm  rising, two or more
 * @param first_um     readings with the straightedge as it lies
 * @param turned_um    readings at the same stations, turned over about its length
 * @param sd_um        one sd of one reading
 * @throws RangeError  lists of unequal length, fewer than two stations, stations that do not rise
 */
export function straightedgeReversal(
  stations_mm: readonly number[],
  first_um: readonly number[],
  turned_um: readonly number[],
  sd_um: number,
): EdgeParted {
  const n = stations_mm.length;
  if (n < 2) throw new RangeError(`${n} stations; expected two or more`);
  if (first_um.length !== n || turned_um.length !== n)
    throw new RangeError(`${first_um.length} and ${turned_um.length} readings for ${n} stations`);
  stations_mm.forEach((at, i) => {
    if (i > 0 && !(at > stations_mm[i - 1]!))
      throw new RangeError(`station ${at} mm does not lie beyond the one before`);
  });
  const along = stations_mm.map((at) => (at - stations_mm[0]!) / (stations_mm[n - 1]! - stations_mm[0]!));
  const fromEnds = (z: readonly number[]): number[] =>
    z.map((one, i) => one - z[0]! - along[i]! * (z[n - 1]! - z[0]!));
  const one = fromEnds(first_um);
  const two = fromEnds(turned_um);
  const parted = one.map((value, i) => halves(value, two[i]!));
  return {
    way_um: parted.map((part) => part.kept + 0),
    edge_um: parted.map((part) => part.turned + 0),
    sd_um: along.map((t, i) =>
      // u² (1 + (1 − t)² + t²) for a reading less the line through two others; halved by two runs.
      i === 0 || i === n - 1 ? 0 : (sd_um * Math.sqrt(1 + (1 - t) ** 2 + t ** 2)) / Math.SQRT2,
    ),
  };
}
