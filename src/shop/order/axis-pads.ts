import type { AxisFound, HeldBar, TurnedBar } from '../../core/axis/bar-axis.ts';
import { barPlace, readsAlong } from '../../core/axis/bar-sweep.ts';
import type { CentresFound } from '../../core/axis/centres.ts';
import { wedgeOff } from '../../core/axis/wedge-off.ts';
import type { Deed, JobPlan } from '../../core/ledger/entry.ts';
import type { HeightSetup, SweepSetup } from '../../core/ledger/setup.ts';
import type { Template } from '../../core/ledger/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import { verdict } from '../../core/prove/verdict.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { benchPlan } from './bench-plan.ts';

/** The line along a test bar that a bench has among its set-ups. */
export const barLine = (plan: Pick<JobPlan, 'setups'>): SweepSetup | undefined =>
  plan.setups.find((setup): setup is SweepSetup => setup.kind === 'sweep' && setup.bar === true);

/** A step whose bench has a bar in its part: it can be scraped by what an axis says. */
export interface BarStep {
  readonly step: string;
  readonly title: string;
  /** Which way its bar points along x. */
  readonly toward: 1 | -1;
  readonly plan: JobPlan;
}

/** The steps of a machine whose pads turn a bar, in the order of its file; a slide whose template is not known is left out. */
export const barSteps = (machine: Machine, templates: readonly Template[]): BarStep[] =>
  machine.steps.flatMap((step): BarStep[] => {
    const slide = machine.slides.find((one) => one.id === step.bench?.slide);
    if (!slide || !templates.some((one) => one.id === slide.template)) return [];
    const plan = benchPlan(machine, step.id, templates);
    const line = plan && barLine(plan);
    if (!plan || !line) return [];
    return [{ step: step.id, title: step.title, toward: barPlace(line, plan.slide.pads).toward, plan }];
  });

/** What must come off the pads so that the axis lies as its bench aims. */
export interface AxisPads {
  readonly feature: string;
  /** The bench's feature as the bar tells it, and where it is aimed, µrad. */
  readonly value_urad: number;
  readonly aim_urad: number;
  /** Square to each face, µm, zones in order of plus along the travel; nothing at all where it is proven in its band. */
  readonly off_um: Readonly<Record<string, readonly number[]>>;
  readonly sentence: string;
}

/**
 * Which pads of the part that holds the bar come down, and how far, before the planner makes passes of it; undefined where its bench
 * does not turn the bar in the plane that was read.
 */
export function axisPads(
  plan: JobPlan,
  found: AxisFound & Pick<TurnedBar, 'side'>,
  system: UnitSystem,
): AxisPads | undefined {
  const line = barLine(plan);
  const feature = plan.features.find((one) => line?.tells.includes(one.name) && one.kind === 'turn');
  const target = plan.targets.find((one) => one.feature === feature?.name);
  if (!line || feature?.kind !== 'turn' || !target || !readsAlong(line, found.side)) return undefined;
  const { toward } = barPlace(line, plan.slide.pads);
  // Right-handed about y an end toward +x goes down, about z it goes to the back; plus is up, or toward the operator.
  const value_urad = -toward * found.slope_urad + 0;
  const aim_urad = target.aim ?? (target.low + target.high) / 2;
  const judged = verdict(value_urad, found.sd_urad, target.low, target.high);
  const turn = judged.verdict === 'within' ? 0 : aim_urad - value_urad;
  const off_um = wedgeOff(plan.slide, feature.axis, turn);
  // All that comes off grows with the turn, and so does its doubt.
  const share = turn === 0 ? 0 : Math.abs(found.sd_urad / turn);
  const sentence = padsSentence(off_um, share, system);
  return { feature: feature.name, value_urad, aim_urad, off_um, sentence };
}

/** A face that loses less than this is not told of, µm. */
const untold_um = 0.5;

function padsSentence(off_um: AxisPads['off_um'], sd_share: number, system: UnitSystem): string {
  const means = Object.entries(off_um).map(([pad, zones]) => ({
    pad,
    um: zones.reduce((sum, one) => sum + one, 0) / zones.length,
  }));
  const least = Math.min(...means.map(({ um }) => um));
  const told = means.filter(({ um }) => um - least >= untold_um);
  if (told.length === 0) return 'Its pads hold it in its band: nothing comes off for this.';
  const each = told.map(
    ({ pad, um }) =>
      `${pad} ${sayDeviation(um - least, system, { signed: false, sd: (um - least) * sd_share }).text}`,
  );
  return `To bring it to its aim, take more off these pads than off the others: ${each.join('; ')}.`;
}

const heightLine = (plan: Pick<JobPlan, 'setups'>): HeightSetup | undefined =>
  plan.setups.find(
    (setup): setup is HeightSetup => setup.kind === 'height' && Math.abs(setup.direction[2]) > 0.9,
  );

/** Where a tailstock's height is taken to: a bench with a bar that points back at the spindle, and a height among its set-ups. */
export const heightSteps = (steps: readonly BarStep[]): BarStep[] =>
  steps.filter(({ toward, plan }) => toward < 0 && heightLine(plan) !== undefined);

/** The readings of a bar that a bench takes, as its round's entry; undefined when none of them lies along its line. */
export function barDeed(
  plan: Pick<JobPlan, 'setups'>,
  round: number,
  held: HeldBar,
  readings: readonly TurnedBar[],
): Deed | undefined {
  const line = barLine(plan);
  const reading = line && readings.find((one) => readsAlong(line, one.side));
  return line && reading ? { kind: 'bar read', round, setup: line.id, held, reading } : undefined;
}

/** A tailstock's height against the spindle as its bench's reading of the round. */
export function heightDeed(
  plan: Pick<JobPlan, 'setups'>,
  round: number,
  found: Pick<CentresFound, 'plane' | 'um'>,
): Deed | undefined {
  const line = heightLine(plan);
  if (!line || found.plane !== 'up') return undefined;
  const value = Math.sign(line.direction[2]) * found.um + 0;
  return {
    kind: 'height read',
    round,
    setup: line.id,
    record: { push: 'climbed' },
    reading: { typed: `${value.toFixed(1)} µm`, value },
  };
}
