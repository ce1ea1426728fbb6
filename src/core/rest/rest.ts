import type { PoseNumbers } from '../body/displacement.ts';
import type { Slide } from '../body/slide.ts';
import type { AxisName, Vector } from '../body/vector.ts';
import { equilibrium } from './equilibrium.ts';
import { foundation, heldCoordinates, heldForce, poseOf } from './foundation.ts';
import { type Load, type Wrench, wrenchOf } from './load.ts';

/** What `rest` is asked; see docs/contract.md. */
export interface RestInput {
  readonly slide: Slide;
  /** Per pad, in the slide's order, and zone: gap at the nominal pose, µm; plus: clear of the way. */
  readonly gaps_um: readonly (readonly number[])[];
  readonly load: Load;
  /** Pressure for a mm of approach. */
  readonly stiffness_N_per_mm3: number;
  /** Thickness of the blue: a zone whose gap is no more than this prints. */
  readonly film_um: number;
}

/** How a slide sits on what it touches. */
export interface RestAnswer {
  /** Along the two axes across the travel, in the order x, y, z: [y, z] for travel along x. */
  readonly shift_um: readonly [number, number];
  /** About x, y, z; 0 where no pad holds. */
  readonly turn_urad: Vector;
  /** One a zone, pad by pad, minus end first; negative: pressed. */
  readonly gap_um: readonly number[];
  /** What each zone carries, N. */
  readonly force_N: readonly number[];
  /** Share of the pads' area whose gap is no more than the film, 0 to 1. */
  readonly bearing_fraction: number;
  /** False when the load lifts or tips the slide off its pads; the other numbers then mean nothing. */
  readonly converged: boolean;
}

/** The axes across the travel. */
export const acrossTravel = (free: AxisName): readonly [AxisName, AxisName] =>
  free === 'x' ? ['y', 'z'] : free === 'y' ? ['x', 'z'] : ['x', 'y'];

/**
 * How a slide sits on what it touches: each zone a one-sided spring of stiffness × area, the pose that of least energy.
 * The pads hold what they hold (5 directions for a V and a flat); a direction that none holds stays 0, and a load along
 * it has no effect here.
 * @param start  a pose to start from, when the slide was at rest nearby before
 */
export const rest = (input: RestInput, start?: PoseNumbers): RestAnswer =>
  restUnder(input, input.gaps_um.flat(), wrenchOf(input.load), start);

/** As {@link rest}, with gaps in one row over all zones and the load as a wrench. */
export function restUnder(
  input: Pick<RestInput, 'slide' | 'stiffness_N_per_mm3' | 'film_um'>,
  gap_um: ArrayLike<number>,
  wrench: Wrench,
  start?: PoseNumbers,
): RestAnswer {
  const ground = foundation(input.slide, input.stiffness_N_per_mm3);
  if (gap_um.length !== ground.zones)
    throw new RangeError(`${gap_um.length} gaps; expected one for each of ${ground.zones} zones`);
  const from = { start: start && heldCoordinates(ground, input.slide, start) };
  const found = equilibrium(ground, gap_um, heldForce(ground, wrench), from);
  const pose = poseOf(ground, found.coordinates);
  const [first, second] = acrossTravel(input.slide.free).map((axis) => 'xyz'.indexOf(axis));
  return {
    shift_um: [pose[first!]!, pose[second!]!],
    turn_urad: [pose[3], pose[4], pose[5]],
    gap_um: Array.from(found.gap_um),
    force_N: Array.from(found.gap_um, (gap, z) => Math.max(0, -gap * ground.spring_N_per_um[z]!)),
    bearing_fraction: bearingFraction(found.gap_um, ground.area_mm2, input.film_um),
    converged: found.converged,
  };
}

function bearingFraction(gap_um: Float64Array, area_mm2: Float64Array, film_um: number): number {
  let bears = 0;
  let all = 0;
  for (let z = 0; z < gap_um.length; z++) {
    all += area_mm2[z]!;
    if (gap_um[z]! <= film_um) bears += area_mm2[z]!;
  }
  return bears / all;
}
