import { type Equilibrium, equilibrium } from './equilibrium.ts';
import type { Foundation } from './foundation.ts';

/** Newton steps taken in full before the careful search takes over. */
const mostSteps = 12;
/** Forces left over, as a share of the load. */
const enough = 1e-11;

/**
 * Finds many rests of one slide under one load, each from the one before: the same answer as `equilibrium`, for work where
 * hundreds of thousands are asked. Full Newton steps on the zones pressed now end in two or three when the last rest was
 * near; whatever does not end so is handed to `equilibrium`.
 *
 * @returns coordinates over the held directions, one array that is written anew each time; undefined where nothing holds
 */
export function settler(
  ground: Foundation,
  force: Float64Array,
): (gap_um: Float64Array) => Float64Array | undefined {
  const { zones, held, rows, spring_N_per_um: spring } = ground;
  const c = new Float64Array(held);
  const gradient = new Float64Array(held);
  const lower = new Float64Array(held * held);
  /** Zones that were pressed when `lower` was last made: it hangs on nothing else, and the next rest mostly presses the same. */
  const pressing = new Uint8Array(zones).fill(2);
  let load = 0;
  for (const part of force) load += part * part;
  const left = enough * Math.sqrt(load);

  const carefully = (gap_um: Float64Array): Float64Array | undefined => {
    const found: Equilibrium = equilibrium(ground, gap_um, force);
    c.set(found.coordinates);
    return found.converged ? c : undefined;
  };

  /** Whether `lower` is the factor for the zones pressed now; undefined until it is made for them. */
  let isFactored: boolean | undefined;

  return (gap_um) => {
    for (let step = 0; step < mostSteps; step++) {
      for (let k = 0; k < held; k++) gradient[k] = -force[k]!;
      let pressed = 0;
      let same = true;
      for (let z = 0, at = 0; z < zones; z++, at += held) {
        let gap = gap_um[z]!;
        for (let k = 0; k < held; k++) gap += rows[at + k]! * c[k]!;
        const presses = gap < 0 ? 1 : 0;
        if (presses !== pressing[z]) {
          same = false;
          pressing[z] = presses;
        }
        if (presses === 0) continue;
        pressed += spring[z]! * -gap;
        for (let i = 0; i < held; i++) gradient[i]! += spring[z]! * rows[at + i]! * gap;
      }
      let off = 0;
      for (let k = 0; k < held; k++) off += gradient[k]! * gradient[k]!;
      if (!same) isFactored = undefined;
      // Forces are differences of what presses: more than their rounding cannot be asked for.
      if (Math.sqrt(off) <= Math.max(left, 1e-14 * pressed)) return c;
      isFactored ??= factored(stiffness(ground, pressing, lower), held);
      if (!isFactored) return carefully(gap_um);
      solveFactored(lower, gradient, held);
      for (let k = 0; k < held; k++) c[k]! -= gradient[k]!;
    }
    return carefully(gap_um);
  };
}

/** Stiffness over the held directions of the zones that press, its lower half written into `into`. */
function stiffness(
  { held, rows, spring_N_per_um: spring }: Foundation,
  pressing: Uint8Array,
  into: Float64Array,
) {
  into.fill(0);
  for (let z = 0, at = 0; z < pressing.length; z++, at += held) {
    if (pressing[z] === 0) continue;
    for (let i = 0; i < held; i++) {
      const scaled = spring[z]! * rows[at + i]!;
      for (let j = 0; j <= i; j++) into[i * held + j]! += scaled * rows[at + j]!;
    }
  }
  return into;
}

/** Cholesky's factor in place of the lower half; false when the pressed zones hold too little. */
function factored(lower: Float64Array, n: number): boolean {
  let largest = 0;
  for (let i = 0; i < n; i++) largest = Math.max(largest, lower[i * n + i]!);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = lower[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) {
        if (!(sum > 1e-9 * largest)) return false;
        lower[i * n + i] = Math.sqrt(sum);
      } else lower[i * n + j] = sum / lower[j * n + j]!;
    }
  }
  return true;
}

/** Solves L Lᵀ x = b in place of b. */
function solveFactored(lower: Float64Array, b: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) b[i]! -= lower[i * n + k]! * b[k]!;
    b[i]! /= lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) b[i]! -= lower[k * n + i]! * b[k]!;
    b[i]! /= lower[i * n + i]!;
  }
}
