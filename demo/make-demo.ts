import { readFileSync } from 'node:fs';
import { type JobFile, jobFile } from '../src/contract/job-file.ts';
import { plannedJob, templateInput } from '../src/contract/template.ts';
import { byPad } from '../src/core/body/slide.ts';
import type { Deed, Entry, JobPlan, TypedReading } from '../src/core/ledger/entry.ts';
import { foldJob } from '../src/core/ledger/job.ts';
import type { LevelSetup, SweepSetup } from '../src/core/ledger/setup.ts';
import { steerInput, sweepStops } from '../src/core/ledger/steer-input.ts';
import type { Level } from '../src/core/observe/level.ts';
import type { SteerInput } from '../src/core/observe/round.ts';
import type { Sweep } from '../src/core/observe/sweep.ts';
import type { SteerAnswer } from '../src/core/plan/answer.ts';
import type { NoAnswer } from '../src/core/plan/problem.ts';
import { type PracticeMachine, practiceMachine } from '../src/core/practice/machine.ts';
import { readDeviation } from '../src/core/quantity/deviation.ts';
import { readSlope } from '../src/core/quantity/slope.ts';

/** Which simulated machine: its wear, its scraper's hand and every chance come from this number. */
export const demoSeed = 171;
const rounds = 4;
const slipRound = 2;
const reversalRound = 3;
const invented = 'Invented: a simulated machine, workshop and person.';

/** The plan of the demo job: the lathe template with the figures of an invented saddle. */
export function demoPlan(): JobPlan {
  const template = templateInput(JSON.parse(readFileSync('machines/lathe-saddle.json', 'utf8')));
  const plan = plannedJob(template, { length: 480, stock: 400, sink: 250 }, 'Saddle of the long lathe');
  return { ...plan, demo: invented };
}

const ofKind = <K extends 'sweep' | 'level'>(plan: JobPlan, kind: K) =>
  plan.setups.filter((setup): setup is Extract<typeof setup, { kind: K }> => setup.kind === kind);

const sweepSeen = (setup: SweepSetup): Sweep => ({
  name: setup.name,
  rides: setup.rides,
  touches: setup.touches,
  plunger: setup.plunger,
  points_mm: sweepStops(setup),
  readings_um: Array<number>(setup.points).fill(0),
  reading_sd_um: setup.reading_sd_um,
  face_slope_urad: setup.face_slope_urad,
  face_slope_sd_urad: setup.face_slope_sd_urad,
  face: setup.face,
});
const levelSeen = (setup: LevelSetup): Level => ({
  name: setup.name,
  along: setup.along,
  reading_urad: 0,
  sd_urad: setup.sd_urad,
});

/** The simulated machine of a plan. The scraper takes about half of what is first believed. */
const machineOf = (plan: JobPlan, seed: number): PracticeMachine =>
  practiceMachine(
    {
      slide: plan.slide,
      features: plan.features,
      // Each sweep also with its reference turned over, for the round that does a reversal.
      sweeps: ofKind(plan, 'sweep').flatMap((setup) => [
        sweepSeen(setup),
        { ...sweepSeen(setup), turned_over: true },
      ]),
      levels: ofKind(plan, 'level').map(levelSeen),
      weight: { force_N: 1100, at_mm: [-12, 125, 120], direction: [0, 0, -1], stiffness_N_per_mm3: 100 },
      removal: { liner: { median_um: 6, log_sd: 0.15 } },
      film_um: plan.film_um ?? 3,
    },
    seed,
  );

/** As a person types it off the dial: to half a micrometre, sign shown, no needless nought. */
function typedDeviation(um: number): TypedReading {
  const half = Math.round(um * 2) / 2;
  const typed = half === 0 ? '0' : `${half > 0 ? '+' : '-'}${Math.abs(half)}`;
  const read = readDeviation(typed, 'um');
  if (!read.ok) throw new Error(`"${typed}" is not read back`);
  return { typed, value: read.um };
}

/** A level's bubble, to half a hundredth of a mm a metre. */
function typedLevel(urad: number): TypedReading {
  const typed = `${urad < 0 ? '-' : '+'}${Math.abs(Math.round(urad / 5) * 0.005).toFixed(3)} mm/m`;
  const read = readSlope(typed, 'mm/m');
  if (!read.ok) throw new Error(`"${typed}" is not read back`);
  return { typed, value: read.urad };
}

