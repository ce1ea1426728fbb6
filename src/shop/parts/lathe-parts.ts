import type { JobPlan } from '../../core/ledger/entry.ts';
import { type Faced, faced } from '../../core/parts/faced.ts';
import { travelOnBed } from '../../core/parts/on-bed.ts';
import type { Doubted, Spindle } from '../../core/parts/spindle.ts';
import type { Travel } from '../../core/parts/travel.ts';
import { type Turned, turned } from '../../core/parts/turned.ts';
import { assumedRest } from '../../core/rest/after-scraping.ts';
import type { Bed } from '../../core/site/bed.ts';
import type { NoRest } from '../../core/site/site.ts';
import { hungOver, toolAt, usualWork } from '../survey/usual-work.ts';

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

/**
 * A turned diameter along the surveyed bed, the saddle having been printed in one place; or where the saddle does not rest.
 * @throws RangeError  a place beyond {@link bedReach} of the slide
 */
export function turnedOnBed(
  plan: Pick<JobPlan, 'slide'>,
  bed: Bed,
  wish: OnBedWish,
  spindle: Spindle,
): Turned | NoRest {
  const { from_mm, to_mm, printed_mm, radius_mm, height_sd_um } = wish;
  const travel = travelOnBed({
    slide: plan.slide,
    bed,
    load: hungOver(plan.slide, usualWork.weight_kg),
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
    tool_mm: toolAt(plan.slide, wish.tool_across_mm, wish.tool_up_mm),
    side: 'front',
    tool_high_mm: 0,
    radius_mm,
    // The last of the places is the end, but for a rounding.
    from_mm: travel.stations_mm[0]!,
    to_mm: travel.stations_mm.at(-1)!,
  });
}
