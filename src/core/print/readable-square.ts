import type { Cell } from './reading.ts';

/** A square with more of it clipped by glare shows no number: common practice, no standard says so. */
const mostUnreadable_pct = 5;

/** Whether a square's count and bearing may be shown. */
export const isReadable = (cell: Pick<Cell, 'unreadable_pct'>): boolean =>
  cell.unreadable_pct <= mostUnreadable_pct;
