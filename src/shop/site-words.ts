import { sayLength } from '../core/quantity/length.ts';
import { sayDeviation } from '../core/quantity/say.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { percent } from './phrase.ts';
import type { SiteAnswer, SiteCandidate } from './site.ts';

type Told = Pick<SiteAnswer, 'candidates' | 'best' | 'allow' | 'least_straight'>;
type Costed = Pick<SiteCandidate, 'at_mm' | 'parts' | 'bearing_fraction'>;

/** A size to a tenth of a µm, or two places of a thou. */
const size = (um: number, system: UnitSystem): string =>
  sayDeviation(um, system, {
    signed: false,
    decimals: system === 'metric' ? 1 : 2,
    unit: system === 'metric' ? 'um' : 'thou',
  }).text;
const place = (mm: number, system: UnitSystem): string =>
  sayLength(mm, system, { decimals: system === 'metric' ? 0 : 1 }).text;

/** Less than this apart is the same to any instrument in a shop, µm. */
const same_um = 0.05;

/** What printing at a place comes to and, against the best place, what it costs: "At 265 mm diameters wander 6.5 µm, 1.8 µm more …" */
export function otherText(one: Costed, best: Costed | undefined, system: UnitSystem): string {
  const against = (um: number, of: number | undefined): string => {
    if (of === undefined) return '';
    if (Math.abs(um - of) < same_um) return ' (the same)';
    return ` (${size(Math.abs(um - of), system)} ${um > of ? 'more' : 'less'})`;
  };
  const { diameter_rms_um, facing_rms_um } = one.parts;
  return `At ${place(one.at_mm, system)} diameters wander ${size(diameter_rms_um, system)}${against(diameter_rms_um, best?.parts.diameter_rms_um)}, faces lean ${size(facing_rms_um, system)}${against(facing_rms_um, best?.parts.facing_rms_um)}; ${percent(one.bearing_fraction)} bears.`;
}

const comesTo = ({ parts }: Costed, system: UnitSystem): string =>
  `turned diameters wander ${size(parts.diameter_rms_um, system)} rms over your work and faces lean ${size(parts.facing_rms_um, system)} rms from rim to centre`;

const bestOf = ({ candidates, best }: Told): SiteCandidate =>
  candidates.find((one) => one.at_mm === best.at_mm)!;

/** Why there, and what the worst of the other places costs. */
function whyThere(told: Told, system: UnitSystem): string {
  const best = bestOf(told);
  const worst = told.candidates.reduce((most, one) => (one.parts.both_um > most.parts.both_um ? one : most));
  const there = `Printed at ${place(best.at_mm, system)}, ${comesTo(best, system)}; ${percent(best.bearing_fraction)} bears.`;
  if (worst === best) return there;
  return `${there} The worst of these places, ${place(worst.at_mm, system)}, costs ${size(worst.parts.diameter_rms_um, system)} and ${size(worst.parts.facing_rms_um, system)}.`;
}

/** A way worn more than this goes to a planer or way grinder first, one worn less is scraped, µm: common practice. */
const grindFrom_um = 250;
const scrapeTo_um = 80;

const limit = (um: number, system: UnitSystem): string =>
  sayDeviation(um, system, { signed: false, decimals: 0, unit: system === 'metric' ? 'um' : 'thou' }).text;

/** No place is good enough: what even the best comes to. */
function bedFirstText(told: Told, system: UnitSystem): string {
  const best = bestOf(told);
  const { allow } = told;
  return `Put the bed right first: no place is good enough. Even at ${place(best.at_mm, system)}, the best of them, ${comesTo(best, system)}; you allow ${size(allow.diameter_um, system)} and ${size(allow.facing_um, system)}.`;
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
