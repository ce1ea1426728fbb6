import { displacementRow, rise, slope } from '../body/displacement.ts';
import type { Vector } from '../body/vector.ts';
import { placesOver } from './length-fit.ts';
import { type Doubted, inward, type Spindle, type ToolSide, varianceOfDoubted } from './spindle.ts';
import { addReading, emptyRow, poseAt, readingOf, rowVariance, type Travel } from './travel.ts';

/** A face or a shoulder, the cross slide travelling along y on a saddle that stands still. */
export interface FacedAsk {
  /** The saddle's travel along x. */
  readonly saddle: Travel;
  /** Where the saddle stands, a place of that travel. */
  readonly at_mm: number;
  /** The tool's point, in the saddle's frame, when it stands at the rim. */
  readonly tool_mm: Vector;
  /** The cross slide's own form along y, its stations being the tool's distance from the axis; left out: straight. */
  readonly cross?: Travel;
  /** Out of square of the cross ways to the saddle's travel, µrad; plus: faces come out concave. */
  readonly square_urad: Doubted;
  readonly spindle: Spindle;
  readonly side: ToolSide;
  readonly rim_mm: number;
  /** Radius where the cut ends; 0 for a whole face. */
  readonly inner_mm: number;
}

/** What comes off, a body of revolution. */
export interface Faced {
  /** From rim to inner edge, radius, mm. */
  readonly radius_mm: readonly number[];
  /** How far each ring lies below the rim, µm; plus: hollow. */
  readonly depth_um: readonly number[];
  readonly depth_sd_um: readonly number[];
  /** Depth at the inner edge, µm; plus: concave. An indicator past the centre shows twice this on the far side. */
  readonly concave_um: Required<Doubted>;
  /** The same as a slope to a plane square to the axis, µrad; plus: concave. */
  readonly square_urad: Required<Doubted>;
  /** Largest departure from the straight cone between rim and inner edge, µm; plus: hollow of the cone. */
  readonly form_um: number;
  /** Between two planes square to the axis, µm. */
  readonly flatness_um: Required<Doubted>;
}

/**
 * A face, against a plane square to the axis that the work turns about.
 *
 *     depth(ρ) = (ω_z + square − axis) · (R − ρ) − (u_x(ρ) − u_x(R))                                          (1)
 *
 * The tool goes from the rim at R inward. ω_z of the saddle plus carries it toward the headstock, so faces come out
 * concave (the contract's rule); an axis whose free end lies away from the operator (across_urad plus) takes as much off.
 * For a tool behind the axis all three change sign. u_x is the cross slide's own movement along x.
 * The axis' slope up does nothing while the tool cuts at centre height.
 *
 * Doubt is of first order; flatness is of the poses as given.
 * @throws RangeError  the saddle's place or a radius beyond its travel, or an inner radius not below the rim
 * Source: geometry; f = εD/2 and 2f past the centre held in checks/parts-lathe.check.ts.
 */
export function faced(ask: FacedAsk): Faced {
  const { saddle, cross, spindle, at_mm, rim_mm, inner_mm } = ask;
  if (!(inner_mm >= 0 && inner_mm < rim_mm))
    throw new RangeError(`inner radius ${inner_mm} mm; expected 0 or above, below the rim's ${rim_mm} mm`);
  const sign = inward(ask.side);
  const radius_mm = placesOver(inner_mm, rim_mm, cross?.stations_mm ?? []).reverse();
  const tool = (radius: number): Vector => [
    ask.tool_mm[0],
    ask.tool_mm[1] + sign * (rim_mm - radius),
    ask.tool_mm[2],
  ];
  // Along x, so that plus is toward the tailstock: a hollow is the tool gone the other way.
  const along = (radius: number) => displacementRow([1, 0, 0], tool(radius));
  const pose = poseAt(saddle, at_mm);
  const turns = along(inner_mm).map((part, j) => part - along(rim_mm)[j]!);
  const perReach = turns.map((part) => -part / (rim_mm - inner_mm));
  const angle_um = (reach: number): number =>
    reach * perReach.reduce((sum, part, j) => sum + part * pose[j]!, 0) +
    sign * rise(ask.square_urad.value - spindle.across_urad.value, reach);
  const crossRow = (weights: ArrayLike<number>) => {
    if (!cross) return undefined;
    const row = emptyRow(cross);
    radius_mm.forEach((radius, i) => {
      if (weights[i] === 0) return;
      // The tool rides on the cross slide: its own arms do not change as it goes.
      const arm = displacementRow([1, 0, 0], ask.tool_mm);
      addReading(row, cross, radius, arm, -weights[i]!);
      addReading(row, cross, rim_mm, arm, weights[i]!);
    });
    return row;
  };
  const only = (i: number) => radius_mm.map((_, k) => (k === i ? 1 : 0));
  const depth_um = radius_mm.map((radius, i) => {
    const row = crossRow(only(i));
    return angle_um(rim_mm - radius) + (row && cross ? readingOf(cross, row) : 0);
  });
  const sdOf = (weights: ArrayLike<number>): number => {
    const reach = radius_mm.reduce((sum, radius, i) => sum + weights[i]! * (rim_mm - radius), 0);
    const row = emptyRow(saddle);
    addReading(row, saddle, at_mm, perReach, reach);
    const crossPart = crossRow(weights);
    return Math.sqrt(
      rowVariance(saddle, row) +
        rise(1, reach) ** 2 * (varianceOfDoubted(ask.square_urad) + varianceOfDoubted(spindle.across_urad)) +
        (cross && crossPart ? rowVariance(cross, crossPart) : 0),
    );
  };
  const last = radius_mm.length - 1;
  const whole = rim_mm - inner_mm;
  const concave_um = { value: depth_um[last]!, sd: sdOf(only(last)) };
  const off = depth_um.map((d, i) => d - (concave_um.value * (rim_mm - radius_mm[i]!)) / whole);
  const deepest = depth_um.indexOf(Math.max(...depth_um));
  const highest = depth_um.indexOf(Math.min(...depth_um));
  return {
    radius_mm,
    depth_um,
    depth_sd_um: radius_mm.map((_, i) => sdOf(only(i))),
    concave_um,
    square_urad: { value: slope(concave_um.value, whole), sd: slope(concave_um.sd, whole) },
    form_um: off.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0),
    flatness_um: {
      value: depth_um[deepest]! - depth_um[highest]!,
      sd: sdOf(radius_mm.map((_, i) => (i === deepest ? 1 : 0) - (i === highest ? 1 : 0))),
    },
  };
}
