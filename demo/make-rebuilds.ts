import { readFileSync } from 'node:fs';
import { readTemplates } from '../src/adapters/file/templates.ts';
import { readWholeMachines } from '../src/adapters/file/whole-machines.ts';
import { type JobFile, jobFile } from '../src/contract/job-file.ts';
import { byPad } from '../src/core/body/slide.ts';
import type { Deed, Entry, JobPlan } from '../src/core/ledger/entry.ts';
import { foldJob } from '../src/core/ledger/job.ts';
import type { HeightsRecord } from '../src/core/ledger/rebuild-record.ts';
import { steerInput, sweepStops } from '../src/core/ledger/steer-input.ts';
import type { SteerInput } from '../src/core/observe/round.ts';
import type { Machine } from '../src/core/order/machine.ts';
import type { SteerAnswer } from '../src/core/plan/answer.ts';
import type { NoAnswer } from '../src/core/plan/problem.ts';
import { practiceMachine } from '../src/core/practice/machine.ts';
import { benchPlan } from '../src/shop/order/bench-plan.ts';
import { heights } from '../src/shop/order/heights.ts';
import { heightsAskOf } from '../src/shop/order/rebuild.ts';

const invented = 'Invented: a simulated machine, workshop and person.';
const templates = readTemplates();
const machineOf = (id: string, sizes: Readonly<Record<string, number>>): Machine => {
  const machine = readWholeMachines().find((one) => one.id === id)!;
  const dimensions = machine.dimensions.map((one) => ({ ...one, value: sizes[one.key] ?? one.value }));
  return { ...machine, dimensions };
};

/** A ledger on invented working days. */
class Ledger {
  readonly entries: Entry[] = [];
  private clock: number;
  readonly name: string;
  constructor(name: string, from: string) {
    this.name = name;
    this.clock = Date.parse(from);
  }
  write(deed: Deed, minutes = 1): void {
    this.clock += minutes * 60_000;
    const seq = this.entries.length + 1;
    const id = `${this.name}-${String(seq).padStart(4, '0')}`;
    this.entries.push({ ...deed, id, seq, at: new Date(this.clock).toISOString() });
  }
  /** A step done, some hours after what came before. */
  done(step: string, hours: number, note?: string): void {
    this.write(
      { kind: 'step told', step, what: 'done', hours, ...(note === undefined ? {} : { note }) },
      60 * hours,
    );
  }
  file(): JobFile {
    return jobFile({ format: 'waywright-job', version: 1, id: this.name, entries: this.entries });
  }
}

const wear: NonNullable<HeightsRecord['changes']>[number] = {
  name: 'wear and clean-up of the saddle',
  joint: 'saddle-on-bed',
  when: 'found',
  off_um: { 'front flank': 310, 'rear flank': 330, flat: 460 },
  sd_um: 5,
};
const latheHeights: HeightsRecord = {
  measured: {
    'half nut over lead screw': { um: -470, sd_um: 8 },
    'tailstock over spindle axis': { um: -61, sd_um: 4 },
  },
  changes: [wear],
  liners: [
    {
      joint: 'saddle-on-bed',
      pads: ['front flank', 'rear flank', 'flat'],
      brings: 'half nut over lead screw',
      sheet_mm: 1.6,
    },
  ],
};

interface InventedResult {
  readonly value_um: number;
  readonly doubt_um?: number;
}
/** What demo/lathe.chart.json invents of this lathe. */
const latheChart = JSON.parse(readFileSync('demo/lathe.chart.json', 'utf8')) as {
  readonly results: readonly { test: string; first?: InventedResult; final?: InventedResult }[];
  readonly machine: object;
  readonly limits: readonly { test: string }[];
};
/** Lines that the steps done so far have proven; the others wait for theirs. */
const proven = [
  'ways-twist',
  'tailstock-way-sideways',
  'tailstock-way-up',
  'spindle-slip',
  'bore-near',
  'bore-far',
];

function levelled(of: string, typed: readonly string[]): Deed {
  return {
    kind: 'survey taken',
    what: 'line',
    of,
    ways: [],
    from_mm: 0,
    sheet: {
      how: 'level',
      unit: 'mm/m',
      lengths: 'mm',
      fields: { step: '200', length: String(200 * typed.length), from: '0' },
      cells: { there: [...typed] },
    },
    input: { kind: 'angles', step_mm: 200, angles_urad: typed.map((one) => Math.round(Number(one) * 1000)) },
  };
}

