import { rise } from '../../core/body/displacement.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { bracketed, shownIn } from '../shown-in.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { PlateAnswer } from './plate.ts';

/** How flatness comes about: the two planes and the points that hold them, the widths, the doubt, the depth at the highest point. */
export function plateWorking(answer: PlateAnswer, system: UnitSystem = 'metric'): Worked[] {
  const { mm, um, urad, asSmall, long, small, per } = shownIn(system);
  const { contacts, points, slope_urad, flatness_um, residual_um, depth_um, sd, closures } = answer;
  const height = (index: number): string => {
    const { x_mm, y_mm, z_um } = points[index]!;
    return `${um(z_um)} − ${bracketed(urad(slope_urad.x))} × ${bracketed(mm(x_mm))}/${per} − ${bracketed(urad(slope_urad.y))} × ${bracketed(mm(y_mm))}/${per}`;
  };
  const over = (index: number): number => {
    const { x_mm, y_mm, z_um } = points[index]!;
    return z_um - rise(slope_urad.x, x_mm) - rise(slope_urad.y, y_mm);
  };
  const held = (side: 'high' | 'low'): string => um(over(contacts.find((one) => one.side === side)!.index));
  const high = residual_um.indexOf(Math.max(...residual_um));
  const low = residual_um.indexOf(Math.min(...residual_um));
  const deepest = depth_um.indexOf(Math.max(...depth_um));
  const at = (index: number): string => `x ${mm(points[index]!.x_mm)}, y ${mm(points[index]!.y_mm)} ${long}`;
  return [
    ...closures.map(
      (one): Worked => ({
        what: `closing error, ${one.name}`,
        formula: 'height found along it − height by the lines that frame it',
        worked: `${um(one.closing_um)} ${small}${one.sd_um === undefined ? '' : `, one sd ${um(one.sd_um)} ${small}`}`,
      }),
    ),
    ...contacts.map(
      (one): Worked => ({
        what: `${one.side === 'high' ? 'upper' : 'lower'} plane, held at ${at(one.index)}`,
        formula: 'height − slope along x × x − slope along y × y',
        worked: `${height(one.index)} = ${um(over(one.index))} ${small}`,
      }),
    ),
    {
      what: 'flatness, minimum zone',
      formula: 'upper plane − lower plane, the two parallel planes closest together that hold all points',
      worked: `held ${answer.pattern} (high-low): ${held('high')} − ${bracketed(held('low'))} = ${um(flatness_um.minimum_zone)} ${small}${sd ? `, one sd ${um(sd.minimum_zone)} ${small}` : ''}`,
      source: 'ISO 12781-1’s minimum zone reference planes',
    },
    {
      what: 'flatness, least squares',
      formula: 'highest − lowest departure from the least-squares plane',
      worked: `at ${at(high)} and ${at(low)}: ${um(residual_um[high]!)} − ${bracketed(um(residual_um[low]!))} = ${um(flatness_um.least_squares)} ${small}${sd ? `, one sd ${um(sd.least_squares)} ${small}` : ''}`,
      source: 'ISO 12781-1’s least-squares reference plane',
    },
    {
      what: `what must come off at ${at(deepest)}`,
      formula: 'height, less the slopes − lower plane',
      worked: `${height(deepest)} − ${bracketed(held('low'))} = ${um(depth_um[deepest]!)} ${small}`,
    },
    ...(answer.decision && sd
      ? [
          {
            what: 'against its limit',
            formula: bandRule,
            worked: bandWorked(
              asSmall(flatness_um.minimum_zone),
              2 * asSmall(sd.minimum_zone),
              { high: asSmall(answer.decision.limit_um) },
              small,
              answer.decision.verdict,
            ),
            source: bandSource,
          },
        ]
      : []),
  ];
}
