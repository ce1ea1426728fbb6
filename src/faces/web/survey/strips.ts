import type { PlaceWords } from '../../../core/ledger/setup.ts';
import type { TakenSurvey } from '../../../core/ledger/survey-record.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation, spokenUnit } from '../../../core/quantity/say.ts';
import { plain } from '../../../core/quantity/show.ts';
import { saySlope, slopeSign, slopeSize, spokenSlope } from '../../../core/quantity/slope.ts';
import { size_um, type UnitSystem, unitSign } from '../../../core/quantity/unit.ts';
import { type BedStrip, type BedStripsFigure, bedStrips } from '../../../draw/bed-strips.ts';
import type { Shape } from '../../../draw/shape.ts';
import type { SiteAnswer } from '../../../shop/site.ts';
import { siteFigures } from '../../../shop/site-words.ts';
import { worstOf } from '../../../shop/survey/screen-words.ts';
import { hows } from '../../../shop/survey/sheet-hows.ts';
import { subjectHead } from '../../../shop/survey/subjects.ts';
import { type Answered, answered } from './answered.ts';
import { axisText, lengthUnit } from './figures.ts';

/** A kept survey of a line with its answer. */
export type FoundLine = TakenSurvey & {
  readonly what: 'line';
  readonly found: Answered & { sort: 'line' | 'along' };
};

export const foundLines = (surveys: Iterable<TakenSurvey>, system: UnitSystem): FoundLine[] =>
  [...surveys].flatMap((one) => {
    if (one.what !== 'line') return [];
    const found = answered(one.input, one.from_mm, system);
    return found.sort === 'plate' ? [] : [{ ...one, found }];
  });

function stripOf({ found, of, sheet }: FoundLine, system: UnitSystem): BedStrip {
  const length = lengthUnit(system).mm;
  if (found.sort === 'along') {
    const { answer } = found;
    const unit = spokenSlope(system);
    const isTwist = answer.kind === 'twist';
    const change = answer.change_urad ?? answer.change_um ?? [];
    const small = spokenUnit(Math.max(...change.map(Math.abs), 1e-9), system);
    const size = isTwist ? slopeSize(unit) : size_um[small];
    const sizes = change.map(Math.abs);
    const index = sizes.indexOf(Math.max(...sizes));
    const own = answer.sd ? answer.sd.each * Math.SQRT2 : undefined;
    const worst = isTwist
      ? saySlope(change[index]!, system, own === undefined ? {} : { sd: own })
      : sayDeviation(change[index]!, system, own === undefined ? {} : { sd: own });
    return {
      head: subjectHead[answer.kind],
      of: isTwist ? `${hows[sheet.how].words}, from the first` : `${of}, from the first`,
      unit: isTwist ? slopeSign(unit) : unitSign[small],
      text: axisText,
      stations: answer.stations_mm.map((at) => at / length),
      values: change.map((one) => one / size),
      ...(own === undefined ? {} : { doubts: change.map((_, i) => (i === 0 ? 0 : (2 * own) / size)) }),
      plus: isTwist ? '+ back high' : '+ nearer',
      minus: isTwist ? '− back low' : '− farther',
      ...(answer.decision ? { verdict: answer.decision.verdict } : {}),
      worst: { index, text: worst.text },
    };
  }
  const { answer } = found;
  const vertical = answer.direction === 'vertical';
  const unit = spokenUnit(Math.max(answer.straightness_um.minimum_zone, 1e-9), system);
  const um = size_um[unit];
  const worst = worstOf(answer);
  const last = answer.endpoint_um.length - 1;
  const jaw = (i: number): readonly [number, number] => {
    const middle = answer.endpoint_um[i]! - answer.minimum_zone_um[i]!;
    const half = answer.decision!.limit_um / 2;
    return [(middle - half) / um, (middle + half) / um];
  };
  return {
    head: subjectHead[answer.direction],
    of: `${of}, ends on line`,
    unit: unitSign[unit],
    text: axisText,
    stations: answer.stations_mm.map((at) => at / length),
    values: answer.endpoint_um.map((one) => one / um),
    ...(answer.sd ? { doubts: answer.sd.endpoint_um.map((one) => (2 * one) / um) } : {}),
    plus: vertical ? '+ high' : '+ to the back',
    minus: vertical ? '− low' : '− to you',
    ...(answer.decision ? { verdict: answer.decision.verdict, jaws: [jaw(0), jaw(last)] as const } : {}),
    worst: {
      index: worst.index,
      text: sayDeviation(worst.um, system, worst.sd_um === undefined ? {} : { sd: worst.sd_um }).text,
    },
    unit_mm: um / 1e3,
  };
}

/** What the stems of the places stand for: the first figure of what the machine shows. */
const costHead = (site: SiteAnswer): string => siteFigures(site)[0].strip;

/** Its unit, and a number of it. */
function costScale(site: SiteAnswer, system: UnitSystem) {
  const decimals = system === 'metric' ? 1 : 2;
  if (siteFigures(site)[0].unit === 'urad')
    return {
      sign: slopeSign(spokenSlope(system)),
      text: (urad: number) => saySlope(urad, system, { signed: false, decimals }).number,
    };
  const unit = system === 'metric' ? 'um' : 'thou';
  return {
    sign: unitSign[unit],
    text: (um: number) => sayDeviation(um, system, { signed: false, decimals, unit }).number,
  };
}

/** All kept lines of the bed on one axis, with the place of printing as a wash once it is known. */
export function allStrips(
  lines: readonly FoundLine[],
  site: SiteAnswer | undefined,
  reach_mm: readonly [number, number] | undefined,
  system: UnitSystem,
  width: number,
  places: PlaceWords,
): Shape {
  const length = lengthUnit(system);
  const figure: BedStripsFigure = {
    title: `The bed along one axis, from the ${places.minus_end}`,
    width,
    strips: lines.map((one) => stripOf(one, system)),
    x: { name: `${length.unit} from the ${places.minus_end}`, text: (at) => plain(at, 6) },
    x_unit_mm: length.mm,
    ...(site && reach_mm
      ? {
          wash: {
            from: (site.best.at_mm + reach_mm[0]) / length.mm,
            to: (site.best.at_mm + reach_mm[1]) / length.mm,
            text: `${site.advice === 'print' ? 'print here' : 'least bad'}: ${sayLength(site.best.at_mm, system).text}`,
          },
          places: {
            head: 'If printed there',
            of: `${costHead(site)}, ${costScale(site, system).sign}`,
            all: site.candidates.map((one) => ({
              at: one.at_mm / length.mm,
              cost: one.cost[0],
              text: costScale(site, system).text(one.cost[0]),
              best: one.at_mm === site.best.at_mm,
            })),
          },
        }
      : {}),
  };
  return bedStrips(figure);
}
