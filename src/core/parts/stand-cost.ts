import { rise } from '../body/displacement.ts';
import type { Vector } from '../body/vector.ts';
import type { Block } from './block.ts';
import { blockMade, type MadeBlock } from './made-block.ts';
import type { Travel } from './travel.ts';

/** What a slide does at one place of its work: turns about x, y, z of its frame, and how its path slopes there along x, y, z. */
interface Stand {
  readonly turn_urad: Vector;
  /** Rise for each length of travel, µrad; along the travel itself it says nothing. */
  readonly path_urad: Vector;
}

/** What a place of printing does to a block cut over the work: rms. */
export interface BlockCost {
  /** The first face of the machine's file out of parallel to the table, over the block, µm. */
  readonly parallel_rms_um: number;
  /** The corner that is most out of square, µrad. */
  readonly square_rms_urad: number;
}

/** How a slide stands over the work where nothing is known of what its machine makes: rms. */
export interface StandCost {
  /** Turns about the travel and about the level across it, µrad. */
  readonly lean_rms_urad: number;
  /** Turn in plan, µrad. */
  readonly plan_rms_urad: number;
}

const axes = [0, 1, 2] as const;
const unit = (k: number): Vector => axes.map((i) => (i === k ? 1 : 0)) as unknown as Vector;

/** The slopes of a block's first face along its two axes, and how far each of its corners is out of square, µrad. */
function formOf({ faces, corners }: Block): number[] {
  const [top] = faces;
  return [...top!.tilt_urad.map((tilt) => tilt.value), ...corners.map((corner) => corner.square_urad.value)];
}

/** A block's form for a turn of 1 µrad about each axis and for a path that slopes 1 µrad along each: errors of rigid bodies add up. */
function rowsOf(makes: MadeBlock, free: 0 | 1 | 2) {
  const still = { sd_urad: [0, 0, 0] as Vector };
  const half = makes.size_mm[free] / 2;
  const sloping = (k: number): Travel => ({
    name: 'slide',
    along: (['x', 'y', 'z'] as const)[free],
    stations_mm: [-half, half],
    poses: [-half, half].map(
      (at) =>
        [...axes.map((i) => (i === k ? rise(1, at) : 0)), 0, 0, 0] as unknown as Travel['poses'][number],
    ),
  });
  const turned = axes.map((k) => formOf(blockMade(makes, makes.size_mm, { ...still, turn_urad: unit(k) })));
  const paths = axes.map((k) =>
    k === free
      ? turned[0]!.map(() => 0)
      : formOf(blockMade(makes, makes.size_mm, { ...still, turn_urad: [0, 0, 0], travel: sloping(k) })),
  );
  return [...turned, ...paths];
}

/** Slope of the path by least squares over what lies within the block about a place; where nothing else does, its neighbours. */
function pathSlope({ stations_mm, poses }: Travel, p: number, half_mm: number, k: 0 | 1 | 2): number {
  const at = stations_mm[p]!;
  const near = stations_mm.map((_, i) => i).filter((i) => Math.abs(stations_mm[i]! - at) <= half_mm);
  const of = near.length > 1 ? near : [p - 1, p, p + 1].filter((i) => i >= 0 && i < stations_mm.length);
  const middle = of.reduce((sum, i) => sum + stations_mm[i]!, 0) / of.length;
  const spread = of.reduce((sum, i) => sum + (stations_mm[i]! - middle) ** 2, 0);
  if (spread === 0) return 0;
  // µm a mm are thousands of µrad.
  return (1000 * of.reduce((sum, i) => sum + poses[i]![k]! * (stations_mm[i]! - middle), 0)) / spread;
}

const stands = (travel: Travel, half_mm: number): Stand[] =>
  travel.poses.map((pose, p) => ({
    turn_urad: [pose[3]!, pose[4]!, pose[5]!],
    path_urad: axes.map((k) => pathSlope(travel, p, half_mm, k)) as unknown as Vector,
  }));

function rms(values: readonly number[], duty: readonly number[]): number {
  const whole = duty.reduce((sum, share) => sum + share, 0);
  return Math.sqrt(values.reduce((sum, value, p) => sum + duty[p]! * value ** 2, 0) / whole);
}

/**
 * What a slide on its travel does to a block of the machine's usual size, cut at each place of the work. The block is short against
 * the wear: how the slide stands at its middle and how its path slopes there is taken for all of it.
 *
 * @param travel  poses at the places of the work, against the rest where the slide was printed
 * @param duty    share of the work at each
 */
export function blockCost(makes: MadeBlock, travel: Travel, duty: readonly number[]): BlockCost {
  const free = 'xyz'.indexOf(travel.along) as 0 | 1 | 2;
  const rows = rowsOf(makes, free);
  const forms = stands(travel, makes.size_mm[free] / 2).map(({ turn_urad, path_urad }) =>
    [...turn_urad, ...path_urad].reduce(
      (sum, part, j) => sum.map((value, i) => value + part * rows[j]![i]!),
      rows[0]!.map(() => 0),
    ),
  );
  const face = makes.faces[0]!.face;
  const sides = axes.filter((k) => 'xyz'[k] !== face[1]).map((k) => makes.size_mm[k]);
  return {
    parallel_rms_um: rms(
      forms.map(([a, b]) => rise(Math.abs(a!), sides[0]!) + rise(Math.abs(b!), sides[1]!)),
      duty,
    ),
    square_rms_urad: rms(
      forms.map(([, , ...corners]) => Math.max(0, ...corners.map(Math.abs))),
      duty,
    ),
  };
}

/** How far a slide leans and turns in plan over its work. */
export function standCost(travel: Travel, duty: readonly number[]): StandCost {
  const upright = travel.along === 'z' ? 3 : 5;
  const lean = ([, , , a, b, c]: Travel['poses'][number]) =>
    Math.sqrt([a, b, c].reduce((sum, turn, k) => (k + 3 === upright ? sum : sum + turn ** 2), 0));
  return {
    lean_rms_urad: rms(travel.poses.map(lean), duty),
    plan_rms_urad: rms(
      travel.poses.map((pose) => pose[upright]!),
      duty,
    ),
  };
}
