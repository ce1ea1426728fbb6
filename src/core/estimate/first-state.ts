import { poseSize } from '../body/displacement.ts';
import type { Settling } from '../body/settle.ts';
import { type Gaussian, gaussian, product } from '../math/gaussian.ts';
import { symmetricParts } from '../math/symmetric.ts';
import type { SlideModel } from './model.ts';
import type { RoundReadings } from './readings.ts';
import { seatCovariance } from './seat.ts';

/** Of a pose direction that no reading sees, this is believed: wide, and no more. */
const unseenSd = { shift_um: 300, turn_urad: 1000 };
/** A spotting pass takes this share of a whole one on what bears, first believed, and how well that is known. */
export const spotShare = { mean: 0.3, sd: 0.08 };
/** How well the print's gap is known before the first one: film a tenth off, compression, roughness. */
const offsetSd_um = 0.8;

/**
 * The state after the first round's readings, with nothing believed of the pose beforehand.
 *
 * The zone heights are h = −A q + form. Were q given a wide prior and the readings then taken, the answer would be lost in
 * rounding or drawn toward the prior; instead the readings are solved for the pose they saw, q_read = J h + seat, and h follows:
 *
 *     h = −A (q_read − seat) + (I + A J) form                                                        (1)
 *
 * which is what a prior without end leads to. What no reading sees keeps a wide, proper doubt.
 * @param rough_um  roughness of each zone
 */
export function firstState(
  model: SlideModel,
  readings: RoundReadings,
  settled: Settling,
  rough_um: readonly number[],
): Gaussian {
  const { layout, rows } = model;
  const n = layout.zones;
  const state = gaussian(layout.size);
  const read = poseAndFaces(model, readings);
  const at = (i: number, j: number) => i * layout.size + j;

  // (I + A J) F (I + A J)ᵀ + A C Aᵀ, multiplied out: F + A J F + (A J F)ᵀ + A (J F Jᵀ + C) Aᵀ, for the pose is but six numbers.
  const ofForm = settled.response.map((line) => model.form.map((own) => product(line, own)));
  const seat = seatCovariance(settled, rough_um);
  const stands = ofForm.map((line, i) =>
    settled.response.map((back, j) => product(back, line) + read.covariance[i]![j]! + seat[i]![j]!),
  );
  for (let z = 0; z < n; z++) {
    const row = rows[z]!;
    const lifts = stands.map((line, j) => product(row, line) + ofForm[j]![z]!);
    for (let j = 0; j < poseSize; j++) state.mean[z]! -= row[j]! * read.mean[j]!;
    for (let y = 0; y <= z; y++) {
      let sum = model.form[z]![y]!;
      for (let j = 0; j < poseSize; j++) sum += rows[y]![j]! * lifts[j]! + row[j]! * ofForm[j]![y]!;
      state.covariance[at(z, y)] = sum;
      state.covariance[at(y, z)] = sum;
    }
    layout.faces.forEach((_, f) => {
      let sum = 0;
      for (let j = 0; j < poseSize; j++) sum -= rows[z]![j]! * read.covariance[j]![poseSize + f]!;
      state.covariance[at(z, layout.face(f))] = sum;
      state.covariance[at(layout.face(f), z)] = sum;
    });
  }
  layout.faces.forEach((_, f) => {
    state.mean[layout.face(f)] = read.mean[poseSize + f]!;
    layout.faces.forEach((_, g) => {
      state.covariance[at(layout.face(f), layout.face(g))] = read.covariance[poseSize + f]![poseSize + g]!;
    });
  });
  model.passes.forEach(({ um, sd_um }, k) => {
    const whole = layout.whole(k);
    const spot = layout.spot(k);
    state.mean[whole] = um;
    state.mean[spot] = spotShare.mean * um;
    state.covariance[at(whole, whole)] = sd_um ** 2;
    state.covariance[at(whole, spot)] = spotShare.mean * sd_um ** 2;
    state.covariance[at(spot, whole)] = spotShare.mean * sd_um ** 2;
    state.covariance[at(spot, spot)] = (spotShare.mean * sd_um) ** 2 + (spotShare.sd * um) ** 2;
  });
  state.covariance[at(layout.offset, layout.offset)] = offsetSd_um ** 2;
  return state;
}

/** Pose as read and face errors, by least squares; pose directions not seen stay at 0 with a wide doubt. */
function poseAndFaces(model: SlideModel, readings: RoundReadings) {
  const information = readings.information.map((line) => [...line]);
  model.faceSd_urad.forEach((sd, f) => {
    information[poseSize + f]![poseSize + f]! += 1 / sd ** 2;
  });
  const { inverse, free } = symmetricParts(information);
  const mean = inverse.map((line) => line.reduce((sum, part, j) => sum + part * readings.seen[j]!, 0));
  const covariance = inverse.map((line) => [...line]);
  for (const direction of free) {
    const size = direction
      .slice(0, poseSize)
      .reduce((sum, part, j) => sum + (part / (j < 3 ? unseenSd.shift_um : unseenSd.turn_urad)) ** 2, 0);
    for (let i = 0; i < poseSize; i++)
      for (let j = 0; j < poseSize; j++) covariance[i]![j]! += (direction[i]! * direction[j]!) / size;
  }
  return { mean, covariance };
}
