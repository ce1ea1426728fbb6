import { type Settling, settlingOfRows } from '../body/settle.ts';
import { zoneVector } from '../body/slide.ts';
import { type Gaussian, product } from '../math/gaussian.ts';
import { normalBelow, normalDensity, normalQuantile } from '../math/normal.ts';
import { type ReadingsInTurn, readingsInTurn } from '../math/readings-in-turn.ts';
import { atLeast, atMost } from '../math/truncated.ts';
import type { Print } from '../observe/round.ts';
import { addReading, type Evidence } from './evidence.ts';
import type { SlideModel } from './model.ts';
import { poseSeen, seatedGapRow, seatedGaps } from './seat.ts';

/** Shares outside these say only "at least so far" or "at most so far". */
const telling = { low: 0.04, high: 0.96 };
/** sd of a zone's gap beside what the share says: a share of the roughness, for few and uneven spots. */
const gapSdShare = 0.4;
/** How well a share is read. */
const shareSd = 0.05;
/** A zone that shows no blue still carries this share, so that the settling stays determined. */
const leastCarry = 0.02;

/** Height sd within a zone, µm: form that scraping leaves, and grain and ridges that it takes away. */
const worn_um = { lasting: 1.9, ridges: 2.3 };
/** A pass leaves a texture of this share of what it takes, and this share of the variance that was there before. */
const pass = { texture: 0.25, leaves: 0.5 };

/**
 * Height sd within a zone, µm: what a worn or ground face has, and what passes make of it. Each takes ridges before hollows and
 * leaves its own texture:
 *
 *     s² = lasting² + (ridges² + lean²) kⁿ + (texture · removal)² (1 − kⁿ) / (1 − k)
 *
 * so a light hand leaves a face finer than it was, a heavy one rougher.
 * @param passes   n, whole passes made on it
 * @param lean_um  what its form adds, taken away like ridges
 */
function roughness(pass_um: number, passes: number, lean_um: number): number {
  const left = pass.leaves ** passes;
  return Math.sqrt(
    worn_um.lasting ** 2 +
      (worn_um.ridges ** 2 + lean_um ** 2) * left +
      ((pass.texture * pass_um) ** 2 * (1 - left)) / (1 - pass.leaves),
  );
}

/** Shares of a print over all zones, undefined where nothing was printed. */
export function printShares(model: SlideModel, print: Print | undefined): (number | undefined)[] {
  const shares = zoneVector(model.slide, print ?? {}, Number.NaN);
  return shares.map((share) => (Number.isNaN(share) ? undefined : share));
}

/** The settling of a slide whose zones carry by area and by how much of them is blue. */
export const carriedSettling = (model: SlideModel, shares: readonly number[]): Settling =>
  settlingOfRows(
    model.rows,
    model.zones.map((zone, z) => zone.area_mm2 * Math.max(leastCarry, shares[z]!)),
  );

/** Roughness of each zone now, µm. @param passed  whole passes made on each since the first round */
export const zoneRoughness = (model: SlideModel, state: Gaussian, passed: readonly number[]): number[] =>
  model.materialOf.map((k, z) =>
    roughness(Math.max(0, state.mean[model.layout.whole(k)]!), passed[z]!, model.lean_um[z]!),
  );

/** Roughness of each zone before any pass, µm. */
export const faceAtFirst = (model: SlideModel): number[] =>
  model.lean_um.map((lean_um) => roughness(0, 0, lean_um));

/** What share of each zone is expected to take colour, with all doubt counted in. */
export function expectedShares(
  model: SlideModel,
  state: Gaussian,
  settled: Settling,
  rough: readonly number[],
): number[] {
  const offset = state.mean[model.layout.offset]!;
  return seatedGaps(model, state, settled).map((gap, z) =>
    normalBelow((model.film_um - offset - gap.mean) / Math.hypot(rough[z]!, gap.sd)),
  );
}

/**
 * Takes a print. A zone of mean gap g and roughness s takes colour on the share b = Φ((film − offset − g)/s), so
 *
 *     g + offset = film − s Φ⁻¹(b)      for b from 0.04 to 0.96;
 *
 * outside it is known only to be at least, or at most, what those bounds say.
 * What it says, and how far off it came, is written into `evidence`.
 * @param rough  roughness of each zone, µm
 */
