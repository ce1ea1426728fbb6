import type { Random } from '../math/random.ts';
import type { Cell } from './cells.ts';

/** How badly worn a practice slide is: sds over the slides, µm at the pads' ends for form, µrad for turns. */
export interface Wear {
  readonly turn_urad: readonly [number, number, number];
  readonly bow_um: number;
  readonly cubic_um: number;
  readonly wave_um: number;
  readonly across_um: number;
  readonly cell_um: number;
}

export const usualWear: Wear = {
  turn_urad: [50, 50, 150],
  bow_um: 10,
  cubic_um: 6,
  wave_um: 3,
  across_um: 2,
  cell_um: 2,
};

/** Gaps of a worn slide at its nominal pose, µm, one a cell: a pose, and on each pad a bow, a cubic, a wave, a tilt across, and noise. */
export function wornGaps(
  cells: readonly Cell[],
  pads: number,
  pose: ArrayLike<number>,
  wear: Wear,
  random: Random,
): Float64Array {
  const form = Array.from({ length: pads }, () => ({
    bow: random.normal(0, wear.bow_um),
    cubic: random.normal(0, wear.cubic_um),
    wave: random.normal(0, wear.wave_um),
    waves: 1.5 + 1.5 * random.even(),
    phase: 2 * Math.PI * random.even(),
    across: random.normal(0, wear.across_um),
  }));
  return Float64Array.from(cells, (cell) => {
    const { bow, cubic, wave, waves, phase, across } = form[cell.pad]!;
    const x = cell.along;
    const high =
      bow * (x * x - 1 / 3) +
      cubic * (x ** 3 - 0.6 * x) * 2.5 +
      wave * Math.sin(Math.PI * waves * x + phase) +
      across * cell.across +
      random.normal(0, wear.cell_um);
    let stands = 0;
    for (let j = 0; j < pose.length; j++) stands -= cell.row[j]! * pose[j]!;
    return stands + high;
  });
}
