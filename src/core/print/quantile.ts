/** Quantiles of more numbers than this are taken from so many of them, evenly picked: their error is below a hundredth of the spread. */
const enough = 20000;
/** The q-quantile (0 to 1), the numbers left as they are; NaN of none. */
export function quantile(values: ArrayLike<number>, q: number): number {
  const many = Math.min(values.length, enough);
  if (many === 0) return Number.NaN;
  const step = values.length / many;
  const picked = new Float32Array(many);
  for (let k = 0; k < many; k++) picked[k] = values[Math.floor(k * step)]!;
  const at = q * (many - 1);
  const below = Math.floor(at);
  select(picked, below);
  const low = picked[below]!;
  if (at === below) return low;
  let next = Number.POSITIVE_INFINITY;
  for (let k = below + 1; k < many; k++) if (picked[k]! < next) next = picked[k]!;
  return low + (at - below) * (next - low);
}

/** Puts the k-th smallest in its place, none greater before it, none smaller after it (Hoare's FIND). */
function select(values: Float32Array, k: number): void {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[k]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (pivot < values[j]!) j--;
      if (i > j) break;
      const one = values[i]!;
      values[i++] = values[j]!;
      values[j--] = one;
    }
    if (j < k) left = i;
    if (k < i) right = j;
  }
}
