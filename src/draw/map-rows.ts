import type { Pad } from '../core/body/pad.ts';
import type { Slide } from '../core/body/slide.ts';
import { cross, dot, unit } from '../core/body/vector.ts';
import type { BenchSide } from './bench-side.ts';

/** A pad as it lies on the bench, mm. */
export interface LyingPad {
  readonly pad: Pad;
  /** Left and right end along the travel, mm. */
  readonly left_mm: number;
  readonly right_mm: number;
  /** Middle across, and half of what it covers across as seen from above. */
  readonly away_mm: number;
  readonly halfAway_mm: number;
  readonly up_mm: number;
  /** The way the face looks on the bench: part away and part up of a unit vector. */
  readonly looks: { readonly away: number; readonly up: number };
  /** The zone numbers from left to right. */
  readonly zones: readonly number[];
}

/** Pads that lie one behind the other along the travel make a row; rows come far side first. */
export interface MapRow {
  readonly pads: readonly LyingPad[];
  /**
   * How it stands to the row before it: the first, on the same bar of the casting, or on another bar with a neck between.
   * A part with several pads in a row is drawn as one plate.
   */
  readonly joint: 'first' | 'same bar' | 'new bar';
  /** The faces of this row and the one before it meet in an edge: the root of a V, or its ridge. */
  readonly meetsBefore: boolean;
}

/** The rows of a part in the order in which they lie on the bench, far side first. */
export function mapRows(slide: Slide, side: BenchSide): MapRow[] {
  const lying = slide.pads
    .map((pad) => layPad(pad, side))
    .sort((a, b) => b.away_mm - a.away_mm || a.left_mm - b.left_mm);
  const rows: LyingPad[][] = [];
  for (const pad of lying) {
    const row = rows.at(-1);
    if (row?.every((other) => isBeside(other, pad))) row.push(pad);
    else rows.push([pad]);
  }
  return rows.map((pads, i) => {
    const before = rows[i - 1]?.[0];
    const here = pads[0]!;
    const gap_mm = before ? nearEdge(before) - farEdge(here) : 0;
    const isSingle = pads.length === 1 && rows[i - 1]?.length === 1;
    const breadth_mm = before ? Math.min(before.halfAway_mm, here.halfAway_mm) * 2 : 0;
    return {
      pads: [...pads].sort((a, b) => a.left_mm - b.left_mm),
      joint: !before ? 'first' : isSingle && gap_mm > Math.max(1.5 * breadth_mm, 25) ? 'new bar' : 'same bar',
      meetsBefore:
        before !== undefined &&
        Math.abs(gap_mm) < 2 + breadth_mm * 0.2 &&
        before.looks.away * here.looks.away < -1e-6,
    };
  });
}

const farEdge = (pad: LyingPad): number => pad.away_mm + pad.halfAway_mm;
const nearEdge = (pad: LyingPad): number => pad.away_mm - pad.halfAway_mm;

/** Two pads stand in one row when they share most of their breadth and none of their length. */
function isBeside(a: LyingPad, b: LyingPad): boolean {
  const shared = Math.min(farEdge(a), farEdge(b)) - Math.max(nearEdge(a), nearEdge(b));
  const isApart = a.right_mm <= b.left_mm + 1e-6 || b.right_mm <= a.left_mm + 1e-6;
  return isApart && shared > Math.min(a.halfAway_mm, b.halfAway_mm);
}

function layPad(pad: Pad, side: BenchSide): LyingPad {
  const middle = side.place(pad.centre_mm);
  const normal = unit(pad.normal);
  const half_mm = pad.length_mm / 2;
  const numbers = Array.from({ length: pad.zones }, (_, i) => i);
  const isPlusRight = side.right[0] + side.right[1] + side.right[2] > 0;
  // The face lies in the plane of travel and `flank`; its shadow from above is the part of `flank` that points away.
  const flank = cross(normal, side.right);
  return {
    pad,
    left_mm: middle.right_mm - half_mm,
    right_mm: middle.right_mm + half_mm,
    away_mm: middle.away_mm,
    halfAway_mm: Math.max((Math.abs(dot(flank, side.away)) * pad.width_mm) / 2, 0.5),
    up_mm: middle.up_mm,
    // The moving part's face looks against the pad's normal.
    looks: { away: -dot(normal, side.away), up: -dot(normal, side.up) },
    zones: isPlusRight ? numbers : numbers.reverse(),
  };
}
