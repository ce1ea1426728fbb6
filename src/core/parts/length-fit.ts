/** A profile over a length, fitted by a line and a parabola: every figure is a sum over the profile, so doubt passes through. */
export interface LengthFit {
  /** Weights w with Σ wᵢ yᵢ = the fitted line's rise from the first place to the last. */
  readonly taper: Float64Array;
  /** Weights of: the fitted parabola's middle less the mean of its ends. */
  readonly bow: Float64Array;
  /** n × 3 rows: [1, ξ, ξ²], ξ from −1 at the first place to 1 at the last. */
  readonly basis: readonly (readonly [number, number, number])[];
  /** 3 × n: coefficients over the basis. */
  readonly coefficients: readonly Float64Array[];
}

/**
 * Weights that fit a line and a parabola to values at the given places by least squares over the length: each place counts
 * with the stretch it stands for, so crowded stations do not outvote the rest.
 * The line is fitted by itself; the parabola's middle over its ends is the bow.
 *
 * @param places_mm  n ≥ 3 places, rising
 * @throws RangeError  fewer than three
 */
export function lengthFit(places_mm: readonly number[]): LengthFit {
  const n = places_mm.length;
  if (n < 3) throw new RangeError(`${n} places; a parabola needs three`);
  const first = places_mm[0]!;
  const last = places_mm[n - 1]!;
  const basis = places_mm.map((at): [number, number, number] => {
    const xi = (2 * (at - first)) / (last - first) - 1;
    return [1, xi, xi * xi];
  });
  const stretch = places_mm.map(
    (_, i) => (places_mm[Math.min(n - 1, i + 1)]! - places_mm[Math.max(0, i - 1)]!) / 2,
  );
  const line = fitWeights(basis, stretch, 2);
  const coefficients = fitWeights(basis, stretch, 3);
  return {
    // The line rises by its slope over ξ from −1 to 1.
    taper: line[1]!.map((weight) => 2 * weight),
    // a + bξ + cξ²: the middle is a, the ends' mean a + c.
    bow: coefficients[2]!.map((weight) => -weight),
    basis,
    coefficients,
  };
}

/** Rows of (BᵀSB)⁻¹BᵀS for the first `terms` columns of the basis. */
function fitWeights(
  basis: readonly (readonly number[])[],
  stretch: readonly number[],
  terms: number,
): Float64Array[] {
  const table = Array.from({ length: terms }, (_, i) => [
    ...Array.from({ length: terms }, (_, j) =>
      basis.reduce((sum, row, k) => sum + stretch[k]! * row[i]! * row[j]!, 0),
    ),
    ...basis.map((row, k) => stretch[k]! * row[i]!),
  ]);
  // Gauss and Jordan; the basis over −1 to 1 is well conditioned, and its sums are positive on the diagonal.
  for (let i = 0; i < terms; i++) {
    const pivot = table[i]![i]!;
    table[i] = table[i]!.map((part) => part / pivot);
    for (let k = 0; k < terms; k++) {
      if (k === i) continue;
      const times = table[k]![i]!;
      table[k] = table[k]!.map((part, j) => part - times * table[i]![j]!);
    }
  }
  return table.map((row) => Float64Array.from(row.slice(terms)));
}

/** Evenly spaced places and the stations among them, rising, each once: where a profile is looked at. */
export function placesOver(from_mm: number, to_mm: number, stations_mm: readonly number[]): number[] {
  const even = Array.from({ length: 33 }, (_, i) => from_mm + (i / 32) * (to_mm - from_mm));
  const near = (to_mm - from_mm) * 1e-9;
  return [...even, ...stations_mm.filter((at) => at > from_mm && at < to_mm)]
    .sort((a, b) => a - b)
    .filter((at, i, all) => i === 0 || at - all[i - 1]! > near);
}
