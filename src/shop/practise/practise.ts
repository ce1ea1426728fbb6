import type { Target } from '../../core/body/feature.ts';
import type { Solve } from '../../core/plan/program.ts';
import type { Fault } from '../../core/practice/machine.ts';
import type { SlipKind } from '../../core/practice/record.ts';
import { type PracticeMaterial, type PracticeTask, practiceSlides } from '../../core/practice/slides.ts';
import { type Turn, turnsOf } from './turns.ts';

/** What `practise --auto` is asked. */
export interface PractiseAsk {
  readonly slide: string;
  readonly material: PracticeMaterial;
  readonly machines: number;
  /** The first machine's; the others follow. */
  readonly seed: number;
  readonly most_rounds: number;
  readonly fault?: SlipKind;
}

/** One simulated job and its end. */
export interface PractisedJob {
  readonly seed: number;
  readonly stopped: boolean;
  readonly rounds: number;
  /** On zones, spotting included. */
  readonly passes: number;
  /** Furthest any feature truly lay outside its band when it was told to stop, in half bands; 0 inside. */
  readonly out: number;
  readonly fault?: {
    readonly round: number;
    readonly flagged: boolean;
    /** The fault's own kind was among the causes told. */
    readonly named: boolean;
  };
}

/** How the tool did over many simulated machines, their truth hidden from it. */
export interface PractiseReport extends PractiseAsk {
  readonly jobs: readonly PractisedJob[];
  /** Of jobs that were told to stop. */
  readonly rounds: { readonly median: number; readonly p90: number; readonly most: number };
  readonly passes: { readonly median: number };
  /** Shares, 0 to 1. */
  readonly stopped: number;
  readonly in_band: number;
  /** Furthest out of any, in half bands. */
  readonly worst_out: number;
  /** Alarms in rounds where nothing was wrong, from the second round on. */
  readonly false_alarms: { readonly alarms: number; readonly rounds: number };
  /** Share of 95 % intervals that held the truth; absent with faults. */
  readonly coverage?: {
    readonly features: number;
    /** Of all rounds from the second on: a long job counts for more. */
    readonly removal: number;
    /** Of each job's last round. */
    readonly removal_at_end: number;
  };
  readonly faults?: { readonly made: number; readonly flagged: number; readonly named: number };
}

const sds95 = 1.96;
/** A fault is flagged when the alarm speaks in the round that can show it, or in the next. */
const flaggedWithin = 2;
/** A reference that moves does so by this, µrad. */
const moved_urad = 40;

/** Practises on machine after machine, with the tool deciding. `each` hears of every job as it ends. */
export async function practise(
  ask: PractiseAsk,
  solve: Solve,
  each: (job: PractisedJob, done: number) => void = () => undefined,
): Promise<PractiseReport> {
  const task = practiceSlides[ask.slide]!(ask.material);
  const jobs: PractisedJob[] = [];
  const tally = { alarms: 0, rounds: 0, features: [0, 0], removal: [0, 0], atEnd: [0, 0] };
  for (let k = 0; k < ask.machines; k++) {
    const seed = ask.seed + k;
    const job = ask.fault
      ? await withFault(task, seed, ask.fault, ask.most_rounds, solve)
      : ended(task, seed, tallied(await turnsOf(task, seed, ask.most_rounds, solve), tally));
    jobs.push(job);
    each(job, k + 1);
  }
  const stopped = jobs.filter((job) => job.stopped);
  const rounds = stopped.map((job) => job.rounds);
  const share = ([hits, all]: number[]) => (all! > 0 ? hits! / all! : 1);
  const slips = jobs.flatMap((job) => (job.fault ? [job.fault] : []));
  return {
    ...ask,
    jobs,
    rounds: { median: ranked(rounds, 0.5), p90: ranked(rounds, 0.9), most: Math.max(0, ...rounds) },
    passes: {
      median: ranked(
        stopped.map((job) => job.passes),
        0.5,
      ),
    },
    stopped: stopped.length / jobs.length,
    in_band: stopped.length ? stopped.filter((job) => job.out === 0).length / stopped.length : 0,
    worst_out: Math.max(0, ...stopped.map((job) => job.out)),
    false_alarms: { alarms: tally.alarms, rounds: tally.rounds },
    ...(ask.fault
      ? {}
      : {
          coverage: {
            features: share(tally.features),
            removal: share(tally.removal),
            removal_at_end: share(tally.atEnd),
          },
        }),
    ...(ask.fault
      ? {
          faults: {
            made: slips.length,
            flagged: slips.filter((slip) => slip.flagged).length,
            named: slips.filter((slip) => slip.named).length,
          },
        }
      : {}),
  };
}

