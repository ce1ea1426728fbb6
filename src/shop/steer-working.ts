import { zonesOf } from '../core/body/slide.ts';
import type { SweepFit } from '../core/estimate/sweep-fit.ts';
import type { Round, SteerInput } from '../core/observe/round.ts';
import { sweepDistances } from '../core/observe/sweep.ts';
import type { FeatureAnswer, SteerAnswer } from '../core/plan/answer.ts';
import { provenChance, provenShare } from '../core/plan/standing.ts';
import { judge } from '../core/prove/verdict.ts';
import { plain } from '../core/quantity/show.ts';
import { counted } from './phrase.ts';
import { bandRule, bandSource, bandWorked, type Worked } from './worked.ts';

/** Below this, µm or µrad, a number is what rounding left behind. */
const dust = 1e-6;
const n = (value: number, figures = 4): string => plain(Math.abs(value) < dust ? 0 : value, figures);
const list = (values: readonly number[], figures = 4): string =>
  values.map((value) => n(value, figures)).join(', ');
const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

/** Every number of `steer` with its formula and what was put in: readings, features, removal, bearing, plan. µrad, µm. */
export function steerWorking(input: SteerInput, answer: SteerAnswer): Worked[] {
  const { estimate, plan } = answer;
  const last = input.rounds.at(-1)!;
  return [
    ...estimate.sweeps.map((fit, k) => sweepWorked(last.sweeps[k]!, fit)),
    ...last.levels.map(
      (one): Worked => ({
        what: one.name,
        formula: 'reading = turn of the part along it; plus: the end it points to is high',
        worked: `${n(one.reading_urad)} µrad, one sd ${n(one.sd_urad)} µrad`,
      }),
    ),
    ...(last.heights ?? []).map(
      (one): Worked => ({
        what: one.name,
        formula: 'reading = how far the part stands there from nominal',
        worked: `${n(one.reading_um)} µm, one sd ${n(one.sd_um)} µm`,
      }),
    ),
    ...estimate.features.flatMap((one) => featureWorked(input, one)),
    ...estimate.removal.map((one): Worked => {
      const first = input.passes[one.material]!;
      return {
        what: `a pass on ${one.material} takes`,
        formula: 'first belief, changed by what each round moved for the passes made in it',
        worked: `first ${n(first.um)} µm, one sd ${n(first.sd_um)} µm; after ${counted(input.rounds.length, 'round')} ${n(one.um)} µm, one sd ${n(one.sd_um)} µm`,
      };
    }),
    ...bearingWorked(input, last, answer),
    {
      what: 'aligned',
      formula: `chance of all bands at once above ${provenChance}, and of each`,
      worked: `${n(plan.alignment.chance)}: ${plan.alignment.verdict}`,
    },
    ...(plan.action === 'stop' ? [] : planWorked(input, answer)),
  ];
}

function sweepWorked(sweep: Round['sweeps'][number], fit: SweepFit): Worked {
  const kept = <T>(values: readonly T[]): T[] => values.filter((_, k) => fit.kept[k]);
  const left = fit.outliers.map((one) => `${n(one.reading_um)} µm stands ${n(one.off_um)} µm off`);
  return {
    what: `${fit.name}: slope of its readings`,
    formula: 'Σ(d − d̄)(r − r̄) / Σ(d − d̄)², sd = reading sd / √Σ(d − d̄)²',
    worked: [
      `at ${list(kept(sweepDistances(sweep)))} mm: ${list(kept(sweep.readings_um))} µm, each one sd ${n(sweep.reading_sd_um)} µm: ${n(fit.slope_urad)} µrad, one sd ${n(fit.slope_sd_urad)} µrad`,
      ...(left.length > 0 ? [`left out, further than 4 sd: ${left.join(', ')}`] : []),
      ...(fit.widen > 1 ? [`scatter larger than stated: sd times ${n(fit.widen)}`] : []),
      `the face’s own slope ${n(sweep.face_slope_urad)} µrad, one sd ${n(sweep.face_slope_sd_urad)} µrad${sweep.turned_over ? ', turned over' : ''}`,
    ].join('; '),
  };
}

