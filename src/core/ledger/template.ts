import { slope } from '../body/displacement.ts';
import type { Feature, Target } from '../body/feature.ts';
import type { AxisName, Vector } from '../body/vector.ts';
import type { PassSize, SinkLimit } from '../observe/round.ts';
import type { MadeBlock, MadeBlockAt } from '../parts/made-block.ts';
import type { JobPlan } from './entry.ts';
import { type Measure, measured } from './measure.ts';
import type { FeatureWords, HeightSetup, LevelSetup, PlaceWords, Setup, SweepSetup } from './setup.ts';
import { padsOf, type Ruler, type Way } from './way.ts';

type MeasuredPlace = readonly [Measure, Measure, Measure];

/** One number that the user measures on the machine. */
export interface Dimension {
  readonly key: string;
  readonly label: string;
  readonly unit: 'mm' | 'deg' | 'um';
  /** What stands there until the user says otherwise; left out: the dimension may stay unknown. */
  readonly value?: number;
  readonly low: number;
  readonly high: number;
  /** Where on the machine it is measured, in words. */
  readonly where: string;
}

/** A material, and what a pass of it is first believed to take. */
interface TemplateMaterial extends PassSize {
  readonly label: string;
  /** Where the figure comes from. */
  readonly source: string;
}

/** A band as the shop says it: a fall over a length for a turn, a distance for a shift. */
interface TemplateTarget {
  readonly feature: string;
  readonly low_um: Measure;
  readonly high_um: Measure;
  readonly aim_um?: Measure;
  /** For a turn: the length the fall is over, mm. */
  readonly over_mm?: number;
  readonly guard?: number;
}

type TemplateFeature =
  | { readonly name: string; readonly kind: 'turn'; readonly axis: AxisName }
  | {
      readonly name: string;
      readonly kind: 'shift';
      readonly at_mm: MeasuredPlace;
      readonly direction: Vector;
    };

type TemplateSetup =
  | (Omit<SweepSetup, 'from_mm' | 'to_mm'> & {
      readonly from_mm: MeasuredPlace;
      readonly to_mm: MeasuredPlace;
    })
  | LevelSetup
  | (Omit<HeightSetup, 'at_mm'> & { readonly at_mm: MeasuredPlace });

/** What a mill or grinder makes, its places as sums over the dimensions. */
export type TemplateBlock = MadeBlockAt<MeasuredPlace>;

/** A machine as data: what a job is made from, once the user has given its dimensions. */
export interface Template {
  readonly id: string;
  readonly title: string;
  /** What lies on the bench: "saddle". */
  readonly part: string;
  readonly description: string;
  readonly dimensions: readonly Dimension[];
  /** What the pads are faced with: one of these materials. */
  readonly surface: { readonly label: string; readonly options: readonly string[]; readonly value: string };
  readonly materials: Readonly<Record<string, TemplateMaterial>>;
  readonly ways: readonly Way[];
  readonly features: readonly TemplateFeature[];
  readonly targets: readonly TemplateTarget[];
  readonly words: readonly FeatureWords[];
  readonly places: PlaceWords;
  readonly film_um?: number;
  readonly sink?: readonly {
    readonly name: string;
    readonly at_mm: MeasuredPlace;
    readonly most_um: Measure;
  }[];
  readonly setups: readonly TemplateSetup[];
  readonly makes?: TemplateBlock;
  readonly cautions: readonly string[];
}

/** What the user says about the machine: dimensions by key, and under "surface" a material. */
export type TemplateAnswers = Readonly<Record<string, number | string>>;

/** One dimension that cannot be taken. */
interface DimensionRefusal {
  readonly key: string;
  readonly found: string;
  readonly expected: string;
}

export type BuiltPlan =
  | { readonly ok: true; readonly plan: JobPlan }
  | { readonly ok: false; readonly refusals: readonly DimensionRefusal[] };

export const surfaceKey = 'surface';

/** What stands in a template until the user says otherwise. */
function templateDefaults(template: Template): Record<string, number | string> {
  const given = template.dimensions.flatMap(({ key, value }) => (value === undefined ? [] : [[key, value]]));
  return { ...Object.fromEntries(given), [surfaceKey]: template.surface.value };
}

/**
 * A job's plan from a machine and the user's dimensions; what is not given stands as the template has it.
 * @returns every dimension that cannot be taken, all at once, when there is one
 * @throws RangeError  the template itself is at fault (a measure that cannot be read)
 */
export function buildPlan(template: Template, answers: TemplateAnswers, title: string): BuiltPlan {
  const refusals = refusedAnswers(template, answers);
  if (refusals.length > 0) return { ok: false, refusals };
  const all = { ...templateDefaults(template), ...answers };
  const { [surfaceKey]: surface, ...numbers } = all;
  const known = Object.fromEntries(
    template.dimensions.map(({ key }) => [key, numbers[key] as number | undefined]),
  );
  const ruler: Ruler = {
    maybe: (measure) => measured(measure, known),
    of: (measure) => {
      const value = measured(measure, known);
      if (value === undefined)
        throw new RangeError(`"${measure}" must be known, but rests on a dimension that may be left out`);
      return value;
    },
  };
  const targets = template.targets.map((target) => targetOf(target, ruler));
  const upside = targets.flatMap((target, k) =>
    target.low < target.high ? [] : [upsideDown(template.targets[k]!, ruler)],
  );
  if (upside.length > 0) return { ok: false, refusals: upside };
  return { ok: true, plan: planOf(template, ruler, String(surface), targets, title) };
}

