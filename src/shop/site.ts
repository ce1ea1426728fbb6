import type { SiteAsk } from '../contract/site.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import { told } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { isAllowed, type SiteLimits, type SiteParts, siteParts } from '../core/site/part-error.ts';
import { type SitePlace, sitePlaces } from '../core/site/site.ts';
import { leastStraight } from '../core/site/worn-way.ts';
import { bedHowText, otherText, siteSentence } from './site-words.ts';

/** Faces are judged over this radius where none is given, mm: a middling face on a mid-size lathe; shop's own. */
const usualFacing_mm = 100;
/**
 * What a place may cost where nothing is said, rms over the work, µm: shop's own, no source. Half of what a turned part and a
 * face may be out on a mid-size lathe, since the bed is not alone in it.
 */
export const usualAllow: SiteLimits = { diameter_um: 10, facing_um: 5 };
/** A place that costs no more than this over the best is as good, as a share. */
const asGood = 0.1;

/** A place with what it costs in parts. */
export type SiteCandidate = SitePlace & {
  readonly parts: SiteParts;
  /** Whether parts stay within what is allowed. */
  readonly allowed: boolean;
  /** What printing here instead of at the best place costs, in words; of the best place, what it comes to. */
  readonly text: string;
};

/** What `site` answers; see docs/contract.md. */
export interface SiteAnswer {
  readonly ok: true;
  readonly candidates: readonly SiteCandidate[];
  /** Print at the best place, or put the bed right first: no place keeps parts within what is allowed. */
  readonly advice: 'print' | 'bed first';
  readonly best: {
    readonly at_mm: number;
    /** Why there, or why not at all, and what the others cost, in words. */
    readonly why: string;
    /** Other places that are as good within a tenth. */
    readonly as_good_mm: readonly number[];
  };
  readonly allow: SiteLimits;
  readonly facing_mm: number;
  /** The way that is least straight, µm by its minimum zone. */
  readonly least_straight: { readonly pad: string; readonly um: number };
}

/**
 * Where to print, and what each other place would cost in parts. The best place is the one of least part errors, diameter and
 * face together; where it is not within what the user allows and another is, that one.
 * @param system  units of the sentences
 */
export function site(ask: SiteAsk, system: UnitSystem = 'metric'): SiteAnswer | NoAnswer {
  const { place } = told(system);
  const facing_mm = ask.facing_mm ?? usualFacing_mm;
  const allow = ask.allow ?? usualAllow;
  const places = sitePlaces(ask);
  if ('ok' in places)
    return {
      ok: false,
      why: 'not held',
      limits: [],
      text: `printed at ${place(places.printed_mm)}, the slide does not rest at ${place(places.at_mm)}: the load lifts or tips it off its pads`,
    };
  const costed = places.map((place) => {
    const parts = siteParts(place, facing_mm);
    return { ...place, parts, allowed: isAllowed(parts, allow) };
  });
  const good = costed.filter((one) => one.allowed);
  const best = (good.length ? good : costed).reduce((least, one) =>
    one.parts.both_um < least.parts.both_um ? one : least,
  );
  const candidates = costed.map((one) => ({
    ...one,
    text: otherText(one, one === best ? undefined : best, system),
  }));
  const as_good_mm = candidates
    .filter(
      (one) =>
        one.at_mm !== best.at_mm &&
        one.allowed === best.allowed &&
        one.parts.both_um <= (1 + asGood) * best.parts.both_um,
    )
    .map((one) => one.at_mm);
  const answer = {
    ok: true,
    candidates,
    advice: best.allowed ? 'print' : 'bed first',
    best: { at_mm: best.at_mm, why: '', as_good_mm },
    allow,
    facing_mm,
    least_straight: leastStraight(ask.bed),
  } as const;
  const sentence = siteSentence(answer, system);
  const why = best.allowed ? sentence : `${sentence} ${bedHowText(answer, system)}`;
  return { ...answer, best: { ...answer.best, why } };
}
