import { rise } from '../body/displacement.ts';
import { type EightLine, type EightLinesPlate, eightLines } from './plate-input.ts';

/** Nodes of the eight lines: each place once, and for each line its nodes in order. */
export interface EightLineNodes {
  readonly x_mm: readonly number[];
  readonly y_mm: readonly number[];
  readonly nodes: Readonly<Record<EightLine, readonly number[]>>;
}

/** Steps of each line. */
type Counts = Readonly<Record<EightLine, number>>;
export const countsOf = (input: EightLinesPlate): Counts =>
  Object.fromEntries(eightLines.map((name) => [name, input.lines_urad[name].length])) as Record<
    EightLine,
    number
  >;

/** The distance between the feet on a line, mm. */
export const stepOf = (input: EightLinesPlate, name: EightLine): number =>
  name === 'rising' || name === 'falling'
    ? input.step_diagonal_mm
    : name === 'left' || name === 'right' || name === 'middle_y'
      ? input.step_y_mm
      : input.step_x_mm;

/**
 * Where the stations lie: the middle of the surface at (0, 0), x to the right, y to the back. The diagonals' steps divide them evenly between
 * the corners. Corners, middles of sides and the middle of the surface are one node each however many lines pass.
 */
export function eightLineNodes(input: EightLinesPlate): EightLineNodes {
  const counts = countsOf(input);
  const halfX = (counts.front * input.step_x_mm) / 2;
  const halfY = (counts.left * input.step_y_mm) / 2;
  const ends: Readonly<Record<EightLine, readonly [number, number, number, number]>> = {
    front: [-halfX, -halfY, halfX, -halfY],
    back: [-halfX, halfY, halfX, halfY],
    left: [-halfX, -halfY, -halfX, halfY],
    right: [halfX, -halfY, halfX, halfY],
    middle_x: [-halfX, 0, halfX, 0],
    middle_y: [0, -halfY, 0, halfY],
    rising: [-halfX, -halfY, halfX, halfY],
    falling: [-halfX, halfY, halfX, -halfY],
  };
  const x_mm: number[] = [];
  const y_mm: number[] = [];
  const known = new Map<string, number>();
  const node = (x: number, y: number): number => {
    const key = `${Math.round(x * 1e3)} ${Math.round(y * 1e3)}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    known.set(key, x_mm.length);
    x_mm.push(x);
    y_mm.push(y);
    return x_mm.length - 1;
  };
  const nodes = Object.fromEntries(
    eightLines.map((name) => {
      const [x0, y0, x1, y1] = ends[name];
      const many = counts[name];
      const at = (from: number, to: number, k: number) => from + ((to - from) * k) / many;
      return [name, Array.from({ length: many + 1 }, (_, k) => node(at(x0, x1, k), at(y0, y1, k)))];
    }),
  ) as Record<EightLine, number[]>;
  return { x_mm, y_mm, nodes };
}

/**
 * Heights with the diagonals as datum: both pass through 0 in the middle of the surface and have ends alike, the sides hang between the
 * corners, the middle lines between the middles of the sides. Where a middle line misses 0 in the middle is its closing error.
 *
 * @returns heights at the nodes, µm, and the two closings (middle line less diagonals)
 * Source: the rule is J. C. Moody's, The Tool Engineer, October 1955 (from memory); numbers in checks/flatness.check.ts are derived
 */
export function diagonalHeights(input: EightLinesPlate, { x_mm, nodes }: EightLineNodes) {
  const z_um = new Array<number>(x_mm.length).fill(0);
  const raw = (name: EightLine): number[] => {
    const heights = [0];
    let sum_urad = 0;
    for (const angle of input.lines_urad[name]) {
      sum_urad += angle;
      heights.push(rise(sum_urad, stepOf(input, name)));
    }
    return heights;
  };
  /** Lays a line so that its ends stand at the given heights. */
  const hung = (name: EightLine, first: number, last: number): number[] => {
    const heights = raw(name);
    const many = heights.length - 1;
    const tilt = (last - first - heights[many]!) / many;
    return heights.map((height, k) => first + height + tilt * k);
  };
  const put = (name: EightLine, heights: readonly number[]) => {
    for (const [k, node] of nodes[name].entries()) z_um[node] = heights[k]!;
  };
  for (const name of ['rising', 'falling'] as const) {
    const level = hung(name, 0, 0);
    const middle = level[(level.length - 1) / 2]!;
    put(
      name,
      level.map((height) => height - middle),
    );
  }
  const endOf = (name: EightLine, end: 0 | -1) => z_um[nodes[name].at(end)!]!;
  for (const name of ['front', 'back', 'left', 'right'] as const)
    put(name, hung(name, endOf(name, 0), endOf(name, -1)));
  const middle = nodes.rising[countsOf(input).rising / 2]!;
  const closings = (['middle_x', 'middle_y'] as const).map((name) => {
    const heights = hung(name, endOf(name, 0), endOf(name, -1));
    const closing_um = heights[(heights.length - 1) / 2]!;
    put(name, heights);
    return { name, closing_um };
  });
  z_um[middle] = 0;
  return { z_um, closings };
}
