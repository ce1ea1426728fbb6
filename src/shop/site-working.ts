import { plain } from '../core/quantity/show.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { bracketed, type ShownIn, shownIn } from './shown-in.ts';
import type { SiteAnswer, SiteCandidate } from './site.ts';
import type { Worked } from './worked.ts';

const n = (value: number): string => plain(value, 5);

/** How what each place costs comes about, from the slide's movement at every position where it works. */
export function siteWorking(
  answer: SiteAnswer,
  duty: readonly number[],
  system: UnitSystem = 'metric',
): Worked[] {
  const shown = shownIn(system, 5);
  const { mm, um, long, small } = shown;
  const [first, second] = answer.limits;
  const [as, other] = shownCosts(answer, shown);
  return [
    {
      what: 'the gap that a zone has before the slide rests',
      formula: 'height of the bed where it was printed + x − height of the bed where it stands + x',
      worked: `least straight: ${answer.least_straight.pad}, ${um(answer.least_straight.um)} ${small} by its minimum zone; then it is set down on its springs, as \`rest\` does`,
    },
    ...answer.candidates.flatMap((one) => costWorked(answer, one, duty, shown)),
    {
      what: 'what is allowed',
      formula: 'both figures no more than their limits; of those places the one of least cost',
      worked: `${as.show(first)} ${as.unit} and ${other.show(second)} ${other.unit}: print at ${mm(answer.best.at_mm)} ${long}${answer.advice === 'print' ? '' : ', but bed first'}`,
    },
  ];
}

interface CostShown {
  readonly words: string;
  readonly show: (value: number) => string;
  readonly unit: string;
}

/** What the two figures of a cost are. */
function shownCosts(
  { shows }: SiteAnswer,
  { um, urad, small, slope }: ShownIn,
): readonly [CostShown, CostShown] {
  const size = (words: string): CostShown => ({ words, show: um, unit: small });
  const angle = (words: string): CostShown => ({ words, show: urad, unit: slope });
  if (shows === 'turned') return [size('diameters'), size('faces')];
  return shows === 'block'
    ? [size('the first face out of parallel'), angle('the corner most out of square')]
    : [angle('lean'), angle('turn in plan')];
}

function costWorked(
  answer: SiteAnswer,
  one: SiteCandidate,
  duty: readonly number[],
  shown: ShownIn,
): Worked[] {
  const { mm, um, urad, long, small, slope, per } = shown;
  const at = `printed at ${mm(one.at_mm)} ${long}`;
  const whole = duty.reduce((sum, share) => sum + share, 0);
  const rms = (
    what: string,
    values: readonly number[],
    result: number,
    show: (value: number) => string,
    unit: string,
  ): Worked => ({
    what: `${at}: ${what}, rms over the work`,
    formula: '√(Σ share × value² / Σ share), against the rest at the place of printing',
    worked: `√((${summed(values.map(show), duty)}) / ${n(whole)}) = ${show(result)} ${unit}`,
  });
  if (one.parts)
    return [
      rms('movement of the tool across', one.tool_across_um, one.tool_across_rms_um, um, small),
      rms('yaw', one.yaw_urad, one.yaw_rms_urad, urad, slope),
      {
        what: `${at}: wander of turned diameters`,
        formula: '2 × movement of the tool across',
        worked: `2 × ${um(one.tool_across_rms_um)} = ${um(one.parts.diameter_rms_um)} ${small}`,
      },
      {
        what: `${at}: lean of faces from rim to centre`,
        formula: `yaw × radius of the face/${per}`,
        worked: `${urad(one.yaw_rms_urad)} × ${mm(answer.facing_mm)}/${per} = ${um(one.parts.facing_rms_um)} ${small}`,
      },
      {
        what: `${at}: both together`,
        formula: '√(diameters² + faces²)',
        worked: `√(${um(one.parts.diameter_rms_um)}² + ${um(one.parts.facing_rms_um)}²) = ${um(one.parts.both_um)} ${small}`,
      },
    ];
  return shownCosts(answer, shown).map(({ words, show, unit }, k) => ({
    what: `${at}: ${words}, rms over the work`,
    formula: '√(Σ share × value² / Σ share), against the rest at the place of printing',
    worked: `${show(one.cost[k]!)} ${unit}, allowed ${show(answer.limits[k]!)} ${unit}`,
  }));
}

/** The sum written out, its middle left out where it is long. */
function summed(values: readonly string[], duty: readonly number[]): string {
  const terms = values.map((value, i) => `${n(duty[i]!)} × ${bracketed(value)}²`);
  return terms.length > 6
    ? [...terms.slice(0, 3), `… ${terms.length - 5} more …`, ...terms.slice(-2)].join(' + ')
    : terms.join(' + ');
}
