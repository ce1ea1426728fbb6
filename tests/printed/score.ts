import type { PrintReading } from '../../src/core/print/reading.ts';
import type { Truth } from './truth.ts';

/** How far a reading is from the truth. */
export interface Score {
  /** Spots read over spots there, less one: plus is too many, %. Over the whole surface. */
  readonly count_pct: number;
  /** Bearing read less bearing there, percentage points. */
  readonly bearing_points: number;
  /** Mean distance of the counts of squares not cut by the edge. */
  readonly cell_count_mae: number;
  /** Mean distance of those squares' bearing, percentage points. */
  readonly cell_bearing_mae: number;
  /** Harmonic mean of the shares of spots matched, read and there. */
  readonly f1: number;
}

/** Farthest that a spot read may lie from the spot it is, mm. */
const reach_mm = 2;

export function scored(reading: PrintReading, truth: Truth): Score {
  const whole = truth.cells.filter((cell) => !cell.partial);
  let count = 0;
  let bearing = 0;
  for (const cell of whole) {
    const read = reading.cells.find(({ col, row }) => col === cell.col && row === cell.row);
    count += Math.abs((read?.count ?? 0) - cell.count);
    bearing += Math.abs((read?.bearing_pct ?? 0) - cell.bearing_pct);
  }
  const matched = matches(reading.spots, truth.spots);
  return {
    count_pct: 100 * (reading.spots.length / truth.spots.length - 1),
    bearing_points: reading.bearing_pct - truth.bearing_pct,
    cell_count_mae: count / whole.length,
    cell_bearing_mae: bearing / whole.length,
    f1: (2 * matched) / (reading.spots.length + truth.spots.length),
  };
}

interface Place {
  readonly x_mm: number;
  readonly y_mm: number;
}

/** One to one, nearest pairs first: greedy, so a little below the best matching there is. */
function matches(read: readonly Place[], there: readonly Place[]): number {
  const pairs: { i: number; j: number; far: number }[] = [];
  read.forEach((a, i) => {
    there.forEach((b, j) => {
      const far = (a.x_mm - b.x_mm) ** 2 + (a.y_mm - b.y_mm) ** 2;
      if (far <= reach_mm ** 2) pairs.push({ i, j, far });
    });
  });
  pairs.sort((a, b) => a.far - b.far);
  const readTaken = new Set<number>();
  const thereTaken = new Set<number>();
  for (const { i, j } of pairs) {
    if (readTaken.has(i) || thereTaken.has(j)) continue;
    readTaken.add(i);
    thereTaken.add(j);
  }
  return readTaken.size;
}
