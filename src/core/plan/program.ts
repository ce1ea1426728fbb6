/** A column of a linear program: a number to be chosen. */
export interface Column {
  readonly name: string;
  readonly cost: number;
  /** −Infinity and Infinity when there is no bound. */
  readonly low: number;
  readonly high: number;
  readonly whole?: boolean;
}

/** A row: low ≤ Σ coefficient · column ≤ high. Column names with coefficients; zeros may be left out. */
export interface Row {
  readonly name: string;
  readonly terms: readonly (readonly [column: string, coefficient: number])[];
  readonly low: number;
  readonly high: number;
}

/** Least cost over the columns within the rows, as data: core plans, an adapter solves. */
export interface LinearProgram {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** Seconds after which the best answer so far is given and said to be so. */
  readonly most_s?: number;
  /** Stop when the best answer is within this share of the bound (whole numbers only). */
  readonly gap?: number;
}

/** What a solver found. */
export type Solution =
  /** `proven` is false when time ran out with an answer in hand. */
  | {
      readonly kind: 'found';
      readonly cost: number;
      readonly values: Readonly<Record<string, number>>;
      readonly proven: boolean;
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unbounded' }
  /** Time ran out with no answer in hand. */
  | { readonly kind: 'none in time' };

/** A solver of linear programs with whole numbers. */
export type Solve = (program: LinearProgram) => Promise<Solution>;
