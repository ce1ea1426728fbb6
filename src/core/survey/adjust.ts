import { Matrix } from 'ml-matrix';
import { rise } from '../body/displacement.ts';
import { symmetricParts } from '../math/symmetric.ts';

/** A step between two nodes: the rise read on it, and whose datum it shares. */
export interface Step {
  readonly path: string;
  readonly from: number;
  readonly to: number;
  readonly angle_urad: number;
  readonly step_mm: number;
  /** Which line's own datum it has; left out when gravity is the datum. */
  readonly line?: number;
}

export interface Adjusted {
  readonly z_um: readonly number[];
  /** Heights for one µrad more on each reading, µm: rows nodes, columns steps. */
  readonly response: Matrix;
  /** Reading less what the heights give, µrad. */
  readonly left_urad: readonly number[];
  /** Share of a reading's own error that shows in what is left of it: 0 nobody checks it, 1 the others hold it wholly. */
  readonly checked: readonly number[];
  /** Readings less what they determine. */
  readonly degrees: number;
}

/**
 * Heights of nodes from steps between them, all readings alike, by least squares:
 *
 *     least Σ (aₖ − (z_to − z_from)/s − datum_line)²                                  (1)
 *
 * Level and tilt of the whole are free; of all answers the shortest is given (they differ by a plane, which flatness does not see).
 *
 * @param nodes  how many
 * @param lines  how many lines have a datum of their own
 */
export function adjusted(steps: readonly Step[], nodes: number, lines: number): Adjusted {
  const size = nodes + lines;
  const rows = steps.map(({ from, to, step_mm, line }) => {
    const row: [number, number][] = [
      [from, -1 / rise(1, step_mm)],
      [to, 1 / rise(1, step_mm)],
    ];
    if (line !== undefined) row.push([nodes + line, 1]);
    return row;
  });
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (const row of rows) for (const [i, a] of row) for (const [j, b] of row) normal[i]![j]! += a * b;
  const parts = symmetricParts(normal);
  const whole = Matrix.zeros(size, steps.length);
  rows.forEach((row, k) => {
    for (let i = 0; i < size; i++)
      whole.set(
        i,
        k,
        row.reduce((sum, [j, a]) => sum + parts.inverse[i]![j]! * a, 0),
      );
  });
  const solved = whole.mmul(Matrix.columnVector(steps.map((step) => step.angle_urad))).to1DArray();
  const left_urad = steps.map(
    (step, k) => step.angle_urad - rows[k]!.reduce((sum, [j, a]) => sum + a * solved[j]!, 0),
  );
  const checked = rows.map((row, k) =>
    Math.max(0, 1 - row.reduce((sum, [j, a]) => sum + a * whole.get(j, k), 0)),
  );
  return {
    z_um: solved.slice(0, nodes),
    response: whole.subMatrix(0, nodes - 1, 0, steps.length - 1),
    left_urad,
    checked,
    degrees: steps.length - (size - parts.free.length),
  };
}
