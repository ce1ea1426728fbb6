import { displacementAlong, type Pose } from '../body/displacement.ts';
import { zoneCentres } from '../body/pad.ts';
import type { Slide } from '../body/slide.ts';
import { type AxisName, add, axisVector, dot, scale, unit } from '../body/vector.ts';

/**
 * What comes off each zone, µm square to its face, so that a slide turns by so much and goes down no further than it must: metal only
 * comes off, so one place is left as it is and the others come down to it.
 *
 *     off = λ (n · N) − n · (ω × p)
 *
 * n: the face's normal, N: the mean of all, p: the zone's middle, λ: the least that leaves no zone below nothing.
 * @param turn_urad  about `axis`, right-handed in the slide's frame
 * @returns          by pad, zones in order of plus along the travel
 * @throws RangeError  a face that looks away from the others, which going down does not reach
 */
export function wedgeOff(
  slide: Slide,
  axis: AxisName,
  turn_urad: number,
): Readonly<Record<string, readonly number[]>> {
  const pose: Pose = { t_um: [0, 0, 0], turn_urad: scale(axisVector(axis), turn_urad) };
  const down = unit(slide.pads.map((pad) => pad.normal).reduce(add));
  const rises = slide.pads.map((pad) => {
    const along = dot(pad.normal, down);
    if (!(along > 0)) throw new RangeError(`"${pad.name}" looks away from the other faces`);
    const zones = zoneCentres(pad, slide.free).map((p) => displacementAlong(pose, pad.normal, p));
    return { pad, along, zones };
  });
  const least = Math.max(...rises.flatMap(({ along, zones }) => zones.map((um) => um / along)));
  return Object.fromEntries(
    rises.map(({ pad, along, zones }) => [pad.name, zones.map((um) => least * along - um + 0)]),
  );
}
