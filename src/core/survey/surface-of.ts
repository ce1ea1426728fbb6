import { Matrix } from 'ml-matrix';
import { rise } from '../body/displacement.ts';
import { type Adjusted, adjusted, type Step } from './adjust.ts';
import type { Causes } from './causes.ts';
import { countsOf, diagonalHeights, eightLineNodes, stepOf } from './eight-lines.ts';
import {
  type EightLinesPlate,
  eightLines,
  type GridPlate,
  type PlateInput,
  type PointsPlate,
} from './plate-input.ts';
import { together } from './profile.ts';
import type { Closure, Misfit, Surface } from './surface.ts';
import { median } from './suspect.ts';

/** Any survey of a surface as heights, with their doubt, closing errors and readings that fit badly. */
export function surfaceOf(input: PlateInput): Surface {
  if (input.kind === 'points') return fromPoints(input);
  return input.kind === 'grid' ? fromGrid(input) : fromEightLines(input);
}

function fromPoints(input: PointsPlate): Surface {
  const each_um = together(input.reading_sd_um, input.repeatability_sd_um);
  return {
    x_mm: input.points.map((point) => point.x_mm),
    y_mm: input.points.map((point) => point.y_mm),
    z_um: input.points.map((point) => point.z_um),
    ...(each_um === undefined ? {} : { each_um }),
    closures: [],
    misfits: [],
  };
}

function fromGrid(input: GridPlate): Surface {
  const { along_x_urad, along_y_urad, step_x_mm, step_y_mm } = input;
  const rows = along_x_urad.length;
  const columns = along_y_urad.length;
  const node = (column: number, row: number) => row * columns + column;
  const steps: Step[] = [
    ...along_x_urad.flatMap((angles, row) =>
      angles.map((angle_urad, k) => ({
        path: `along_x_urad[${row}][${k}]`,
        from: node(k, row),
        to: node(k + 1, row),
        angle_urad,
        step_mm: step_x_mm,
      })),
    ),
    ...along_y_urad.flatMap((angles, column) =>
      angles.map((angle_urad, k) => ({
        path: `along_y_urad[${column}][${k}]`,
        from: node(column, k),
        to: node(column, k + 1),
        angle_urad,
        step_mm: step_y_mm,
      })),
    ),
  ];
  const fit = adjusted(steps, rows * columns, 0);
  const sd = together(input.reading_sd_urad, input.repeatability_sd_urad) ?? shownSd(fit);
  const cells = Array.from({ length: (rows - 1) * (columns - 1) }, (_, cell) => {
    const column = cell % (columns - 1);
    const row = Math.floor(cell / (columns - 1));
    // Round the cell: along the front, up the right, and back along the rear and down the left.
    const closing_um =
      rise(along_x_urad[row]![column]! - along_x_urad[row + 1]![column]!, step_x_mm) +
      rise(along_y_urad[column + 1]![row]! - along_y_urad[column]![row]!, step_y_mm);
    return named(
      `loop ${column + 1}, ${row + 1}`,
      closing_um,
      sd === undefined ? undefined : sd * Math.SQRT2 * rise(1, Math.hypot(step_x_mm, step_y_mm)),
    );
  });
  return {
    x_mm: Array.from({ length: rows * columns }, (_, i) => (i % columns) * step_x_mm),
    y_mm: Array.from({ length: rows * columns }, (_, i) => Math.floor(i / columns) * step_y_mm),
    z_um: fit.z_um,
    ...(sd === undefined ? {} : { causes: causesOf(fit.response, sd) }),
    closures: cells,
    misfits: misfitsOf(steps, fit, sd),
  };
}

