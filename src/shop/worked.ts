/** One line of working: what it is, its formula in letters, and the same with numbers and result. */
export interface Worked {
  readonly what: string;
  readonly formula: string;
  readonly worked: string;
  /** Where the formula comes from, when it is not plain geometry. */
  readonly source?: string;
}