export function takePrint(
  model: SlideModel,
  state: Gaussian,
  settled: Settling,
  shares: readonly (number | undefined)[],
  rough: readonly number[],
  evidence: Evidence,
): void {
  const turn = readingsInTurn(state);
  const seenAtFirst = gapsSeen(model, state, settled);
  const printed = shares.flatMap((share, z) => (share === undefined ? [] : [{ share, z }]));
  const within = ({ share }: { share: number }) => share > telling.low && share < telling.high;
  const said = ({ share, z }: { share: number; z: number }) => {
    const s = rough[z]!;
    const deviate = normalQuantile(Math.min(telling.high, Math.max(telling.low, share)));
    const row = seatedGapRow(model, settled, z);
    row[model.layout.offset] = 1;
    return {
      row,
      seen: () => turn.seen(row, seenAtFirst(z)),
      value: model.film_um - s * deviate,
      noise: (gapSdShare * s) ** 2 + ((shareSd * s) / normalDensity(deviate)) ** 2,
      least: share <= telling.low,
    };
  };
  // What says a number first: the bounds are then taken about a better middle.
  for (const { row, seen, value, noise } of printed.filter(within).map(said))
    addReading(evidence, 'print', row, turn.take(row, seen(), value, noise));
  // Bounds do not commute: the one that is furthest astray first, wherever on the pad it stands.
  const bounds = printed
    .filter((one) => !within(one))
    .map((one) => {
      const bound = said(one);
      const off = bound.value - product(bound.row, state.mean);
      const sd = Math.sqrt(product(bound.row, bound.seen()) + bound.noise);
      return { ...bound, astray: (bound.least ? off : -off) / sd };
    })
    .sort((a, b) => b.astray - a.astray);
  for (const bound of bounds) takeBound(state, turn, { ...bound, seen: bound.seen() }, evidence);
  turn.end();
}

/** P rowᵀ of each zone's gap with the print's offset, from what all gaps have in common. */
function gapsSeen(model: SlideModel, state: Gaussian, settled: Settling): (z: number) => Float64Array {
  const { rows, layout } = model;
  const { size, covariance } = state;
  const [p0, p1, p2, p3, p4, p5] = poseSeen(model, state, settled) as SixLines;
  const offset = layout.offset * size;
  // Written out, for this is one of the loops in which the time of a history goes.
  return (z) => {
    const [r0, r1, r2, r3, r4, r5] = rows[z]!;
    const start = z * size;
    const seen = new Float64Array(size);
    for (let i = 0; i < size; i++)
      seen[i] =
        covariance[start + i]! +
        covariance[offset + i]! +
        (r0 * p0[i]! + r1 * p1[i]! + r2 * p2[i]!) +
        (r3 * p3[i]! + r4 * p4[i]! + r5 * p5[i]!);
    return seen;
  };
}
type SixLines = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

/** "At least", or else "at most", that a print says of a zone's gap. */
interface Bound {
  readonly row: Float64Array;
  /** P rowᵀ now. */
  readonly seen: Float64Array;
  readonly value: number;
  readonly noise: number;
  readonly least: boolean;
}

/**
 * Takes "at least" or "at most": the moments of the truncated normal of what the row sees, given to the state as the
 * reading that would have led to the same moments.
 */
function takeBound(
  state: Gaussian,
  turn: ReadingsInTurn,
  { row, seen, value: bound, noise, least }: Bound,
  evidence: Evidence,
): void {
  const mean = product(row, state.mean);
  const variance = product(row, seen) + noise;
  const sd = Math.sqrt(variance);
  const cut = (least ? atLeast : atMost)(mean, sd, bound);
  const lost = variance - cut.variance;
  evidence.logLikelihood += cut.logChance;
  // Only the side on which the bound speaks counts as astray.
  const astray = Math.max(0, (least ? bound - mean : mean - bound) / sd);
  if (astray > 0) {
    evidence.print.square += astray ** 2;
    evidence.print.degrees += 1;
  }
  if (lost <= 1e-6 * variance) return;
  const like = (variance * cut.variance) / lost;
  const value = mean + ((cut.mean - mean) * (variance + like)) / variance;
  evidence.trace.push({ row, ...turn.take(row, seen, value, noise + like) });
}
