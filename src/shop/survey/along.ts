import { rise } from '../../core/body/displacement.ts';
import { type Verdict, verdict } from '../../core/prove/verdict.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { say, sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import { told } from '../../core/quantity/told.ts';
import { size_um, type UnitSystem } from '../../core/quantity/unit.ts';
import { type AlongInput, surveyAlong } from '../../core/survey/along.ts';
import { alongMonteCarlo } from '../../core/survey/along-draws.ts';
import type { Drawn, Draws } from '../../core/survey/monte-carlo.ts';
import { missingStations, suspects } from '../../core/survey/suspect.ts';
import type { SurveyWarning } from './line-warnings.ts';
import { suspectText } from './suspect-words.ts';

/** Range, ends and slope, in the unit that the key says. */
interface Sizes {
  readonly range: number;
  readonly ends: number;
  /** For each metre along the way. */
  readonly per_m: number;
}

/** What `line` answers for twist (µrad) and parallelism (µm); see docs/contract.md. */
export interface AlongAnswer {
  readonly name?: string;
  readonly kind: AlongInput['kind'];
  readonly stations_mm: readonly number[];
  /** Each less the first. */
  readonly change_urad?: readonly number[];
  readonly change_um?: readonly number[];
  readonly twist_urad?: Sizes;
  readonly parallelism_um?: Sizes;
  /** One sd of each, and of one station. */
  readonly sd?: Sizes & { readonly each: number };
  /** Range of the twist as a height over the bridge. */
  readonly over_bridge_um?: number;
  /** Where the run back ends beside where the run there began, and the steady drift that is taken out. */
  readonly drift?: { readonly closing: number; readonly per_reading: number; readonly sd: number };
  readonly decision?: { readonly limit: number; readonly verdict: Verdict; readonly over: number };
  /** The sizes when the readings are drawn anew; only on request and where a doubt is known. */
  readonly monte_carlo?: Draws & Readonly<Record<keyof Sizes, Drawn>>;
  readonly warnings: readonly SurveyWarning[];
}

/**
 * Twist or parallelism of one way to another, with its doubt and every slip that the readings hint at.
 * @param system  units of the warnings
 */
export function along(input: AlongInput, draws?: Draws, system: UnitSystem = 'metric'): AlongAnswer {
  const found = surveyAlong(input);
  const drawn = draws && alongMonteCarlo(input, draws);
  const isTwist = input.kind === 'twist';
  const sizes: Sizes = { range: found.range, ends: found.ends, per_m: found.per_m };
  const limit = isTwist ? input.limit_urad : input.limit_um;
  const judged = limit !== undefined && found.sd && verdict(found.range, found.sd.range, -Infinity, limit);
  return {
    ...(input.name === undefined ? {} : { name: input.name }),
    kind: input.kind,
    stations_mm: input.stations_mm,
    ...(isTwist
      ? { change_urad: found.change, twist_urad: sizes }
      : { change_um: found.change, parallelism_um: sizes }),
    ...(found.sd ? { sd: found.sd } : {}),
    ...(isTwist && input.bridge_mm !== undefined
      ? { over_bridge_um: rise(found.range, input.bridge_mm) }
      : {}),
    ...(found.runs
      ? {
          drift: {
            closing: found.runs.differences[0]!,
            per_reading: found.runs.drift,
            sd: found.runs.drift_sd,
          },
        }
      : {}),
    ...(judged ? { decision: { limit: limit!, verdict: judged.verdict, over: judged.over } } : {}),
    ...(draws && drawn ? { monte_carlo: { ...draws, ...drawn } } : {}),
    warnings: warningsOf(input, found.sd !== undefined, found.widened, system),
  };
}

function warningsOf(
  input: AlongInput,
  isKnown: boolean,
  widened: number,
  system: UnitSystem,
): SurveyWarning[] {
  const isTwist = input.kind === 'twist';
  const key = isTwist ? 'tilts_urad' : 'heights_um';
  const values = isTwist ? input.tilts_urad : input.heights_um;
  const where = (index: number) => `Station ${told(system).place(input.stations_mm[index]!)}`;
  const slips = suspects(input.stations_mm, values).map((one) => ({
    code: one.code,
    text: suspectText(one, where(one.index), isTwist ? 'angle' : 'size', system),
    path: `${key}[${one.index}]`,
  }));
  const gaps = missingStations(input.stations_mm).map((one) => ({
    code: one.code,
    text: suspectText(one, where(one.index), 'size', system),
    path: `stations_mm[${one.index}]`,
  }));
  return [
    ...slips,
    ...gaps,
    ...(widened > 1
      ? [
          {
            code: 'scatter',
            text: `The two runs scatter ${widened.toPrecision(2)} times more than stated; the doubt is widened by as much.`,
          },
        ]
      : []),
    ...(isKnown
      ? []
      : [
          {
            code: 'no doubt',
            text: 'No doubt is known: neither the sd of a reading nor a run back was given, so nothing can be proven.',
          },
        ]),
  ];
}

/** What a rate along the way is told for: each metre, or each foot. */
export function eachLength(system: UnitSystem): {
  readonly word: string;
  readonly value: (per_m: number) => number;
} {
  return system === 'metric'
    ? { word: 'metre', value: (per_m) => per_m }
    : { word: 'foot', value: (per_m) => (per_m * size_um.ft) / size_um.m };
}

/** The result as one would say it at the bench. */
export function alongSentence(answer: AlongAnswer, system: UnitSystem = 'metric'): string {
  const { stations_mm, sd } = answer;
  const long = sayLength(stations_mm.at(-1)! - stations_mm[0]!, system).text;
  const size = (own: number | undefined) => (own === undefined ? {} : { sd: own });
  const decided = decidedText(answer, system);
  const each = eachLength(system);
  if (answer.twist_urad) {
    const { range, per_m } = answer.twist_urad;
    const unit = system === 'metric' ? 'mm/m' : 'thou/12 in';
    const turn = saySlope(range, system, { unit, signed: false, ...size(sd?.range) }).text;
    const rate = saySlope(each.value(per_m), system, { unit, ...size(sd && each.value(sd.per_m)) }).text;
    return `${answer.name ?? 'The ways'} twist by ${turn} over ${long}, ${rate} for each ${each.word} along (plus: the back rises).${decided}`;
  }
  const { range, per_m } = answer.parallelism_um!;
  const apart = sayDeviation(range, system, { signed: false, ...size(sd?.range) }).text;
  // µm in a metre is µrad: a slope like any other.
  const rate =
    system === 'metric'
      ? say(Math.abs(per_m), 'µm/m', { signed: false, ...size(sd?.per_m) }).text
      : saySlope(Math.abs(per_m), system, { signed: false, ...size(sd?.per_m) }).text;
  const way = per_m < 0 ? 'falls' : 'climbs';
  return `${answer.name ?? 'The ways'} are parallel within ${apart} over ${long}; the reading ${way} ${rate} along the way.${decided}`;
}

/** Whether a limit is kept, in words; nothing when there is no decision. */
function decidedText({ decision, twist_urad }: AlongAnswer, system: UnitSystem): string {
  if (!decision) return '';
  const size = (value: number): string =>
    twist_urad
      ? saySlope(value, system, { unit: system === 'metric' ? 'mm/m' : 'thou/12 in', signed: false }).text
      : sayDeviation(value, system, { signed: false }).text;
  const limit = size(decision.limit);
  if (decision.verdict === 'within') return ` Within ${limit}.`;
  if (decision.verdict === 'outside') return ` Outside ${limit}.`;
  return ` Not proven within ${limit}: value and doubt reach ${size(decision.over)} beyond.`;
}
