import type { AxisAsk, AxisBand } from '../../contract/axis.ts';
import { BadInput } from '../../contract/refusal.ts';
import { type AxisFound, axisOf, type TurnedBar } from '../../core/axis/bar-axis.ts';
import { type BarPlace, barPlace, barSweep, readsAlong } from '../../core/axis/bar-sweep.ts';
import { type CentresFound, centresOf, type HeightDeed, heightDeed } from '../../core/axis/centres.ts';
import { rise, slope } from '../../core/body/displacement.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { Template } from '../../core/ledger/template.ts';
import type { Round, SteerInput } from '../../core/observe/round.ts';
import type { Machine } from '../../core/order/machine.ts';
import { type Judged, verdict } from '../../core/prove/verdict.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Worked } from '../worked.ts';
import { type AxisPads, axisPads, barLine } from './axis-pads.ts';
import { axisWorking } from './axis-working.ts';
import { benchPlan } from './bench-plan.ts';

/** An axis with what was read, its verdict, and the sentence. */
export type AxisShown = AxisFound & {
  readonly side: TurnedBar['side'];
  readonly judged?: Judged;
  /** The same as a rise over the length of its band, with its doubt, two sd. */
  readonly over?: { readonly over_mm: number; readonly um: number; readonly doubt_um: number };
  readonly sentence: string;
};

/** What `axis` answers. */
export interface AxisAnswer {
  readonly ok: true;
  readonly axes: readonly AxisShown[];
  readonly centres: readonly (CentresFound & HeightDeed & { readonly sentence: string })[];
  /** What must come off the pads of the step that `scrape` names, by reading along its bench's bar. */
  readonly pads?: readonly AxisPads[];
  /** What `steer` is asked about the part that carries the spindle. */
  readonly steer_input?: SteerInput;
  readonly working: readonly Worked[];
}

/**
 * Where an axis lies against the travel, where the tailstock stands, and the readings put as a question to the planner of
 * the headstock's or tailstock's own pads.
 * @param system  units of the sentences and the working
 * @throws BadInput  a machine, step or set-up that there is not
 */
export function axis(
  ask: AxisAsk,
  machines: readonly Machine[],
  templates: readonly Template[],
  system: UnitSystem = 'metric',
): AxisAnswer {
  const { held, scrape } = ask;
  const axes = held ? ask.readings.map((reading) => shownAxis(ask, reading, system)) : [];
  const plan = scrape ? planOf(ask, machines, templates) : undefined;
  const centres = ask.centres.map((one) => centresOf(one));
  return {
    ok: true,
    axes,
    centres: ask.centres.map((one, k) => {
      const found = centres[k]!;
      const deed = heightDeed(found, one.low_um, one.high_um, one.aim_um);
      return { ...found, ...deed, sentence: centresSentence(found, deed, system) };
    }),
    ...(plan
      ? {
          pads: axes.flatMap((one) => axisPads(plan, one, system) ?? []),
          steer_input: steerInputOf(ask, plan),
        }
      : {}),
    working: axisWorking(ask, axes, centres, system),
  };
}

function shownAxis(ask: AxisAsk, reading: TurnedBar, system: UnitSystem): AxisShown {
  const found = axisOf(ask.held!, reading);
  const band = ask.bands[found.plane];
  const judged = band ? judgedAxis(found, band) : undefined;
  return {
    ...found,
    side: reading.side,
    ...(judged ? { judged } : {}),
    ...(band
      ? {
          over: {
            over_mm: band.over_mm,
            um: rise(found.slope_urad, band.over_mm),
            doubt_um: rise(2 * found.sd_urad, band.over_mm),
          },
        }
      : {}),
    sentence: axisSentence(found, judged, system),
  };
}

const judgedAxis = ({ slope_urad, sd_urad }: AxisFound, { low_um, high_um, over_mm }: AxisBand): Judged =>
  verdict(slope_urad, sd_urad, slope(low_um, over_mm), slope(high_um, over_mm));

function axisSentence(
  { plane, slope_urad, sd_urad, sag_um }: AxisFound,
  judged: Judged | undefined,
  system: UnitSystem,
): string {
  const way = { up: ['low', 'high'], sideways: ['toward the back', 'toward you'] }[plane];
  const size = saySlope(Math.abs(slope_urad), system, { sd: sd_urad, signed: false }).text;
  const sag =
    sag_um === 0
      ? ''
      : `; the bar’s sag, ${sayDeviation(sag_um, system, { signed: false }).text} between the two places, is taken out`;
  const told = judged ? `: ${judged.verdict}` : '';
  const where = slope_urad === 0 ? 'along the travel' : way[slope_urad > 0 ? 1 : 0];
  return `The free end lies ${where}, ${size}${sag}${told}.`;
}

