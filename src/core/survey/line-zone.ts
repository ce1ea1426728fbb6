import { slope } from '../body/displacement.ts';

/** A point that holds a zone from above or below, with its share in holding it: the shares of each side add up to 1. */
export interface Contact {
  /** Which point, from 0. */
  readonly index: number;
  readonly side: 'high' | 'low';
  readonly share: number;
}

/** The narrowest strip along the height axis between two parallel lines that holds all points. */
export interface LineZone {
  readonly width_um: number;
  /** Slope of both lines, µrad. */
  readonly slope_urad: number;
  /** The points that prove it: two on one line, and between them one on the other (or two heights at one station). */
  readonly contacts: readonly Contact[];
}

/**
 * Exact minimum-zone line, by the convex hull.
 *
 *     least over s of max(h − s x) − min(h − s x)  =  greatest over x of U(x) − L(x)                                  (1)
 *
 * U and L being the hull's upper and lower edge. The gap U − L is concave and broken only at corners, so its greatest value stands at a
 * corner of one edge, over (or under) a side of the other: those two points and that corner hold the zone, and no other line does better.
 *
 * @param stations_mm  n ≥ 2 places in rising order; the same place may come twice
 * @param heights_um   n heights
 * Source: hull rule in Gy. Hermann, Acta Polytechnica Hungarica 4(4), 2007; held to HiGHS in checks/minimum-zone.check.ts
 * @example lineZone([0, 100, 200], [0, 3, 2]).width_um      // 2
 */
export function lineZone(stations_mm: readonly number[], heights_um: readonly number[]): LineZone {
  const n = stations_mm.length;
  if (n < 2 || heights_um.length !== n)
    throw new RangeError(`${n} stations; expected 2 or more, with a height each`);
  const upper = hullEdge(stations_mm, heights_um, 1);
  const lower = hullEdge(stations_mm, heights_um, -1);
  const held = [
    ...heldBy(upper, lower, 'high', stations_mm, heights_um),
    ...heldBy(lower, upper, 'low', stations_mm, heights_um),
  ];
  const widest = Math.max(...held.map((one) => one.gap));
  const least = 1e-12 * Math.max(...heights_um.map(Math.abs));
  // Where both edges have a corner over one another, several sides touch the place; only the one that leaves nothing outside is the zone's.
  const zones = held
    .filter((one) => one.gap >= widest - least)
    .map((one) => zoneHeldBy(one, stations_mm, heights_um));
  return zones.reduce((best, zone) => (zone.width_um < best.width_um ? zone : best));
}

/** A corner of one edge against a side of the other that spans it or ends over it. */
interface Held {
  readonly gap: number;
  readonly corner: number;
  readonly side: Contact['side'];
  readonly under: readonly [number, number];
}

function heldBy(
  corners: readonly number[],
  other: readonly number[],
  side: Contact['side'],
  x: readonly number[],
  h: readonly number[],
): Held[] {
  const held: Held[] = [];
  let k = 0;
  for (const corner of corners) {
    while (k + 2 < other.length && x[other[k + 1]!]! < x[corner]!) k++;
    const meets = k + 2 < other.length && x[other[k + 1]!] === x[corner];
    for (const from of meets ? [k, k + 1] : [k]) {
      const under: Held['under'] = [other[from]!, other[Math.min(from + 1, other.length - 1)]!];
      const gap = Math.abs(h[corner]! - between(x, h, ...under, x[corner]!).value);
      held.push({ gap, corner, side, under });
    }
  }
  return held;
}

/** Height of the straight line through two points at x, and the second point's share in it. */
function between(x: readonly number[], h: readonly number[], from: number, to: number, at: number) {
  const span = x[to]! - x[from]!;
  const share = span > 0 ? (at - x[from]!) / span : 0;
  return { value: h[from]! + share * (h[to]! - h[from]!), share };
}

function zoneHeldBy(held: Held, x: readonly number[], h: readonly number[]): LineZone {
  const [from, to] = held.under;
  const other = held.side === 'high' ? 'low' : 'high';
  const span = x[to]! - x[from]!;
  const { share } = between(x, h, from, to, x[held.corner]!);
  const contacts: Contact[] = [
    { index: held.corner, side: held.side, share: 1 },
    { index: from, side: other, share: 1 - share },
    { index: to, side: other, share },
  ];
  const perMm = span > 0 ? (h[to]! - h[from]!) / span : 0;
  const off = x.map((at, i) => h[i]! - h[from]! - perMm * (at - x[from]!));
  return {
    width_um: Math.max(...off) - Math.min(...off),
    slope_urad: slope(perMm, 1),
    contacts: contacts.filter((one) => one.share > 0),
  };
}

/** Corners of the hull's upper (side 1) or lower (side −1) edge, from left to right; points on a straight side are no corners. */
function hullEdge(x: readonly number[], h: readonly number[], side: 1 | -1): number[] {
  const edge: number[] = [];
  for (let i = 0; i < x.length; i++) {
    const last = edge.at(-1);
    if (last !== undefined && x[i]! < x[last]!)
      throw new RangeError(`station ${x[i]} after ${x[last]}; expected rising order`);
    // Of two heights at one place only the outer can be a corner.
    if (last !== undefined && x[i] === x[last]) {
      if (side * (h[i]! - h[last]!) <= 0) continue;
      edge.pop();
    }
    while (edge.length >= 2) {
      const b = edge[edge.length - 1]!;
      const a = edge[edge.length - 2]!;
      const turn = (x[b]! - x[a]!) * (h[i]! - h[a]!) - (h[b]! - h[a]!) * (x[i]! - x[a]!);
      if (side * turn < 0) break;
      edge.pop();
    }
    edge.push(i);
  }
  return edge;
}
