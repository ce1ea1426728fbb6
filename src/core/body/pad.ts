import { type AxisName, add, axisVector, scale, type Vector } from './vector.ts';

/**
 * One bearing face of the slide, cut into zones along the way.
 * `normal` points from the fixed way into the moving part, so metal comes off against it.
 */
export interface Pad {
  readonly name: string;
  readonly centre_mm: Vector;
  readonly normal: Vector;
  /** Along the direction of travel. */
  readonly length_mm: number;
  readonly width_mm: number;
  readonly zones: number;
  readonly material: string;
  /** Metal or liner that may still come off, normal to the face. */
  readonly stock_um?: number;
}

/** Area of one zone, mm². */
export const zoneArea = (pad: Pad): number => (pad.length_mm * pad.width_mm) / pad.zones;

/** Distance of each zone's middle from the pad's middle along the travel, mm; first zone at the minus end. */
export const zoneOffsets = (pad: Pad): number[] =>
  Array.from({ length: pad.zones }, (_, i) => ((i + 0.5) / pad.zones - 0.5) * pad.length_mm);

/** The middle of each zone, mm, in order of plus along the travel. */
export const zoneCentres = (pad: Pad, free: AxisName): Vector[] =>
  zoneOffsets(pad).map((offset) => add(pad.centre_mm, scale(axisVector(free), offset)));
