import type { Innovation } from '../math/gaussian.ts';

/** Sum of squared innovations over their variances, and how many there were. */
export interface Astray {
  square: number;
  degrees: number;
}

/** How well a round came as expected; filled in while its readings and print are taken. */
export interface Evidence {
  /** ln of the likelihood of all that was taken. */
  logLikelihood: number;
  readonly readings: Astray;
  readonly print: Astray;
  /** Each reading as it was taken, in order: enough to ask what another belief beforehand would have made of it. */
  readonly trace: ({ readonly row: Float64Array } & Innovation)[];
}

export const noEvidence = (): Evidence => ({
  logLikelihood: 0,
  readings: { square: 0, degrees: 0 },
  print: { square: 0, degrees: 0 },
  trace: [],
});

/** Notes a reading that was taken. */
export function addReading(
  evidence: Evidence,
  kind: 'readings' | 'print',
  row: Float64Array,
  came: Innovation,
): void {
  const square = came.off ** 2 / came.variance;
  evidence.logLikelihood -= 0.5 * (square + Math.log(2 * Math.PI * came.variance));
  evidence[kind].square += square;
  evidence[kind].degrees += 1;
  evidence.trace.push({ row, ...came });
}

/** The response of a round's innovations to a shift of the belief beforehand, and what they say of it. */
export interface ShiftFit {
  /** How much likelier (ln) all came out with the shift as given. */
  readonly asGiven: number;
  /** The same with the shift scaled to fit best. */
  readonly atBest: number;
}

/**
 * What a shift of the mean beforehand would have done to a round's innovations, through the gains that were used.
 *
 *     aᵢ = rowᵢ · δ,   δ ← δ − Kᵢ aᵢ;     ln ratio = Σ (νᵢ² − (νᵢ − aᵢ)²) / 2 Sᵢ
 *
 * Bounds of the print count as the readings they were taken as: good enough to see which causes deserve a full trial.
 */
export function shiftFit(evidence: Evidence, shift: Float64Array): ShiftFit {
  const left = shift.slice();
  let cross = 0;
  let square = 0;
  for (const { row, off, variance, seen: moves } of evidence.trace) {
    let seen = 0;
    for (let i = 0; i < left.length; i++) seen += row[i]! * left[i]!;
    for (let i = 0; i < left.length; i++) left[i]! -= (moves[i]! / variance) * seen;
    cross += (off * seen) / variance;
    square += seen ** 2 / variance;
  }
  return { asGiven: cross - 0.5 * square, atBest: square > 0 ? (0.5 * cross ** 2) / square : 0 };
}
