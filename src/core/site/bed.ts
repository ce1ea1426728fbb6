/** A bed as surveyed: the form of each way along the travel. */
export interface Bed {
  /** Rising, along the travel from the bed's own zero. */
  readonly stations_mm: readonly number[];
  /** One for each pad: the height along the pad's normal at each station, µm; plus: high. */
  readonly ways: readonly { readonly pad: string; readonly height_um: readonly number[] }[];
}

/**
 * Height of a way between its stations, in straight lines.
 * @throws RangeError  beyond the first or the last station
 */
export function heightAt(
  stations_mm: readonly number[],
  height_um: readonly number[],
  at_mm: number,
): number {
  const last = stations_mm.length - 1;
  // Places are sums of decimals: a millionth of a mm past the end is the end.
  if (!(at_mm >= stations_mm[0]! - 1e-6 && at_mm <= stations_mm[last]! + 1e-6))
    throw new RangeError(
      `${at_mm} mm lies beyond the survey; expected ${stations_mm[0]} to ${stations_mm[last]} mm`,
    );
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stations_mm[middle]! <= at_mm) low = middle;
    else high = middle;
  }
  const share = (at_mm - stations_mm[low]!) / (stations_mm[high]! - stations_mm[low]!);
  return height_um[low]! + share * (height_um[high]! - height_um[low]!);
}