/** The value that this share of the list reaches or stays below; 0 of none. */
function ranked(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}

function tallied(
  turns: readonly Turn[],
  tally: { alarms: number; rounds: number; features: number[]; removal: number[]; atEnd: number[] },
): readonly Turn[] {
  const counts = (pair: number[], off: number, sd: number) => {
    pair[1]! += 1;
    if (Math.abs(off) <= sds95 * sd) pair[0]! += 1;
  };
  turns.forEach(({ known, truth }, k) => {
    for (const one of known.features)
      if (one.seen) counts(tally.features, one.value - truth.features[one.name]!, one.sd);
    if (k === 0) return;
    tally.rounds += 1;
    if (known.alarm) tally.alarms += 1;
    for (const one of known.removal) {
      const off = one.whole_um - truth.pass_um[one.material]!;
      counts(tally.removal, off, one.whole_sd_um);
      if (k === turns.length - 1) counts(tally.atEnd, off, one.whole_sd_um);
    }
  });
  return turns;
}

function outOf(targets: readonly Target[], features: Readonly<Record<string, number>>): number {
  return Math.max(
    ...targets.map(({ feature, low, high }) => {
      const value = features[feature]!;
      return Math.max(0, low - value, value - high) / ((high - low) / 2);
    }),
  );
}

function ended(task: PracticeTask, seed: number, turns: readonly Turn[]): PractisedJob {
  const last = turns.at(-1)!;
  const stopped = last.decision.action === 'stop';
  return {
    seed,
    stopped,
    rounds: turns.length,
    passes: turns
      .filter((turn) => turn.decision.action !== 'stop')
      .reduce((sum, turn) => sum + turn.decision.passes.reduce((all, m) => all + m, 0), 0),
    out: stopped ? outOf(task.targets, last.truth.features) : 0,
  };
}

/** The same machine twice: once to see what is decided, then with a mistake made in it. A machine that is done before leaves no room for one. */
async function withFault(
  task: PracticeTask,
  seed: number,
  kind: SlipKind,
  most: number,
  solve: Solve,
): Promise<PractisedJob> {
  const at = seed % 3;
  const clean = await turnsOf(task, seed, at + 1, solve);
  const turn = clean[at];
  const fault = turn && turn.decision.action !== 'stop' ? faultAt(task, kind, at, turn, seed) : undefined;
  const turns = await turnsOf(task, seed, most, solve, fault ? [fault] : []);
  const job = ended(task, seed, turns);
  if (!fault) return job;
  const shows = kind === 'sweep reversed' ? at : at + 1;
  const alarms = turns.slice(shows, shows + flaggedWithin).flatMap(({ known }) => known.alarm ?? []);
  return {
    ...job,
    fault: {
      round: at + 1,
      flagged: alarms.length > 0,
      named: alarms.some(({ causes }) => causes.some(({ cause }) => cause.kind === kind)),
    },
  };
}

function faultAt(
  task: PracticeTask,
  kind: SlipKind,
  round: number,
  turn: Turn,
  seed: number,
): Fault | undefined {
  const { passes, action } = turn.decision;
  switch (kind) {
    case 'sweep reversed':
      return { kind, round, sweep: 0 };
    case 'reference moved':
      return { kind, round, face: 'square', by_urad: seed % 2 ? moved_urad : -moved_urad };
    case 'zone missed': {
      const most = Math.max(...passes);
      return most > 0 ? { kind, round, zone: passes.indexOf(most) } : undefined;
    }
    case 'pass too many':
      return action === 'scrape' ? { kind, round, pad: seed % task.slide.pads.length } : undefined;
  }
}
