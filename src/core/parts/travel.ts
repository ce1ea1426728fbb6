import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import type { AxisName } from '../body/vector.ts';

/** How surely the poses along a travel are known; what is left out counts as known surely. Parts given add up. */
export interface TravelDoubt {
  /** One row of six sds a station (µm, µrad), each reading by itself. */
  readonly sds?: readonly PoseNumbers[];
  /** 6 × 6 covariance of what all stations share: the pose of the whole, the error of one reference. */
  readonly common_covariance?: readonly (readonly number[])[];
  /** 6n × 6n covariance, station by station; for poses that were estimated together. */
  readonly covariance?: readonly (readonly number[])[];
  /**
   * Sources that each have an sd of 1 and do not hang together, as what they do to the 6n pose numbers: covariance = Σ s sᵀ.
   */
  readonly sources?: readonly ArrayLike<number>[];
}

/** Poses of a carriage along one travel, from a survey, an estimate or a simulation. */
export interface Travel {
  readonly name: string;
  readonly along: AxisName;
  /** n ≥ 2 places of the carriage, mm, rising. */
  readonly stations_mm: readonly number[];
  /** One a station: [t_x, t_y, t_z] µm and [ω_x, ω_y, ω_z] µrad of the carriage's reference, against a straight and square travel. */
  readonly poses: readonly PoseNumbers[];
  readonly doubt?: TravelDoubt;
}

/** A linear reading of a travel: one coefficient for each of the 6n pose numbers, station by station. */
export type TravelRow = Float64Array;

export const emptyRow = (travel: Travel): TravelRow => new Float64Array(poseSize * travel.poses.length);

/** Whether anything is said about how surely the poses are known. */
export const hasDoubt = ({ doubt }: Travel): boolean =>
  doubt !== undefined &&
  (doubt.sds !== undefined ||
    doubt.common_covariance !== undefined ||
    doubt.covariance !== undefined ||
    doubt.sources !== undefined);

/** Adds `times` the reading `of` of the pose at a place: straight lines between stations. */
export function addReading(
  row: TravelRow,
  travel: Travel,
  at_mm: number,
  of: ArrayLike<number>,
  times = 1,
): void {
  const { low, share } = between(travel, at_mm);
  for (let j = 0; j < poseSize; j++) {
    row[low * poseSize + j]! += times * (1 - share) * of[j]!;
    row[(low + 1) * poseSize + j]! += times * share * of[j]!;
  }
}

/**
 * The pose at a place, in straight lines between the stations.
 * @throws RangeError  beyond the first or the last station
 */
export function poseAt(travel: Travel, at_mm: number): PoseNumbers {
  const { low, share } = between(travel, at_mm);
  return travel.poses[low]!.map(
    (part, j) => part + share * (travel.poses[low + 1]![j]! - part),
  ) as unknown as PoseNumbers;
}

/** A row's value on the poses as given. */
export function readingOf(travel: Travel, row: TravelRow): number {
  let sum = 0;
  travel.poses.forEach((pose, i) => {
    for (let j = 0; j < poseSize; j++) sum += row[i * poseSize + j]! * pose[j]!;
  });
  return sum;
}

/** Variance of a row's value, from all that is said about the poses' doubt. */
export function rowVariance(travel: Travel, row: TravelRow): number {
  const { sds, common_covariance, covariance, sources } = travel.doubt ?? {};
  let variance = 0;
  sds?.forEach((six, i) => {
    six.forEach((sd, j) => {
      variance += (row[i * poseSize + j]! * sd) ** 2;
    });
  });
  if (common_covariance) {
    const shared = Array.from({ length: poseSize }, (_, j) => {
      let sum = 0;
      for (let i = j; i < row.length; i += poseSize) sum += row[i]!;
      return sum;
    });
    variance += quadratic(common_covariance, shared);
  }
  if (covariance) variance += quadratic(covariance, row);
  if (sources) {
    const read = readPlaces(row);
    for (const source of sources) {
      let sum = 0;
      for (const i of read) sum += row[i]! * source[i]!;
      variance += sum * sum;
    }
  }
  // Covariances that were rounded may leave a little below nothing.
  return Math.max(0, variance);
}

function quadratic(matrix: readonly (readonly number[])[], row: ArrayLike<number>): number {
  const read = readPlaces(row);
  let sum = 0;
  for (const i of read) for (const j of read) sum += row[i]! * matrix[i]![j]! * row[j]!;
  return sum;
}

/** Where a row reads anything: of a single place that is a dozen numbers of thousands. */
function readPlaces(row: ArrayLike<number>): number[] {
  const places: number[] = [];
  for (let i = 0; i < row.length; i++) if (row[i] !== 0) places.push(i);
  return places;
}

/** The station below a place, and how far on towards the next it lies, 0 to 1. */
function between({ name, stations_mm }: Travel, at_mm: number): { low: number; share: number } {
  const last = stations_mm.length - 1;
  // Places are sums of decimals: a millionth of a mm past the end is the end.
  if (!(at_mm >= stations_mm[0]! - 1e-6 && at_mm <= stations_mm[last]! + 1e-6))
    throw new RangeError(
      `${name}: ${at_mm} mm lies beyond the stations; expected ${stations_mm[0]} to ${stations_mm[last]} mm`,
    );
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stations_mm[middle]! <= at_mm) low = middle;
    else high = middle;
  }
  return { low, share: (at_mm - stations_mm[low]!) / (stations_mm[low + 1]! - stations_mm[low]!) };
}
