import { isReadable } from './readable-square.ts';
import type { Cell, PrintReading } from './reading.ts';
import type { ReadingDoubt } from './reading-doubt.ts';

/** A reading with its doubt, as two photos of one print are held against each other. */
export type DoubtedReading = Pick<PrintReading, 'cells' | 'density_per_25mm' | 'bearing_pct'> & {
  readonly doubt: ReadingDoubt;
};

/** A square that two photos read otherwise than their doubts allow. */
export interface SquareApart {
  readonly col: number;
  readonly row: number;
  readonly first: number;
  readonly second: number;
}

/** Two photos of the same print, the second less the first. */
export interface Agreement {
  readonly agrees: boolean;
  readonly bearing_pct: { readonly value: number; readonly sd: number };
  readonly density_per_25mm: { readonly value: number; readonly sd: number };
  readonly squares_apart: readonly SquareApart[];
  /** Whole squares that both can read. */
  readonly squares: number;
}

/** Differences within two sd of both together agree. */
const within = 2;
/** One square in so many may lie apart by chance, at three sd. */
const squareWithin = 3;
const mostApart = 0.05;

/** Do two photos of one print tell the same? Each must be of the same surface, with the same squares. */
export function agreementOf(first: DoubtedReading, second: DoubtedReading): Agreement {
  const difference = (of: 'bearing_pct' | 'density_per_25mm') => ({
    value: second[of] - first[of],
    sd: Math.hypot(first.doubt[of], second.doubt[of]),
  });
  const bearing_pct = difference('bearing_pct');
  const density_per_25mm = difference('density_per_25mm');
  const counts = (cell: Cell) => !cell.partial && isReadable(cell);
  const pairs = first.cells.flatMap((cell) => {
    const other = second.cells.find((each) => each.col === cell.col && each.row === cell.row);
    return other && counts(cell) && counts(other) ? [{ cell, other }] : [];
  });
  const sd = Math.hypot(first.doubt.square_count, second.doubt.square_count);
  const squares_apart = pairs
    .filter(({ cell, other }) => Math.abs(other.count - cell.count) > squareWithin * sd)
    .map(({ cell, other }) => ({
      col: cell.col,
      row: cell.row,
      first: cell.count,
      second: other.count,
    }));
  const near = ({ value, sd: one }: { value: number; sd: number }) => Math.abs(value) <= within * one;
  return {
    agrees:
      near(bearing_pct) &&
      near(density_per_25mm) &&
      squares_apart.length <= Math.max(1, mostApart * pairs.length),
    bearing_pct,
    density_per_25mm,
    squares_apart,
    squares: pairs.length,
  };
}
