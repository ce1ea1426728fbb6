import { displacementRow, rise, slope } from '../body/displacement.ts';
import { type AxisName, axisVector, type Vector } from '../body/vector.ts';
import type { Doubted } from './spindle.ts';
import {
  addReading,
  emptyRow,
  hasDoubt,
  poseAt,
  rowVariance,
  type Travel,
  type TravelRow,
} from './travel.ts';

/** A carriage of a mill or grinder. */
export interface Carriage {
  readonly travel: Travel;
  /** Whether it carries the work or the tool. */
  readonly carries: 'work' | 'tool';
  /** Where its poses are told of, in the frame of the work with every carriage at 0, mm. */
  readonly reference_mm: Vector;
}

/** A block as it stands on the machine, milled or ground all over in one setting. */
export interface BlockAsk {
  /** From the base outward: of those that carry the work the last bears the table, of those that carry the tool the last bears it. */
  readonly carriages: readonly Carriage[];
  /** The tool's point with every carriage at 0, mm, in the frame of the work. */
  readonly tool_mm: Vector;
  /** Middle of the block and its lengths, mm, in the frame of the work. */
  readonly middle_mm: Vector;
  readonly size_mm: Vector;
  readonly faces: readonly BlockFaceName[];
}

export type BlockFaceName = '+x' | '-x' | '+y' | '-y' | '+z' | '-z';

/** A face as cut. */
export interface BlockFace {
  readonly face: BlockFaceName;
  /** The two axes in the face, in the order of x, y, z. */
  readonly axes: readonly [AxisName, AxisName];
  /** Places along those axes, mm; as many along each. */
  readonly places_mm: readonly [readonly number[], readonly number[]];
  /** First axis by second: how far it stands out of the true face, µm; plus: metal left on. Against its middle. */
  readonly out_um: readonly (readonly number[])[];
  /** Slopes of the least-squares plane along both axes, µrad; plus: stands out toward plus. */
  readonly tilt_urad: readonly [Required<Doubted>, Required<Doubted>];
  /** Between two planes parallel to the least-squares plane, µm. */
  readonly flatness_um: Required<Doubted>;
  /** Between two planes parallel to the true face (for +z: to the table), µm. */
  readonly parallel_um: Required<Doubted>;
}

/** Two faces to each other. */
export interface BlockCorner {
  readonly faces: readonly [BlockFaceName, BlockFaceName];
  /** Angle inside the metal less 90°, µrad; plus: more than square. */
  readonly square_urad: Required<Doubted>;
}

/** What comes off a mill or grinder. */
export interface Block {
  readonly faces: readonly BlockFace[];
  readonly corners: readonly BlockCorner[];
}

/** Places looked at along each side of a face. */
const grid = 9;

/** One linear reading over all carriages. */
type Row = readonly TravelRow[];

/**
 * A block as milled or ground: rigid carriages stacked from the base, each out by t + ω × arm at the point of cut.
 *
 *     e(w) = Σ tool carriages (t + ω × a) − Σ work carriages (t + ω × a)                                      (1)
 *
 * at the point w of the work, everything standing where it must for the tool to be there. A carriage's arm a runs from its
 * reference to the cut; the carriages it carries have moved it, so the arm of the lower one changes as the upper ones go.
 * e along the face's normal is metal left on. The tool is a point: what a cutter out of tram does to a face is not in it.
 *
 * @throws RangeError  a face that no carriage sweeps, two carriages along one axis, or a place beyond a travel
 * Source: rigid-body error models of machine tools; arms by hand in checks/parts-block.check.ts.
 */
export function block(ask: BlockAsk): Block {
  const { carriages } = ask;
  const axes = carriages.map((one) => one.travel.along);
  if (new Set(axes).size !== axes.length)
    throw new RangeError(`carriages along ${axes.join(', ')}; expected one for an axis`);
  const doubts = carriages.some((one) => hasDoubt(one.travel));
  const sdOf = (row: Row): number =>
    doubts ? Math.sqrt(row.reduce((sum, part, k) => sum + rowVariance(carriages[k]!.travel, part), 0)) : 0;
  const made = ask.faces.map((face) => faceOf(ask, face, sdOf));
  const corners = made.flatMap((a, i) =>
    made.slice(i + 1).flatMap((b): BlockCorner[] => {
      const [inA, inB] = [a.normal, b.normal];
      if (inA === inB) return [];
      const rows = [a.tiltRows.get(inB)!, b.tiltRows.get(inA)!];
      // Outward normals lean by their tilts: the angle inside the metal opens where either face falls away at the edge.
      const square = -(b.side * a.tilts.get(inB)! + a.side * b.tilts.get(inA)!);
      const row = combined([
        [rows[0]!, b.side],
        [rows[1]!, a.side],
      ]);
      return [{ faces: [a.face.face, b.face.face], square_urad: { value: square, sd: sdOf(row) } }];
    }),
  );
  return { faces: made.map((one) => one.face), corners };
}

/** A reading of the error along `normal` at the work's point w, and its value. */
function errorAt(ask: BlockAsk, normal: Vector, w: Vector, row: Row, times: number): number {
  let sum = 0;
  ask.carriages.forEach((carriage, k) => {
    const sign = carriage.carries === 'tool' ? 1 : -1;
    const at_mm = placeOf(ask, carriage, w);
    const arm = displacementRow(normal, armOf(ask, k, w));
    addReading(row[k]!, carriage.travel, at_mm, arm, times * sign);
    const pose = poseAt(carriage.travel, at_mm);
    sum += sign * arm.reduce((part, of, j) => part + of * pose[j]!, 0);
  });
  return sum;
}

const indexOf = (axis: AxisName): number => 'xyz'.indexOf(axis);

