import { seededRandom } from '../../src/core/math/random.ts';

/** Smooth chance over the plane: about −1 to 1, mean 0, sd about 0.4, bumps about one unit wide. */
export type Lattice = (x: number, y: number) => number;

/** Random values on whole places, joined smoothly between them. The same seed gives the same plane. */
export function latticeNoise(seed: number): Lattice {
  const { even } = seededRandom(seed);
  const table = Float32Array.from({ length: 1 << 14 }, () => 2 * even() - 1);
  const value = (col: number, row: number): number =>
    table[(Math.imul(col, 7919) ^ Math.imul(row, 104_729) ^ Math.imul(col + 31 * row, 613)) & 0x3fff]!;
  return (x, y) => {
    const col = Math.floor(x);
    const row = Math.floor(y);
    const dx = x - col;
    const dy = y - row;
    const u = dx * dx * (3 - 2 * dx);
    const v = dy * dy * (3 - 2 * dy);
    const top = value(col, row) * (1 - u) + value(col + 1, row) * u;
    const bottom = value(col, row + 1) * (1 - u) + value(col + 1, row + 1) * u;
    return top * (1 - v) + bottom * v;
  };
}

/** The lattice drawn out along a direction: bumps `length` long and `breadth` wide, both in the units of x and y. */
export function drawnOut(noise: Lattice, angle_rad: number, length: number, breadth: number): Lattice {
  const c = Math.cos(angle_rad);
  const s = Math.sin(angle_rad);
  return (x, y) => noise((c * x + s * y) / length, (c * y - s * x) / breadth);
}
