import { factorSemidefinite, freePart, solveSemidefinite } from '../math/semidefinite.ts';
import { type Foundation, poseOf } from './foundation.ts';

/** Where a slide comes to rest on its springs. */
export interface Equilibrium {
  /** Coordinates over the foundation's held directions. */
  readonly coordinates: Float64Array;
  /** Gap of each zone, µm; negative where it is pressed. */
  readonly gap_um: Float64Array;
  /** False when the load lifts or tips the slide off its pads: no rest exists. */
  readonly converged: boolean;
  readonly steps: number;
}

/** Newton on a convex, piecewise quadratic energy ends in a handful of steps; this many means that it has no end. */
const mostSteps = 200;
/** Forces left over, as a share of the load. */
const enough = 1e-11;
/** Forces are differences of what gaps this large would press: a light load on wide gaps is not known better. */
const rounding = 1e-15;
/** A slide that has moved by a metre, or turned by a radian, has fallen off. */
const fallen = 1e6;
/** A stiffness this small, as a share of the fully pressed slide's, holds nothing. */
const nothing = 1e-11;

/**
 * The pose of least energy of a slide on one-sided springs.
 *
 *     E(c) = Σ ½ Kᵢ min(gᵢ(c), 0)² − f·c,     gᵢ(c) = gapᵢ + rᵢ·c                                                (1)
 *
 * Where the springs pressed now leave a direction free and the load works along it, the slide falls that way, the pressed
 * zones unmoved, until others touch (from no zone touching to all directions held takes at most one such step each).
 * Else Newton's step. Either is followed by an exact search along it: E along a line is convex and piecewise quadratic, so
 * its least point is found from its kinks, and no step raises the energy. Damping in place of the fall was tried: it
 * chatters where a zone just touches.
 *
 * @param gap_um  one a zone, at coordinates 0
 * @param force   N·µm for a unit of each held coordinate
 * @param from    `start`: coordinates to start from (the last rest), 0 when left out; `most_steps`: when to give up
 */
export function equilibrium(
  ground: Foundation,
  gap_um: ArrayLike<number>,
  force: Float64Array,
  from: { readonly start?: Float64Array | undefined; readonly most_steps?: number } = {},
): Equilibrium {
  const { zones, held, rows, spring_N_per_um: spring } = ground;
  const c = from.start ? Float64Array.from(from.start) : new Float64Array(held);
  const most = from.most_steps ?? mostSteps;
  const gap = new Float64Array(zones);
  const along = new Float64Array(zones);
  const gradient = new Float64Array(held);
  const hessian = new Float64Array(held * held);
  const down = new Float64Array(held);
  const step = new Float64Array(held);
  const size = norm(force);
  const left = Math.max(enough * size, rounding * pressingAll(ground, gap_um));
  // With every zone pressed the stiffness over c is this times the identity.
  const full = zones > 0 ? spring[0]! / ground.area_mm2[0]! : 0;
  for (let steps = 0; ; steps++) {
    for (let z = 0; z < zones; z++) gap[z] = gap_um[z]! + dotRow(rows, z, held, c);
    slopeAndStiffness(ground, gap, force, gradient, hessian);
    if (norm(gradient) <= left)
      return { coordinates: c, gap_um: gap, converged: !hasFallen(ground, c), steps };
    if (steps >= most || hasFallen(ground, c))
      return { coordinates: c, gap_um: gap, converged: false, steps };
    for (let k = 0; k < held; k++) down[k] = -gradient[k]!;
    const factor = factorSemidefinite(hessian, held, nothing * full);
    const falls = Math.sqrt(freePart(factor, down, step)) > left;
    if (!falls) solveSemidefinite(factor, down, step);
    // In a fall the pressed zones stay as they are: what they seem to move is rounding.
    for (let z = 0; z < zones; z++) along[z] = falls && gap[z]! < 0 ? 0 : dotRow(rows, z, held, step);
    const t = leastAlong(gap, along, spring, gradient, step);
    if (t === Infinity) return { coordinates: c, gap_um: gap, converged: false, steps };
    for (let k = 0; k < held; k++) c[k]! += t * step[k]!;
  }
}

function slopeAndStiffness(
  ground: Foundation,
  gap: Float64Array,
  force: Float64Array,
  gradient: Float64Array,
  hessian: Float64Array,
): void {
  const { zones, held, rows, spring_N_per_um: spring } = ground;
  hessian.fill(0);
  for (let k = 0; k < held; k++) gradient[k] = -force[k]!;
  for (let z = 0; z < zones; z++) {
    if (gap[z]! >= 0) continue;
    const pressed = spring[z]! * gap[z]!;
    for (let i = 0; i < held; i++) {
      const r = rows[z * held + i]!;
      gradient[i]! += pressed * r;
      const scaled = spring[z]! * r;
      for (let j = 0; j <= i; j++) hessian[i * held + j]! += scaled * rows[z * held + j]!;
    }
  }
}

/**
 * How far along a step the energy is least: 1 when no zone touches or leaves on the way, else found by walking from kink to
 * kink. Infinity when it falls for ever.
 */
function leastAlong(
  gap: Float64Array,
  along: Float64Array,
  spring: Float64Array,
  gradient: Float64Array,
  step: Float64Array,
): number {
  let slope = 0;
  for (let k = 0; k < step.length; k++) slope += gradient[k]! * step[k]!;
  let bend = 0;
  let pressed = 0;
  const kinks: number[] = [];
  for (let z = 0; z < gap.length; z++) {
    const a = along[z]!;
    if (gap[z]! < 0) {
      bend += spring[z]! * a * a;
      pressed++;
      if (a > 0) kinks.push(z);
    } else if (a < 0) kinks.push(z);
  }
  const at = (z: number): number => -gap[z]! / along[z]!;
  kinks.sort((y, z) => at(y) - at(z));
  let t = 0;
  for (const z of kinks) {
    const next = at(z);
    if (pressed > 0 && slope + bend * (next - t) >= 0) break;
    slope += bend * (next - t);
    t = next;
    const joins = along[z]! < 0;
    pressed += joins ? 1 : -1;
    bend = pressed === 0 ? 0 : Math.max(0, bend + (joins ? 1 : -1) * spring[z]! * along[z]! * along[z]!);
  }
  if (slope >= 0) return t;
  return bend > 0 ? t - slope / bend : Infinity;
}

/** Size of the forces if every zone were pressed by the whole of its gap. */
function pressingAll({ zones, held, rows, spring_N_per_um }: Foundation, gap_um: ArrayLike<number>): number {
  let sum = 0;
  for (let z = 0; z < zones; z++) {
    let square = 0;
    for (let k = 0; k < held; k++) square += rows[z * held + k]! * rows[z * held + k]!;
    sum += spring_N_per_um[z]! * Math.abs(gap_um[z]!) * Math.sqrt(square);
  }
  return sum;
}

const dotRow = (rows: Float64Array, z: number, held: number, c: Float64Array): number => {
  let sum = 0;
  for (let k = 0; k < held; k++) sum += rows[z * held + k]! * c[k]!;
  return sum;
};

const norm = (v: Float64Array): number => Math.sqrt(v.reduce((sum, part) => sum + part * part, 0));

const hasFallen = (ground: Foundation, c: Float64Array): boolean =>
  poseOf(ground, c).some((part) => Math.abs(part) > fallen);
