/** What every survey of a surface may say. */
interface PlateCommon {
  readonly name?: string;
  /** Most that the flatness may be, µm. */
  readonly limit_um?: number;
  /** What a pass takes off: with it the depths are stepped into whole passes. */
  readonly pass_um?: number;
}

export interface PlatePoint {
  readonly x_mm: number;
  readonly y_mm: number;
  /** Plus: proud. */
  readonly z_um: number;
}

/** Heights on points, in any order. */
export interface PointsPlate extends PlateCommon {
  readonly kind: 'points';
  readonly points: readonly PlatePoint[];
  readonly reading_sd_um?: number;
  readonly repeatability_sd_um?: number;
}

/**
 * A level stepped along rows and columns of a grid. Gravity is the datum of all lines; an autocollimator, whose lines have a datum each, leaves
 * the twist of rows and columns unknown: its survey is the eight lines.
 */
export interface GridPlate extends PlateCommon {
  readonly kind: 'grid';
  readonly step_x_mm: number;
  readonly step_y_mm: number;
  /** One list a row, the front row (y = 0) first: steps along +x; plus: the end ahead is high. */
  readonly along_x_urad: readonly (readonly number[])[];
  /** One list a column, the left column (x = 0) first: steps along +y, away from the operator. */
  readonly along_y_urad: readonly (readonly number[])[];
  readonly reading_sd_urad?: number;
  readonly repeatability_sd_urad?: number;
}

/** The eight lines of a diagonal cross, each stepped along +x, along +y, or for the falling diagonal from the back left to the front right. */
export const eightLines = [
  'front',
  'back',
  'left',
  'right',
  'middle_x',
  'middle_y',
  'rising',
  'falling',
] as const;
export type EightLine = (typeof eightLines)[number];

/** Sides, middle lines and diagonals, each with a datum of its own, as an autocollimator or a level gives them. */
export interface EightLinesPlate extends PlateCommon {
  readonly kind: 'eight lines';
  readonly step_x_mm: number;
  readonly step_y_mm: number;
  readonly step_diagonal_mm: number;
  /** Even numbers of steps: the middle of each line is a station. `rising` runs from front left to back right. */
  readonly lines_urad: Readonly<Record<EightLine, readonly number[]>>;
  /** Diagonals as datum, middle lines as check (left out); or all eight by least squares. */
  readonly method?: 'diagonals' | 'least squares';
  readonly reading_sd_urad?: number;
  readonly repeatability_sd_urad?: number;
}

/** A surface as it was surveyed; see docs/contract.md, `plate`. */
export type PlateInput = PointsPlate | GridPlate | EightLinesPlate;
