import { type Can, usualRatio } from '../../core/kit/can-prove.ts';
import { type Instrument, type Kit, type KitTarget, type SetUp, usualApart_K } from '../../core/kit/kit.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { HeightSetup, Setup, SweepSetup } from '../../core/ledger/setup.ts';
import { sayLength } from '../../core/quantity/length.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { kitReport, type ProofShown } from './kit-report.ts';

/** Whether a job's target can be proven with the workshop's kit. */
export type JobTargetKit =
  | {
      readonly can: Can;
      readonly feature: string;
      /** The set-up card it is measured with. */
      readonly setup: string;
      /** The instrument, and the reference if there is one. */
      readonly by: readonly string[];
      readonly proof: ProofShown;
    }
  /** Not with this kit: what is missing, in a sentence. */
  | { readonly can: 'not told'; readonly feature: string; readonly why: string };

interface Way {
  readonly setup: SetUp;
  readonly by: readonly string[];
}

/**
 * For every target of a job: the set-ups of the job that tell of it are tried with every instrument and reference of the kit,
 * once each as their cards say, and the one of least doubt is told.
 */
export function jobKit(plan: JobPlan, kit: Kit, system: UnitSystem): readonly JobTargetKit[] {
  return plan.targets.map((target): JobTargetKit => {
    const feature = plan.features.find((one) => one.name === target.feature)!;
    const asked: KitTarget = {
      name: target.feature,
      low: target.low,
      high: target.high,
      unit: feature.kind === 'turn' ? 'urad' : 'um',
    };
    const cards = plan.setups.filter((setup) => setup.tells.includes(target.feature));
    const tried = cards.flatMap((card) =>
      waysOf(card, kit).map((way) => ({
        card,
        way,
        proof: kitReport(
          { kit, targets: [asked], setups: [{ target: asked.name, setup: way.setup }], wanted: usualRatio },
          system,
        ).proofs[0]!,
      })),
    );
    const best = tried.sort((a, b) => a.proof.doubt - b.proof.doubt)[0];
    if (!best) return { can: 'not told', feature: target.feature, why: missing(cards, system) };
    const { card, way, proof } = best;
    return { can: proof.can, feature: target.feature, setup: card.name, by: way.by, proof };
  });
}

/** Every way the kit can do what a card asks. */
function waysOf(card: Setup, kit: Kit): Way[] {
  if (card.kind === 'level')
    return kit.instruments
      .filter((one) => one.kind === 'level' || one.kind === 'electronic level')
      .map((one) => ({
        setup: { method: 'level', name: card.name, instrument: one.name, readings: 1, turned: false },
        by: [one.name],
      }));
  const dials = kit.instruments.filter((one) => one.kind === 'indicator');
  if (card.kind === 'height') return heightsOf(card, dials, kit);
  const face = faceOf(card);
  if (!face) return [];
  return kit.references
    .filter((one) => one.kind === face)
    .flatMap((reference) =>
      dials.map((dial) => ({
        setup: sweepOf(card, face, dial.name, reference),
        by: [dial.name, reference.name],
      })),
    );
}

/** A stack no lower than this is built, mm. */
const leastStack_mm = 10;

/** How high a height's place stands over the slide's own frame: what the stack of blocks is to match. */
const stackOf = ({ at_mm, direction }: HeightSetup): number =>
  Math.max(leastStack_mm, Math.abs(at_mm.reduce((sum, part, i) => sum + part * direction[i]!, 0)));

/** Each indicator carried over from each set of blocks that stacks up high enough. */
const heightsOf = (card: HeightSetup, dials: readonly Instrument[], kit: Kit): Way[] =>
  kit.references
    .filter((one) => one.kind === 'gauge blocks' && one.length_mm >= stackOf(card))
    .flatMap((blocks) =>
      dials.map((dial) => ({
        setup: {
          method: 'height by blocks',
          name: card.name,
          instrument: dial.name,
          reference: blocks.name,
          height_mm: stackOf(card),
          blocks: usualBlocks,
          readings: 1,
          seats: 1,
          apart_K: usualApart_K,
        },
        by: [dial.name, blocks.name],
      })),
    );

/** A height is wrung together from about so many; common practice. */
const usualBlocks = 3;

/** Which kind of reference a sweep's card touches, if it is one of a kit. */
function faceOf(card: SweepSetup): 'square' | 'test bar' | undefined {
  if (/\bsquare\b/.test(card.face)) return 'square';
  return /\btest bar\b/.test(card.face) ? 'test bar' : undefined;
}

function sweepOf(
  card: SweepSetup,
  face: 'square' | 'test bar',
  instrument: string,
  reference: Kit['references'][number],
): SetUp {
  const length = Math.hypot(...card.to_mm.map((to, i) => to - card.from_mm[i]!));
  const both = {
    name: card.name,
    instrument,
    reference: reference.name,
    length_mm: Math.min(length, reference.length_mm),
  };
  if (face === 'square')
    return { method: 'square sweep', ...both, points: card.points, sweeps: 1, seats: 1, turned_over: false };
  const plane = Math.abs(card.plunger[2]) > Math.hypot(card.plunger[0], card.plunger[1]);
  return {
    method: 'test bar',
    ...both,
    readings: 1,
    turned_half: false,
    plane: plane ? 'vertical' : 'horizontal',
    sag_taken_out: false,
  };
}

/** What the kit would need for the cards that tell of a target. */
function missing(cards: readonly Setup[], system: UnitSystem): string {
  const wants = cards.map((card) => {
    if (card.kind === 'level') return 'a level';
    if (card.kind === 'height')
      return `an indicator and gauge blocks that stack up to ${sayLength(stackOf(card), system, { decimals: system === 'metric' ? 0 : 1 }).text}`;
    const face = faceOf(card);
    return face
      ? `an indicator and a ${face}`
      : `“${card.name}” is held against ${card.face}, which is no thing of the kit; look at its card`;
  });
  if (wants.length === 0) return 'No set-up of this job tells of it.';
  const [first] = wants;
  return first!.startsWith('“') ? `Cannot be told: ${first}.` : `To measure it you need ${first}.`;
}
