/** A reading that looks like a slip. It is named, never dropped: only whoever took it knows. */
export interface Suspect {
  readonly code: 'stands out' | 'signs turned from here' | 'other unit' | 'station missing';
  /** Which reading, from 0; for a missing station the one after the gap. */
  readonly index: number;
  readonly found: number;
  /** What its neighbours lead to. */
  readonly expected: number;
  /** What would explain it: the value is this many times its neighbours' (10, 25.4, 1000, −1, …). */
  readonly times?: number;
}

/** Robust sds from the neighbours beyond which a reading stands out; a worn way's own steps stay well inside. */
const farOut = 8;
/** Within this many it agrees. */
const near = 3;
/** Slips that make a number too large: a decimal place, an inch for a millimetre, mm for µm. */
const slips = [-1, 10, 100, 25.4, 1000, -10, 0.1, 1 / 25.4, 0.001];

/**
 * Readings along a way that look like slips: one that stands out from the line through its neighbours, all signs turned from some place on,
 * one written in another unit.
 *
 * @param places  rising; the readings' own places
 * @param values  as many readings: heights, or angles of steps
 */
export function suspects(places: readonly number[], values: readonly number[]): Suspect[] {
  if (values.length < 5) return [];
  const turned = signsTurnedFrom(values);
  const alike = turned ? values.map((value, i) => (i < turned.index ? value : -value)) : values;
  const found = [...(turned ? [turned] : []), ...otherUnit(values), ...standingOut(places, alike)];
  return found.filter((one, i) => found.findIndex((other) => other.index === one.index) === i);
}

export const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};

/** Decimals that a number is written with. */
const decimalsOf = (value: number): number => String(Math.abs(value)).split('.')[1]?.length ?? 0;

/** Scatter from the median's absolute deviations, never below the last place that the readings are written with. */
function scatterOf(values: readonly number[], about: number): number {
  const decimals = Math.min(6, median(values.map(decimalsOf)));
  return Math.max(1.4826 * median(values.map((value) => Math.abs(value - about))), 10 ** -decimals / 2);
}

function standingOut(places: readonly number[], values: readonly number[]): Suspect[] {
  const kept = [...values];
  const found: Suspect[] = [];
  const floor = 10 ** -Math.min(6, median(values.map(decimalsOf))) / 2;
  while (found.length < values.length / 4) {
    const off = kept.map((value, i) => value - fromNeighbours(places, kept, i));
    let worst = 0;
    // An end is led to from one side only, three times less surely than a middle.
    const weighed = off.map((value, i) => Math.abs(value) / (i === 0 || i === off.length - 1 ? 2 : 1));
    for (const i of weighed.keys()) if (weighed[i]! > weighed[worst]!) worst = i;
    const expected = fromNeighbours(places, kept, worst);
    // Among few readings a slip pulls its neighbours' own off so far that it hides; the scatter is what is left once it is put right.
    const righted = kept.with(worst, expected);
    const left = righted.map((value, i) => value - fromNeighbours(places, righted, i));
    // An end that is put right lies on the line of the next two, and so does the one beside it.
    const last = values.length - 1;
    const beside = worst === 0 ? 1 : worst === last ? last - 1 : worst;
    const others = left.filter((_, i) => i !== worst && i !== beside);
    const scatter = Math.max(1.4826 * median(others.map(Math.abs)), floor);
    if (!(weighed[worst]! > farOut * scatter)) break;
    const times = slips.find((slip) => Math.abs(values[worst]! / slip - expected) <= near * scatter);
    found.push({
      code: 'stands out',
      index: worst,
      found: values[worst]!,
      expected,
      ...(times === undefined ? {} : { times }),
    });
    kept[worst] = expected;
  }
  return found;
}

/** What the neighbours lead to: the line through the two beside it; at an end, through the next two. */
function fromNeighbours(places: readonly number[], values: readonly number[], i: number): number {
  const last = values.length - 1;
  const [a, b] = i === 0 ? [1, 2] : i === last ? [last - 2, last - 1] : [i - 1, i + 1];
  const share = (places[i]! - places[a]!) / (places[b]! - places[a]!);
  return values[a]! + share * (values[b]! - values[a]!);
}

/** The place from which on every sign looks turned: one jump, far beyond the others, that turning takes away. */
function signsTurnedFrom(values: readonly number[]): Suspect | undefined {
  const steps = values.slice(1).map((value, i) => value - values[i]!);
  const usual = median(steps);
  const scatter = scatterOf(steps, usual);
  for (let k = 3; k <= values.length - 3; k++) {
    const jump = Math.abs(steps[k - 1]! - usual);
    const turned = -values[k]! - values[k - 1]!;
    const others = steps.filter((_, i) => i !== k - 1);
    if (!(jump > farOut * scatter) || !(Math.abs(turned - usual) <= near * scatter)) continue;
    if (others.some((step) => Math.abs(step - usual) > jump / 2)) continue;
    return {
      code: 'signs turned from here',
      index: k,
      found: values[k]!,
      expected: -values[k]!,
      times: -1,
    };
  }
  return undefined;
}

/** A number with two more decimals than the others are written with, and fifty times smaller: mm in a column of µm. */
function otherUnit(values: readonly number[]): Suspect[] {
  const size = median(values.map(Math.abs));
  return values.flatMap((found, index): Suspect[] => {
    const others = values.filter((_, i) => i !== index);
    const decimals = median(others.map(decimalsOf));
    const isOther = found !== 0 && Math.abs(found) < size / 50 && decimalsOf(found) >= decimals + 2;
    if (!isOther) return [];
    return [{ code: 'other unit', index, found, expected: size * Math.sign(found), times: 0.001 }];
  });
}

/** Stations that are missing from an even row: a gap of two or more steps among steps that are otherwise alike. */
export function missingStations(stations_mm: readonly number[]): Suspect[] {
  if (stations_mm.length < 5) return [];
  const steps = stations_mm.slice(1).map((at, i) => at - stations_mm[i]!);
  const step = median(steps);
  const alike = steps.filter((one) => Math.abs(one - step) <= 0.05 * step).length;
  if (alike < 0.7 * steps.length) return [];
  return steps.flatMap((one, i): Suspect[] => {
    const many = Math.round(one / step);
    if (many < 2 || Math.abs(one - many * step) > 0.1 * step) return [];
    return [
      {
        code: 'station missing',
        index: i + 1,
        found: stations_mm[i + 1]!,
        expected: stations_mm[i]! + step,
      },
    ];
  });
}
