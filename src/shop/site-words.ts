import { sayLength } from '../core/quantity/length.ts';
import { sayDeviation } from '../core/quantity/say.ts';
import { saySlope } from '../core/quantity/slope.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { capital, percent } from './phrase.ts';
import type { SiteAnswer, SiteCandidate } from './site.ts';

type Known = Pick<SiteAnswer, 'shows' | 'face'>;
type Told = Known & Pick<SiteAnswer, 'candidates' | 'best' | 'limits' | 'least_straight'>;
type Costed = Pick<SiteCandidate, 'at_mm' | 'cost' | 'bearing_fraction'>;

/** A size to a tenth of a µm, or two places of a thou. */
const size = (um: number, system: UnitSystem): string =>
  sayDeviation(um, system, {
    signed: false,
    decimals: system === 'metric' ? 1 : 2,
    unit: system === 'metric' ? 'um' : 'thou',
  }).text;
/** An angle as a fall, as finely. */
const fall = (urad: number, system: UnitSystem): string =>
  saySlope(urad, system, { signed: false, decimals: system === 'metric' ? 1 : 2 }).text;
const place = (mm: number, system: UnitSystem): string =>
  sayLength(mm, system, { decimals: system === 'metric' ? 0 : 1 }).text;

/** One of the two figures that a place costs. */
export interface SiteFigure {
  /** Heads its column: "Diameters". */
  readonly head: string;
  /** "diameters wander 6.5 µm" at a place, `more` behind its number. */
  readonly at: (size: string, more: string) => string;
  /** "turned diameters wander 6.5 µm rms over your work". */
  readonly whole: (size: string) => string;
  /** What the user may say of it: "Diameters may wander, rms". */
  readonly asks: string;
  readonly unit: 'um' | 'urad';
  /** Over a picture of it: "turned diameters wander, rms over the work". */
  readonly strip: string;
}

/** What the two figures of a place are called on a machine that shows them. */
export function siteFigures({ shows, face = 'top' }: Known): readonly [SiteFigure, SiteFigure] {
  switch (shows) {
    case 'turned':
      return [
        {
          head: 'Diameters',
          at: (size, more) => `diameters wander ${size}${more}`,
          whole: (size) => `turned diameters wander ${size} rms over your work`,
          asks: 'Diameters may wander, rms',
          strip: 'turned diameters wander, rms over the work',
          unit: 'um',
        },
        {
          head: 'Faces',
          at: (size, more) => `faces lean ${size}${more}`,
          whole: (size) => `faces lean ${size} rms from rim to centre`,
          asks: 'Faces may lean, rms',
          strip: 'faces lean, rms over the work',
          unit: 'um',
        },
      ];
    case 'block':
      return [
        {
          head: capital(face),
          at: (size, more) => `the ${face} of a block comes ${size}${more} out of parallel`,
          whole: (size) =>
            `the ${face} of a block comes ${size} rms out of parallel to the table over your work`,
          asks: `The ${face} may be out of parallel, rms`,
          strip: `the ${face} of a block out of parallel, rms over the work`,
          unit: 'um',
        },
        {
          head: 'Corners',
          at: (size, more) => `its corners ${size}${more} out of square`,
          whole: (size) => `its corners come ${size} rms out of square`,
          asks: 'Corners may be out of square, rms',
          strip: 'corners of a block out of square, rms over the work',
          unit: 'urad',
        },
      ];
    case 'slide':
      return [
        {
          head: 'Leans',
          at: (size, more) => `it leans ${size}${more}`,
          whole: (size) => `it leans ${size} rms over its work`,
          asks: 'It may lean, rms',
          strip: 'it leans, rms over the work',
          unit: 'urad',
        },
        {
          head: 'In plan',
          at: (size, more) => `turns ${size}${more} in plan`,
          whole: (size) => `turns ${size} rms in plan`,
          asks: 'It may turn in plan, rms',
          strip: 'it turns in plan, rms over the work',
          unit: 'urad',
        },
      ];
  }
}

/** A figure of a place in words. */
export const siteSize = ({ unit }: Pick<SiteFigure, 'unit'>, value: number, system: UnitSystem): string =>
  (unit === 'um' ? size : fall)(value, system);