function fromEightLines(input: EightLinesPlate): Surface {
  const places = eightLineNodes(input);
  const steps = eightLines.flatMap((name, line) =>
    input.lines_urad[name].map((angle_urad, k): Step => {
      const nodes = places.nodes[name];
      return {
        path: `lines_urad.${name}[${k}]`,
        from: nodes[k]!,
        to: nodes[k + 1]!,
        angle_urad,
        step_mm: stepOf(input, name),
        line,
      };
    }),
  );
  const fit = adjusted(steps, places.x_mm.length, eightLines.length);
  const hung = diagonalHeights(input, places);
  const sd = together(input.reading_sd_urad, input.repeatability_sd_urad) ?? shownSd(fit);
  const response = diagonalResponse(input, places);
  const closures = hung.closings.map(({ name, closing_um }, k) =>
    named(name, closing_um, sd === undefined ? undefined : sd * response.closings[k]!),
  );
  const byAll = input.method === 'least squares';
  return {
    x_mm: places.x_mm,
    y_mm: places.y_mm,
    z_um: byAll ? fit.z_um : hung.z_um,
    ...(sd === undefined ? {} : { causes: causesOf(byAll ? fit.response : response.heights, sd) }),
    closures,
    misfits: misfitsOf(steps, fit, sd),
  };
}

/** What one µrad on each reading does to the heights and, summed as squares, to the closings: the rule is linear, so it is tried out. */
function diagonalResponse(input: EightLinesPlate, places: ReturnType<typeof eightLineNodes>) {
  const counts = countsOf(input);
  const silent = Object.fromEntries(
    eightLines.map((name) => [name, new Array<number>(counts[name]).fill(0)]),
  ) as Record<(typeof eightLines)[number], number[]>;
  const columns: number[][] = [];
  const squares = [0, 0];
  for (const name of eightLines)
    for (let k = 0; k < counts[name]; k++) {
      const lines_urad = { ...silent, [name]: silent[name].with(k, 1) };
      const { z_um, closings } = diagonalHeights({ ...input, lines_urad }, places);
      columns.push(z_um);
      closings.forEach(({ closing_um }, c) => {
        squares[c]! += closing_um ** 2;
      });
    }
  return { heights: new Matrix(columns).transpose(), closings: squares.map(Math.sqrt) };
}

const named = (name: string, closing_um: number, sd_um: number | undefined): Closure => ({
  name,
  closing_um,
  ...(sd_um === undefined ? {} : { sd_um }),
});

/** One reading's sd as the adjustment shows it, µrad: only where there is something to check. */
const shownSd = (fit: Adjusted): number | undefined =>
  fit.degrees > 0
    ? Math.sqrt(fit.left_urad.reduce((sum, left) => sum + left * left, 0) / fit.degrees)
    : undefined;

const causesOf = (response: Matrix, sd_urad: number): Causes =>
  Array.from({ length: response.columns }, (_, k) =>
    Float64Array.from(response.getColumn(k), (um) => um * sd_urad),
  );

/** Beyond this many of its own sds a reading fits badly. */
const farOff = 5;
/** A reading that the others check by less than this share cannot be judged. */
const leastChecked = 0.05;

/**
 * The reading that fits worst, when it is far off: each left-over over its own sd (Baarda's test, from memory). One slip spoils the fit of its
 * neighbours too, so only the worst is named; once it is put right the next shows. The scatter is the readings' own, by the median.
 */
function misfitsOf(steps: readonly Step[], fit: Adjusted, stated_urad: number | undefined): Misfit[] {
  if (fit.degrees < 2) return [];
  const weighed = steps.flatMap((step, k) => {
    const share = fit.checked[k]!;
    return share < leastChecked ? [] : [{ step, left: fit.left_urad[k]! / Math.sqrt(share), share }];
  });
  if (weighed.length === 0) return [];
  const usual = 1.4826 * median(weighed.map((one) => Math.abs(one.left)));
  const sd = Math.max(usual, Math.min(stated_urad ?? 0, usual || Infinity), 1e-9);
  const worst = weighed.reduce((most, one) => (Math.abs(one.left) > Math.abs(most.left) ? one : most));
  const sds = Math.abs(worst.left) / sd;
  // What a slip leaves is only the checked share of it.
  return sds > farOff ? [{ path: worst.step.path, off_urad: worst.left / Math.sqrt(worst.share), sds }] : [];
}
