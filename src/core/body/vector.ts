/** A place (mm), a displacement (µm) or a direction, in the slide's frame: x along the way, y across (away from the operator), z up. */
export type Vector = readonly [number, number, number];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const length = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);

/** The same direction with length 1. @throws RangeError when the length is 0 */
export function unit(a: Vector): Vector {
  const size = length(a);
  if (!(size > 0))
    throw new RangeError(`direction [${a.join(', ')}] has length ${size}; expected a direction`);
  return scale(a, 1 / size);
}

export type AxisName = 'x' | 'y' | 'z';

const axes: Record<AxisName, Vector> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** The unit vector of a named axis. */
export const axisVector = (axis: AxisName): Vector => axes[axis];
