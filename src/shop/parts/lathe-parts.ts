import type { JobPlan } from '../../core/ledger/entry.ts';
import { type Faced, faced } from '../../core/parts/faced.ts';
import { travelOnBed } from '../../core/parts/on-bed.ts';
import type { Doubted, Spindle } from '../../core/parts/spindle.ts';
import type { Travel } from '../../core/parts/travel.ts';
import { type Turned, turned } from '../../core/parts/turned.ts';
import { assumedRest } from '../../core/rest/after-scraping.ts';
import type { Bed } from '../../core/site/bed.ts';
import type { NoRest } from '../../core/site/site.ts';

/** The feature that makes faces concave or convex, where the slide is a lathe's saddle. */
export const facingOf = (plan: Pick<JobPlan, 'slide' | 'features' | 'words'>): string | undefined =>
  plan.slide.free === 'x'
    ? plan.features.find(
        (one) =>
          one.kind === 'turn' &&
          one.axis === 'z' &&
          plan.words.some((words) => words.feature === one.name && words.plus === 'concave'),
      )?.name
    : undefined;

/** Places along the bed that a turned length is followed over. */
const followed = 21;
/** Nobody weighs a saddle: common practice for a mid-size lathe, hung over the middle of what carries it. */
export const usualWeight_kg = 100;
const gravity_N_per_kg = 9.80665;

/** A saddle that goes straight, over a stretch of the bed. */
const straight = (from_mm: number, to_mm: number): Travel => ({
  name: 'saddle',
  along: 'x',
  stations_mm: [from_mm, to_mm],
  poses: [
    [0, 0, 0, 0, 0, 0],
    [0, 0, 0, 0, 0, 0],
  ],
});

/** A whole face, rim to centre, from how the cross ways stand to the bed (µrad, plus: concave) and how the spindle does. */
export const faceFrom = (square_urad: Doubted, spindle: Spindle, rim_mm: number): Faced =>
  faced({
    saddle: straight(0, 1),
    at_mm: 0,
    tool_mm: [0, 0, 0],
    square_urad,
    spindle,
    side: 'front',
    rim_mm,
    inner_mm: 0,
  });

/** A turned length as typed. */
export interface LengthWish {
  readonly radius_mm: number;
  /** Places of the saddle's middle on the bed, from below to. */
  readonly from_mm: number;
  readonly to_mm: number;
}

/** A turned diameter on a bed taken as straight: what the spindle's slope alone does. */
export const turnedBySpindle = (wish: LengthWish, spindle: Spindle): Turned =>
  turned({
    ...wish,
    spindle,
    travel: straight(wish.from_mm, wish.to_mm),
    tool_mm: [0, 0, 0],
    side: 'front',
    tool_high_mm: 0,
  });

/** Where the saddle was printed and where its tool stands, in the saddle's frame. */
export interface OnBedWish extends LengthWish {
  readonly printed_mm: number;
  /** Plus: to the back. */
  readonly tool_across_mm: number;
  readonly tool_up_mm: number;
  /** How surely each surveyed height is known, one sd; left out: nothing is known of it. */
  readonly height_sd_um?: number;
}

/** The stretch over which every pad stands on surveyed bed, for the slide's middle; first above last where the bed is too short. */
export function bedReach(plan: Pick<JobPlan, 'slide'>, bed: Bed): readonly [number, number] {
  const { pads, free } = plan.slide;
  const along = 'xyz'.indexOf(free);
  const low = Math.min(...pads.map((pad) => pad.centre_mm[along]! - pad.length_mm / 2));
  const high = Math.max(...pads.map((pad) => pad.centre_mm[along]! + pad.length_mm / 2));
  return [bed.stations_mm[0]! - low, bed.stations_mm.at(-1)! - high];
}

/**
 * A turned diameter along the surveyed bed, the saddle having been printed in one place; or where the saddle does not rest.
 * @throws RangeError  a place beyond {@link bedReach}
 */
export function turnedOnBed(
  plan: Pick<JobPlan, 'slide'>,
  bed: Bed,
  wish: OnBedWish,
  spindle: Spindle,
): Turned | NoRest {
  const { from_mm, to_mm, printed_mm, radius_mm, height_sd_um } = wish;
  const { pads } = plan.slide;
  const area_mm2 = pads.map((pad) => pad.length_mm * pad.width_mm);
  const whole_mm2 = area_mm2.reduce((sum, one) => sum + one, 0);
  const middle = (k: 0 | 1 | 2) =>
    pads.reduce((sum, pad, i) => sum + pad.centre_mm[k] * area_mm2[i]!, 0) / whole_mm2;
  const travel = travelOnBed({
    slide: plan.slide,
    bed,
    load: {
      force_N: usualWeight_kg * gravity_N_per_kg,
      at_mm: [middle(0), middle(1), middle(2)],
      direction: [0, 0, -1],
    },
    stiffness_N_per_mm3: assumedRest.stiffness_N_per_mm3,
    positions_mm: Array.from(
      { length: followed },
      (_, k) => from_mm + ((to_mm - from_mm) * k) / (followed - 1),
    ),
    printed_mm,
    ...(height_sd_um === undefined ? {} : { height_sd_um }),
  });
  if ('ok' in travel) return travel;
  return turned({
    travel,
    spindle,
    tool_mm: [0, wish.tool_across_mm, wish.tool_up_mm],
    side: 'front',
    tool_high_mm: 0,
    radius_mm,
    // The last of the places is the end, but for a rounding.
    from_mm: travel.stations_mm[0]!,
    to_mm: travel.stations_mm.at(-1)!,
  });
}
