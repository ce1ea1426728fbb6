import { type Bits, bitsOf } from './bits.ts';

/** Connected regions of a mask: `label` is 0 outside, else 1 to `count`. */
export interface Regions {
  readonly count: number;
  readonly label: Int32Array;
}

/** The same by runs along the rows: elements start ≤ o < end, numbered row by row, are in region `label`, 1 to `count`. */
export interface Runs {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
  readonly label: Int32Array;
  readonly count: number;
}

/**
 * Connected regions as a raster of labels.
 *
 * @param eight  elements that touch at a corner belong together; else only those that share a side
 */
export function regionsOf(
  mask: Uint8Array,
  value: 0 | 1,
  width: number,
  height: number,
  eight: boolean,
): Regions {
  const runs = runsOf(bitsOf(mask, width, height), value, eight);
  const label = new Int32Array(width * height);
  for (let run = 0; run < runs.starts.length; run++)
    label.fill(runs.label[run]!, runs.starts[run]!, runs.ends[run]!);
  return { count: runs.count, label };
}

/** Connected regions by runs, joined from row to row. */
export function runsOf(mask: Bits, value: 0 | 1, eight: boolean): Runs {
  const { width, height } = mask;
  const starts: number[] = [];
  const ends: number[] = [];
  const parent: number[] = [];
  const reach = eight ? 1 : 0;
  let before = 0;
  for (let j = 0; j < height; j++) {
    const first = starts.length;
    addRuns(mask, j, value, starts, ends);
    let above = before;
    for (let run = first; run < starts.length; run++) {
      parent.push(run);
      // Runs of the row above that touch [from − reach, to + reach).
      const from = starts[run]! - width - reach;
      const to = ends[run]! - width + reach;
      while (above < first && ends[above]! <= from) above++;
      for (let k = above; k < first && starts[k]! < to; k++) {
        const a = rootOf(parent, k);
        const b = rootOf(parent, run);
        if (a !== b) parent[Math.max(a, b)] = Math.min(a, b);
      }
    }
    before = first;
  }
  const label = new Int32Array(starts.length);
  let count = 0;
  for (let run = 0; run < starts.length; run++) {
    const top = rootOf(parent, run);
    label[run] = top === run ? ++count : label[top]!;
  }
  return { starts, ends, label, count };
}

function rootOf(parent: number[], run: number): number {
  let at = run;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]!]!;
    at = parent[at]!;
  }
  return at;
}

/** Runs of one row: a run begins and ends where a bit differs from the one before it. */
function addRuns(
  { width, across, words }: Bits,
  j: number,
  value: 0 | 1,
  starts: number[],
  ends: number[],
): void {
  const flip = value - 1;
  const past = width & 31 ? -1 << (width & 31) : 0;
  let inside = 0;
  for (let k = 0, i = j * width; k < across; k++, i += 32) {
    let word = words[j * across + k]! ^ flip;
    if (k === across - 1) word &= ~past;
    let changes = word ^ ((word << 1) | inside);
    while (changes !== 0) {
      const o = i + 31 - Math.clz32(changes & -changes);
      if (inside) ends.push(o);
      else starts.push(o);
      inside ^= 1;
      changes &= changes - 1;
    }
  }
  if (inside) ends.push((j + 1) * width);
}
