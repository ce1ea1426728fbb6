/** Quantiles of more numbers than this are taken from so many of them, evenly picked: their error is below a hundredth of the spread. */
const enough = 20000;

/** The q-quantile (0 to 1), the numbers left as they are; NaN of none. */
export function quantile(values: ArrayLike<number>, q: number): number {
  const many = Math.min(values.length, enough);
  if (many === 0) return Number.NaN;
  const step = values.length / many;
  const sorted = Float32Array.from({ length: many }, (_, k) => values[Math.floor(k * step)]!).sort();
  return sortedQuantile(sorted, q);
}

/** The same of numbers in rising order. */
export function sortedQuantile(sorted: Float32Array, q: number): number {
  const at = q * (sorted.length - 1);
  const below = Math.floor(at);
  const low = sorted[below]!;
  return low + (at - below) * (sorted[Math.min(below + 1, sorted.length - 1)]! - low);
}
