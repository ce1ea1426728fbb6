/** A quantity with one standard deviation; without one it is taken as known surely. */
export interface Doubted {
  readonly value: number;
  readonly sd?: number;
}

/**
 * How the axis that the work turns about lies to the travel of the saddle.
 * Between centres it is the line through both centres; in a chuck it is the spindle's own.
 */
export interface Spindle {
  /** Slope away from the operator along x, µrad; plus: the free end lies away from the operator (y grows). */
  readonly across_urad: Doubted;
  /** Slope up along x, µrad; plus: the free end is high. */
  readonly up_urad: Doubted;
}

export const trueSpindle: Spindle = { across_urad: { value: 0 }, up_urad: { value: 0 } };

/** Where the tool stands to the axis: on the operator's side (y below the axis) or behind. */
export type ToolSide = 'front' | 'rear';

/** +1 when moving along +y brings the tool to the axis (front), −1 when it takes it away (rear). */
export const inward = (side: ToolSide): 1 | -1 => (side === 'front' ? 1 : -1);

export const varianceOfDoubted = ({ sd = 0 }: Doubted): number => sd * sd;
