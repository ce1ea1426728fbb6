import { slope } from '../body/displacement.ts';
import { type FacedAsk, faced } from './faced.ts';
import { type Doubted, inward } from './spindle.ts';
import { addReading, rowVariance, type Travel } from './travel.ts';
import { type TurnedAsk, taperRow, turned } from './turned.ts';

/**
 * The corner of a shoulder with the diameter turned up to it: angle in the air between them less 90°, µrad; plus: more open.
 *
 *     corner = −(η + τ)                                                                                        (1)
 *
 * η the shoulder's hollow, τ the slope of the radius, plus: grows toward the tailstock. The axis' slope is in both and drops
 * out: what counts is the cross ways against the saddle's travel.
 *
 * @param beside    the diameter, on the same travel as the shoulder
 * @throws RangeError  as turned and faced; a shoulder on another travel
 */
export function corner(shoulder: FacedAsk, beside: TurnedAsk): Required<Doubted> {
  const travel = shoulder.saddle;
  if (travel !== beside.travel) throw new RangeError('shoulder and diameter on two travels; expected one');
  const long = beside.to_mm - beside.from_mm;
  const value = -(faced(shoulder).square_urad.value + slope(turned(beside).taper_um.value / 2, long));
  const row = taperRow(beside).map((part) => slope(part / 2, long));
  // The contract's rule: ω_z plus is concave, for a tool in front.
  addReading(row, travel, shoulder.at_mm, [0, 0, 0, 0, 0, inward(shoulder.side)]);
  const sure = (of: Travel): Travel => ({
    name: of.name,
    along: of.along,
    stations_mm: of.stations_mm,
    poses: of.poses,
  });
  const { across_urad, up_urad } = shoulder.spindle;
  const spindle = { across_urad: { value: across_urad.value }, up_urad };
  const crossSd = faced({ ...shoulder, saddle: sure(travel), spindle }).square_urad.sd;
  // The axis' rise comes in by the diameter alone, and in the second order.
  const riseSd = slope(turned({ ...beside, travel: sure(travel), spindle }).taper_um.sd / 2, long);
  return { value, sd: Math.sqrt(rowVariance(travel, row) + crossSd ** 2 + riseSd ** 2) };
}
