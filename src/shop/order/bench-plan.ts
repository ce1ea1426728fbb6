import { BadInput } from '../../contract/refusal.ts';
import { slope } from '../../core/body/displacement.ts';
import type { Target } from '../../core/body/feature.ts';
import type { Pad } from '../../core/body/pad.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import { type Measure, measured } from '../../core/ledger/measure.ts';
import type { Setup } from '../../core/ledger/setup.ts';
import { blockOf, buildPlan, type Template } from '../../core/ledger/template.ts';
import type { SinkLimit } from '../../core/observe/round.ts';
import type { Machine, MachineSlide, Step } from '../../core/order/machine.ts';

/** The machine's sizes by key: those given, else as its file has them. */
export function machineSizes(
  machine: Pick<Machine, 'dimensions'>,
  given: Readonly<Record<string, number>> = {},
): Record<string, number> {
  return Object.fromEntries(machine.dimensions.map(({ key, value }) => [key, given[key] ?? value]));
}

/** What heights ask of a bench: how far the slide may sink, and what may come off its faces, µm by pad. */
export interface BenchLimits {
  readonly sink?: readonly SinkLimit[];
  readonly stock_um?: Readonly<Record<string, number>>;
}

type Sizes = Readonly<Record<string, number>>;

const sized = (measure: Measure, sizes: Sizes): number => {
  const value = measured(measure, sizes);
  if (value === undefined) throw new RangeError(`"${measure}" rests on a size that is not known`);
  return value;
};

/**
 * The plan of a slide of a machine: its template with the machine's sizes, words and bands.
 * @throws BadInput  the slide does not fit its template: contract/machine.ts refuses such machines, a job’s file may bring one in
 */
export function slidePlan(slide: MachineSlide, template: Template, sizes: Sizes, title: string): JobPlan {
  const answers = Object.fromEntries(
    Object.entries(slide.dimensions ?? {}).map(([key, value]) => [
      key,
      key === 'surface' ? value : sized(value, sizes),
    ]),
  );
  const built = buildPlan(template, answers, title);
  if (!built.ok)
    throw new BadInput(
      built.refusals.map(({ key, found, expected }) => ({
        path: `the machine’s slide ${JSON.stringify(slide.name)}, ${key}`,
        found,
        expected,
      })),
    );
  const { makes, ...plan } = built.plan;
  const own =
    slide.makes === 'as the template'
      ? makes
      : slide.makes && blockOf(slide.makes, (measure) => sized(measure, sizes));
  return {
    ...plan,
    slide: { ...plan.slide, name: slide.name, pads: plan.slide.pads.map((pad) => ownPad(pad, slide)) },
    targets: plan.targets.map((target) => ownTarget(target, slide, sizes)),
    words: plan.words.map((words) => ({
      ...words,
      ...slide.words?.find((one) => one.feature === words.feature),
    })),
    places: { ...plan.places, ...slide.places },
    setups: plan.setups.map((setup) => ownSetup(setup, slide, plan)),
    ...(own ? { makes: own } : {}),
  };
}

const ownPad = (pad: Pad, slide: MachineSlide): Pad => ({
  ...pad,
  name: slide.pads?.[pad.name] ?? pad.name,
});

function ownTarget(target: Target, slide: MachineSlide, sizes: Sizes): Target {
  const own = slide.targets?.find((one) => one.feature === target.feature);
  if (!own) return target;
  const { over_mm } = own;
  const value = (measure: Measure): number => {
    const um = sized(measure, sizes);
    return over_mm === undefined ? um : slope(um, over_mm);
  };
  const { aim: _aim, ...rest } = target;
  return {
    ...rest,
    low: value(own.low_um),
    high: value(own.high_um),
    ...(own.aim_um === undefined ? {} : { aim: value(own.aim_um) }),
  };
}

/** A set-up card in this machine's words; a direction that the slide calls otherwise is called so here too. */
function ownSetup(setup: Setup, slide: MachineSlide, plan: JobPlan): Setup {
  const own = slide.setups?.find((one) => one.id === setup.id) ?? {};
  const feature = setup.tells[0]!;
  const was = plan.words.find((one) => one.feature === feature);
  const is = slide.words?.find((one) => one.feature === feature);
  const called = (word: string): string =>
    is && word === was?.plus ? is.plus : is && word === was?.minus ? is.minus : word;
  return {
    ...setup,
    ...own,
    climbs_words: called(setup.climbs_words),
    falls_words: called(setup.falls_words),
  };
}

/** The same plan with the set-ups and features of one step, its cautions, and what heights leave it. */
function stepPlan(plan: JobPlan, step: Step, limits: BenchLimits): JobPlan {
  const { setups, features } = step.bench!;
  const wanted = (feature: string): boolean => features === undefined || features.includes(feature);
  const stocked = (pad: Pad): Pad => {
    const left = limits.stock_um?.[pad.name];
    return left === undefined ? pad : { ...pad, stock_um: Math.min(left, pad.stock_um ?? left) };
  };
  const sink = [...(plan.sink ?? []), ...(limits.sink ?? [])];
  const cautions = [...step.cautions, ...plan.cautions];
  return {
    ...plan,
    title: step.title,
    slide: { ...plan.slide, pads: plan.slide.pads.map(stocked) },
    features: plan.features.filter((feature) => wanted(feature.name)),
    targets: plan.targets.filter((target) => wanted(target.feature)),
    words: plan.words.filter((one) => wanted(one.feature)),
    setups: plan.setups.filter((setup) => setups === undefined || setups.includes(setup.id)),
    ...(sink.length > 0 ? { sink } : {}),
    cautions: [...new Set(cautions)],
  };
}

/**
 * What the bench of a step opens with: a job's plan, ready for `job made`.
 * @param given   the machine's sizes, where they differ from its file
 * @param limits  from the heights: sink room and liner stock; the smaller of two stocks holds
 * @returns       undefined for a step that is not scraped on a bench
 * @throws RangeError  no such step
 */
export function benchPlan(
  machine: Machine,
  step: string,
  templates: readonly Template[],
  given: Sizes = {},
  limits: BenchLimits = {},
): JobPlan | undefined {
  const its = machine.steps.find((one) => one.id === step);
  if (!its) throw new RangeError(`"${step}" is not a step of ${machine.id}`);
  if (!its.bench) return undefined;
  const slide = machine.slides.find((one) => one.id === its.bench!.slide)!;
  const template = templates.find((one) => one.id === slide.template)!;
  const plan = slidePlan(slide, template, machineSizes(machine, given), its.title);
  return stepPlan(plan, its, limits);
}
