import type { JobPlan } from '../../core/ledger/entry.ts';
import { betterAim, type Wear, wear } from '../../core/parts/wear.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { featureScale } from '../bench/feature-scale.ts';
import { capital, type Phrase } from '../phrase.ts';

/** What a rate of wear is told in. */
export type RateTime = '1000 h' | 'year';

export interface LastingAsk {
  readonly feature: string;
  /** Where the feature begins, with its sd: µrad or µm. */
  readonly value: number;
  readonly sd: number;
  /** Wear in one stretch of time, with its sd; plus: the value grows. */
  readonly rate: number;
  readonly rate_sd: number;
  readonly per: RateTime;
}

/** How long a feature of a job stays in its band, in words. */
export interface Lasting {
  readonly found: Wear;
  /** "Facing reaches its low limit of +6 µm in 300 mm after 2.8 years." */
  readonly sentence: Phrase;
  /** "2 to 5 years" of two sd each way; absent where it does not leave its band. */
  readonly between?: string;
  /** Where it would be aimed better, or why nowhere. */
  readonly aim?: string;
}

/** An aim is called better when it lasts longer by this share. */
const worthIt = 1.1;

/**
 * How long a feature stays in its band while it wears, from where it begins.
 * @throws RangeError  the feature has no band
 */
export function lasting(
  plan: Pick<JobPlan, 'features' | 'targets' | 'words'>,
  ask: LastingAsk,
  system: UnitSystem,
): Lasting {
  const { feature, per, ...worn } = ask;
  const scale = featureScale(plan, feature, system);
  const { target } = scale;
  if (!target) throw new RangeError(`feature "${feature}" has no band to stay in`);
  const band = { low: target.low, high: target.high };
  const found = wear({ ...worn, ...band });
  const better = betterAim({ ...worn, ...band }, ask.sd);
  const name = capital(feature);
  const time = (count: number): string => timeText(count, per);
  if (found.toward === 'neither')
    return { found, sentence: [name, ' does ', { b: 'not wear' }, ', so it stays where it is.'] };
  const limit = scale.say(found.toward === 'low' ? band.low : band.high).text;
  // It may lie beyond the other limit and be wearing back into its band.
  const isBeyondOther = found.toward === 'low' ? ask.value > band.high : ask.value < band.low;
  const aim =
    better.why === 'band too narrow for the doubt'
      ? 'The band is too narrow for the doubt: its middle is the best aim.'
      : better.lasts > worthIt * found.lasts
        ? `Aimed at ${scale.say(better.aim).text} it would stay for ${time(better.lasts)}.`
        : undefined;
  if (found.lasts === 0)
    return {
      found,
      sentence: [name, ' has ', { b: 'left its band already' }, `, past ${limit}.`],
      ...(aim ? { aim } : {}),
    };
  return {
    found,
    sentence: [
      name,
      isBeyondOther ? ' is outside its band now and wears back into it; it reaches ' : ' reaches ',
      limit,
      ' after ',
      { b: time(found.lasts) },
      '.',
    ],
    between:
      found.lasts_high === Infinity
        ? `At the earliest ${found.lasts_low === 0 ? 'now' : `after ${time(found.lasts_low)}`}; the rate is so little known that there is no latest.`
        : `Between ${found.lasts_low === 0 ? 'now' : time(found.lasts_low)} and ${time(found.lasts_high)}, 19 times in 20.`,
    ...(aim ? { aim } : {}),
  };
}

/** Times to two figures: a rate of wear is never better known. */
function timeText(count: number, per: RateTime): string {
  if (count === Infinity) return 'ever';
  const figures = `${Number((per === '1000 h' ? 1000 * count : count).toPrecision(2))}`;
  if (per === '1000 h') return `${figures}\u00a0h`;
  return `${figures}\u00a0${figures === '1' ? 'year' : 'years'}`;
}
