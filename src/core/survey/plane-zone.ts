import { slope } from '../body/displacement.ts';
import { inverse4, type Matrix4, times4 } from './four.ts';
import type { Contact } from './line-zone.ts';
import { fitPlane, meanOf } from './plane-fit.ts';

/** The narrowest slab along the height axis between two parallel planes that holds all points. */
export interface PlaneZone {
  readonly width_um: number;
  /** Slopes of both planes along x and along y, µrad. */
  readonly slope_x_urad: number;
  readonly slope_y_urad: number;
  /** Height of the lower plane at x = 0, y = 0, µm. */
  readonly low_um: number;
  /**
   * The points that prove it, each with its share: seen from above, the point that the highs' shares weigh out is the point that the
   * lows' shares weigh out. Three and one, two and two, or on a plate's edge cases two and one in a row, or one over one.
   */
  readonly contacts: readonly Contact[];
  /** How far the proof falls short of the width, µm: 0 but for rounding. */
  readonly gap_um: number;
}

/** Points of a surface, one list a number: n places and heights. */
export interface PointLists {
  readonly x_mm: ArrayLike<number>;
  readonly y_mm: ArrayLike<number>;
  readonly z_um: ArrayLike<number>;
}

/** Rounding leaves this much of the largest height; smaller gains are none. */
const roundingShare = 1e-13;
/** A share this small is a point that touches but does not hold. */
const leastShare = 1e-9;
/** Steps without gain after which the careful rule, which cannot go round in circles, takes over. */
const mostIdle = 12;

/**
 * Exact minimum-zone plane: the linear program
 *
 *     least  hi − lo   with   lo ≤ z − a x − b y ≤ hi  at every point                                              (1)
 *
 * solved by the simplex rule on its dual, in which a basis is four contacts:
 *
 *     most  Σ λ z − Σ μ z   with   Σ λ = Σ μ = 1,   Σ λ (x, y) = Σ μ (x, y),   λ, μ ≥ 0                             (2)
 *
 * Every step prices all points against the plane of the four (one pass), takes in the one furthest outside and lets go the one that must.
 * The last four are the proof: their shares solve (2), and no point lies outside. Ties, rows and equal heights are ordinary here
 * (a grid is full of them): after some steps without gain Bland's rule is followed, which cannot cycle.
 *
 * @throws RangeError  fewer than three points, or all in one row as seen from above: no one plane
 * Source: contact rules 3-1 and 2-2 (checks/flatness.check.ts); held to HiGHS in checks/minimum-zone.check.ts
 */
export function planeZone(points: PointLists): PlaneZone {
  const frame = framed(points);
  const start = firstBasis(frame);
  let basis = start;
  let idle = 0;
  let reached = -Infinity;
  // Bland's rule ends by itself; the count only keeps a fault in this file from hanging a program.
  for (let step = 0; step < 100_000; step++) {
    const inside = inverse4(columnsOf(frame, basis));
    const shares = times4(inside, [1, 1, 0, 0]);
    const plane = planeOf(frame, basis, inside);
    const value = plane.hi - plane.lo;
    idle = value > reached + frame.rounding ? 0 : idle + 1;
    reached = Math.max(reached, value);
    const enter = idle > mostIdle ? firstOutside(frame, basis, plane) : furthestOutside(frame, plane);
    // A contact that lies outside its own plane does so by rounding: nothing is left to gain.
    if (enter === undefined || basis.includes(enter)) return answered(frame, basis, shares, plane);
    const taken = times4(inside, columnOf(frame, enter));
    basis = exchanged(basis, enter, shares, taken, idle > mostIdle);
  }
  throw new Error('the minimum zone did not end');
}

/** Places about the middle of their rectangle, scaled to ±1; heights less their least-squares plane. */
interface Frame {
  readonly n: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Cosine and sine by which the places were turned. */
  readonly turn: readonly [number, number];
  readonly middle: readonly [number, number];
  readonly half: readonly [number, number];
  /** The plane taken off, in scaled places: level, along x, along y. */
  readonly taken: readonly [number, number, number];
  readonly rounding: number;
}

