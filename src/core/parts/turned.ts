import { displacementRow, rise } from '../body/displacement.ts';
import type { Vector } from '../body/vector.ts';
import { size_um } from '../quantity/unit.ts';
import { lengthFit, placesOver } from './length-fit.ts';
import { type Doubted, inward, type Spindle, type ToolSide, varianceOfDoubted } from './spindle.ts';
import { addReading, emptyRow, poseAt, rowVariance, type Travel, type TravelRow } from './travel.ts';

/** A diameter turned along a length, the saddle travelling along x. */
export interface TurnedAsk {
  readonly travel: Travel;
  readonly spindle: Spindle;
  /** The tool's point, in the saddle's frame. */
  readonly tool_mm: Vector;
  readonly side: ToolSide;
  /** How far the tool's point stands over the axis at the first place; plus: high. */
  readonly tool_high_mm: number;
  readonly radius_mm: number;
  /** Places of the saddle where the cut begins and ends, from below to. */
  readonly from_mm: number;
  readonly to_mm: number;
}

/** What comes off. Diameters are against the one at `from_mm`, where it was measured and set. */
export interface Turned {
  readonly places_mm: readonly number[];
  /** Diameter less the diameter at the first place, µm. */
  readonly diameter_um: readonly number[];
  readonly diameter_sd_um: readonly number[];
  /** The least-squares line's rise over the length, µm; plus: larger at the far end (tailstock). */
  readonly taper_um: Required<Doubted>;
  /** The least-squares parabola's middle less its ends, µm; plus: barrel, minus: hollow. */
  readonly bow_um: Required<Doubted>;
  /** What line and parabola leave, rms over the length, µm of diameter. */
  readonly residual_um: number;
  /** The parabola at each place, against the same zero as `diameter_um`. */
  readonly fit_um: readonly number[];
  /** Radii of the two cylinders about the axis that hold the surface differ by this, µm. */
  readonly cylindricity_um: Required<Doubted>;
  /** How much of the largest difference of diameter comes from movement up and down, µm: second order in size. */
  readonly from_height_um: number;
}

/**
 * A turned diameter along a length.
 *
 *     r = √((a + δ)² + (h + ε)²),   a = √(R² − h²)                                                           (1)
 *
 * δ is how far the tool goes from the axis across (front tool: the axis' y less the tool's), ε how far it rises over it.
 * First order: ΔD = 2δ. Second order: ΔD ≈ (2hε + ε²)/R, which matters for small work or a tool off centre.
 * A free end of the axis away from the operator (across_urad plus) makes a front tool's work grow toward the tailstock by
 * 2 · rise(across, length); yaw and roll of the saddle carry the tool across by their arms.
 * Movement along x only shifts a place along the work by as little, and is left out.
 *
 * Doubt is of first order. The range in `cylindricity_um` is of the poses as given: scatter among them counts as form.
 * @throws RangeError  a length beyond the travel, or a tool higher over the axis than the radius
 * Source: geometry; held to hand arithmetic in checks/parts-lathe.check.ts.
 */
export function turned(ask: TurnedAsk): Turned {
  const { places_mm, cuts, diameter_um, variance } = cutAlong(ask);
  const summed = (weights: ArrayLike<number>): Required<Doubted> => ({
    value: diameter_um.reduce((sum, d, i) => sum + d * weights[i]!, 0),
    sd: Math.sqrt(variance(weights)),
  });
  const fit = lengthFit(places_mm);
  const c = fit.coefficients.map((weights) => diameter_um.reduce((sum, d, i) => sum + d * weights[i]!, 0));
  const fit_um = fit.basis.map((row) => row.reduce((sum, part, k) => sum + part * c[k]!, 0));
  const highest = diameter_um.indexOf(Math.max(...diameter_um));
  const lowest = diameter_um.indexOf(Math.min(...diameter_um));
  // Of a body of revolution the least zone is about its own axis: half the range of diameters.
  const range = places_mm.map((_, i) => (i === highest ? 0.5 : 0) - (i === lowest ? 0.5 : 0));
  return {
    places_mm,
    diameter_um,
    diameter_sd_um: places_mm.map((_, i) => Math.sqrt(variance(places_mm.map((_, k) => (k === i ? 1 : 0))))),
    taper_um: summed(fit.taper),
    bow_um: summed(fit.bow),
    residual_um: Math.sqrt(meanSquare(places_mm, (i) => diameter_um[i]! - fit_um[i]!)),
    fit_um,
    cylindricity_um: summed(range),
    from_height_um: cuts[highest]!.from_height_um - cuts[lowest]!.from_height_um,
  };
}

