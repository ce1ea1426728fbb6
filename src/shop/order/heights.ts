import type { Chain, Change } from '../../core/heights/chain.ts';
import { type HeightFound, heightsFound } from '../../core/heights/heights.ts';
import { type LinerAsk, type LinerFound, linerFor, type NoLiner } from '../../core/heights/liner.ts';
import { type SinkRoom, sinkRooms } from '../../core/heights/sink.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { heightWords } from './heights-words.ts';

/** What `heights` is asked: a chain, and the liners that are to bring its heights back, worked out one after the other. */
export interface HeightsAsk {
  readonly chain: Chain;
  readonly liners: readonly LinerAsk[];
}

/** What a height is worth against its band. */
export type HeightVerdict = 'within' | 'outside' | 'not proven' | 'not measured';

/** What a bench of a joint is given. */
export interface JointLimits {
  readonly joint: string;
  readonly sink: readonly SinkRoom[];
  /** Of lined faces, by pad. */
  readonly stock_um: Readonly<Record<string, number>>;
}

/** What `heights` answers. */
export interface HeightsAnswer {
  readonly ok: true;
  readonly heights: readonly (HeightFound & { readonly verdict: HeightVerdict; readonly sentence: string })[];
  readonly liners: readonly LinerFound[];
  /** For the planner of each joint's scraping; heights as they stand when it begins. */
  readonly limits: readonly JointLimits[];
  readonly warnings: readonly { readonly code: string; readonly text: string }[];
}

/**
 * Heights after what was found and what is planned, liners worked out so that they come back, and what that leaves the planner.
 * @param system  units of the sentences
 * @returns the first liner that cannot be, when there is one
 */
export function heights(ask: HeightsAsk, system: UnitSystem = 'metric'): HeightsAnswer | NoLiner {
  let { chain } = ask;
  const liners: LinerFound[] = [];
  for (const one of ask.liners) {
    const found = linerFor(chain, one, system);
    if (!found.ok) return found;
    liners.push(found);
    chain = withChange(chain, found.finished);
  }
  const unscraped = withUnscraped(ask.chain, liners);
  const found = heightsFound(chain);
  const unknown = new Set(found.filter((one) => verdictOf(one) === 'not measured').map((one) => one.name));
  return {
    ok: true,
    heights: found.map((height) => ({
      ...height,
      verdict: verdictOf(height),
      sentence: sentenceOf(height, system),
    })),
    liners,
    limits: chain.joints.map(({ name }) => ({
      joint: name,
      // A height of which only the drawing is known cannot say what is left of its band.
      sink: sinkRooms(unscraped, name).filter((room) => !unknown.has(room.name)),
      stock_um: Object.fromEntries(
        liners
          .filter((liner) => liner.joint === name)
          .flatMap((liner) => liner.pads.map(({ pad }) => [pad, liner.stock_um] as const)),
      ),
    })),
    warnings: [
      ...found.flatMap((one) => closureWarning(one, system)),
      ...liners.flatMap((one) => standOffWarning(one, system)),
      ...found.flatMap((one) => outWarning(one, system)),
    ],
  };
}

const withChange = (chain: Chain, change: Change): Chain => ({
  ...chain,
  changes: [...chain.changes, change],
});

/** The chain as it stands when scraping begins: every liner bonded and machined. */
const withUnscraped = (chain: Chain, liners: readonly LinerFound[]): Chain => ({
  ...chain,
  changes: [...chain.changes, ...liners.map((liner) => liner.unscraped)],
});

/** Guard-banded: within or outside by more than two sd, else not proven. */
function verdictOf({ um, sd_um, low_um, high_um, changes, closure }: HeightFound): HeightVerdict {
  // The drawing alone says nothing of the machine.
  if (changes.length === 0 && !closure) return 'not measured';
  const doubt = 2 * sd_um;
  if (um - doubt >= low_um && um + doubt <= high_um) return 'within';
  return um + doubt < low_um || um - doubt > high_um ? 'outside' : 'not proven';
}

/** A size without its sign. */
const size = (um: number, system: UnitSystem): string => heightWords(system).mm(Math.abs(um) / 1000);

function sentenceOf(height: HeightFound, system: UnitSystem): string {
  if (verdictOf(height) === 'not measured') return `${height.name}: nothing is known of it but the drawing.`;
  const { name, to, um, sd_um, found_um } = height;
  const stands = (value: number): string =>
    Number.parseFloat(size(value, system)) === 0
      ? 'as drawn'
      : `${size(value, system)} too ${value > 0 ? 'high' : 'low'}`;
  const was = found_um === um ? '' : ` As found it stands ${stands(found_um)}.`;
  return `${name}: “${to}” comes to stand ${stands(um)}, ±\u00a0${size(2 * sd_um, system)}.${was}`;
}

function closureWarning(
  { name, closure, changes }: HeightFound,
  system: UnitSystem,
): { code: string; text: string }[] {
  if (!closure || !changes.some((one) => one.when === 'found')) return [];
  if (Math.abs(closure.um) <= 2 * closure.sd_um) return [];
  return [
    {
      code: 'does not close',
      text: `${name}: measured, it lies ${size(closure.um, system)} ${closure.um > 0 ? 'higher' : 'lower'} than what was found adds up to, beyond ± ${size(2 * closure.sd_um, system)}. Measure again, or look for what is missing; the measured height is used.`,
    },
  ];
}

const standOffWarning = (liner: LinerFound, system: UnitSystem): { code: string; text: string }[] =>
  liner.stands_off.map(({ pad, um }) => ({
    code: 'stands off',
    text: `“${pad}” of ${liner.joint} is not lined and would stand ${um > 0 ? 'off' : 'proud'} by ${size(um, system)}.`,
  }));

const outWarning = (height: HeightFound, system: UnitSystem): { code: string; text: string }[] =>
  verdictOf(height) === 'outside'
    ? [{ code: 'out of band', text: `${height.name} ends outside its band of ${bandText(height, system)}.` }]
    : [];

/** "−0.050 to +0.080 mm" */
export function bandText(
  { low_um, high_um }: Pick<HeightFound, 'low_um' | 'high_um'>,
  system: UnitSystem = 'metric',
): string {
  const signed = (um: number): string => `${um < 0 ? '−' : um > 0 ? '+' : ''}${size(um, system)}`;
  return `${signed(low_um).replace(/\u00a0.*/, '')} to ${signed(high_um)}`;
}
