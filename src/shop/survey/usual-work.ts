import type { Slide } from '../../core/body/slide.ts';
import type { Vector } from '../../core/body/vector.ts';
import type { Load } from '../../core/rest/load.ts';
import type { Bed } from '../../core/site/bed.ts';

/**
 * What was usual where nothing is said: shop's own, common practice for a mid-size lathe. Nobody weighs a saddle, nor writes
 * down where its tool stands: from the middle of the slide's own frame, across (plus: to the back) and up.
 */
export const usualWork = { weight_kg: 100, tool_across_mm: -60, tool_up_mm: 180 } as const;

const gravity_N_per_kg = 9.80665;

/** The stretch over which every pad stands on surveyed bed, for the slide's middle, mm; first above last where the bed is too short. */
export function bedReach(slide: Slide, bed: Bed): readonly [first: number, last: number] {
  const along = 'xyz'.indexOf(slide.free);
  const low = Math.min(...slide.pads.map((pad) => pad.centre_mm[along]! - pad.length_mm / 2));
  const high = Math.max(...slide.pads.map((pad) => pad.centre_mm[along]! + pad.length_mm / 2));
  return [bed.stations_mm[0]! - low, bed.stations_mm.at(-1)! - high];
}

/** Which of x, y, z is up: a slide that travels upright is told of as it lies, x up. */
export const upOf = (slide: Slide): 0 | 2 => (slide.free === 'z' ? 0 : 2);

/** Which of x, y, z lies level across the travel. */
export const acrossOf = (slide: Slide): 0 | 1 => (slide.free === 'y' ? 0 : 1);

/** A weight, kg, over the middle of what carries it. */
export function hungOver(slide: Slide, weight_kg: number): Load {
  const area_mm2 = slide.pads.map((pad) => pad.length_mm * pad.width_mm);
  const whole_mm2 = area_mm2.reduce((sum, one) => sum + one, 0);
  const middle = (k: 0 | 1 | 2) =>
    slide.pads.reduce((sum, pad, i) => sum + pad.centre_mm[k] * area_mm2[i]!, 0) / whole_mm2;
  return {
    force_N: weight_kg * gravity_N_per_kg,
    at_mm: [middle(0), middle(1), middle(2)],
    direction: axis(upOf(slide), -1),
  };
}

/** The tool's point in the slide's frame, mm. */
export function toolAt(slide: Slide, across_mm: number, up_mm: number): Vector {
  const tool = [0, 0, 0];
  tool[acrossOf(slide)] = across_mm;
  tool[upOf(slide)] = up_mm;
  return tool as unknown as Vector;
}

const axis = (k: number, size: number): Vector =>
  [0, 1, 2].map((i) => (i === k ? size : 0)) as unknown as Vector;