/** Less than this apart is the same to any instrument in a shop, µm and µrad. */
const same = 0.05;

/** What printing at a place comes to and, against the best place, what it costs: "At 265 mm diameters wander 6.5 µm, 1.8 µm more …" */
export function otherText(known: Known, one: Costed, best: Costed | undefined, system: UnitSystem): string {
  const against = (figure: SiteFigure, value: number, of: number | undefined): string => {
    if (of === undefined) return '';
    if (Math.abs(value - of) < same) return ' (the same)';
    return ` (${siteSize(figure, Math.abs(value - of), system)} ${value > of ? 'more' : 'less'})`;
  };
  const said = siteFigures(known).map((figure, k) =>
    figure.at(siteSize(figure, one.cost[k]!, system), against(figure, one.cost[k]!, best?.cost[k])),
  );
  return `At ${place(one.at_mm, system)} ${said.join(', ')}; ${percent(one.bearing_fraction)} bears.`;
}

/** Both figures of a place, or of what is allowed, as sizes. */
const sizesOf = (known: Known, values: readonly number[], system: UnitSystem): string =>
  siteFigures(known)
    .map((figure, k) => siteSize(figure, values[k]!, system))
    .join(' and ');

const comesTo = (known: Known, { cost }: Costed, system: UnitSystem): string =>
  siteFigures(known)
    .map((figure, k) => figure.whole(siteSize(figure, cost[k]!, system)))
    .join(' and ');

const bestOf = ({ candidates, best }: Told): SiteCandidate =>
  candidates.find((one) => one.at_mm === best.at_mm)!;

/** Both costs together, each as a share of what is allowed. */
const share = ({ cost, parts }: SiteCandidate, { limits }: Told): number =>
  parts?.both_um ?? Math.hypot(...cost.map((value, k) => value / (limits[k] || Number.EPSILON)));

/** Why there, and what the worst of the other places costs. */
function whyThere(told: Told, system: UnitSystem): string {
  const best = bestOf(told);
  const worst = told.candidates.reduce((most, one) => (share(one, told) > share(most, told) ? one : most));
  const there = `Printed at ${place(best.at_mm, system)}, ${comesTo(told, best, system)}; ${percent(best.bearing_fraction)} bears.`;
  if (worst === best) return there;
  return `${there} The worst of these places, ${place(worst.at_mm, system)}, costs ${sizesOf(told, worst.cost, system)}.`;
}

/** A way worn more than this goes to a planer or way grinder first, one worn less is scraped, µm: common practice. */
const grindFrom_um = 250;
const scrapeTo_um = 80;

const limit = (um: number, system: UnitSystem): string =>
  sayDeviation(um, system, { signed: false, decimals: 0, unit: system === 'metric' ? 'um' : 'thou' }).text;

/** No place is good enough: what even the best comes to. */
function bedFirstText(told: Told, system: UnitSystem): string {
  const best = bestOf(told);
  return `Put the bed right first: no place is good enough. Even at ${place(best.at_mm, system)}, the best of them, ${comesTo(told, best, system)}; you allow ${sizesOf(told, told.limits, system)}.`;
}

/** How a bed is put right where no place is good enough: by how far its worst way is out of straight. */
export function bedHowText({ least_straight }: Pick<Told, 'least_straight'>, system: UnitSystem): string {
  const way = `the way that carries the ${least_straight.pad} is ${size(least_straight.um, system)} out of straight`;
  const how =
    least_straight.um > grindFrom_um
      ? `Regrind the bed: ${way}, more than a person scrapes away (common practice: above ${limit(grindFrom_um, system)} to a planer or way grinder).`
      : least_straight.um > scrapeTo_um
        ? `Regrind or scrape the bed: ${way}.`
        : `Scrape the bed: ${way}, and so little is scraped (common practice: up to ${limit(scrapeTo_um, system)}).`;
  return `${how} Level it and survey it once more before any metal comes off: a bed that is twisted by its feet looks worn.`;
}

/** The recommendation in a sentence or two. */
export const siteSentence = (told: Told & Pick<SiteAnswer, 'advice'>, system: UnitSystem): string =>
  told.advice === 'print' ? whyThere(told, system) : bedFirstText(told, system);
