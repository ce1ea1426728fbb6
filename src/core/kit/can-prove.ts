import { type Choice, choices, type Step } from './better.ts';
import { type Part, partsOfDoubt, together } from './doubt-of.ts';
import type { Kit, KitTarget, SetUp } from './kit.ts';

/** What a ratio of band to doubt lets be said. */
export type Can = 'easily' | 'yes' | 'when clear of the limits' | 'only near the middle' | 'no';

/** A set-up bettered. */
export interface Bettered {
  /** What to do, in order. */
  readonly how: readonly string[];
  readonly setup: SetUp;
  /** Two sd, µrad or µm. */
  readonly doubt: number;
  readonly ratio: number;
  /** About how much longer it takes: common practice. */
  readonly minutes: number;
}

/** Whether a kit can prove a target with a set-up, and what would better it. */
export interface Proof {
  readonly target: string;
  readonly setup: string;
  readonly unit: 'urad' | 'um';
  /** From the middle of the band to a limit; the whole of it where only one side is limited. */
  readonly room: number;
  /** Two sd. */
  readonly doubt: number;
  /** Room over doubt. */
  readonly ratio: number;
  readonly can: Can;
  /** Largest part first. */
  readonly parts: readonly Part[];
  /** What limits it. */
  readonly limited_by: Part['what'];
  /** Single steps that better it by a twentieth or more, those that take least time first. */
  readonly steps: readonly Bettered[];
  /** The least time that brings the ratio to what is wanted; absent when it is there already, or cannot be. */
  readonly cheapest?: Bettered;
  /** The best this kit can do, when the wanted ratio is out of reach. */
  readonly best?: Bettered;
  /** What the largest part would have to be, one sd, for the wanted ratio, when nothing reaches it and it alone can. */
  readonly wants?: { readonly what: Part['what']; readonly sd: number };
}

/** What is wanted when nothing is said: four to one, common practice. */
export const usualRatio = 4;

/** Source: 10 to 1 the old shop rule, 4 to 1 the usual least (common practice); below 1 no value lies inside by its doubt. */
export function canSay(ratio: number): Can {
  if (ratio >= 10) return 'easily';
  if (ratio >= 4) return 'yes';
  if (ratio >= 2) return 'when clear of the limits';
  return ratio >= 1 ? 'only near the middle' : 'no';
}

/** Half the band, or what a straightness may be. */
export const roomOf = (target: KitTarget): number =>
  target.low === undefined ? target.high : (target.high - target.low) / 2;

/**
 * Whether this kit, set up so, can prove this target; what limits it; and the cheapest way to better it.
 *
 * Every combination of one step of each kind is tried on the kit's own numbers: more readings, a longer sweep, turning the
 * reference over, another seat, another instrument.
 *
 * @param wanted  ratio of room to doubt that is aimed at
 * @throws RangeError  an instrument or reference that the kit does not have
 */
export function canProve(target: KitTarget, setup: SetUp, kit: Kit, wanted = usualRatio): Proof {
  const room = roomOf(target);
  const parts = [...partsOfDoubt(setup, kit)].sort((a, b) => b.sd - a.sd);
  const doubt = 2 * together(parts);
  const ratioOf = (one: number): number => room / one;
  const bettered = (steps: readonly Step[]): Bettered => {
    const last = steps.at(-1)!.setup;
    const its = 2 * together(partsOfDoubt(last, kit));
    return {
      how: steps.map((step) => step.how),
      setup: last,
      doubt: its,
      ratio: ratioOf(its),
      minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
    };
  };
  const all = choices(kit);
  const steps = all
    .flatMap((choice) => choice(setup))
    .map((step) => bettered([step]))
    .filter((one) => one.doubt < 0.95 * doubt)
    .sort((a, b) => a.minutes - b.minutes || a.doubt - b.doubt);
  const found = {
    target: target.name,
    setup: setup.name,
    unit: target.unit,
    room,
    doubt,
    ratio: ratioOf(doubt),
    can: canSay(ratioOf(doubt)),
    parts,
    limited_by: parts[0]!.what,
    steps,
  };
  if (found.ratio >= wanted) return found;
  const ways = everyWay(setup, all).map(bettered);
  const reach = ways
    .filter((one) => one.ratio >= wanted)
    .sort((a, b) => a.minutes - b.minutes || a.doubt - b.doubt);
  if (reach[0]) return { ...found, cheapest: reach[0] };
  const best = ways.sort((a, b) => a.doubt - b.doubt || a.minutes - b.minutes)[0];
  const wants = wanting(best ? partsOfDoubt(best.setup, kit) : parts, room / wanted / 2);
  return { ...found, ...(best && best.doubt < doubt ? { best } : {}), ...(wants ? { wants } : {}) };
}

/** Every combination of at most one step of each choice, none excepted but doing nothing. */
function everyWay(setup: SetUp, all: readonly Choice[]): Step[][] {
  let ways: Step[][] = [[]];
  for (const choice of all)
    ways = ways.flatMap((way) => [way, ...choice(way.at(-1)?.setup ?? setup).map((step) => [...way, step])]);
  return ways.filter((way) => way.length > 0);
}

/** What the largest part may be at most, the others as they are, for one sd of the whole to be `sd`. */
function wanting(parts: readonly Part[], sd: number): Proof['wants'] {
  const [largest, ...others] = [...parts].sort((a, b) => b.sd - a.sd);
  const rest = together(others);
  return largest && rest < sd ? { what: largest.what, sd: Math.sqrt(sd ** 2 - rest ** 2) } : undefined;
}
