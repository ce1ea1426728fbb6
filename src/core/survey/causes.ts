/**
 * Where the doubt of a profile comes from: one column a cause, each as long as the profile, µm: what one standard deviation of that cause
 * does to every height. Causes are independent of each other; what they do to the heights is not, and so the heights' correlations come along.
 */
export type Causes = readonly Float64Array[];

/** A result as a sum over heights: which, and how much of it. */
export type Gradient = readonly { readonly index: number; readonly share: number }[];

/** Standard deviation of Σ share · height, µm. */
export function sdOf(gradient: Gradient, causes: Causes): number {
  let square = 0;
  for (const column of causes) {
    let sum = 0;
    for (const { index, share } of gradient) sum += share * column[index]!;
    square += sum * sum;
  }
  return Math.sqrt(square);
}

/**
 * Steps of angle, each with its own doubt: every later height moves along.
 *
 *     column k: 0 up to foot k, rise(sd, s) from foot k + 1 on                              (1)
 *
 * @param rise_um  what one sd of an angle lifts over a step
 * @param steps    how many; heights are one more
 */
export const stepCauses = (rise_um: number, steps: number): Float64Array[] =>
  Array.from({ length: steps }, (_, k) => new Float64Array(steps + 1).fill(rise_um, k + 1));

/** Each height with its own doubt. */
export const heightCauses = (sd_um: number, heights: number): Float64Array[] =>
  Array.from({ length: heights }, (_, k) => new Float64Array(heights).fill(sd_um, k, k + 1));

/** Half waves in a reference's own form that are still told apart from a straight one. */
const halfWaves = [1, 2, 3];

/**
 * A reference's own departure from straight, of which only its size is known: a smooth form made of one, two and three half waves over its
 * length, falling off as 1/k², zero at both ends (common practice for lapped and scraped edges; the size over the length is the stated sd).
 *
 * @param sd_um  root mean square over the length, µm
 */
export function formCauses(sd_um: number, stations_mm: readonly number[]): Float64Array[] {
  const start = stations_mm[0]!;
  const length = stations_mm.at(-1)! - start;
  // The mean square of a half wave is one half.
  const size = sd_um / Math.sqrt(halfWaves.reduce((sum, k) => sum + 0.5 / k ** 4, 0));
  return halfWaves.map((k) =>
    Float64Array.from(stations_mm, (at) => (size / k ** 2) * Math.sin((k * Math.PI * (at - start)) / length)),
  );
}

/** An error in proportion, the same everywhere: a graduation that is off by a share. */
export const scaleCause = (share: number, profile_um: readonly number[]): Float64Array =>
  Float64Array.from(profile_um, (height) => share * height);
