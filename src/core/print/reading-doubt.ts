import type { PrintReading } from './reading.ts';

/** One sd of each figure of a reading. */
export interface ReadingDoubt {
  readonly bearing_pct: number;
  readonly density_per_25mm: number;
  /** Of the count of one whole square. */
  readonly square_count: number;
}

/**
 * How far counts and bearing were off on rendered prints with known truth: shares of the figure, with and without a
 * warning. Spots at the edge of parting or of the least area come and go one by one, hence the part with the root of the count.
 */
const share = { count: 0.02, warnedCount: 0.08, bearing: 0.025, warnedBearing: 0.05 };
const single = 0.35;
const leastBearing_pct = 0.1;

/** The doubt of a reading, from how the reader does on prints whose truth is known; real prints may add to it. */
export function readingDoubt(
  reading: Pick<PrintReading, 'spots' | 'density_per_25mm' | 'bearing_pct'> & {
    readonly warnings: readonly unknown[];
  },
): ReadingDoubt {
  const warned = reading.warnings.length > 0;
  const many = reading.spots.length;
  const whole = (warned ? share.warnedCount : share.count) * many;
  const countSd = Math.max(1, Math.hypot(whole, single * Math.sqrt(many)));
  const perSquare = reading.density_per_25mm;
  const bearing = (warned ? share.warnedBearing : share.bearing) * reading.bearing_pct;
  return {
    bearing_pct: Math.hypot(leastBearing_pct, bearing),
    density_per_25mm: many > 0 ? (countSd / many) * perSquare : 0,
    square_count: Math.max(
      0.5,
      Math.hypot((warned ? share.warnedCount : share.count) * perSquare, single * Math.sqrt(perSquare)),
    ),
  };
}
