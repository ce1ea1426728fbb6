import { plain } from '../../core/quantity/show.ts';
import type { AlongInput } from '../../core/survey/along.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { AlongAnswer } from './along.ts';

const n = (value: number): string => plain(value, 6);
const term = (value: number): string => (value < 0 ? `(${n(value)})` : n(value));

/** How twist or parallelism comes about: change by station, its range, ends and slope, the doubt, the verdict. mm; µrad or µm. */
export function alongWorking(input: AlongInput, answer: AlongAnswer): Worked[] {
  const isTwist = input.kind === 'twist';
  const unit = isTwist ? 'µrad' : 'µm';
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
      worked: `at ${stations_mm.map(n).join(', ')} mm: ${change.map(n).join(', ')} ${unit}`,
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
      worked: `${n(change[high]!)} − ${term(change[low]!)} = ${n(sizes.range)} ${unit}${sd ? `; one sd √(2) × ${n(sd.each)} = ${n(sd.range)} ${unit}` : ''}`,
    },
    {
      what: 'end to end',
      formula: 'last − first',
      worked: `${n(change.at(-1)!)} − ${term(change[0]!)} = ${n(sizes.ends)} ${unit}`,
    },
    {
      what: 'for each metre',
      formula: 'slope of the line through all, by least squares',
      worked: `${n(sizes.per_m)} ${unit}/m${sd ? `, one sd ${n(sd.per_m)} ${unit}/m` : ''}`,
    },
    ...(answer.over_bridge_um !== undefined && isTwist && input.bridge_mm !== undefined
      ? [
          {
            what: 'the same as a height over the bridge',
            formula: 'range µrad × bridge mm/1000',
            worked: `${n(sizes.range)} × ${n(input.bridge_mm)}/1000 = ${n(answer.over_bridge_um)} µm`,
          },
        ]
      : []),
    ...(decision && sd
      ? [
          {
            what: 'against its limit',
            formula: bandRule,
            worked: bandWorked(sizes.range, 2 * sd.range, { high: decision.limit }, unit, decision.verdict),
            source: bandSource,
          },
        ]
      : []),
  ];
}