function planOf(
  template: Template,
  ruler: Ruler,
  surface: string,
  targets: readonly Target[],
  title: string,
): JobPlan {
  const pads = template.ways.flatMap((way) => padsOf(way, ruler, surface));
  const used = new Set(pads.map((pad) => pad.material));
  const passes = Object.entries(template.materials).flatMap(([name, { um, sd_um }]) =>
    used.has(name) ? [[name, { um, sd_um }] as const] : [],
  );
  const sink = (template.sink ?? []).flatMap((limit): SinkLimit[] => {
    const most_um = ruler.maybe(limit.most_um);
    return most_um === undefined ? [] : [{ name: limit.name, at_mm: placeOf(limit.at_mm, ruler), most_um }];
  });
  return {
    title,
    template: template.id,
    slide: { name: template.part, free: template.places.travel, pads },
    features: template.features.map((feature) => featureOf(feature, ruler)),
    targets,
    words: template.words,
    places: template.places,
    passes: Object.fromEntries(passes),
    ...(sink.length > 0 ? { sink } : {}),
    ...(template.film_um === undefined ? {} : { film_um: template.film_um }),
    setups: template.setups.map((setup) => setupOf(setup, ruler)),
    ...(template.makes === undefined ? {} : { makes: blockOf(template.makes, ruler.of) }),
    cautions: template.cautions,
  };
}

function refusedAnswers(template: Template, answers: TemplateAnswers): DimensionRefusal[] {
  return Object.entries(answers).flatMap(([key, value]): DimensionRefusal[] => {
    const found = typeof value === 'string' ? JSON.stringify(value) : String(value);
    if (key === surfaceKey) {
      const { options } = template.surface;
      const expected = options.map((option) => JSON.stringify(option)).join(' or ');
      return options.some((option) => option === value) ? [] : [{ key, found, expected }];
    }
    const dimension = template.dimensions.find((one) => one.key === key);
    if (!dimension) {
      const keys = [...template.dimensions.map((one) => one.key), surfaceKey].join(', ');
      return [{ key, found: 'a dimension that this machine does not have', expected: `one of ${keys}` }];
    }
    const fits = typeof value === 'number' && value >= dimension.low && value <= dimension.high;
    return fits ? [] : [{ key, found, expected: `${dimension.label}: ${rangeText(dimension)}` }];
  });
}

const unitSign = { mm: ' mm', deg: '°', um: ' µm' } as const;

/** "from 100 to 2000 mm" */
const rangeText = ({ low, high, unit }: Dimension): string => `from ${low} to ${high}${unitSign[unit]}`;

/** To a hundredth of a µm: a limit typed in thou is no whole number of them. */
const umText = (um: number): string => `${Math.round(um * 100) / 100} µm`;

function upsideDown(target: TemplateTarget, ruler: Ruler): DimensionRefusal {
  const key = typeof target.high_um === 'string' ? target.high_um : target.feature;
  return {
    key,
    found: umText(ruler.of(target.high_um)),
    expected: `more than ${umText(ruler.of(target.low_um))}, the least of the band of "${target.feature}"`,
  };
}

function targetOf(target: TemplateTarget, ruler: Ruler): Target {
  const value = (measure: Measure): number => {
    const um = ruler.of(measure);
    return target.over_mm === undefined ? um : slope(um, target.over_mm);
  };
  return {
    feature: target.feature,
    low: value(target.low_um),
    high: value(target.high_um),
    ...(target.aim_um === undefined ? {} : { aim: value(target.aim_um) }),
    ...(target.guard === undefined ? {} : { guard: target.guard }),
  };
}

const placeOf = (place: MeasuredPlace, ruler: Ruler): Vector =>
  place.map((part) => ruler.of(part)) as unknown as Vector;

/** A block with its places worked out. */
export const blockOf = (made: TemplateBlock, of: (measure: Measure) => number): MadeBlock => ({
  ...made,
  size_mm: [of(made.size_mm[0]), of(made.size_mm[1]), of(made.size_mm[2])],
  middle_mm: [of(made.middle_mm[0]), of(made.middle_mm[1]), of(made.middle_mm[2])],
});

function featureOf(feature: TemplateFeature, ruler: Ruler): Feature {
  return feature.kind === 'turn' ? feature : { ...feature, at_mm: placeOf(feature.at_mm, ruler) };
}

function setupOf(setup: TemplateSetup, ruler: Ruler): Setup {
  if (setup.kind === 'sweep')
    return { ...setup, from_mm: placeOf(setup.from_mm, ruler), to_mm: placeOf(setup.to_mm, ruler) };
  return setup.kind === 'height' ? { ...setup, at_mm: placeOf(setup.at_mm, ruler) } : setup;
}
