/** The q-quantile (0 to 1) of numbers that are sorted in place; NaN of none. */
export function quantile(values: Float32Array, q: number): number {
  if (values.length === 0) return Number.NaN;
  values.sort();
  const at = q * (values.length - 1);
  const below = Math.floor(at);
  const low = values[below]!;
  return low + (at - below) * (values[Math.min(below + 1, values.length - 1)]! - low);
}
