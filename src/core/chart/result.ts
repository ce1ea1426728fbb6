/** One measurement of a test. */
export interface Result {
  /** µm, over `over_mm` for a slope. */
  readonly value_um: number;
  /** Two sd. Left out: nobody knows it, and so nothing can be proven. */
  readonly doubt_um?: number;
  /** Of the doubt, what repeating does not lower (the reference's own error), two sd. */
  readonly shared_um?: number;
  /** How many readings the doubt rests on; 1 when left out. */
  readonly readings?: number;
  /** Of a slope: the length it was measured over, when it is not the test's. */
  readonly over_mm?: number;
  /** Day it was taken, ISO 8601 date; told. */
  readonly on?: string;
  /** What it was measured with and held against. */
  readonly instrument?: string;
  readonly reference?: string;
}

/** The same slope spoken over another length. */
export function over(result: Result, from_mm: number, to_mm: number): Result {
  const factor = to_mm / from_mm;
  return {
    ...result,
    value_um: result.value_um * factor,
    ...(result.doubt_um === undefined ? {} : { doubt_um: result.doubt_um * factor }),
    ...(result.shared_um === undefined ? {} : { shared_um: result.shared_um * factor }),
    over_mm: to_mm,
  };
}
