import type { WearWish } from '../contract/parts.ts';
import type { BetterAim, Wear } from '../core/parts/wear.ts';
import { told as toldIn } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { capital } from './phrase.ts';

/** How long a feature stays in its band, and where it would be aimed better. Null: no end. */
export interface LastsText {
  readonly text: string;
  readonly toward: 'low' | 'high' | 'neither';
  /** What the times below are counted in. */
  readonly time_unit: 'h' | 'year';
  readonly lasts: number | null;
  /** Two sd before and after. */
  readonly lasts_low: number | null;
  readonly lasts_high: number | null;
  readonly chance_now: number;
  readonly better_aim: number;
  readonly better_lasts: number | null;
  readonly better_why: BetterAim['why'];
}

const sortOf = { um: 'size', urad: 'angle' } as const;
/** An aim is called better when it lasts longer by this share. */
const worthIt = 1.1;

/** "Facing +40 ± 6 µrad wears −5 ± 2 µrad in 1000 h: it stays in its band for 4000 h, …" */
export function wearText(
  wish: WearWish,
  found: Wear,
  better: BetterAim,
  per: '1000 h' | 'year',
  system: UnitSystem = 'metric',
): LastsText {
  const times = per === '1000 h' ? 1000 : 1;
  const time_unit = per === '1000 h' ? 'h' : 'year';
  const finite = (value: number): number | null => (Number.isFinite(value) ? value * times : null);
  const words = toldIn(system)[sortOf[wish.unit]];
  const told = (value: number, sd?: number): string => words(value, sd === undefined ? {} : { sd });
  const now = `${capital(wish.name)}, ${told(wish.value, wish.sd)} in its band of ${told(wish.low)} to ${told(wish.high)}`;
  const aimed =
    better.lasts > worthIt * found.lasts
      ? ` Aimed at ${told(better.aim)} it would stay for ${time(finite(better.lasts), time_unit)}.`
      : better.why === 'band too narrow for the doubt'
        ? ' The band is too narrow for the doubt to aim elsewhere than at its middle.'
        : '';
  return {
    text: `${now}, ${lasting()}${aimed}`,
    toward: found.toward,
    time_unit,
    lasts: finite(found.lasts),
    lasts_low: finite(found.lasts_low),
    lasts_high: finite(found.lasts_high),
    chance_now: found.chance_now,
    better_aim: better.aim,
    better_lasts: finite(better.lasts),
    better_why: better.why,
  };

  function lasting(): string {
    if (found.toward === 'neither') return 'does not wear.';
    const rate = `wears ${told(wish.rate, wish.rate_sd)} in ${per === '1000 h' ? '1000 h' : 'a year'}`;
    if (found.lasts === 0) return `${rate}: it has left its band already.`;
    const late =
      found.lasts_high === Infinity
        ? 'or, the rate being so little known, without end'
        : `at the latest ${time(finite(found.lasts_high), time_unit)}`;
    return `${rate}: it reaches the ${found.toward} limit after ${time(finite(found.lasts), time_unit)}, at the earliest ${time(finite(found.lasts_low), time_unit)}, ${late} (two sd each way).`;
  }
}

/** Times to two figures: a rate of wear is never better known. */
function time(value: number | null, unit: 'h' | 'year'): string {
  if (value === null) return 'ever';
  const figures = value === 0 ? '0' : `${Number(value.toPrecision(2))}`;
  return unit === 'h' ? `${figures} h` : `${figures} ${figures === '1' ? 'year' : 'years'}`;
}
