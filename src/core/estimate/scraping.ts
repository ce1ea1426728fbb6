import { zoneVector } from '../body/slide.ts';
import { type Gaussian, takeReading } from '../math/gaussian.ts';
import { atLeast } from '../math/truncated.ts';
import type { Scraped } from '../observe/round.ts';
import type { SlideModel } from './model.ts';

/** Scatter of passes as shares of what they take: of each pass on each zone, of a zone's own, of a whole round. */
const wholeScatter = { pass: 0.19, zone: 0.05, round: 0.08 };
/** Spotting is chancier: a few spots a zone, some of them missed. */
const spotScatter = { pass: 0.45, zone: 0.1, round: 0.1 };
/** A spotting hand grows lighter as the part bears better: its removal may drift by this share a round. */
const spotDrift = 0.08;
/** A pass takes at least this share of what was first believed: metal is not put on. */
const leastShare = 0.1;

/** Strokes run over a zone's edge: of a neighbour's cut this share comes on a zone, and as much of its own is drawn thinner. */
const overEdge = 1 / 18;

/** What was made on each zone, in whole or spotting passes. */
export interface Made {
  readonly spot: boolean;
  /** One a zone: passes, and for spotting passes × share of the zone that bore. */
  readonly count: readonly number[];
  /** How much wider than usual the scatter is believed, 1 as recorded. */
  readonly wider: number;
}

/** What the record says was made. @param shares  the share of each zone that bore, for spotting */
export function recordedPasses(model: SlideModel, scraped: Scraped, shares: readonly number[]): Made {
  const passes = zoneVector(model.slide, scraped.passes);
  const spot = scraped.spot === true;
  return { spot, count: passes.map((m, z) => (spot ? m * shares[z]! : m)), wider: 1 };
}

/**
 * Scraping as a known control through an unknown removal:
 *
 *     h ← h + removal · count,   P ← F P Fᵀ + Q
 *
 * The removal stands in the state, so that its doubt enters h and the next readings teach it.
 * @param scale  whose removal the scatter of the passes is reckoned from; its own when left out
 */
export function takeScraping(model: SlideModel, state: Gaussian, made: Made, scale: Gaussian = state): void {
  const { layout } = model;
  const { size, mean, covariance } = state;
  const n = layout.zones;
  const removal = (z: number): number =>
    made.spot ? layout.spot(model.materialOf[z]!) : layout.whole(model.materialOf[z]!);
  for (let z = 0; z < n; z++) {
    const count = made.count[z]!;
    if (count === 0) continue;
    const from = removal(z);
    mean[z]! += count * mean[from]!;
    for (let j = 0; j < size; j++) covariance[z * size + j]! += count * covariance[from * size + j]!;
    for (let j = 0; j < size; j++) covariance[j * size + z]! += count * covariance[j * size + from]!;
  }
  const scatter = made.spot ? spotScatter : wholeScatter;
  const squares = scale.mean.map((value, i) => value ** 2 + scale.covariance[i * size + i]!);
  for (let z = 0; z < n; z++) {
    const from = removal(z);
    const square_um2 = made.wider ** 2 * squares[from]!;
    const count = made.count[z]!;
    covariance[z * size + z]! +=
      square_um2 * (scatter.pass ** 2 * Math.abs(count) + (scatter.zone * count) ** 2);
    for (let y = 0; y < n; y++)
      if (removal(y) === from)
        covariance[z * size + y]! += square_um2 * scatter.round ** 2 * count * made.count[y]!;
  }
  if (made.spot)
    layout.materials.forEach((_, k) => {
      const i = layout.spot(k);
      covariance[i * size + i]! += (spotDrift * mean[i]!) ** 2;
    });
}

/** Whole passes as they come on each zone once strokes have run over its edges; a plan is made without, for strokes differ. */
export const drawnOut = (model: SlideModel, made: Made): Made => {
  if (made.spot) return made;
  const count = made.count.map((m, z) =>
    [z - 1, z + 1].reduce(
      (sum, y) =>
        model.zones[y]?.padIndex === model.zones[z]!.padIndex ? sum + overEdge * (made.count[y]! - m) : sum,
      m,
    ),
  );
  return { ...made, count };
};

/** Metal is not put on: a removal that could be read as none or less is held above a tenth of what was first believed. */
export function keepRemovalPositive(model: SlideModel, state: Gaussian): void {
  model.passes.forEach(({ um }, k) => {
    for (const [place, least] of [
      [model.layout.whole(k), leastShare * um],
      [model.layout.spot(k), leastShare * leastShare * um],
    ] as const) {
      const variance = state.covariance[place * state.size + place]!;
      const sd = Math.sqrt(variance);
      if (!(sd > 0) || state.mean[place]! - least > 3 * sd) continue;
      const cut = atLeast(state.mean[place]!, sd, least);
      const lost = variance - cut.variance;
      if (lost <= 1e-9 * variance) continue;
      const noise = (variance * cut.variance) / lost;
      const row = new Float64Array(state.size);
      row[place] = 1;
      takeReading(
        state,
        row,
        state.mean[place]! + ((cut.mean - state.mean[place]!) * (variance + noise)) / variance,
        noise,
      );
    }
  });
}
