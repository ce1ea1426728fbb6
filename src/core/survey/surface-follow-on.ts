import { type Led, nearestLead, waysTo } from './follow-on.ts';
import { planesTo } from './led-by-planes.ts';
import type { PlatePoint } from './plate-input.ts';
import type { Readings } from './standing-out.ts';

/** Points of one row or column that lead to each other. */
const leastInLine = 3;
/** How far round a point the surface's own roughness is looked for, in steps of the grid or usual distances. */
const nearby = 2.5;
/** How far planes reach. */
const reach = 4;
/** A lead from all round holds little more noise than the reading's own; one from outside more. */
const fromOutside = 1.25;
/** A point is led to along its row and its column, so that less is needed than along a way alone; counted in checks/survey-slips. */
const needed = 0.66;
/** More slips than this in one survey are no slips. */
const mostSlips = 12;

/**
 * Heights on points, and how each follows on: along its row and along its column, each way that a reading of a line does; where the points are no
 * grid, from planes through the points round it and to each side of it. A bend, a step or the edge of a worn patch follows on from one of them.
 */
export function surfaceReadings(points: readonly PlatePoint[]): Readings {
  const led: Led[][] = points.map(() => []);
  const rows = linesOf(points, 'y_mm', 'x_mm');
  const columns = linesOf(points, 'x_mm', 'y_mm');
  for (const { at, along } of [...rows, ...columns]) {
    const ways = waysTo(at.map((i) => points[i]![along]));
    at.forEach((i, k) => {
      led[i]!.push(...ways[k]!.map((way) => ({ ...way, at: way.at.map((other) => at[other]!) })));
    });
  }
  const isGrid = led.filter((its) => its.length > 0).length > points.length / 2;
  const around = surroundings(isGrid ? ranked(points) : spaced(points));
  led.forEach((its, i) => {
    if (its.length === 0) its.push(...planesTo(points, i, around(i, reach)));
  });
  const touched = points.map((_, i) => [i]);
  led.forEach((its, k) => {
    for (const i of new Set(its.flatMap((one) => one.at))) touched[i]!.push(k);
  });
  return {
    off: (values, i) => nearestLead(led[i]!, values, i).off,
    expected: (values, i) => nearestLead(led[i]!, values, i).expected,
    touched: (i) => touched[i]!,
    near: (i) => around(i, nearby),
    isEnd: (i) => led[i]!.every((one) => one.noise > fromOutside),
    needed,
    most: mostSlips,
  };
}

type Axis = 'x_mm' | 'y_mm';

/** Rows or columns: points of one place across, in order along. */
function linesOf(points: readonly PlatePoint[], across: Axis, along: Axis) {
  const lines = new Map<number, number[]>();
  points.forEach((point, i) => {
    const line = lines.get(point[across]);
    if (line) line.push(i);
    else lines.set(point[across], [i]);
  });
  return [...lines.values()]
    .map((line) => line.sort((a, b) => points[a]![along] - points[b]![along]))
    .filter(
      (line) =>
        line.length >= leastInLine &&
        line.every((i, k) => k === 0 || points[i]![along] > points[line[k - 1]!]![along]),
    )
    .map((at) => ({ at, along }));
}

type Place = readonly [number, number];

/** Which column and row each point is in, counted. */
function ranked(points: readonly PlatePoint[]): Place[] {
  const ranks = (values: readonly number[]) =>
    new Map([...new Set(values)].sort((a, b) => a - b).map((value, k) => [value, k]));
  const x = ranks(points.map((point) => point.x_mm));
  const y = ranks(points.map((point) => point.y_mm));
  return points.map((point) => [x.get(point.x_mm)!, y.get(point.y_mm)!]);
}

/** Places in usual distances: the side of the square that each point has to itself. */
function spaced(points: readonly PlatePoint[]): Place[] {
  const [low, high]: [number[], number[]] = [
    [Infinity, Infinity],
    [-Infinity, -Infinity],
  ];
  for (const { x_mm, y_mm } of points)
    [x_mm, y_mm].forEach((value, k) => {
      low[k] = Math.min(low[k]!, value);
      high[k] = Math.max(high[k]!, value);
    });
  const [long, wide] = [high[0]! - low[0]!, high[1]! - low[1]!];
  const side = Math.max(Math.sqrt((long * wide) / points.length), Math.max(long, wide) / points.length) || 1;
  return points.map(({ x_mm, y_mm }) => [x_mm / side, y_mm / side]);
}

/** Which points lie within so far of one, itself not among them, in a square. */
function surroundings(places: readonly Place[]): (i: number, far: number) => number[] {
  const squares = new Map<string, number[]>();
  places.forEach(([u, v], i) => {
    const key = `${Math.floor(u)} ${Math.floor(v)}`;
    const square = squares.get(key);
    if (square) square.push(i);
    else squares.set(key, [i]);
  });
  return (i, far) => {
    const [u, v] = places[i]!;
    const found: number[] = [];
    for (let a = Math.floor(u - far); a <= Math.floor(u + far); a++)
      for (let b = Math.floor(v - far); b <= Math.floor(v + far); b++)
        for (const k of squares.get(`${a} ${b}`) ?? [])
          if (k !== i && Math.max(Math.abs(places[k]![0] - u), Math.abs(places[k]![1] - v)) <= far)
            found.push(k);
    return found;
  };
}
