import type { Cell, Spot } from './reading.ts';
import { rasterPxPerMm } from './rectified.ts';

/** A cell is partial when it has less than this of its elements. */
const whole = 0.999;

/**
 * Squares of `cell_mm`, from (0,0): spots counted where their centroid lies, contact over net area.
 *
 * @param out  1 where excluded
 * @param unread  1 where glare clipped the photo
 */
export function squaresOf(
  label: Int32Array,
  spots: readonly Spot[],
  out: Uint8Array,
  unread: Uint8Array,
  width: number,
  height: number,
  cell_mm: number,
): Cell[] {
  const side = cell_mm * rasterPxPerMm;
  const cols = Math.max(1, Math.ceil(width / side - 1e-9));
  const rows = Math.max(1, Math.ceil(height / side - 1e-9));
  const many = cols * rows;
  const held = new Float64Array(many);
  const net = new Float64Array(many);
  const gross = new Float64Array(many);
  const clipped = new Float64Array(many);
  const colOf = Int32Array.from({ length: width }, (_, i) =>
    Math.min(cols - 1, Math.floor((i + 0.5) / side)),
  );
  for (let j = 0; j < height; j++) {
    const row = Math.min(rows - 1, Math.floor((j + 0.5) / side)) * cols;
    for (let i = 0, o = j * width; i < width; ) {
      const cell = row + colOf[i]!;
      const first = i;
      let counts = 0;
      let bears = 0;
      let blind = 0;
      for (; i < width && row + colOf[i]! === cell; i++, o++) {
        if (out[o]) continue;
        counts++;
        if (label[o] !== 0) bears++;
        else if (unread[o]) blind++;
      }
      gross[cell]! += i - first;
      net[cell]! += counts;
      held[cell]! += bears;
      clipped[cell]! += blind;
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
