/** Connected regions of a mask: `label` is 0 outside, else 1 to `count`. */
export interface Regions {
  readonly count: number;
  readonly label: Int32Array;
}

/**
 * Connected regions, by runs along the rows joined from row to row.
 *
 * @param eight  elements that touch at a corner belong together; else only those that share a side
 * @param into   where to write the labels, width × height; made when left out
 */
export function regionsOf(
  mask: Uint8Array,
  value: 0 | 1,
  width: number,
  height: number,
  eight: boolean,
  into?: Int32Array,
): Regions {
  const starts: number[] = [];
  const ends: number[] = [];
  const parent: number[] = [];
  const root = (run: number): number => {
    let at = run;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  const reach = eight ? 1 : 0;
  let before = 0;
  let beforeEnd = 0;
  for (let j = 0; j < height; j++) {
    const o = j * width;
    const first = starts.length;
    let above = before;
    for (let i = 0; i < width; ) {
      if (mask[o + i] !== value) {
        i++;
        continue;
      }
      const from = i;
      while (i < width && mask[o + i] === value) i++;
      const run = starts.length;
      starts.push(o + from);
      ends.push(o + i);
      parent.push(run);
      // Runs of the row above that touch [from − reach, i + reach).
      const up = o - width;
      while (above < beforeEnd && ends[above]! - up + reach <= from) above++;
      for (let k = above; k < beforeEnd && starts[k]! - up < i + reach; k++) {
        const a = root(k);
        const b = root(run);
        if (a !== b) parent[Math.max(a, b)] = Math.min(a, b);
      }
    }
    before = first;
    beforeEnd = starts.length;
  }
  const label = into?.fill(0) ?? new Int32Array(width * height);
  const number = new Int32Array(starts.length);
  let count = 0;
  for (let run = 0; run < starts.length; run++) {
    const top = root(run);
    if (top === run) number[run] = ++count;
    label.fill(number[top]!, starts[run]!, ends[run]!);
  }
  return { count, label };
}