/** Where a carriage stands when the tool is at w: the work comes to the tool, or the tool goes to the work. */
function placeOf({ tool_mm }: BlockAsk, { travel, carries }: Carriage, w: Vector): number {
  const i = indexOf(travel.along);
  return carries === 'work' ? tool_mm[i]! - w[i]! : w[i]! - tool_mm[i]!;
}

/** From a carriage's reference to the cut: what it carries has moved along by then, and of a tool's carriage the tool with it. */
function armOf(ask: BlockAsk, k: number, w: Vector): Vector {
  const carriage = ask.carriages[k]!;
  const from = carriage.carries === 'work' ? w : ask.tool_mm;
  const arm = from.map((part, i) => part - carriage.reference_mm[i]!);
  ask.carriages.forEach((other, m) => {
    if (m > k && other.carries === carriage.carries)
      arm[indexOf(other.travel.along)]! += placeOf(ask, other, w);
  });
  return arm as unknown as Vector;
}

interface MadeFace {
  readonly face: BlockFace;
  readonly normal: AxisName;
  readonly side: 1 | -1;
  readonly tilts: ReadonlyMap<AxisName, number>;
  readonly tiltRows: ReadonlyMap<AxisName, Row>;
}

function faceOf(ask: BlockAsk, name: BlockFaceName, sdOf: (row: Row) => number): MadeFace {
  const side = name[0] === '+' ? 1 : -1;
  const normal = name[1] as AxisName;
  const axes = (['x', 'y', 'z'] as const).filter((axis) => axis !== normal) as [AxisName, AxisName];
  if (!axes.some((axis) => ask.carriages.some((one) => one.travel.along === axis)))
    throw new RangeError(`face ${name}: no carriage travels along ${axes.join(' or ')}; expected one`);
  const outward = axisVector(normal).map((part) => part * side) as unknown as Vector;
  const [first, second] = axes.map((axis) => {
    const i = indexOf(axis);
    return Array.from(
      { length: grid },
      (_, k) => ask.middle_mm[i]! + (k / (grid - 1) - 0.5) * ask.size_mm[i]!,
    );
  }) as [number[], number[]];
  const points = first.flatMap((a) =>
    second.map((b) => {
      const w = [0, 0, 0];
      w[indexOf(normal)] = ask.middle_mm[indexOf(normal)]! + (side * ask.size_mm[indexOf(normal)]!) / 2;
      w[indexOf(axes[0])] = a;
      w[indexOf(axes[1])] = b;
      return { a, b, w: w as unknown as Vector };
    }),
  );
  const rowOf = (weights: ArrayLike<number>): Row => {
    const row = ask.carriages.map((one) => emptyRow(one.travel));
    points.forEach(({ w }, i) => {
      if (weights[i] !== 0) errorAt(ask, outward, w, row, weights[i]!);
    });
    return row;
  };
  const scratch = ask.carriages.map((one) => emptyRow(one.travel));
  const raw = points.map(({ w }) => errorAt(ask, outward, w, scratch, 0));
  const level = raw[(points.length - 1) / 2]!;
  const out = raw.map((value) => value - level);

  // A square grid about its middle: the plane's slopes are sums over the points, and do not mix.
  const slopeWeights = (of: (p: (typeof points)[number]) => number, middle: number) => {
    const spread = points.reduce((sum, p) => sum + (of(p) - middle) ** 2, 0);
    return points.map((p) => slope(of(p) - middle, spread));
  };
  const middles = axes.map((axis) => ask.middle_mm[indexOf(axis)]!);
  const tiltWeights = [slopeWeights((p) => p.a, middles[0]!), slopeWeights((p) => p.b, middles[1]!)];
  const tilts = tiltWeights.map((weights) => out.reduce((sum, value, i) => sum + value * weights[i]!, 0));
  const tiltRows = tiltWeights.map(rowOf);
  const mean = out.reduce((sum, value) => sum + value, 0) / out.length;
  const left = out.map(
    (value, i) =>
      value -
      mean -
      rise(tilts[0]!, points[i]!.a - middles[0]!) -
      rise(tilts[1]!, points[i]!.b - middles[1]!),
  );
  const range = (values: readonly number[], takesPlane: boolean): Required<Doubted> => {
    const high = values.indexOf(Math.max(...values));
    const low = values.indexOf(Math.min(...values));
    const arms = [points[high]!.a - points[low]!.a, points[high]!.b - points[low]!.b];
    const weights = points.map(
      (_, i) =>
        (i === high ? 1 : 0) -
        (i === low ? 1 : 0) -
        (takesPlane ? rise(tiltWeights[0]![i]!, arms[0]!) + rise(tiltWeights[1]![i]!, arms[1]!) : 0),
    );
    return { value: values[high]! - values[low]!, sd: sdOf(rowOf(weights)) };
  };
  const doubted = (k: number): Required<Doubted> => ({ value: tilts[k]!, sd: sdOf(tiltRows[k]!) });
  return {
    face: {
      face: name,
      axes,
      places_mm: [first, second],
      out_um: first.map((_, i) => out.slice(i * grid, (i + 1) * grid)),
      tilt_urad: [doubted(0), doubted(1)],
      flatness_um: range(left, true),
      parallel_um: range(out, false),
    },
    normal,
    side,
    tilts: new Map([
      [axes[0], tilts[0]!],
      [axes[1], tilts[1]!],
    ]),
    tiltRows: new Map([
      [axes[0], tiltRows[0]!],
      [axes[1], tiltRows[1]!],
    ]),
  };
}

/** A sum of rows, each with its sign. */
function combined(parts: readonly (readonly [Row, number])[]): Row {
  return parts[0]![0].map((first, k) =>
    Float64Array.from(first, (_, i) => parts.reduce((sum, [row, sign]) => sum + sign * row[k]![i]!, 0)),
  );
}
