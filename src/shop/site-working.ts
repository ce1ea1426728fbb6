import { plain } from '../core/quantity/show.ts';
import type { SiteAnswer, SiteCandidate } from './site.ts';
import type { Worked } from './worked.ts';

const n = (value: number): string => plain(value, 5);

/** How what each place costs comes about, from the slide's movement at every position where it works. µm, µrad, mm. */
export function siteWorking(answer: SiteAnswer, duty: readonly number[]): Worked[] {
  const [first, second] = answer.limits;
  return [
    {
      what: 'the gap that a zone has before the slide rests',
      formula: 'height of the bed where it was printed + x − height of the bed where it stands + x',
      worked: `least straight: ${answer.least_straight.pad}, ${n(answer.least_straight.um)} µm by its minimum zone; then it is set down on its springs, as \`rest\` does`,
    },
    ...answer.candidates.flatMap((one) => costWorked(answer, one, duty)),
    {
      what: 'what is allowed',
      formula: 'both figures no more than their limits; of those places the one of least cost',
      worked: `${n(first)} and ${n(second)}: print at ${n(answer.best.at_mm)} mm${answer.advice === 'print' ? '' : ', but bed first'}`,
    },
  ];
}

function costWorked(answer: SiteAnswer, one: SiteCandidate, duty: readonly number[]): Worked[] {
  const at = `printed at ${n(one.at_mm)} mm`;
  const whole = duty.reduce((sum, share) => sum + share, 0);
  const rms = (what: string, values: readonly number[], result: number, unit: string): Worked => ({
    what: `${at}: ${what}, rms over the work`,
    formula: '√(Σ share × value² / Σ share), against the rest at the place of printing',
    worked: `√((${summed(values, duty)}) / ${n(whole)}) = ${n(result)} ${unit}`,
  });
  if (one.parts)
    return [
      rms('movement of the tool across', one.tool_across_um, one.tool_across_rms_um, 'µm'),
      rms('yaw', one.yaw_urad, one.yaw_rms_urad, 'µrad'),
      {
        what: `${at}: wander of turned diameters`,
        formula: '2 × movement of the tool across',
        worked: `2 × ${n(one.tool_across_rms_um)} = ${n(one.parts.diameter_rms_um)} µm`,
      },
      {
        what: `${at}: lean of faces from rim to centre`,
        formula: 'yaw µrad × radius of the face mm/1000',
        worked: `${n(one.yaw_rms_urad)} × ${n(answer.facing_mm)}/1000 = ${n(one.parts.facing_rms_um)} µm`,
      },
      {
        what: `${at}: both together`,
        formula: '√(diameters² + faces²)',
        worked: `√(${n(one.parts.diameter_rms_um)}² + ${n(one.parts.facing_rms_um)}²) = ${n(one.parts.both_um)} µm`,
      },
    ];
  const [first, second] = one.cost;
  const [words, units] = one.block
    ? ([
        ['the first face out of parallel', 'the corner most out of square'],
        ['µm', 'µrad'],
      ] as const)
    : ([
        ['lean', 'turn in plan'],
        ['µrad', 'µrad'],
      ] as const);
  return [first, second].map((value, k) => ({
    what: `${at}: ${words[k]}, rms over the work`,
    formula: '√(Σ share × value² / Σ share), against the rest at the place of printing',
    worked: `${n(value)} ${units[k]}, allowed ${n(answer.limits[k]!)} ${units[k]}`,
  }));
}

/** The sum written out, its middle left out where it is long. */
function summed(values: readonly number[], duty: readonly number[]): string {
  const terms = values.map((value, i) => `${n(duty[i]!)} × ${value < 0 ? `(${n(value)})` : n(value)}²`);
  return terms.length > 6
    ? [...terms.slice(0, 3), `… ${terms.length - 5} more …`, ...terms.slice(-2)].join(' + ')
    : terms.join(' + ');
}