/** A column of (2): point i as a high is i, as a low n + i. */
type Basis = readonly [number, number, number, number];

interface Plane {
  readonly hi: number;
  readonly lo: number;
  readonly a: number;
  readonly b: number;
}

/** Scaled places and heights less their least-squares plane, so that no digits are spent on a tilt. */
function framed(points: PointLists): Frame {
  const n = points.x_mm.length;
  if (n < 3 || points.y_mm.length !== n || points.z_um.length !== n)
    throw new RangeError(`${n} points; expected 3 or more, with x, y and z each`);
  const turn = turnOf(points.x_mm, points.y_mm);
  const [x, midX, halfX] = scaled(points.x_mm, points.y_mm, turn);
  const [y, midY, halfY] = scaled(points.y_mm, points.x_mm, [turn[0], -turn[1]]);
  const z = Float64Array.from(points.z_um);
  const taken = fitPlane(x, y, z);
  let largest = 0;
  for (let i = 0; i < n; i++) {
    largest = Math.max(largest, Math.abs(z[i]!));
    z[i] = z[i]! - taken[0] - taken[1] * x[i]! - taken[2] * y[i]!;
  }
  const rounding = roundingShare * largest;
  return { n, x, y, z, turn, middle: [midX, midY], half: [halfX, halfY], taken, rounding };
}

/** Places that lie this much along a diagonal are turned onto their own axes. */
const aslant = 0.5;

/**
 * Cosine and sine of the turn that lays a strip that runs aslant along x, so that a narrow one is not all but a row in its own frame; none for
 * what lies square already, where turning would only spoil even numbers.
 */
function turnOf(x: ArrayLike<number>, y: ArrayLike<number>): readonly [number, number] {
  const n = x.length;
  const [mx, my] = [meanOf(x), meanOf(y)];
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const [u, v] = [x[i]! - mx, y[i]! - my];
    xx += u * u;
    xy += u * v;
    yy += v * v;
  }
  if (!(Math.abs(xy) > aslant * Math.sqrt(xx * yy))) return [1, 0];
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  return [Math.cos(angle), Math.sin(angle)];
}

/** One turned coordinate, cosine · own + sine · other, about its middle, scaled to ±1. */
function scaled(
  own: ArrayLike<number>,
  other: ArrayLike<number>,
  [cosine, sine]: readonly [number, number],
): [Float64Array, number, number] {
  const out = new Float64Array(own.length);
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < out.length; i++) {
    const value = cosine * own[i]! + sine * other[i]!;
    out[i] = value;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const middle = (low + high) / 2;
  const half = (high - low) / 2 || 1;
  for (let i = 0; i < out.length; i++) out[i] = (out[i]! - middle) / half;
  return [out, middle, half];
}

/** One point as high and low, which is allowed and worth nothing, and two more that make a wide triangle with it. */
function firstBasis(frame: Frame): Basis {
  const { n, x, y, z } = frame;
  let p = 0;
  for (let i = 1; i < n; i++) if (z[i]! > z[p]!) p = i;
  const far = (worth: (i: number) => number): number => {
    let best = 0;
    for (let i = 1; i < n; i++) if (worth(i) > worth(best)) best = i;
    return best;
  };
  const q = far((i) => (x[i]! - x[p]!) ** 2 + (y[i]! - y[p]!) ** 2);
  const r = far((i) => Math.abs((x[q]! - x[p]!) * (y[i]! - y[p]!) - (y[q]! - y[p]!) * (x[i]! - x[p]!)));
  return [p, n + p, n + q, n + r];
}

function columnOf({ n, x, y }: Frame, column: number): readonly [number, number, number, number] {
  const i = column % n;
  return column < n ? [1, 0, x[i]!, y[i]!] : [0, 1, -x[i]!, -y[i]!];
}

