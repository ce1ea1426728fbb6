import { usualRatio } from '../../core/kit/can-prove.ts';
import type { Kit, SetUp } from '../../core/kit/kit.ts';
import type { TakenSurvey } from '../../core/ledger/survey-record.ts';
import { sayLength } from '../../core/quantity/length.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import type { JobTargetKit } from './job-kit.ts';
import { kitReport } from './kit-report.ts';

/**
 * For every straightness that a kept survey holds to a limit: levels stepped along it and indicators over a straightedge are tried with every thing
 * of the kit, one run each, and the way of least doubt is told.
 */
export function surveyKit(
  surveys: Iterable<TakenSurvey>,
  kit: Kit,
  system: UnitSystem,
): readonly JobTargetKit[] {
  return [...surveys].flatMap((survey): JobTargetKit[] => {
    const { input } = survey;
    if (input.kind !== 'angles' && input.kind !== 'heights') return [];
    if (input.limit_um === undefined) return [];
    const target = { name: survey.of, high: input.limit_um, unit: 'um' } as const;
    const plane = input.direction ?? 'vertical';
    const feature = `${survey.of}, straight ${plane === 'vertical' ? 'up and down' : 'sideways'}`;
    const tried = waysOf(lengthOf(input), plane, kit).map((way) => ({
      way,
      proof: kitReport(
        { kit, targets: [target], setups: [{ target: target.name, setup: way.setup }], wanted: usualRatio },
        system,
      ).proofs[0]!,
    }));
    const best = tried.sort((a, b) => a.proof.doubt - b.proof.doubt)[0];
    if (!best) return [{ can: 'not told', feature, why: missing(lengthOf(input), plane, system) }];
    const { way, proof } = best;
    return [{ can: proof.can, feature, setup: way.setup.name, by: way.by, proof }];
  });
}

const lengthOf = (input: LineInput): number =>
  input.kind === 'angles'
    ? input.step_mm * input.angles_urad.length
    : input.stations_mm.at(-1)! - input.stations_mm[0]!;

/** A mirror tells both planes, a level the upright one only. */
function waysOf(
  length_mm: number,
  plane: 'vertical' | 'horizontal',
  kit: Kit,
): { readonly setup: SetUp; readonly by: readonly string[] }[] {
  const walks = kit.instruments.flatMap((one) =>
    one.kind === 'autocollimator' || (plane === 'vertical' && one.kind !== 'indicator')
      ? [
          {
            setup: {
              method: 'level walk',
              name: `${one.kind}, stepped`,
              instrument: one.name,
              length_mm,
              runs: 1,
            } as const,
            by: [one.name],
          },
        ]
      : [],
  );
  const dials = kit.instruments.filter((one) => one.kind === 'indicator');
  const edges = kit.references.filter((one) => one.kind === 'straightedge' && one.length_mm >= length_mm);
  const sweeps = edges.flatMap((edge) =>
    dials.map((dial) => ({
      setup: {
        method: 'straightedge sweep',
        name: 'indicator over a straightedge',
        instrument: dial.name,
        reference: edge.name,
        length_mm,
        sweeps: 1,
        seats: 1,
        turned_over: false,
        plane,
        sag_taken_out: false,
      } as const,
      by: [dial.name, edge.name],
    })),
  );
  return [...walks, ...sweeps];
}

function missing(length_mm: number, plane: 'vertical' | 'horizontal', system: UnitSystem): string {
  const steps = plane === 'vertical' ? 'a level' : 'an autocollimator';
  return `To survey it you need ${steps}, or an indicator and a straightedge of ${sayLength(length_mm, system).text}.`;
}
