import type { Slide } from '../body/slide.ts';
import { normalBelow, normalDensity } from '../math/normal.ts';
import { equilibrium } from './equilibrium.ts';
import { foundation, heldForce } from './foundation.ts';
import type { Wrench } from './load.ts';

/** How a slide with rough faces sits. */
export interface RoughRest {
  /** Mean gap of each zone at rest, µm; the highest spots carry, so it may be above 0 where a zone bears. */
  readonly gap_um: number[];
  readonly converged: boolean;
}

/** What is asked: as `rest`, with the roughness of the faces. */
export interface RoughAsk {
  readonly slide: Slide;
  /** Mean gap of each zone at the nominal pose, µm. */
  readonly gap_um: ArrayLike<number>;
  readonly wrench: Wrench;
  readonly stiffness_N_per_mm3: number;
  /** Sd of the surface's height within a zone, µm, above 0. */
  readonly roughness_um: number;
}

const mostSteps = 60;
/** Forces left over, as a share of the load. */
const enough = 1e-9;

/**
 * How a slide sits when its zones are rough: it stands on its highest spots, not on the zones' means.
 *
 *     force of a zone = k · s · (φ(x) − x Φ(−x)),   x = g / s                                                  (1)
 *
 * for springs k whose heights are normal about the mean gap g with sd s; k the zone's stiffness × area. With s → 0 it is
 * `rest`. The energy is smooth and convex; Newton's steps, halved until it falls.
 *
 * @throws RangeError  gaps not one a zone, or a roughness not above 0
 * Source: summits of normal height on springs (Greenwood and Williamson 1966, from memory, with springs in place of
 * elastic summits); held to fine cells each with its own spring in rough-rest.test.ts.
 */
export function roughRest(ask: RoughAsk): RoughRest {
  const { slide, gap_um, roughness_um: s } = ask;
  const ground = foundation(slide, ask.stiffness_N_per_mm3);
  const { zones, held, rows, spring_N_per_um: spring } = ground;
  if (gap_um.length !== zones)
    throw new RangeError(`${gap_um.length} gaps; expected one for each of ${zones} zones`);
  if (!(s > 0)) throw new RangeError(`roughness ${s} µm; expected above 0`);
  const force = heldForce(ground, ask.wrench);
  const start = equilibrium(ground, gap_um, force);
  if (!start.converged) return { gap_um: Array.from(start.gap_um), converged: false };
  const gapsAt = (c: ArrayLike<number>): Float64Array =>
    Float64Array.from({ length: zones }, (_, z) => {
      let gap = gap_um[z]!;
      for (let k = 0; k < held; k++) gap += rows[z * held + k]! * c[k]!;
      return gap;
    });
  const energy = (c: ArrayLike<number>, gaps: Float64Array): number => {
    let sum = 0;
    for (let z = 0; z < zones; z++) sum += spring[z]! * heldEnergy(gaps[z]! / s) * s * s;
    for (let k = 0; k < held; k++) sum -= force[k]! * c[k]!;
    return sum;
  };
  let c = Float64Array.from(start.coordinates);
  let gaps = gapsAt(c);
  let least = energy(c, gaps);
  const load = Math.hypot(...force);
  for (let step = 0; step < mostSteps; step++) {
    const off = Array.from(force);
    const stiff = Array.from({ length: held }, () => Array<number>(held).fill(0));
    for (let z = 0; z < zones; z++) {
      const x = gaps[z]! / s;
      const push = spring[z]! * s * (normalDensity(x) - x * normalBelow(-x));
      const k = spring[z]! * normalBelow(-x);
      for (let i = 0; i < held; i++) {
        off[i]! += push * rows[z * held + i]!;
        for (let j = 0; j < held; j++) stiff[i]![j]! += k * rows[z * held + i]! * rows[z * held + j]!;
      }
    }
    if (Math.hypot(...off) <= enough * load) return { gap_um: Array.from(gaps), converged: true };
    const move = solved(stiff, off);
    if (!move) break;
    let share = 1;
    let next = c;
    let there = gaps;
    let found = least;
    for (let halving = 0; halving < 40; halving++) {
      next = c.map((part, k) => part + share * move[k]!);
      there = gapsAt(next);
      found = energy(next, there);
      if (found < least) break;
      share /= 2;
    }
    // At the bottom the energy's own digits run out before the forces do.
    if (!(found < least)) return { gap_um: Array.from(gaps), converged: Math.hypot(...off) <= 1e-6 * load };
    c = next;
    gaps = there;
    least = found;
  }
  return { gap_um: Array.from(gaps), converged: false };
}

/** Half the mean square of what presses, for a mean gap x in units of the roughness: ½ E[max(0, −(x + Z))²]. */
const heldEnergy = (x: number): number => ((1 + x * x) * normalBelow(-x) - x * normalDensity(x)) / 2;

/** Gauss with the largest pivot; undefined when a direction is not held. */
function solved(matrix: number[][], right: readonly number[]): number[] | undefined {
  const n = right.length;
  const table = matrix.map((row, i) => [...row, right[i]!]);
  for (let i = 0; i < n; i++) {
    let best = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(table[k]![i]!) > Math.abs(table[best]![i]!)) best = k;
    [table[i], table[best]] = [table[best]!, table[i]!];
    const pivot = table[i]![i]!;
    if (!(Math.abs(pivot) > 1e-300)) return undefined;
    for (let k = i + 1; k < n; k++) {
      const times = table[k]![i]! / pivot;
      for (let j = i; j <= n; j++) table[k]![j]! -= times * table[i]![j]!;
    }
  }
  const x = Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = table[i]![n]!;
    for (let j = i + 1; j < n; j++) sum -= table[i]![j]! * x[j]!;
    x[i] = sum / table[i]![i]!;
  }
  return x;
}
