import { barPlace, barSweep } from '../axis/bar-sweep.ts';
import { add, scale, subtract, type Vector } from '../body/vector.ts';
import { spotShare } from '../estimate/first-state.ts';
import type { Height } from '../observe/height.ts';
import type { Level } from '../observe/level.ts';
import type { Round, Scraped, SteerInput } from '../observe/round.ts';
import type { Sweep } from '../observe/sweep.ts';
import type { JobPlan, SetupRecord } from './entry.ts';
import type { Job } from './job.ts';
import { asMade } from './other-side.ts';
import { type RoundRecord, roundRecord, type Taken } from './round-record.ts';
import type { HeightSetup, LevelSetup, SweepSetup } from './setup.ts';

/** The stops of a sweep, evenly from first to last, mm. */
export function sweepStops(setup: Pick<SweepSetup, 'from_mm' | 'to_mm' | 'points'>): Vector[] {
  const way = subtract(setup.to_mm, setup.from_mm);
  return Array.from({ length: setup.points }, (_, i) =>
    add(setup.from_mm, scale(way, i / (setup.points - 1))),
  );
}

/** +1, or −1 for an instrument whose number falls when its plunger is pushed: every sign is then turned. */
export const pushSign = (record: SetupRecord): 1 | -1 => (record.push === 'fell' ? -1 : 1);

/** Repeats of one set-up in one round keep its name and say which they are. */
export const repeatName = (name: string, repeat: number): string =>
  repeat === 0 ? name : `${name}, again ${repeat}`;

function sweepOf(card: SweepSetup, one: Taken, { places, slide }: JobPlan): Sweep {
  const name = repeatName(card.name, one.repeat);
  if (one.bar) return { ...barSweep(one.bar.held, barPlace(card, slide.pads), one.bar.reading), name };
  const setup = asMade(card, one.record, places);
  const sign = pushSign(one.record);
  return {
    name,
    rides: setup.rides,
    touches: setup.touches,
    plunger: setup.plunger,
    points_mm: sweepStops(setup),
    readings_um: one.readings.map((reading) => sign * reading.value + 0),
    reading_sd_um: setup.reading_sd_um,
    face_slope_urad: setup.face_slope_urad,
    face_slope_sd_urad: setup.face_slope_sd_urad,
    face: setup.face,
    ...(one.record.turned_over ? { turned_over: true } : {}),
  };
}

const levelOf = (setup: LevelSetup, one: Taken): Level => ({
  name: repeatName(setup.name, one.repeat),
  along: setup.along,
  reading_urad: pushSign(one.record) * one.readings[0]!.value + 0,
  sd_urad: setup.sd_urad,
});

const heightOf = (setup: HeightSetup, one: Taken): Height => ({
  name: repeatName(setup.name, one.repeat),
  at_mm: setup.at_mm,
  direction: setup.direction,
  reading_um: pushSign(one.record) * one.readings[0]!.value + 0,
  sd_um: setup.sd_um,
});

/**
 * The passes ticked off in a round, added up by zone; undefined when none were made. A round is told as whole passes or as
 * passes on the blue only; where both were made, a spotting pass counts as its usual share of a whole one, over what bore.
 */
export function scrapedIn(plan: JobPlan, record: RoundRecord): Scraped | undefined {
  if (record.passes.length === 0) return undefined;
  const spot = record.passes.every((made) => made.spot);
  const passes = Object.fromEntries(
    plan.slide.pads.map((pad) => [
      pad.name,
      Array.from({ length: pad.zones }, (_, z) =>
        record.passes.reduce((sum, made) => {
          const share = made.spot && !spot ? spotShare.mean * (record.print?.share[pad.name]?.[z] ?? 1) : 1;
          return sum + share * (made.zones[pad.name]?.[z] ?? 0);
        }, 0),
      ),
    ]),
  );
  return { spot, passes };
}

function roundOf(plan: JobPlan, record: RoundRecord): Round {
  const taken = <S extends JobPlan['setups'][number], T>(
    kind: S['kind'],
    make: (setup: S, one: Taken) => T,
  ): T[] =>
    plan.setups
      .filter((setup): setup is S => setup.kind === kind)
      .flatMap((setup) => (record.taken[setup.id] ?? []).map((one) => make(setup, one)));
  const heights = taken<HeightSetup, Height>('height', heightOf);
  const scraped = scrapedIn(plan, record);
  // A yes is put right in the record itself; a no is known beside it.
  const ruledOut = record.causes.flatMap((one) => (one.answer === 'no' ? [one.cause] : []));
  return {
    sweeps: taken<SweepSetup, Sweep>('sweep', (setup, one) => sweepOf(setup, one, plan)),
    levels: taken<LevelSetup, Level>('level', levelOf),
    ...(heights.length ? { heights } : {}),
    ...(record.print ? { print: record.print.share } : {}),
    ...(scraped ? { scraped } : {}),
    ...(ruledOut.length ? { ruled_out: ruledOut } : {}),
  };
}

/** Whether anything was measured or printed in a round. */
export const measured = (round: Round): boolean =>
  round.sweeps.length + round.levels.length + (round.heights?.length ?? 0) > 0 || round.print !== undefined;

/**
 * What `steer` is asked for a job: every round up to the last that was measured. A round that was only scraped keeps its
 * place, since what was taken off counts. The last round is asked as it was measured: passes ticked off since then do not
 * move the plan that they carry out.
 *
 * @param upTo  the last round to count, from 1; left out: the round being worked
 */
export function steerInput(job: Job, upTo: number = job.round): SteerInput {
  const { plan } = job;
  const rounds = Array.from({ length: upTo }, (_, k) => roundOf(plan, roundRecord(job.live, k + 1)));
  while (rounds.length > 1 && !measured(rounds.at(-1)!)) rounds.pop();
  const { scraped: _, ...last } = rounds.pop()!;
  return {
    slide: plan.slide,
    features: plan.features,
    targets: plan.targets,
    passes: plan.passes,
    ...(plan.sink ? { sink: plan.sink } : {}),
    ...(plan.film_um === undefined ? {} : { film_um: plan.film_um }),
    rounds: [...rounds, last],
  };
}