/** The lathe whose saddle is demo-saddle: surveyed, its bed done, the saddle lined and in mid-rounds, the headstock next. */
export function latheRebuild(): JobFile {
  const machine = machineOf('engine-lathe', { centres: 1500, saddle_length: 480 });
  const answer = heights(heightsAskOf(machine, latheHeights, templates));
  if (!answer.ok) throw new Error(answer.text);
  const { sink, stock_um } = answer.limits.find((one) => one.joint === 'head-on-bed')!;
  const limits = { stock_um, sink: sink.map(({ name, at_mm, most_um }) => ({ name, at_mm, most_um })) };
  const plan: JobPlan = {
    ...benchPlan(machine, 'headstock', templates, {}, limits)!,
    title: 'The long lathe',
    demo: invented,
  };
  const ledger = new Ledger('demo-lathe', '2026-02-02T07:30:00Z');
  ledger.write({ kind: 'job made', plan }, 0);
  ledger.write({ kind: 'machine set', machine });
  ledger.write({ kind: 'bench opened', job: 'demo-lathe', step: 'headstock' });
  ledger.write({ kind: 'note', text: `${invented} Nothing here was measured on metal.` });
  ledger.write({
    kind: 'chart set',
    chart: {
      list: 'engine-lathe',
      class: 'ordinary',
      dimensions: { centres: 1500 },
      machine: latheChart.machine,
      note: invented,
      condition: [
        'The saddle sat 0.47 mm low; faces came out convex.',
        'The bed low in its middle third, the tailstock 61 µm low.',
      ],
    },
  });
  ledger.write(
    levelled('front carriage way, as found', [
      '-0.05',
      '-0.085',
      '-0.03',
      '+0.02',
      '+0.06',
      '+0.055',
      '+0.03',
    ]),
    40,
  );
  ledger.write(
    levelled('tailstock ways', ['+0.01', '+0.015', '0', '-0.005', '-0.01', '-0.005', '-0.005']),
    30,
  );
  for (const one of latheChart.results)
    if (one.first)
      ledger.write({ kind: 'result taken', test: one.test, when: 'first', result: one.first }, 12);
  ledger.write(
    {
      kind: 'axis taken',
      of: 'spindle, as found',
      asked: {
        bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320 },
        readings: [
          { side: 'top', near: [2, -2], far: [25, 3.5] },
          { side: 'front', near: [1.5, -2.5], far: [6, -16] },
        ],
        bands: {
          up: { low_um: 0, high_um: 20, over_mm: 300 },
          sideways: { low_um: 0, high_um: 15, over_mm: 300 },
        },
      },
    },
    35,
  );
  ledger.done('survey', 7.5, 'Wear looked at, photographed, measured. Worth doing.');
  ledger.done('support', 5);
  ledger.done('bed-datum', 26);
  ledger.done('bed-flat', 29);
  ledger.done('bed-v', 44);
  ledger.done('bed-under', 7);
  ledger.done('bed-head', 9);
  ledger.done('bearings', 14, 'New balls, old races lapped. 4 µm along, 9 µm at the nose.');
  for (const one of latheChart.results)
    if (one.final && proven.includes(one.test))
      ledger.write({ kind: 'result taken', test: one.test, when: 'final', result: one.final }, 15);
  // This lathe's bed was scraped, where the chart's file tells of one that was left as it is.
  const final = (test: string, value_um: number, doubt_um: number): void =>
    ledger.write(
      {
        kind: 'result taken',
        test,
        when: 'final',
        result: { value_um, doubt_um, readings: 2, instrument: 'level, 200 mm foot' },
      },
      15,
    );
  final('front-way-form-up', 12.6, 3);
  final('front-way-form-up:local', 6.4, 2.4);
  final('carriage-path-sideways', 13.7, 4.2);
  ledger.write({ kind: 'heights set', heights: latheHeights }, 30);
  ledger.done('saddle-liner', 12);
  ledger.write({ kind: 'bench opened', job: 'demo-saddle', step: 'saddle-bottom' }, 20);
  ledger.write({ kind: 'step told', step: 'saddle-bottom', what: 'worked', hours: 21 }, 60);
  ledger.done('tail-base', 8);
  return ledger.file();
}

const typed = (value: number, places: number): string =>
  `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(places)}`;

