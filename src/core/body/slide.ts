import { type Pad, zoneArea, zoneCentres } from './pad.ts';
import { type AxisName, unit, type Vector } from './vector.ts';

/** A part resting on fixed ways: its pads, and the direction in which it is free to travel. */
export interface Slide {
  readonly name: string;
  readonly free: AxisName;
  readonly pads: readonly Pad[];
}

/** A zone of a pad, with all that the geometry needs of it. */
export interface Zone {
  readonly pad: Pad;
  /** Index of the pad in the slide. */
  readonly padIndex: number;
  /** Index of the zone in its pad, 0 at the minus end of the travel. */
  readonly index: number;
  readonly centre_mm: Vector;
  /** Unit length. */
  readonly normal: Vector;
  readonly area_mm2: number;
}

/** All zones of a slide in the order pad by pad, minus end first: the order of every per-zone vector. */
export function zonesOf(slide: Slide): Zone[] {
  return slide.pads.flatMap((pad, padIndex) => {
    const normal = unit(pad.normal);
    const area_mm2 = zoneArea(pad);
    return zoneCentres(pad, slide.free).map((centre_mm, index) => ({
      pad,
      padIndex,
      index,
      centre_mm,
      normal,
      area_mm2,
    }));
  });
}

/** Where each pad's zones begin in a per-zone vector. */
export function padStarts(slide: Slide): number[] {
  let start = 0;
  return slide.pads.map((pad) => {
    const here = start;
    start += pad.zones;
    return here;
  });
}

/** Numbers per pad → one vector over all zones; a pad that is not named gets `missing`. */
export function zoneVector(
  slide: Slide,
  byPad: Readonly<Record<string, readonly number[]>>,
  missing = 0,
): number[] {
  return slide.pads.flatMap((pad) => byPad[pad.name] ?? Array<number>(pad.zones).fill(missing));
}

/** One vector over all zones → numbers per pad. */
export function byPad(slide: Slide, values: ArrayLike<number>): Record<string, number[]> {
  const starts = padStarts(slide);
  return Object.fromEntries(
    slide.pads.map((pad, i) => [
      pad.name,
      Array.from({ length: pad.zones }, (_, z) => values[starts[i]! + z]!),
    ]),
  );
}
