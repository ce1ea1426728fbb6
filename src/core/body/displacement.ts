import { add, cross, dot, scale, type Vector } from './vector.ts';

/**
 * How far an angle lifts the end of an arm: the one place that holds µm = mm × µrad / 1000.
 *
 * @param angle_urad  µrad (= µm/m)
 * @param arm_mm      mm
 * @returns           µm
 * @example rise(20, 300)      // 6
 */
export const rise = (angle_urad: number, arm_mm: number): number => (angle_urad * arm_mm) / 1000;

/** The slope, µrad, that lifts the end of an arm of `arm_mm` by `rise_um`: the inverse of {@link rise}. */
export const slope = (rise_um: number, arm_mm: number): number => (rise_um * 1000) / arm_mm;

/** A small displacement of the slide: u(p) = t + ω × p, with t in µm and ω in µrad. */
export interface Pose {
  readonly t_um: Vector;
  readonly turn_urad: Vector;
}

/** A pose as six numbers [t_x, t_y, t_z, ω_x, ω_y, ω_z] (µm, µrad); rows over it have the same order. */
export type PoseNumbers = readonly [number, number, number, number, number, number];

export const poseSize = 6;

export const poseFromNumbers = (q: ArrayLike<number>): Pose => ({
  t_um: [q[0]!, q[1]!, q[2]!],
  turn_urad: [q[3]!, q[4]!, q[5]!],
});

/** Displacement of the point p of the slide, µm: t + ω × p. */
export const displacement = (pose: Pose, p_mm: Vector): Vector =>
  add(pose.t_um, scale(cross(pose.turn_urad, p_mm), rise(1, 1)));

/**
 * The row r with r · pose = n · u(p): what a probe looking along n at p sees of a pose, µm.
 *
 *     n · (t + ω × p) = n · t + ω · (p × n)
 */
export function displacementRow(n: Vector, p_mm: Vector): PoseNumbers {
  const arm = cross(p_mm, n);
  return [n[0], n[1], n[2], rise(1, arm[0]), rise(1, arm[1]), rise(1, arm[2])];
}

/** Displacement of p along n, µm: plus moves along n. */
export const displacementAlong = (pose: Pose, n: Vector, p_mm: Vector): number =>
  dot(n, displacement(pose, p_mm));