function centresSentence(
  { plane, um, sd_um, bracket_um = 0 }: CentresFound,
  { deed, by_um, judged }: HeightDeed,
  system: UnitSystem,
): string {
  const way = { up: ['lower', 'higher'], sideways: ['further back', 'nearer to you'] }[plane][
    um >= 0 ? 1 : 0
  ];
  const size = sayDeviation(Math.abs(um), system, { sd: sd_um, signed: false }).text;
  const by = sayDeviation(by_um, system, { signed: false }).text;
  const sideways = um > 0 ? 'to the back' : 'toward you';
  const told = {
    leave: 'leave it',
    'measure again': 'measure again before anything comes off',
    raise:
      plane === 'up'
        ? `raise it by ${by}, liner or shim under its whole face`
        : `set it over by ${by} ${sideways}`,
    lower: plane === 'up' ? `scrape its base down evenly by ${by}` : `set it over by ${by} ${sideways}`,
  }[deed];
  const sag =
    bracket_um === 0
      ? ''
      : `; the bracket’s sag, ${sayDeviation(bracket_um, system, { signed: false }).text} of height, is taken out`;
  return `The tailstock’s centre stands ${way} than the spindle’s, ${size}${sag}: ${judged.verdict}; ${told}.`;
}

function planOf(ask: AxisAsk, machines: readonly Machine[], templates: readonly Template[]): JobPlan {
  const { machine: id, step: stepId, dimensions, read } = ask.scrape!;
  const refuse = (path: string, found: string, among: readonly string[]) =>
    new BadInput([{ path, found: JSON.stringify(found), expected: `one of ${among.join(', ')}` }]);
  const machine = machines.find((one) => one.id === id);
  if (!machine)
    throw refuse(
      'scrape.machine',
      id,
      machines.map((one) => one.id),
    );
  const benches = machine.steps.filter((one) => one.bench).map((one) => one.id);
  if (!benches.includes(stepId)) throw refuse('scrape.step', stepId, benches);
  const plan = benchPlan(machine, stepId, templates, dimensions)!;
  const single = plan.setups.filter((setup) => setup.kind !== 'sweep').map((setup) => setup.id);
  for (const setup of Object.keys(read))
    if (!single.includes(setup)) throw refuse(`scrape.read.${setup}`, setup, single);
  return plan;
}

/** Where the bar is held: as told, else as the bench's own line along it has it. */
function placeOf({ scrape }: AxisAsk, plan: JobPlan): BarPlace {
  const { step, place } = scrape!;
  if (place) return place;
  const line = barLine(plan);
  if (line) return barPlace(line, plan.slide.pads);
  throw new BadInput([
    {
      path: 'scrape.nose_mm',
      found: 'nothing',
      expected: `where the bar is held: the bench of ${JSON.stringify(step)} has no set-up along a test bar`,
    },
  ]);
}

/** The plan and the readings as a question to `steer`: one round, no print. */
function steerInputOf(ask: AxisAsk, plan: JobPlan): SteerInput {
  const { read } = ask.scrape!;
  const line = barLine(plan);
  const place = placeOf(ask, plan);
  const round: Round = {
    // What the pads cannot turn is not asked of them.
    sweeps: ask.readings
      .filter((reading) => !line || readsAlong(line, reading.side))
      .map((reading) => barSweep(ask.held!, place, reading)),
    levels: plan.setups.flatMap((setup) =>
      setup.kind === 'level' && read[setup.id] !== undefined
        ? [{ name: setup.name, along: setup.along, reading_urad: read[setup.id]!, sd_urad: setup.sd_urad }]
        : [],
    ),
    heights: plan.setups.flatMap((setup) =>
      setup.kind === 'height' && read[setup.id] !== undefined
        ? [
            {
              name: setup.name,
              at_mm: setup.at_mm,
              direction: setup.direction,
              reading_um: read[setup.id]!,
              sd_um: setup.sd_um,
            },
          ]
        : [],
    ),
  };
  const { slide, features, targets, passes, sink, film_um } = plan;
  return {
    slide,
    features,
    targets,
    passes,
    ...(sink ? { sink } : {}),
    ...(film_um === undefined ? {} : { film_um }),
    rounds: [round],
  };
}
