import type { KitQuestion } from '../../contract/kit.ts';
import { type Bettered, canProve, type Proof } from '../../core/kit/can-prove.ts';
import { referenceSd_um } from '../../core/kit/doubt-of.ts';
import { gradeLimit } from '../../core/kit/grade.ts';
import type { Kit, Reference } from '../../core/kit/kit.ts';
import { type SayOptions, sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';

/** What is known of a reference, in numbers and words. */
export interface ReferenceShown {
  readonly name: string;
  /** One sd of its own error over its length, µm. */
  readonly sd_um: number;
  /** "12 µm by DIN 874 grade 0 (formula, from memory: hold it against the standard)". */
  readonly text: string;
}

/** A proof with its words. */
export interface ProofShown extends Proof {
  /** Two sd, in words. */
  readonly doubt_text: string;
  readonly room_text: string;
  /** The largest part, in words. */
  readonly limit_text: string;
  /** Each part of the doubt, ± two sd. */
  readonly part_texts: readonly { readonly what: string; readonly text: string }[];
  /** Can it, and what limits it. */
  readonly found_text: string;
  /** What to do about it, when something is to be done. */
  readonly better_text?: string;
  /** Both, in a sentence or two. */
  readonly sentence: string;
}

/** What a kit can prove, target by target. */
export interface KitReport {
  readonly references: readonly ReferenceShown[];
  readonly proofs: readonly ProofShown[];
}

/** What a reference is known to be out by at most, in words. */
export function referenceShown(one: Reference, system: UnitSystem): ReferenceShown {
  const sd_um = referenceSd_um(one);
  const say = (um: number): string => sayDeviation(um, system, { signed: false }).text;
  const text = (): string => {
    if (one.known.by === 'certificate')
      return `certificate, ±\u202f${sayDeviation(one.known.doubt_um, system, { signed: false, rough: true }).text} left`;
    if (one.known.by === 'limit') return `within ${say(one.known.limit_um)}, as told`;
    const { standard, grade } = one.known;
    const limit = gradeLimit(standard, grade, one.length_mm, one.width_mm ?? 0);
    const warn = limit.came === 'from memory' ? '; numbers from memory: hold them against the standard' : '';
    return `within ${say(limit.limit_um)} by ${standard} grade ${grade} (${limit.how}${warn})`;
  };
  return { name: one.name, sd_um, text: text() };
}

/** A part of the doubt, in words. */
export const partName = (what: Proof['limited_by']): string => partWords[what];

const partWords: Record<Proof['limited_by'], string> = {
  reading: 'reading the instrument',
  instrument: 'the instrument’s own error',
  zero: 'the level’s zero',
  reference: 'the reference’s own error',
  seating: 'setting the reference down',
  sag: 'sag',
  warmth: 'warmth',
  film: 'the film’s thickness',
};

const canWords: Record<Proof['can'], string> = {
  easily: 'proves it easily',
  yes: 'proves it',
  'when clear of the limits': 'proves it only when the result is clear of the limits',
  'only near the middle': 'proves it only near the middle of the band',
  no: 'cannot prove it: the doubt is wider than the band',
};

/** Every set-up against its target. */
export function kitReport(question: KitQuestion, system: UnitSystem = 'metric'): KitReport {
  const { kit, targets, setups, wanted } = question;
  const proofs = setups.map(({ target, setup }) =>
    proofShown(
      canProve(targets.find((one) => one.name === target)!, setup, kit, wanted),
      kit,
      wanted,
      system,
    ),
  );
  return { references: kit.references.map((one) => referenceShown(one, system)), proofs };
}

function proofShown(proof: Proof, kit: Kit, wanted: number, system: UnitSystem): ProofShown {
  const size = (value: number, options: SayOptions): string =>
    proof.unit === 'um'
      ? sayDeviation(value, system, { signed: false, ...options }).text
      : saySlope(value, system, { signed: false, ...options }).text;
  const room_text = size(proof.room, {});
  const doubt = (value: number): string => `±\u202f${size(value, { rough: true })}`;
  const found_text = foundText(proof, room_text, doubt);
  const better_text = betterText(proof, kit, wanted, doubt);
  return {
    ...proof,
    doubt_text: doubt(proof.doubt),
    room_text,
    limit_text: partWords[proof.limited_by],
    part_texts: proof.parts
      .filter((part) => part.sd > 0)
      .map((part) => ({
        what:
          part.bend_um === undefined
            ? partWords[part.what]
            : `${partWords[part.what]}; it bends ${sayDeviation(part.bend_um, system, { signed: false }).text}, worked out`,
        text: doubt(2 * part.sd),
      })),
    found_text,
    ...(better_text === undefined ? {} : { better_text }),
    sentence: better_text === undefined ? found_text : `${found_text} ${better_text}`,
  };
}

const ratioText = (ratio: number): string => `${ratio >= 10 ? ratio.toFixed(0) : ratio.toFixed(1)} to 1`;

const foundText = (proof: Proof, room: string, doubt: (value: number) => string): string =>
  `Room ${room}, doubt ${doubt(proof.doubt)}: ${ratioText(proof.ratio)}; it ${canWords[proof.can]}. Most of the doubt is ${partWords[proof.limited_by]}.`;

function betterText(
  proof: Proof,
  kit: Kit,
  wanted: number,
  doubt: (value: number) => string,
): string | undefined {
  const to = (one: Bettered): string =>
    `${one.how.join(', then ')} (about ${Math.ceil(one.minutes)} min more): ${doubt(one.doubt)}, ${ratioText(one.ratio)}.`;
  if (proof.cheapest) return `Cheapest way to ${ratioText(wanted)}: ${to(proof.cheapest)}`;
  if (proof.ratio >= wanted) return undefined;
  const best = proof.best ? `The best this kit does: ${to(proof.best)} ` : '';
  const wants = proof.wants
    ? `For ${ratioText(wanted)}, ${partWords[proof.wants.what]} would have to come down to ${doubt(2 * proof.wants.sd)}.`
    : `${ratioText(wanted)} is out of reach of ${kit.instruments.length + kit.references.length === 0 ? 'an empty kit' : 'this kit'} in more than one way.`;
  return `${best}${wants}`;
}
