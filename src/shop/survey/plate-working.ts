import { plain } from '../../core/quantity/show.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { PlateAnswer } from './plate.ts';

const n = (value: number): string => plain(value, 6);
const term = (value: number): string => (value < 0 ? `(${n(value)})` : n(value));

/** How flatness comes about: the two planes and the points that hold them, the widths, the doubt, the depth at the highest point. mm, µm, µrad. */
export function plateWorking(answer: PlateAnswer): Worked[] {
  const { contacts, points, slope_urad, flatness_um, residual_um, depth_um, sd, closures } = answer;
  const height = (index: number): string => {
    const { x_mm, y_mm, z_um } = points[index]!;
    return `${n(z_um)} − ${term(slope_urad.x)} × ${n(x_mm)}/1000 − ${term(slope_urad.y)} × ${n(y_mm)}/1000`;
  };
  const over = (index: number): number => {
    const { x_mm, y_mm, z_um } = points[index]!;
    return z_um - (slope_urad.x * x_mm) / 1000 - (slope_urad.y * y_mm) / 1000;
  };
  const held = (side: 'high' | 'low'): string => n(over(contacts.find((one) => one.side === side)!.index));
  const high = residual_um.indexOf(Math.max(...residual_um));
  const low = residual_um.indexOf(Math.min(...residual_um));
  const deepest = depth_um.indexOf(Math.max(...depth_um));
  const at = (index: number): string => `x ${n(points[index]!.x_mm)}, y ${n(points[index]!.y_mm)} mm`;
  return [
    ...closures.map(
      (one): Worked => ({
        what: `closing error, ${one.name}`,
        formula: 'height found along it − height by the lines that frame it',
        worked: `${n(one.closing_um)} µm${one.sd_um === undefined ? '' : `, one sd ${n(one.sd_um)} µm`}`,
      }),
    ),
    ...contacts.map(
      (one): Worked => ({
        what: `${one.side === 'high' ? 'upper' : 'lower'} plane, held at ${at(one.index)}`,
        formula: 'height − slope along x × x − slope along y × y',
        worked: `${height(one.index)} = ${n(over(one.index))} µm`,
      }),
    ),
    {
      what: 'flatness, minimum zone',
      formula: 'upper plane − lower plane, the two parallel planes closest together that hold all points',
      worked: `held ${answer.pattern} (high-low): ${held('high')} − ${held('low').replace(/^−.*/, '($&)')} = ${n(flatness_um.minimum_zone)} µm${sd ? `, one sd ${n(sd.minimum_zone)} µm` : ''}`,
      source: 'ISO 12781-1’s minimum zone reference planes',
    },
    {
      what: 'flatness, least squares',
      formula: 'highest − lowest departure from the least-squares plane',
      worked: `at ${at(high)} and ${at(low)}: ${n(residual_um[high]!)} − ${term(residual_um[low]!)} = ${n(flatness_um.least_squares)} µm${sd ? `, one sd ${n(sd.least_squares)} µm` : ''}`,
      source: 'ISO 12781-1’s least-squares reference plane',
    },
    {
      what: `what must come off at ${at(deepest)}`,
      formula: 'height, less the slopes − lower plane',
      worked: `${height(deepest)} − ${held('low').replace(/^−.*/, '($&)')} = ${n(depth_um[deepest]!)} µm`,
    },
    ...(answer.decision && sd
      ? [
          {
            what: 'against its limit',
            formula: bandRule,
            worked: bandWorked(
              flatness_um.minimum_zone,
              2 * sd.minimum_zone,
              { high: answer.decision.limit_um },
              'µm',
              answer.decision.verdict,
            ),
            source: bandSource,
          },
        ]
      : []),
  ];
}