/** The mill whose saddle has been scraped once and measured again: a small second demo. */
export async function millRebuild(
  ask: (input: SteerInput) => Promise<SteerAnswer | NoAnswer>,
): Promise<JobFile> {
  const machine = machineOf('vertical-knee-mill', {});
  const plan: JobPlan = {
    ...benchPlan(machine, 'saddle-bottom', templates)!,
    title: 'The knee mill',
    demo: invented,
  };
  const ledger = new Ledger('demo-mill', '2026-04-13T07:45:00Z');
  ledger.write({ kind: 'job made', plan }, 0);
  ledger.write({ kind: 'machine set', machine });
  ledger.write({ kind: 'bench opened', job: 'demo-mill', step: 'saddle-bottom' });
  ledger.write({ kind: 'note', text: `${invented} Nothing here was measured on metal.` });
  ledger.write({
    kind: 'chart set',
    chart: {
      list: 'vertical-knee-mill',
      note: invented,
      machine: { name: 'knee mill, table 1100 mm', workshop: 'Lower Bay (invented)' },
    },
  });
  const first = (test: string, value_um: number, doubt_um: number): void =>
    ledger.write({ kind: 'result taken', test, when: 'first', result: { value_um, doubt_um } }, 12);
  first('knee-square-front', -31, 5);
  first('knee-square-side', 12, 5);
  first('travel-square', 34.5, 4);
  first('table-flat', -48, 6);
  for (const [step, hours] of [
    ['survey', 5],
    ['table-bottom', 22],
    ['column-flats', 27],
    ['column-flanks', 12],
    ['knee-back', 31],
    ['knee-gib', 9],
    ['knee-top', 18],
    ['knee-flanks', 10],
  ] as const)
    ledger.done(step, hours);
  ledger.write(
    {
      kind: 'result taken',
      test: 'knee-square-front',
      when: 'final',
      result: { value_um: 9.2, doubt_um: 4 },
    },
    20,
  );
  ledger.write({ kind: 'step told', step: 'saddle-bottom', what: 'begun' }, 30);

  const of = <K extends 'sweep' | 'level'>(kind: K) =>
    plan.setups.filter((setup): setup is Extract<typeof setup, { kind: K }> => setup.kind === kind);
  const part = practiceMachine(
    {
      slide: plan.slide,
      features: plan.features,
      sweeps: of('sweep').map((setup) => ({ ...setup, points_mm: sweepStops(setup), readings_um: [] })),
      levels: of('level').map((setup) => ({ ...setup, reading_urad: 0 })),
      weight: { force_N: 900, at_mm: [0, 20, 40], direction: [0, -0.25, -1], stiffness_N_per_mm3: 100 },
      removal: { iron: { median_um: 3.6, log_sd: 0.2 } },
      film_um: plan.film_um ?? 3,
    },
    73,
  );
  const measure = (round: number): void => {
    const seen = part.measure();
    const record = { push: 'climbed', support: 'on the knee, own weight', temperature_C: 19 } as const;
    of('sweep').forEach((setup, k) => {
      const at = seen.sweeps[k]!.readings_um;
      const readings = at
        .map((um) => Math.round((um - at[0]!) * 2) / 2)
        .map((value) => ({ typed: typed(value, 1), value }));
      ledger.write({ kind: 'sweep taken', round, setup: setup.id, record, readings }, 9);
    });
    of('level').forEach((setup, k) => {
      const value = Math.round(seen.levels[k]!.reading_urad / 5) * 5;
      const reading = { typed: `${typed(value / 1000, 3)} mm/m`, value };
      ledger.write({ kind: 'level read', round, setup: setup.id, record, reading }, 3);
    });
    const share = Object.fromEntries(
      Object.entries(part.print()).map(([pad, zones]) => [pad, zones.map((b) => Math.round(b * 20) / 20)]),
    );
    ledger.write({ kind: 'print read', round, share }, 12);
  };
  measure(1);
  const answer = await ask(steerInput(foldJob(ledger.entries)));
  if (!answer.ok) throw new Error(answer.text);
  const made = answer.plan.zones.map((zone) => zone.passes_now);
  ledger.write({ kind: 'part turned over', round: 1, how: 'front to back' }, 6);
  for (let pass = 1; pass <= Math.max(...made); pass++) {
    const zones = byPad(
      plan.slide,
      made.map((passes) => (passes >= pass ? 1 : 0)),
    );
    ledger.write({ kind: 'pass made', round: 1, pass, zones }, 11);
  }
  part.scrape(made);
  ledger.write({ kind: 'round closed', round: 1 }, 5);
  measure(2);
  return ledger.file();
}