function featureWorked(input: SteerInput, { name, value, sd, chance_in_band }: FeatureAnswer): Worked[] {
  const unit = input.features.find((one) => one.name === name)!.kind === 'turn' ? 'µrad' : 'µm';
  const { rounds } = input;
  const taken = [
    counted(sum(rounds.map((one) => one.sweeps.length)), 'sweep'),
    counted(sum(rounds.map((one) => one.levels.length)), 'level'),
    counted(sum(rounds.map((one) => one.heights?.length ?? 0)), 'height'),
    counted(rounds.filter((one) => one.print).length, 'print'),
  ].join(', ');
  const target = input.targets.find((one) => one.feature === name);
  return [
    {
      what: `${name} now`,
      formula:
        'generalised least squares over all readings, prints and passes; reading = s · (u of what rides − u of what is touched) − face slope × distance + constant',
      worked: `${counted(rounds.length, 'round')}: ${taken}: ${n(value)} ${unit}, one sd ${n(sd)} ${unit}`,
      source: 'docs/method.md; reversal as Evans, Hocken and Estler 1996',
    },
    ...(target
      ? [
          {
            what: `${name} against its band`,
            formula: bandRule,
            worked: bandWorked(
              value,
              2 * sd,
              target,
              unit,
              judge(value, 2 * sd, target.low, target.high).verdict,
            ),
            source: bandSource,
          },
          {
            what: `${name}: chance that it lies in its band`,
            formula: 'Φ((high − value)/sd) − Φ((low − value)/sd)',
            worked: `Φ(${n((target.high - value) / sd)}) − Φ(${n((target.low - value) / sd)}) = ${n(chance_in_band)}`,
            source: 'conformance probability of JCGM 106:2012 (from memory)',
          },
        ]
      : []),
  ];
}

function bearingWorked(input: SteerInput, { print }: Round, { plan }: SteerAnswer): Worked[] {
  const { share, least_zone, verdict } = plan.bearing;
  if (!print || share === undefined) return [];
  const zones = zonesOf(input.slide);
  // Faces that nothing may come off only carry; where no other is, they are what is judged.
  const worked = zones.filter((zone) => zone.pad.stock_um !== 0);
  const judged = worked.length > 0 ? worked : zones;
  const blue = (zone: (typeof zones)[number]): number => print[zone.pad.name]![zone.index]!;
  const pads = [...new Set(judged.map((zone) => zone.pad))].map((pad) => {
    const its = judged.filter((zone) => zone.pad === pad);
    return `(${its.map((zone) => n(blue(zone))).join(' + ')}) × ${n(its[0]!.area_mm2)}`;
  });
  return [
    {
      what: 'bears',
      formula: `Σ share × area / Σ area; at least ${provenShare.area} of the area and ${provenShare.zone} of every zone`,
      worked: `${pads.join(' + ')} = ${n(sum(judged.map((zone) => blue(zone) * zone.area_mm2)))} mm² of ${n(sum(judged.map((zone) => zone.area_mm2)))} mm²: ${n(share)}; the least zone ${n(least_zone!)}: ${verdict}`,
      source: 'figures of this tool; common practice asks for even bearing',
    },
  ];
}

function planWorked(input: SteerInput, { plan }: SteerAnswer): Worked[] {
  const zones = zonesOf(input.slide);
  const unitOf = (name: string): string =>
    input.features.find((one) => one.name === name)!.kind === 'turn' ? 'µrad' : 'µm';
  return [
    {
      what: 'metal to take off',
      formula: 'least Σ depth × area whose settled pose keeps every feature in its band',
      worked: `${input.slide.pads
        .map(
          (pad) =>
            `${pad.name} (${plan.zones
              .filter((zone) => zone.pad === pad.name)
              .map((zone) => n(zone.depth_um, 3))
              .join(' + ')}) µm × ${n(zones.find((zone) => zone.pad === pad)!.area_mm2)} mm²`,
        )
        .join('; ')}: ${n(plan.volume_mm3)} mm³`,
    },
    {
      what: 'passes',
      formula: 'fewest passes, by area, whose settled pose keeps every feature in its band',
      worked: `${input.slide.pads
        .map(
          (pad) =>
            `${pad.name} ${plan.zones
              .filter((zone) => zone.pad === pad.name)
              .map((zone) => zone.passes)
              .join(' ')}`,
        )
        .join(
          '; ',
        )}: ${sum(plan.zones.map((zone) => zone.passes))}, of these now ${sum(plan.zones.map((zone) => zone.passes_now))}`,
    },
    {
      what: 'the part settles',
      formula: 'q = −(AᵀWA)⁻¹AᵀW d',
      worked: `${input.slide.pads.map((pad, k) => `${pad.name} ${n(plan.settle_um[k]!)} µm`).join(', ')}, each at its middle toward its way`,
    },
    ...plan.doubt.map(
      (one): Worked => ({
        what: `${one.name}: doubt when it is next measured`,
        formula: '√(removal² + scatter of passes² + readings²)',
        worked: `√(${n(one.removal)}² + ${n(one.scatter)}² + ${n(one.readings)}²) = ${n(one.whole)} ${unitOf(one.name)}, one sd`,
      }),
    ),
  ];
}
