import { displacementRow, type PoseNumbers } from '../body/displacement.ts';
import type { Slide } from '../body/slide.ts';
import { zonesOf } from '../body/slide.ts';
import type { AxisName, Vector } from '../body/vector.ts';
import { foundation, heldForce, poseOf } from '../rest/foundation.ts';
import { type Load, wrenchOf } from '../rest/load.ts';
import { settler } from '../rest/settler.ts';
import { type Bed, heightAt } from './bed.ts';

/** What `site` is asked; see docs/contract.md. */
export interface SiteInput {
  readonly slide: Slide;
  readonly bed: Bed;
  readonly load: Load;
  readonly stiffness_N_per_mm3: number;
  readonly film_um: number;
  /** Places where the slide could be printed: where its middle stands, along the bed. */
  readonly candidates_mm: readonly number[];
  /** Places where it works. */
  readonly positions_mm: readonly number[];
  /** Share of the work done at each position. */
  readonly duty: readonly number[];
  /** The tool's point, in the slide's frame. */
  readonly tool_mm: Vector;
}

/** What printing at a place comes to. Angles and movements are against the rest at the place of printing; rms over the duty. */
export interface SitePlace {
  readonly at_mm: number;
  readonly yaw_rms_urad: number;
  /** Movement of the tool across the travel: half of what it does to a turned diameter. */
  readonly tool_across_rms_um: number;
  readonly bearing_fraction: number;
  /** One a position. */
  readonly yaw_urad: readonly number[];
  readonly tool_across_um: readonly number[];
  /** Turn about the travel, which carries a tall tool across. */
  readonly roll_urad: readonly number[];
  readonly bearing: readonly number[];
}

/** The slide cannot rest at one of the places. */
export interface NoRest {
  readonly ok: false;
  readonly printed_mm: number;
  readonly at_mm: number;
}

/**
 * Where along a worn bed to print a slide. Printed at X0 its pads take the bed's form there; standing at X the zone at x then
 * has the gap bed(X0 + x) − bed(X + x) before it rests. Each is set down on its springs; what differs from the rest at X0
 * is what the bed's wear does to the work.
 *
 * @throws RangeError  a pad reaches beyond the survey
 */
export function sitePlaces(input: SiteInput): SitePlace[] | NoRest {
  const { slide, positions_mm, duty } = input;
  const zones = zonesOf(slide);
  const many = zones.length;
  const ground = foundation(slide, input.stiffness_N_per_mm3);
  const rest = settler(ground, heldForce(ground, wrenchOf(input.load)));
  const travel = 'xyz'.indexOf(slide.free);
  const ways = new Map(input.bed.ways.map((way) => [way.pad, way.height_um]));
  const forms = (places: readonly number[]): Float64Array[] =>
    places.map((place) =>
      Float64Array.from(zones, (zone) =>
        heightAt(input.bed.stations_mm, ways.get(zone.pad.name)!, place + zone.centre_mm[travel]!),
      ),
    );
  const standing = forms(positions_mm);
  const printed = forms(input.candidates_mm);
  const across = displacementRow(acrossOf(slide.free), input.tool_mm);
  const yawOf = rowOver(ground, unitRow(3 + yawAxis(slide.free)));
  const rollOf = rowOver(ground, unitRow(3 + travel));
  const acrossRow = rowOver(ground, across);
  const whole = duty.reduce((sum, share) => sum + share, 0);
  const area = ground.area_mm2.reduce((sum, one) => sum + one, 0);
  const gap = new Float64Array(many);
  const places: SitePlace[] = [];

  for (const [k, at_mm] of input.candidates_mm.entries()) {
    gap.fill(0);
    const home = rest(gap);
    if (!home) return { ok: false, printed_mm: at_mm, at_mm };
    const from = { yaw: product(yawOf, home), roll: product(rollOf, home), across: product(acrossRow, home) };
    const yaw_urad: number[] = [];
    const roll_urad: number[] = [];
    const tool_across_um: number[] = [];
    const bearing: number[] = [];
    for (const [p, position] of positions_mm.entries()) {
      const here = standing[p]!;
      const there = printed[k]!;
      for (let z = 0; z < many; z++) gap[z] = there[z]! - here[z]!;
      const c = rest(gap);
      if (!c) return { ok: false, printed_mm: at_mm, at_mm: position };
      yaw_urad.push(product(yawOf, c) - from.yaw);
      roll_urad.push(product(rollOf, c) - from.roll);
      tool_across_um.push(product(acrossRow, c) - from.across);
      let bears = 0;
      for (let z = 0; z < many; z++) {
        let left = gap[z]!;
        for (let i = 0; i < ground.held; i++) left += ground.rows[z * ground.held + i]! * c[i]!;
        if (left <= input.film_um) bears += ground.area_mm2[z]!;
      }
      bearing.push(bears / area);
    }
    const mean = (of: readonly number[], power: 1 | 2) =>
      of.reduce((sum, value, p) => sum + duty[p]! * value ** power, 0) / whole;
    places.push({
      at_mm,
      yaw_rms_urad: Math.sqrt(mean(yaw_urad, 2)),
      tool_across_rms_um: Math.sqrt(mean(tool_across_um, 2)),
      bearing_fraction: mean(bearing, 1),
      yaw_urad,
      tool_across_um,
      roll_urad,
      bearing,
    });
  }
  return places;
}

/** The axis that a turned radius is measured along: across the travel, level. */
const acrossOf = (free: AxisName): Vector => (free === 'y' ? [1, 0, 0] : [0, 1, 0]);

/** Yaw is the turn about the upright across; for travel along z, about x. */
const yawAxis = (free: AxisName): number => (free === 'z' ? 0 : 2);

const unitRow = (at: number): PoseNumbers =>
  Array.from({ length: 6 }, (_, i) => (i === at ? 1 : 0)) as unknown as PoseNumbers;

/** A row over the pose as one over the held coordinates. */
function rowOver(ground: ReturnType<typeof foundation>, row: PoseNumbers): Float64Array {
  const { held } = ground;
  return Float64Array.from({ length: held }, (_, k) => {
    const one = new Float64Array(held);
    one[k] = 1;
    return poseOf(ground, one).reduce((sum, part, i) => sum + part * row[i]!, 0);
  });
}

function product(row: Float64Array, c: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < row.length; k++) sum += row[k]! * c[k]!;
  return sum;
}
