import { poseSize } from '../body/displacement.ts';
import type { Settling } from '../body/settle.ts';
import { cholesky, copyGaussian, type Gaussian, takeReading } from '../math/gaussian.ts';
import { carriedSettling, expectedShares, faceAtFirst, takePrint, zoneRoughness } from './bearing.ts';
import { addReading, type Evidence, noEvidence } from './evidence.ts';
import { firstState } from './first-state.ts';
import type { SlideModel } from './model.ts';
import type { RoundReadings } from './readings.ts';
import { drawnOut, keepRemovalPositive, type Made, takeScraping } from './scraping.ts';
import { seatCovariance, settledRow } from './seat.ts';

/** What is known after a round's readings and print. */
export interface Known {
  readonly state: Gaussian;
  /** How the slide rests in this round: by area and blue. */
  readonly settled: Settling;
  /** Share of each zone that bears: as printed, or as expected where nothing was printed. */
  readonly shares: readonly number[];
  /** Whole passes made on each zone since the first round, as recorded. */
  readonly passed: readonly number[];
  /** As printed; undefined where nothing was. */
  readonly print: readonly (number | undefined)[];
  /** Share of each zone that was expected to take colour before the print was seen, worked out when asked; absent in the first round. */
  readonly expected?: () => readonly number[];
  /** How well this round's readings and print came as expected, given all before. */
  readonly evidence: Evidence;
  /** The state before this round's readings, scraping counted in; absent in the first round. */
  readonly awaited?: Gaussian;
}

/** What a round brings, ready to be taken. */
export interface Taking {
  readonly readings: RoundReadings;
  /** One a zone; undefined where nothing was printed. */
  readonly print: readonly (number | undefined)[];
  /** How the slide rests by that print, where every zone was printed. */
  readonly settled?: Settling;
}

/** The first round: nothing is believed of the pose. */
export function firstRound(model: SlideModel, taking: Taking): Known {
  const passed = model.zones.map(() => 0);
  const rough = faceAtFirst(model);
  const shares = taking.print.map((share) => share ?? 1);
  const settled = taking.settled ?? carriedSettling(model, shares);
  const state = firstState(model, taking.readings, settled, rough);
  const evidence = noEvidence();
  takePrint(model, state, settled, taking.print, rough, evidence);
  return { state, settled, shares, passed, print: taking.print, evidence };
}

/** What is believed to have gone otherwise than the record says. */
export interface Otherwise {
  /**
   * Whose removal roughness and scatter are reckoned from; its own when left out. Two beliefs that are weighed against each
   * other must share it: a belief in a lighter hand expects less scatter, and would win by that alone.
   */
  readonly scale?: Gaussian;
  readonly made?: Made;
  /** A reference face that moved: its index, and how far it may have, µrad. */
  readonly faceMoved?: { readonly face: number; readonly sd_urad: number };
}

/** A later round: what was made since the last one, then readings, then the print. */
export function nextRound(
  model: SlideModel,
  before: Known,
  made: Made | undefined,
  taking: Taking,
  otherwise: Otherwise = {},
): Known {
  const state = copyGaussian(before.state);
  const really = otherwise.made ?? made;
  const scale = otherwise.scale ?? before.state;
  // As recorded whatever is believed: beliefs that are weighed against each other share their roughness.
  const passed = before.passed.map((sum, z) => sum + (made && !made.spot ? made.count[z]! : 0));
  const rough = zoneRoughness(model, scale, passed);
  if (really) takeScraping(model, state, drawnOut(model, really), scale);
  if (otherwise.faceMoved) {
    const at = model.layout.face(otherwise.faceMoved.face);
    state.covariance[at * state.size + at]! += otherwise.faceMoved.sd_urad ** 2;
  }
  const awaited = copyGaussian(state);
  const expected = () => expectedShares(model, awaited, before.settled, rough);
  const shares = printedOr(taking.print, expected);
  const settled = taking.settled ?? carriedSettling(model, shares);
  const evidence = noEvidence();
  takePose(model, state, settled, taking.readings, rough, evidence);
  takePrint(model, state, settled, taking.print, rough, evidence);
  keepRemovalPositive(model, state);
  return { state, settled, shares, passed, print: taking.print, expected, evidence, awaited };
}

/** The print's share of each zone, or what was expected where it has none. */
function printedOr(print: Taking['print'], expected: () => readonly number[]): readonly number[] {
  if (isWhole(print)) return print;
  const instead = expected();
  return print.map((share, z) => share ?? instead[z]!);
}

/** Whether every zone was printed. */
export const isWhole = (print: Taking['print']): print is readonly number[] =>
  print.every((share) => share !== undefined);

/**
 * Takes a round's readings, the seat's own chance with them: all readings of a round see the same seat, so their noise is
 * 1 + L S Lᵀ, made independent again by its Cholesky factor.
 */
function takePose(
  model: SlideModel,
  state: Gaussian,
  settled: Settling,
  readings: RoundReadings,
  rough: readonly number[],
  evidence: Evidence,
): void {
  const { layout } = model;
  const seat = seatCovariance(settled, rough);
  const { rows, values } = readings;
  const noise = rows.map((a, i) =>
    rows.map((b, k) => {
      let sum = i === k ? 1 : 0;
      for (let p = 0; p < poseSize; p++)
        for (let q = 0; q < poseSize; q++) sum += a[p]! * seat[p]![q]! * b[q]!;
      return sum;
    }),
  );
  const lower = cholesky(noise);
  const over = rows.map((row) => {
    const out = settledRow(model, settled, row);
    layout.faces.forEach((_, f) => {
      out[layout.face(f)] = row[poseSize + f]!;
    });
    return out;
  });
  evidence.logLikelihood -= 0.5 * readings.residual;
  const evened: { row: Float64Array; value: number }[] = [];
  rows.forEach((_, i) => {
    const row = over[i]!.slice();
    let value = values[i]!;
    for (let k = 0; k < i; k++) {
      const part = lower[i]![k]!;
      for (let j = 0; j < row.length; j++) row[j]! -= part * evened[k]!.row[j]!;
      value -= part * evened[k]!.value;
    }
    const root = lower[i]![i]!;
    for (let j = 0; j < row.length; j++) row[j]! /= root;
    value /= root;
    evened.push({ row, value });
    evidence.logLikelihood -= Math.log(root);
  });
  for (const { row, value } of evened)
    addReading(evidence, 'readings', row, takeReading(state, row, value, 1));
}
