import { type Bits, countAll } from './bits.ts';

/** Connected regions of a mask, by runs along the rows: elements start ≤ o < end, numbered row by row, are in region `label`, 1 to `count`. */
export interface Runs {
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  readonly label: Int32Array;
  readonly count: number;
}

/**
 * Connected regions, by runs joined from row to row.
 *
 * @param value  what is looked for: set elements or clear ones
 * @param eight  elements that touch at a corner belong together; else only those that share a side
 */
export function runsOf(mask: Bits, value: 0 | 1, eight: boolean): Runs {
  const { width, height } = mask;
  const many = countRuns(mask, value);
  const starts = new Int32Array(many);
  const ends = new Int32Array(many);
  const parent = new Int32Array(many);
  const reach = eight ? 1 : 0;
  let before = 0;
  let first = 0;
  for (let j = 0; j < height; j++) {
    const past = addRuns(mask, j, value, starts, ends, first);
    let above = before;
    for (let run = first; run < past; run++) {
      parent[run] = run;
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
    first = past;
  }
  const label = new Int32Array(starts.length);
  let count = 0;
  for (let run = 0; run < starts.length; run++) {
    const top = rootOf(parent, run);
    label[run] = top === run ? ++count : label[top]!;
  }
  return { starts, ends, label, count };
}

function rootOf(parent: Int32Array, run: number): number {
  let at = run;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]!]!;
    at = parent[at]!;
  }
  return at;
}

/** A run begins where a bit is set and the one before it is not. */
function countRuns(mask: Bits, value: 0 | 1): number {
  const { across, words } = mask;
  const begin = { ...mask, words: new Int32Array(words.length) };
  const past = pastEnd(mask);
  for (let w = 0; w < words.length; w += across)
    for (let k = 0, before = 0; k < across; k++) {
      let word = words[w + k]! ^ (value - 1);
      if (k === across - 1) word &= ~past;
      begin.words[w + k] = word & ~((word << 1) | before);
      before = word >>> 31;
    }
  return countAll(begin);
}

/** Bits of a row's last word that are past its end. */
const pastEnd = ({ width }: Bits): number => (width & 31 ? -1 << (width & 31) : 0);

/** Runs of one row, from the `first` on: a run begins and ends where a bit differs from the one before it. How many there are then. */
function addRuns(
  mask: Bits,
  j: number,
  value: 0 | 1,
  starts: Int32Array,
  ends: Int32Array,
  first: number,
): number {
  const { width, across, words } = mask;
  let run = first;
  const flip = value - 1;
  const past = pastEnd(mask);
  let inside = 0;
  for (let k = 0, i = j * width; k < across; k++, i += 32) {
    let word = words[j * across + k]! ^ flip;
    if (k === across - 1) word &= ~past;
    let changes = word ^ ((word << 1) | inside);
    while (changes !== 0) {
      const o = i + 31 - Math.clz32(changes & -changes);
      if (inside) ends[run++] = o;
      else starts[run] = o;
      inside ^= 1;
      changes &= changes - 1;
    }
  }
  if (inside) ends[run++] = (j + 1) * width;
  return run;
}