/** What the taper reads of the poses: one coefficient for each pose number, µm of diameter. For doubt that is shared with other figures. */
export function taperRow(ask: TurnedAsk): TravelRow {
  const { places_mm, row } = cutAlong(ask);
  return row(lengthFit(places_mm).taper);
}

/** The cut place by place, and how any sum over its diameters hangs on poses and axis. */
function cutAlong(ask: TurnedAsk) {
  const { travel, spindle, side, radius_mm, from_mm, to_mm } = ask;
  if (!(Math.abs(ask.tool_high_mm) < radius_mm))
    throw new RangeError(`tool ${ask.tool_high_mm} mm over the axis of a radius of ${radius_mm} mm`);
  const places_mm = placesOver(from_mm, to_mm, travel.stations_mm);
  const across = displacementRow([0, 1, 0], ask.tool_mm);
  const up = displacementRow([0, 0, 1], ask.tool_mm);
  const reach_mm = Math.sqrt(radius_mm ** 2 - ask.tool_high_mm ** 2);
  const start = poseAt(travel, from_mm);
  const away = -inward(side);
  const cuts = places_mm.map((at) => {
    const pose = poseAt(travel, at);
    const moved = (row: readonly number[]) =>
      row.reduce((sum, part, j) => sum + part * (pose[j]! - start[j]!), 0);
    const arm = at - from_mm;
    const out_um = away * (moved(across) - rise(spindle.across_urad.value, arm));
    const over_um = moved(up) - rise(spindle.up_urad.value, arm);
    return { ...cut(reach_mm, ask.tool_high_mm, out_um, over_um), arm };
  });
  const row = (weights: ArrayLike<number>): TravelRow => {
    const into = emptyRow(travel);
    cuts.forEach(({ byOut, byOver }, i) => {
      const w = weights[i]!;
      if (w === 0) return;
      for (const [of, by] of [
        [across, away * byOut],
        [up, byOver],
      ] as const) {
        addReading(into, travel, places_mm[i]!, of, w * by);
        addReading(into, travel, from_mm, of, -w * by);
      }
    });
    return into;
  };
  /** Through the poses, which stations share, and the axis, which all share. */
  const variance = (weights: ArrayLike<number>): number => {
    let axisAcross = 0;
    let axisUp = 0;
    cuts.forEach(({ byOut, byOver, arm }, i) => {
      axisAcross -= weights[i]! * away * byOut * rise(1, arm);
      axisUp -= weights[i]! * byOver * rise(1, arm);
    });
    return (
      rowVariance(travel, row(weights)) +
      axisAcross ** 2 * varianceOfDoubted(spindle.across_urad) +
      axisUp ** 2 * varianceOfDoubted(spindle.up_urad)
    );
  };
  return { places_mm, cuts, diameter_um: cuts.map((one) => one.diameter_um), row, variance };
}

/** One place of the cut: diameter against 2R, and its slopes. */
function cut(reach_mm: number, high_mm: number, out_um: number, over_um: number) {
  const out_mm = out_um / size_um.mm;
  const over_mm = over_um / size_um.mm;
  const r = Math.hypot(reach_mm + out_mm, high_mm + over_mm);
  const radius_mm = Math.hypot(reach_mm, high_mm);
  // r − R = (r² − R²)/(r + R): squares of large numbers are never subtracted.
  const acrossPart = (2 * reach_mm + out_mm) * out_mm;
  const heightPart = (2 * high_mm + over_mm) * over_mm;
  const um = (2 * size_um.mm) / (r + radius_mm);
  return {
    diameter_um: (acrossPart + heightPart) * um,
    from_height_um: heightPart * um,
    byOut: (2 * (reach_mm + out_mm)) / r,
    byOver: (2 * (high_mm + over_mm)) / r,
  };
}

/** Mean of squares over the length, each place with the stretch it stands for. */
function meanSquare(places_mm: readonly number[], of: (i: number) => number): number {
  let sum = 0;
  let whole = 0;
  places_mm.forEach((_, i) => {
    const stretch = places_mm[Math.min(places_mm.length - 1, i + 1)]! - places_mm[Math.max(0, i - 1)]!;
    sum += stretch * of(i) ** 2;
    whole += stretch;
  });
  return sum / whole;
}
