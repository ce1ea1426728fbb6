import { sayLength } from '../../core/quantity/length.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { LineAnswer } from './line.ts';

/** A size has no sign; its doubt is known or it is not. */
export const sayWidth = (um: number, system: UnitSystem, sd: number | undefined): string =>
  sayDeviation(um, system, { signed: false, ...(sd === undefined ? {} : { sd }) }).text;

/** Which way the line bends between its ends: all to one side, or to both. */
export function bendOf(
  answer: LineAnswer,
): 'hollow' | 'crowned' | 'to the front' | 'to the back' | 'both ways' {
  const most = Math.max(...answer.endpoint_um);
  const least = Math.min(...answer.endpoint_um);
  const small = 0.1 * (most - least);
  const vertical = answer.direction === 'vertical';
  if (most <= small) return vertical ? 'hollow' : 'to the front';
  if (-least <= small) return vertical ? 'crowned' : 'to the back';
  return 'both ways';
}

/** The result as one would say it at the bench: how straight, which way it bends, how far it can be trusted. */
export function lineSentence(answer: LineAnswer, system: UnitSystem = 'metric'): string {
  const { straightness_um, sd, stations_mm, endpoint_um } = answer;
  const width = sayWidth(straightness_um.minimum_zone, system, sd?.straightness_um.minimum_zone);
  const long = sayLength(stations_mm.at(-1)! - stations_mm[0]!, system).text;
  const at = (value: number) => sayLength(stations_mm[endpoint_um.indexOf(value)]!, system).text;
  const most = Math.max(...endpoint_um);
  const least = Math.min(...endpoint_um);
  const said = (um: number): string => {
    const own = sd?.endpoint_um[endpoint_um.indexOf(um)];
    return `${sayDeviation(um, system, own === undefined ? {} : { sd: own }).text} at ${at(um)}`;
  };
  const [high, low] = [said(most), said(least)];
  const bend = bendOf(answer);
  const shape =
    bend === 'both ways'
      ? `it bends both ways from the line through its ends, ${high} and ${low}`
      : bend === 'hollow' || bend === 'to the front'
        ? `it is ${bend === 'hollow' ? 'hollow' : 'bowed to the front'}, ${low} from the line through its ends`
        : `it is ${bend === 'crowned' ? 'crowned' : 'bowed to the back'}, ${high} from the line through its ends`;
  const name = answer.name ?? 'The line';
  return `${name} is straight within ${width} over ${long} (minimum zone); ${shape}.${decisionSentence(answer.decision, system)}`;
}

/** Whether a limit is kept, in words; nothing when there is no decision. */
export function decisionSentence(decision: LineAnswer['decision'], system: UnitSystem): string {
  if (!decision) return '';
  const limit = sayDeviation(decision.limit_um, system, { signed: false }).text;
  const over = sayDeviation(decision.over_um, system, { signed: false, rough: true }).text;
  if (decision.verdict === 'within') return ` Within ${limit}.`;
  if (decision.verdict === 'outside') return ` Outside ${limit}.`;
  return ` Not proven within ${limit}: value and doubt reach ${over} beyond.`;
}
