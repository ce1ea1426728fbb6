import type { SiteAsk } from '../contract/site.ts';
import type { MadeBlock } from '../core/parts/made-block.ts';
import { travelOnBed } from '../core/parts/on-bed.ts';
import { type BlockCost, blockCost, type StandCost, standCost } from '../core/parts/stand-cost.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import { told } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { type SiteLimits, type SiteParts, siteParts } from '../core/site/part-error.ts';
import { type NoRest, type SitePlace, sitePlaces } from '../core/site/site.ts';
import { leastStraight } from '../core/site/worn-way.ts';
import { bedHowText, otherText, siteSentence } from './site-words.ts';

/** Faces are judged over this radius where none is given, mm: a middling face on a mid-size lathe; shop's own. */
const usualFacing_mm = 100;
/**
 * What a place may cost where nothing is said, rms over the work, µm and µrad: shop's own, no source. Half of what a turned part
 * and a face may be out on a mid-size lathe, since the bed is not alone in it; as much for a block, and for a slide by itself.
 */
export const usualLimits = {
  turned: { diameter_um: 10, facing_um: 5 },
  block: { parallel_um: 5, square_urad: 25 },
  slide: { lean_urad: 30, plan_urad: 30 },
} as const satisfies SiteLimitsOf;
/** A place that costs no more than this over the best is as good, as a share. */
const asGood = 0.1;

/** What a machine shows of where its slide was printed: turned parts, a block, or, where nothing is known of its work, the slide itself. */
export type SiteShows = 'turned' | 'block' | 'slide';

/** What a place may cost, by what the machine shows. */
export interface SiteLimitsOf {
  readonly turned: SiteLimits;
  readonly block: { readonly parallel_um: number; readonly square_urad: number };
  readonly slide: { readonly lean_urad: number; readonly plan_urad: number };
}

/** A place with what it costs. */
export type SiteCandidate = SitePlace & {
  /** Of a machine that turns. */
  readonly parts?: SiteParts;
  /** Of a machine that makes a block. */
  readonly block?: BlockCost;
  /** Of a slide of which nothing more is known. */
  readonly stand?: StandCost;
  /** The two figures that count, in the order of the limits: µm or µrad as they are. */
  readonly cost: readonly [number, number];
  /** Whether they stay within what is allowed. */
  readonly allowed: boolean;
  /** What printing here instead of at the best place costs, in words; of the best place, what it comes to. */
  readonly text: string;
};

/** What `site` answers; see docs/contract.md. */
export interface SiteAnswer {
  readonly ok: true;
  readonly shows: SiteShows;
  /** What the first face of the block is called. */
  readonly face?: string;
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
  readonly allow: SiteLimitsOf[SiteShows];
  /** The same, in the order of the costs. */
  readonly limits: readonly [number, number];
  readonly facing_mm: number;
  /** The way that is least straight, µm by its minimum zone. */
  readonly least_straight: { readonly pad: string; readonly um: number };
}

type Costed = Pick<SiteCandidate, 'parts' | 'block' | 'stand' | 'cost'>;

/** What every place costs on a machine that turns, or of a slide and, where the machine's file says one, its block. */
function costsOf(
  ask: SiteAsk,
  shows: SiteShows,
  places: readonly SitePlace[],
  facing_mm: number,
): Costed[] | NoRest {
  if (shows === 'turned')
    return places.map((place) => {
      const parts = siteParts(place, facing_mm);
      return { parts, cost: [parts.diameter_rms_um, parts.facing_rms_um] };
    });
  const found: Costed[] = [];
  for (const { at_mm } of places) {
    const travel = travelOnBed({ ...ask, printed_mm: at_mm });
    if ('ok' in travel) return travel;
    if (ask.makes) {
      const block = blockCost(ask.makes, travel, ask.duty);
      found.push({ block, cost: [block.parallel_rms_um, block.square_rms_urad] });
    } else {
      const stand = standCost(travel, ask.duty);
      found.push({ stand, cost: [stand.lean_rms_urad, stand.plan_rms_urad] });
    }
  }
  return found;
}

/** Two limits in the order of the costs. */
const limitsOf = (allow: SiteLimitsOf[SiteShows]): readonly [number, number] =>
  'diameter_um' in allow
    ? [allow.diameter_um, allow.facing_um]
    : 'parallel_um' in allow
      ? [allow.parallel_um, allow.square_urad]
      : [allow.lean_urad, allow.plan_urad];

/** What a machine's data say it shows. */
const showsOf = ({ makes, shows }: { readonly makes?: MadeBlock; readonly shows?: 'slide' }): SiteShows =>
  makes ? 'block' : (shows ?? 'turned');

/**
 * Where to print, and what each other place would cost in what the machine shows: turned diameters and faces; a block out of
 * parallel and square; or how the slide leans. The best place is the one of least cost, both figures together; where it is not
 * within what the user allows and another is, that one.
 * @param system  units of the sentences
 */
export function site(ask: SiteAsk, system: UnitSystem = 'metric'): SiteAnswer | NoAnswer {
  const { place } = told(system);
  const shows = showsOf(ask);
  const facing_mm = ask.facing_mm ?? usualFacing_mm;
  const allow = ask.allow ?? usualLimits[shows];
  const limits = limitsOf(allow);
  const places = sitePlaces(ask);
  const costs = 'ok' in places ? places : costsOf(ask, shows, places, facing_mm);
  if ('ok' in places || 'ok' in costs) {
    const none = ('ok' in places ? places : costs) as NoRest;
    return {
      ok: false,
      why: 'not held',
      limits: [],
      text: `printed at ${place(none.printed_mm)}, the slide does not rest at ${place(none.at_mm)}: the load lifts or tips it off its pads`,
    };
  }
  const costed = places.map((one, k) => ({
    ...one,
    ...costs[k]!,
    allowed: costs[k]!.cost.every((value, i) => value <= limits[i]!),
  }));
  /** Both figures together: of turned parts in µm, of others as shares of what is allowed. */
  const both = ({ parts, cost }: Costed): number =>
    parts?.both_um ?? Math.hypot(...cost.map((value, i) => value / (limits[i] || Number.EPSILON)));
  const good = costed.filter((one) => one.allowed);
  const best = (good.length ? good : costed).reduce((least, one) => (both(one) < both(least) ? one : least));
  const face = ask.makes?.faces[0]?.name;
  const known = { shows, ...(face === undefined ? {} : { face }) };
  const candidates = costed.map((one) => ({
    ...one,
    text: otherText(known, one, one === best ? undefined : best, system),
  }));
  const as_good_mm = candidates
    .filter(
      (one) =>
        one.at_mm !== best.at_mm && one.allowed === best.allowed && both(one) <= (1 + asGood) * both(best),
    )
    .map((one) => one.at_mm);
  const answer = {
    ok: true,
    ...known,
    candidates,
    advice: best.allowed ? 'print' : 'bed first',
    best: { at_mm: best.at_mm, why: '', as_good_mm },
    allow,
    limits,
    facing_mm,
    least_straight: leastStraight(ask.bed),
  } as const;
  const sentence = siteSentence(answer, system);
  const why = best.allowed ? sentence : `${sentence} ${bedHowText(answer, system)}`;
  return { ...answer, best: { ...answer.best, why } };
}
