import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { AlongInput } from '../../core/survey/along.ts';
import { bracketed, shownIn } from '../shown-in.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { AlongAnswer } from './along.ts';

/** How twist or parallelism comes about: change by station, its range, ends and slope, the doubt, the verdict. */
export function alongWorking(
  input: AlongInput,
  answer: AlongAnswer,
  system: UnitSystem = 'metric',
): Worked[] {
  const { mm, um, urad, asSmall, asSlope, long, small, slope, per } = shownIn(system);
  const isTwist = input.kind === 'twist';
  const [n, unit, as] = isTwist ? [urad, slope, asSlope] : [um, small, asSmall];
  // A metre, or a foot.
  const [along, word] = system === 'metric' ? [1, 'metre'] : [0.3048, 'foot'];
  const change = (answer.change_urad ?? answer.change_um)!;
  const sizes = (answer.twist_urad ?? answer.parallelism_um)!;
  const { sd, decision, drift, stations_mm } = answer;
  const high = change.indexOf(Math.max(...change));
  const low = change.indexOf(Math.min(...change));
  const back = isTwist ? input.return_urad : input.return_um;
  const other = isTwist ? undefined : input.other_um;
  return [
    {
      what: 'change from the first station',
      formula: `${back ? '(there + back)/2' : 'reading'}${other ? ' of the one − of the other' : ''}, less the first; a constant drops out`,
      worked: `at ${stations_mm.map(mm).join(', ')} ${long}: ${change.map(n).join(', ')} ${unit}`,
    },
    ...(drift
      ? [
          {
            what: 'steady drift, taken out by the run back',
            formula: 'line through there − back, from one reading to the next',
            worked: `${n(drift.per_reading)} ${unit} a reading, one sd ${n(drift.sd)} ${unit}`,
          },
        ]
      : []),
    {
      what: isTwist ? 'twist, range' : 'out of parallel, range',
      formula: 'greatest − least',
      worked: `${n(change[high]!)} − ${bracketed(n(change[low]!))} = ${n(sizes.range)} ${unit}${sd ? `; one sd √(2) × ${n(sd.each)} = ${n(sd.range)} ${unit}` : ''}`,
    },
    {
      what: 'end to end',
      formula: 'last − first',
      worked: `${n(change.at(-1)!)} − ${bracketed(n(change[0]!))} = ${n(sizes.ends)} ${unit}`,
    },
    {
      what: `for each ${word}`,
      formula: 'slope of the line through all, by least squares',
      worked: `${n(along * sizes.per_m)} ${unit}${sd ? `, one sd ${n(along * sd.per_m)} ${unit}` : ''}`,
    },
    ...(answer.over_bridge_um !== undefined && isTwist && input.bridge_mm !== undefined
      ? [
          {
            what: 'the same as a height over the bridge',
            formula: `range × bridge/${per}`,
            worked: `${n(sizes.range)} × ${mm(input.bridge_mm)}/${per} = ${um(answer.over_bridge_um)} ${small}`,
          },
        ]
      : []),
    ...(decision && sd
      ? [
          {
            what: 'against its limit',
            formula: bandRule,
            worked: bandWorked(
              as(sizes.range),
              2 * as(sd.range),
              { high: as(decision.limit) },
              unit,
              decision.verdict,
            ),
            source: bandSource,
          },
        ]
      : []),
  ];
}
