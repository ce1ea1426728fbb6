import { type Bits, countIn, without } from './bits.ts';
import type { Cell, Spot } from './reading.ts';
import { rasterPxPerMm } from './rectified.ts';

/** A cell is partial when it has less than this of its elements. */
const whole = 0.999;

/**
 * Squares of `cell_mm`, from (0,0): spots counted where their centroid lies, contact over net area.
 *
 * @param out  where excluded
 * @param unread  where glare clipped the photo, or where it does not show the surface
 */
export function squaresOf(
  bears: Bits,
  spots: readonly Spot[],
  out: Bits,
  unread: Bits,
  cell_mm: number,
): Cell[] {
  const { width, height } = bears;
  const side = cell_mm * rasterPxPerMm;
  const cols = Math.max(1, Math.ceil(width / side - 1e-9));
  const rows = Math.max(1, Math.ceil(height / side - 1e-9));
  const many = cols * rows;
  const held = new Int32Array(many);
  const net = new Int32Array(many);
  const gross = new Int32Array(many);
  const clipped = new Int32Array(many);
  const holds = without(bears, out);
  const blind = without(without(unread, out), bears);
  for (let j = 0; j < height; j++) {
    const row = Math.min(rows - 1, Math.floor((j + 0.5) / side)) * cols;
    for (let col = 0; col < cols; col++) {
      // Elements whose centre lies in the square.
      const from = Math.ceil(col * side - 0.5);
      const to = col === cols - 1 ? width : Math.min(width, Math.ceil((col + 1) * side - 0.5));
      gross[row + col]! += to - from;
      net[row + col]! += to - from - countIn(out, j, from, to);
      held[row + col]! += countIn(holds, j, from, to);
      clipped[row + col]! += countIn(blind, j, from, to);
    }
  }
  const count = new Int32Array(many);
  for (const { x_mm, y_mm } of spots) {
    const x = Math.max(0, Math.min(cols - 1, Math.floor(x_mm / cell_mm)));
    const y = Math.max(0, Math.min(rows - 1, Math.floor(y_mm / cell_mm)));
    count[y * cols + x]!++;
  }
  return Array.from({ length: many }, (_, k): Cell => {
    const readable = net[k]! - clipped[k]!;
    const col = k % cols;
    const row = Math.floor(k / cols);
    // Squares of an inch are no whole number of elements: one may have a row less than another and be whole.
    const cut = (col + 1) * side > width + 0.5 || (row + 1) * side > height + 0.5;
    return {
      col,
      row,
      count: count[k]!,
      bearing_pct: readable > 0 ? (100 * held[k]!) / readable : 0,
      partial: cut || net[k]! < whole * gross[k]!,
      net_mm2: readable / (rasterPxPerMm * rasterPxPerMm),
      unreadable_pct: net[k]! > 0 ? (100 * clipped[k]!) / net[k]! : 0,
    };
  });
}
