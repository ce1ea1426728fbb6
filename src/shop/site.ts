import type { SiteAsk } from '../contract/site.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import { type SiteParts, siteParts } from '../core/site/part-error.ts';
import { type SitePlace, sitePlaces } from '../core/site/site.ts';

/** Faces are judged over this radius where none is given, mm: a middling face on a mid-size lathe; shop's own. */
const usualFacing_mm = 100;
/** A place that costs no more than this over the best is as good, as a share. */
const asGood = 0.1;

/** A place with what it costs in parts. */
export type SiteCandidate = SitePlace & { readonly parts: SiteParts };

/** What `site` answers; see docs/contract.md. */
export interface SiteAnswer {
  readonly ok: true;
  readonly candidates: readonly SiteCandidate[];
  readonly best: {
    readonly at_mm: number;
    /** Why there, and what the others cost, in words. */
    readonly why: string;
    /** Other places that are as good within a tenth. */
    readonly as_good_mm: readonly number[];
  };
  readonly facing_mm: number;
}

/** Where to print, and what each other place would cost in parts. */
export function site(ask: SiteAsk): SiteAnswer | NoAnswer {
  const facing_mm = ask.facing_mm ?? usualFacing_mm;
  const places = sitePlaces(ask);
  if ('ok' in places)
    return {
      ok: false,
      why: 'not held',
      limits: [],
      text: `printed at ${places.printed_mm} mm, the slide does not rest at ${places.at_mm} mm: the load lifts or tips it off its pads`,
    };
  const candidates = places.map((place) => ({ ...place, parts: siteParts(place, facing_mm) }));
  const best = candidates.reduce((least, one) => (one.parts.both_um < least.parts.both_um ? one : least));
  const worst = candidates.reduce((most, one) => (one.parts.both_um > most.parts.both_um ? one : most));
  const as_good_mm = candidates
    .filter((one) => one !== best && one.parts.both_um <= (1 + asGood) * best.parts.both_um)
    .map((one) => one.at_mm);
  return {
    ok: true,
    candidates,
    best: { at_mm: best.at_mm, why: whyThere(best, worst), as_good_mm },
    facing_mm,
  };
}

const um = (value: number): string => `${value.toFixed(1)} µm`;

function whyThere(best: SiteCandidate, worst: SiteCandidate): string {
  const there = `Printed at ${best.at_mm} mm, turned diameters wander ${um(best.parts.diameter_rms_um)} rms over your work and faces lean ${um(best.parts.facing_rms_um)} rms from rim to centre; ${(100 * best.bearing_fraction).toFixed(0)} % bears.`;
  if (worst === best) return there;
  return `${there} The worst of these places, ${worst.at_mm} mm, costs ${um(worst.parts.diameter_rms_um)} and ${um(worst.parts.facing_rms_um)}.`;
}