/** The four columns side by side, row by row. */
function columnsOf(frame: Frame, basis: Basis): Matrix4 {
  const out = new Float64Array(16);
  basis.forEach((column, k) => {
    columnOf(frame, column).forEach((value, row) => {
      out[4 * row + k] = value;
    });
  });
  return out;
}

/** The two planes through the four contacts: prices of (2). */
function planeOf({ n, z }: Frame, basis: Basis, inside: Matrix4): Plane {
  const prices = [0, 0, 0, 0];
  basis.forEach((column, k) => {
    const worth = column < n ? z[column]! : -z[column - n]!;
    for (let row = 0; row < 4; row++) prices[row]! += worth * inside[4 * k + row]!;
  });
  return { hi: prices[0]!, lo: -prices[1]!, a: prices[2]!, b: prices[3]! };
}

/** The column of the point that lies furthest outside the planes; none when all lie inside. */
function furthestOutside(frame: Frame, plane: Plane): number | undefined {
  const { n, x, y, z } = frame;
  const { a, b, hi, lo } = plane;
  let high = -Infinity;
  let low = Infinity;
  let highAt = 0;
  let lowAt = 0;
  for (let i = 0; i < n; i++) {
    const r = z[i]! - a * x[i]! - b * y[i]!;
    if (r > high) {
      high = r;
      highAt = i;
    }
    if (r < low) {
      low = r;
      lowAt = i;
    }
  }
  const above = high - hi;
  const below = lo - low;
  if (Math.max(above, below) <= frame.rounding) return undefined;
  return above >= below ? highAt : n + lowAt;
}

/** The first column whose point lies outside (Bland's rule). */
function firstOutside(frame: Frame, basis: Basis, plane: Plane): number | undefined {
  const { n, x, y, z } = frame;
  for (let column = 0; column < 2 * n; column++) {
    const i = column % n;
    const r = z[i]! - plane.a * x[i]! - plane.b * y[i]!;
    if ((column < n ? r - plane.hi : plane.lo - r) > frame.rounding && !basis.includes(column)) return column;
  }
  return undefined;
}

/** The basis with `enter` in the place of the contact whose share comes to nothing first. */
function exchanged(
  basis: Basis,
  enter: number,
  shares: readonly number[],
  taken: readonly number[],
  careful: boolean,
): Basis {
  let leave = -1;
  let least = Infinity;
  basis.forEach((column, k) => {
    if (!(taken[k]! > 1e-11)) return;
    const ratio = Math.max(0, shares[k]!) / taken[k]!;
    const tie = Math.abs(ratio - least) <= 1e-12;
    const better = tie ? (careful ? column < basis[leave]! : taken[k]! > taken[leave]!) : ratio < least;
    if (!better) return;
    least = Math.min(least, ratio);
    leave = k;
  });
  if (leave < 0) throw new Error('the minimum zone is without bound');
  return basis.map((column, k) => (k === leave ? enter : column)) as unknown as Basis;
}

function answered(frame: Frame, basis: Basis, shares: readonly number[], plane: Plane): PlaneZone {
  const { n, x, y, z, half, middle, taken } = frame;
  let high = -Infinity;
  let low = Infinity;
  for (let i = 0; i < n; i++) {
    const r = z[i]! - plane.a * x[i]! - plane.b * y[i]!;
    high = Math.max(high, r);
    low = Math.min(low, r);
  }
  const contacts = basis
    .map((column, k): Contact => {
      const side = column < n ? 'high' : 'low';
      return { index: column % n, side, share: shares[k]! };
    })
    .filter((one) => one.share > leastShare)
    .sort((one, other) => other.share - one.share);
  const along = (plane.a + taken[1]) / half[0];
  const across = (plane.b + taken[2]) / half[1];
  const [cosine, sine] = frame.turn;
  return {
    width_um: high - low,
    slope_x_urad: slope(cosine * along - sine * across, 1),
    slope_y_urad: slope(sine * along + cosine * across, 1),
    low_um: low + taken[0] - along * middle[0] - across * middle[1],
    contacts,
    gap_um: Math.max(0, high - low - (plane.hi - plane.lo)),
  };
}
