import { product, varianceOf } from '../math/gaussian.ts';
import { heightRow } from '../observe/height.ts';
import { levelRow } from '../observe/level.ts';
import type { Round } from '../observe/round.ts';
import { faceColumn, faceOf, sweepRows } from '../observe/sweep.ts';
import type { Cause } from './cause.ts';
import type { Known } from './filter.ts';
import type { History } from './history.ts';
import { type Doubtful, featureOf, poseOfRound } from './pose.ts';
import { settledMean, settledRow } from './seat.ts';

/** The feature that an alarm speaks of: the one furthest astray, in its own doubt. */
export interface AlarmFeature {
  readonly name: string;
  readonly before: Doubtful;
  readonly asked: Doubtful;
  readonly found: Doubtful;
  /** What would have been read of it, had a cause been so; undefined when the record cannot tell. */
  readonly wouldRead: (cause: Cause, round: number, known: Known) => Doubtful | undefined;
}

export function alarmFeature(history: History, k: number, recorded: Known): AlarmFeature {
  const { model, input } = history;
  const round = input.rounds[k]!;
  const read = poseOfRound(round);
  const stood = (known: Known, state: Known['state'], feature: number): Doubtful => {
    const row = settledRow(model, known.settled, model.featureRows[feature]!);
    return { value: product(row, state.mean), sd: Math.sqrt(Math.max(0, varianceOf(state, row))) };
  };
  const before = history.known[k - 1]!;
  const ranked = model.features
    .map((feature, f) => {
      const asked = stood(recorded, recorded.awaited!, f);
      // Not read in this round: what the state came to stands for what was found.
      const found = featureOf(read, feature) ?? stood(recorded, recorded.state, f);
      const astray = Math.abs(found.value - asked.value) / Math.hypot(found.sd, asked.sd);
      return { f, name: feature.name, before: stood(before, before.state, f), asked, found, astray };
    })
    .sort((a, b) => b.astray - a.astray);
  const worst = ranked[0]!;
  const feature = model.features[worst.f]!;

  const wouldRead = (cause: Cause, about: number, known: Known): Doubtful | undefined => {
    if (cause.kind === 'reference moved' || cause.kind === 'not as recorded') return undefined;
    if (cause.kind !== 'sweep reversed') return stood(recorded, known.awaited!, worst.f);
    const turned = about === k ? cause.sweep : undefined;
    const shown = featureOf(poseOfRound(asShown(history, known, round, turned)), feature);
    return shown && { value: shown.value, sd: worst.asked.sd };
  };
  const { name, asked, found } = worst;
  return { name, before: worst.before, asked, found, wouldRead };
}

/** A round's set-ups as they would have shown the awaited pose, one of the sweeps entered with its sign turned. */
function asShown(history: History, known: Known, round: Round, turned: string | undefined): Round {
  const { model } = history;
  const state = known.awaited ?? known.state;
  const pose = settledMean(model, state, known.settled);
  return {
    ...round,
    sweeps: round.sweeps.map((sweep) => {
      const slope =
        sweep.face_slope_urad + state.mean[model.layout.face(model.layout.faces.indexOf(faceOf(sweep)))]!;
      const column = faceColumn(sweep);
      const sign = sweep.name === turned ? -1 : 1;
      const readings_um = sweepRows(sweep).map((row, i) => sign * (product(row, pose) + column[i]! * slope));
      return { ...sweep, readings_um };
    }),
    levels: round.levels.map((level) => ({ ...level, reading_urad: product(levelRow(level), pose) })),
    heights: (round.heights ?? []).map((height) => ({
      ...height,
      reading_um: product(heightRow(height), pose),
    })),
  };
}
