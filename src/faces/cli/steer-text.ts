import type { Feature, Target } from '../../core/body/feature.ts';
import type { SteerInput } from '../../core/observe/round.ts';
import type { FeatureAnswer, SteerAnswer } from '../../core/plan/answer.ts';
import { judge } from '../../core/prove/verdict.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import { tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { table } from './table.ts';

const actions = {
  scrape: 'Scrape these zones, then set it back, print and measure again.',
  spot: 'The alignment is in. Spot the blue only.',
  stop: 'Stop. Alignment and bearing are both proven.',
} as const;

/** A feature's number with its doubt: turns as a fall over 300 mm or 12 in, shifts in µm or thou. */
function said(feature: Feature, answer: FeatureAnswer, system: UnitSystem): string {
  return feature.kind === 'turn'
    ? saySlope(answer.value, system, { sd: answer.sd }).text
    : sayDeviation(answer.value, system, { sd: answer.sd }).text;
}

function saidLimit(feature: Feature, limit: number, system: UnitSystem): string {
  return feature.kind === 'turn' ? saySlope(limit, system).text : sayDeviation(limit, system).text;
}

function featureRows(input: SteerInput, answers: readonly FeatureAnswer[], system: UnitSystem): string[][] {
  return answers.map((answer) => {
    const feature = input.features.find((one) => one.name === answer.name)!;
    const target = input.targets.find((one) => one.feature === answer.name);
    return [answer.name, said(feature, answer, system), ...againstTarget(feature, answer, target, system)];
  });
}

function againstTarget(
  feature: Feature,
  answer: FeatureAnswer,
  target: Target | undefined,
  system: UnitSystem,
): string[] {
  if (!target) return ['', '', ''];
  const { verdict } = judge(answer.value, 2 * answer.sd, target.low, target.high);
  const band = `${saidLimit(feature, target.low, system)} to ${saidLimit(feature, target.high, system)}`;
  return [band, verdict, `${(100 * answer.chance_in_band).toFixed(0)} in 100`];
}

function zoneTable(
  input: SteerInput,
  answer: SteerAnswer,
  of: 'depth_um' | 'passes' | 'passes_now',
  system: UnitSystem,
): string {
  const { bare } = tableColumns(system).size;
  const most = Math.max(...input.slide.pads.map((pad) => pad.zones));
  const heads = ['', ...Array.from({ length: most }, (_, z) => `zone ${z + 1}`)];
  const rows = input.slide.pads.map((pad) => [
    pad.name,
    ...answer.plan.zones
      .filter((zone) => zone.pad === pad.name)
      .map((zone) => (of === 'depth_um' ? bare(zone.depth_um) : String(zone[of]))),
  ]);
  return table(heads, rows);
}

/** What `steer` answers, as a person reads it at the bench. */
export function steerText(input: SteerInput, answer: SteerAnswer, system: UnitSystem = 'metric'): string {
  const { estimate, plan, warnings } = answer;
  const heads = ['', 'value ± 2 sd', 'band', 'verdict', 'chance in band'];
  const parts = [
    `${input.slide.name}, round ${input.rounds.length}`,
    table(heads, featureRows(input, estimate.features, system)),
    `alignment ${plan.alignment.verdict}; bearing ${plan.bearing.verdict}${
      plan.bearing.share === undefined ? '' : `, ${(100 * plan.bearing.share).toFixed(0)} % blue`
    }`,
    estimate.removal
      .map(
        (one) =>
          `a pass on ${one.material} takes ${sayDeviation(one.um, system, { sd: one.sd_um, signed: false }).text}`,
      )
      .join('\n'),
    actions[plan.action],
  ];
  if (plan.action !== 'stop') {
    const now = plan.zones.some((zone) => zone.passes_now !== zone.passes);
    parts.push(
      `Passes by zone (zone 1 at the minus end of the travel)\n${zoneTable(input, answer, 'passes', system)}`,
      ...(now ? [`Of these, before measuring again\n${zoneTable(input, answer, 'passes_now', system)}`] : []),
      `Metal to take off, ${tableColumns(system).size.unit} (${told(system).volume(plan.volume_mm3)} in all)\n${zoneTable(input, answer, 'depth_um', system)}`,
      `After the plan\n${table(heads, featureRows(input, plan.predicted, system))}`,
      `Settles ${input.slide.pads
        .map(
          (pad, k) =>
            `${sayDeviation(plan.settle_um[k]!, system, { signed: false }).text} at the ${pad.name}`,
        )
        .join(', ')}.`,
    );
  }
  parts.push(...warnings.map((warning) => `! ${warning.text}`));
  return parts.filter((part) => part !== '').join('\n\n');
}