/** A ledger being written, its clock running on invented working days. */
class Ledger {
  readonly entries: Entry[] = [];
  private clock = Date.parse('2026-03-02T07:40:00Z');
  write(deed: Deed, minutes = 1): string {
    this.clock += minutes * 60_000;
    const seq = this.entries.length + 1;
    const id = `demo-${String(seq).padStart(4, '0')}`;
    this.entries.push({ ...deed, id, seq, at: new Date(this.clock).toISOString() });
    return id;
  }
  /** Home, and back next morning. */
  nextDay(): void {
    const day = 86_400_000;
    this.clock = Math.floor(this.clock / day) * day + day + 7.6 * 3_600_000;
  }
}

function measureRound(ledger: Ledger, plan: JobPlan, machine: PracticeMachine, round: number): void {
  const seen = machine.measure();
  const record = {
    push: 'climbed',
    support: 'on the bed, own weight',
    temperature_C: 18.5 + 0.3 * round,
  } as const;
  // The dial is set to zero at the first stop.
  const dial = (sweep: Sweep) => sweep.readings_um.map((um) => typedDeviation(um - sweep.readings_um[0]!));
  ofKind(plan, 'sweep').forEach(({ id: setup }, k) => {
    const readings = dial(seen.sweeps[2 * k]!);
    const taken = { kind: 'sweep taken', round, setup } as const;
    if (round === slipRound) {
      // A slip of the thumb, seen at once and taken back.
      const slipped = readings.map((one, i) => (i === 6 ? typedDeviation(one.value * 10) : one));
      const wrong = ledger.write({ ...taken, record, readings: slipped }, 9);
      ledger.write({ kind: 'undone', entry: wrong });
    }
    ledger.write({ ...taken, record, readings }, 8);
    if (round === reversalRound) {
      const turned = { ...record, turned_over: true };
      ledger.write({ ...taken, repeat: 1, record: turned, readings: dial(seen.sweeps[2 * k + 1]!) }, 10);
    }
  });
  ofKind(plan, 'level').forEach((setup, k) => {
    const reading = typedLevel(seen.levels[k]!.reading_urad);
    ledger.write({ kind: 'level read', round, setup: setup.id, record, reading }, 3);
  });
  const print = machine.print();
  const share = Object.fromEntries(
    Object.entries(print).map(([pad, zones]) => [pad, zones.map((b) => Math.round(b * 20) / 20)]),
  );
  ledger.write({ kind: 'print read', round, share }, 12);
}

function scrapeRound(
  ledger: Ledger,
  plan: JobPlan,
  machine: PracticeMachine,
  round: number,
  answer: SteerAnswer,
) {
  const made = answer.plan.zones.map((zone) => zone.passes_now);
  const spot = answer.plan.action === 'spot';
  ledger.write({ kind: 'part turned over', round, how: 'end over end' }, 6);
  for (let pass = 1; pass <= Math.max(...made); pass++) {
    const zones = byPad(
      plan.slide,
      made.map((passes) => (passes >= pass ? 1 : 0)),
    );
    ledger.write({ kind: 'pass made', round, pass, zones, ...(spot ? { spot } : {}) }, 11);
  }
  if (spot) machine.spot(made);
  else machine.scrape(made);
  ledger.write({ kind: 'round closed', round }, 5);
}

/** Whoever plans: sees what was entered, and nothing of the truth. */
type Ask = (input: SteerInput) => Promise<SteerAnswer | NoAnswer>;

/** What the demo's rounds answered, for whoever looks it over. */
export interface DemoMade {
  readonly file: JobFile;
  /** One a round, the last one waiting. */
  readonly answers: readonly SteerAnswer[];
}

/**
 * The demo job: a simulated saddle measured, blued and scraped for three rounds as the planner says, measured and blued in
 * the fourth, the next plan waiting. The same seed and the same planner make the same file.
 */
export async function makeDemo(ask: Ask, seed = demoSeed): Promise<DemoMade> {
  const plan = demoPlan();
  const machine = machineOf(plan, seed);
  const ledger = new Ledger();
  const answers: SteerAnswer[] = [];
  ledger.write({ kind: 'job made', plan }, 0);
  ledger.write({ kind: 'note', text: `${invented} Nothing here was measured on metal.` });
  for (let round = 1; round <= rounds; round++) {
    measureRound(ledger, plan, machine, round);
    const answer = await ask(steerInput(foldJob(ledger.entries)));
    if (!answer.ok) throw new Error(`round ${round}: ${answer.text}`);
    answers.push(answer);
    if (round === rounds) break;
    if (round === 1)
      ledger.write({ kind: 'note', round, text: 'Liner cuts clean. Stoned lightly after each pass.' });
    scrapeRound(ledger, plan, machine, round, answer);
    if (round === 2) ledger.nextDay();
  }
  const file = jobFile({ format: 'waywright-job', version: 1, id: 'demo-saddle', entries: ledger.entries });
  return { file, answers };
}
