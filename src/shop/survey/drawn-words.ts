import { say, sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Drawn, Draws } from '../../core/survey/monte-carlo.ts';
import type { AlongAnswer } from './along.ts';
import type { LineAnswer } from './line.ts';
import type { PlateAnswer } from './plate.ts';

/** One result with its propagated doubt and what drawing makes of it, in words. */
export interface DrawnRow {
  readonly what: string;
  /** Value ± two sd as propagated. */
  readonly propagated: string;
  /** Mean ± two sd of the draws. */
  readonly drawn: string;
  /** 19 draws in 20 lie there. */
  readonly between: string;
}

/** How often readings are drawn anew; the same draws each time. */
export const surveyDraws = {
  line: { draws: 10_000, seed: 1 },
  along: { draws: 10_000, seed: 1 },
  plate: { draws: 2_000, seed: 1 },
} as const satisfies Readonly<Record<string, Draws>>;

type Say = (value: number, sd?: number) => string;

const rowOf = (what: string, value: number, sd: number | undefined, drawn: Drawn, say: Say): DrawnRow => ({
  what,
  propagated: say(value, sd),
  drawn: say(drawn.mean, drawn.sd),
  between: `${say(drawn.low).replace(/\s\D+$/, '')} to ${say(drawn.high)}`,
});

const widthSay =
  (system: UnitSystem): Say =>
  (um, sd) =>
    sayDeviation(um, system, {
      signed: false,
      ...(sd === undefined ? { decimals: system === 'metric' ? 1 : 2 } : { sd }),
    }).text;

/** A drawn answer's rows; none when it was not drawn, as nothing is known of the doubt. */
export function drawnRows(
  found:
    | { readonly sort: 'line'; readonly answer: LineAnswer }
    | { readonly sort: 'plate'; readonly answer: PlateAnswer }
    | { readonly sort: 'along'; readonly answer: AlongAnswer },
  system: UnitSystem,
): readonly DrawnRow[] {
  const width = widthSay(system);
  if (found.sort === 'line') {
    const { monte_carlo: drawn, straightness_um: is, sd } = found.answer;
    if (!drawn) return [];
    const own = sd?.straightness_um;
    return [
      rowOf('minimum zone', is.minimum_zone, own?.minimum_zone, drawn.minimum_zone, width),
      rowOf('least squares', is.least_squares, own?.least_squares, drawn.least_squares, width),
      rowOf('end points', is.endpoint, own?.endpoint, drawn.endpoint, width),
    ];
  }
  if (found.sort === 'plate') {
    const { monte_carlo: drawn, flatness_um: is, sd } = found.answer;
    if (!drawn) return [];
    return [
      rowOf('minimum zone', is.minimum_zone, sd?.minimum_zone, drawn.minimum_zone, width),
      rowOf('least squares', is.least_squares, sd?.least_squares, drawn.least_squares, width),
    ];
  }
  const { monte_carlo: drawn, twist_urad, parallelism_um, sd } = found.answer;
  if (!drawn) return [];
  const is = (twist_urad ?? parallelism_um)!;
  const slopeText: Say = (urad, own) =>
    saySlope(urad, system, {
      signed: false,
      ...(own === undefined ? { decimals: system === 'metric' ? 1 : 2 } : { sd: own }),
    }).text;
  const text = twist_urad ? slopeText : width;
  const rate: Say = (value, own) =>
    say(value, twist_urad ? 'µrad/m' : 'µm/m', own === undefined ? { decimals: 1 } : { sd: own }).text;
  return [
    rowOf('most against least', is.range, sd?.range, drawn.range, text),
    rowOf('for each metre', is.per_m, sd?.per_m, drawn.per_m, rate),
  ];
}
