import { readDeviation } from '../../core/quantity/deviation.ts';
import { readSlope, type SlopeUnit, slopeSign } from '../../core/quantity/slope.ts';
import { type DeviationUnit, unitSign } from '../../core/quantity/unit.ts';

/** Readings that can hardly be in their column's unit, and the one they were likelier read in: a question, not an error. */
export interface UnitAsked<Unit> {
  readonly likelier: Unit;
  /** "Taken in µm, the readings span less than 1 µm: finer than an indicator shows. Were they read in mm?" */
  readonly question: string;
  /** "They are mm" and "They are µm". */
  readonly yes: string;
  readonly no: string;
}

/**
 * What a bench's readings span in the finest and in the coarsest case, µm: an indicator of a shop shows no less than 1 µm, and ways that
 * are 2 mm out are a crash, not wear. Common practice, no source; beyond them it is asked, nothing is refused.
 */
const sweepSpans_um = [1, 2_000] as const;
/** The same of a level, µm/m: the finest spirit and electronic levels show 1 µm/m; a slide 5 mm/m out of level slides. */
const levelSpans_urad = [1, 5_000] as const;

const likelyDeviations: Readonly<Record<DeviationUnit, readonly DeviationUnit[]>> = {
  um: ['mm'],
  mm: ['um'],
  tenths: ['thou', 'in'],
  thou: ['in', 'tenths'],
  in: ['thou', 'tenths'],
};
const likelySlopes: readonly SlopeUnit[] = ['mm/m', 'um/m', 'thou/12 in'];

type Fit = 'finer' | 'coarser' | 'fits';

const fitOf = (span: number, [least, most]: readonly [number, number]): Fit =>
  span === 0 || (span >= least && span <= most) ? 'fits' : span < least ? 'finer' : 'coarser';

/** What the readings span, one by itself from 0; undefined where one of them cannot be read. */
function spanOf(values: readonly (number | undefined)[]): number | undefined {
  const read = values.filter((value) => value !== undefined);
  if (read.length === 0 || read.length < values.length) return undefined;
  return read.length === 1 ? Math.abs(read[0]!) : Math.max(...read) - Math.min(...read);
}

/**
 * Whether a whole column (or one height), as typed, can hardly be in its unit: mm typed where µm are asked make any ways look flat.
 * Undefined when it fits, when a text cannot be read, or when no other unit makes more sense of it.
 */
export function likelierDeviation(
  typed: readonly string[],
  unit: DeviationUnit,
): UnitAsked<DeviationUnit> | undefined {
  const span = (as: DeviationUnit) =>
    spanOf(
      typed.map((text) => {
        const read = readDeviation(text, as);
        return read.ok ? read.um : undefined;
      }),
    );
  const here = span(unit);
  const fit = here === undefined ? 'fits' : fitOf(here, sweepSpans_um);
  if (fit === 'fits') return undefined;
  const likelier = likelyDeviations[unit].find((other) => {
    const there = span(other);
    return there !== undefined && there > 0 && fitOf(there, sweepSpans_um) === 'fits';
  });
  if (!likelier) return undefined;
  const [them, were] = typed.length === 1 ? ['It is', 'Was it'] : ['They are', 'Were they'];
  const why =
    fit === 'finer' ? 'less than 1 µm, finer than an indicator shows' : 'more than 2 mm, more than ways wear';
  return {
    likelier,
    question: `Taken in ${unitSign[unit]}, ${typed.length === 1 ? 'this is' : 'all these together make'} ${why}. ${were} read in ${unitSign[likelier]}?`,
    yes: `${them} ${unitSign[likelier]}`,
    no: `${them} ${unitSign[unit]}`,
  };
}

/** The same of one level. */
export function likelierSlope(typed: string, unit: SlopeUnit): UnitAsked<SlopeUnit> | undefined {
  const span = (as: SlopeUnit) => {
    const read = readSlope(typed, as);
    return spanOf([read.ok ? read.urad : undefined]);
  };
  const here = span(unit);
  const fit = here === undefined ? 'fits' : fitOf(here, levelSpans_urad);
  if (fit === 'fits') return undefined;
  const likelier = likelySlopes.find((other) => {
    const there = span(other);
    return other !== unit && there !== undefined && there > 0 && fitOf(there, levelSpans_urad) === 'fits';
  });
  if (!likelier) return undefined;
  const why =
    fit === 'finer'
      ? 'less than 1 µm/m, finer than a level shows'
      : 'more than 5 mm/m, more than a slide leans';
  return {
    likelier,
    question: `Taken in ${slopeSign(unit)}, this is ${why}. Was it read in ${slopeSign(likelier)}?`,
    yes: `It is ${slopeSign(likelier)}`,
    no: `It is ${slopeSign(unit)}`,
  };
}
