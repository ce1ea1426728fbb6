/** Yes or no for each element of a raster, 32 to a word, lowest bit first; every row begins a word, bits past its end are 0. */
export interface Bits {
  readonly width: number;
  readonly height: number;
  /** Words to a row. */
  readonly across: number;
  readonly words: Int32Array;
}

export function noBits(width: number, height: number): Bits {
  const across = Math.ceil(width / 32);
  return { width, height, across, words: new Int32Array(across * height) };
}

/** Where a raster is above a limit. */
export function bitsAbove(values: Float32Array, limit: number, width: number, height: number): Bits {
  const bits = noBits(width, height);
  const { across, words } = bits;
  for (let j = 0; j < height; j++)
    for (let k = 0; k < across; k++)
      words[j * across + k] = wordAbove(values, limit, j * width + 32 * k, Math.min(32, width - 32 * k));
  return bits;
}

function wordAbove(values: Float32Array, limit: number, from: number, many: number): number {
  let word = 0;
  for (let b = 0; b < many; b++) if (values[from + b]! > limit) word |= 1 << b;
  return word;
}

/** Where a raster holds a value; mostly it does not, which is passed over fast. */
export function bitsOf(mask: Uint8Array, width: number, height: number, value = 1): Bits {
  const bits = noBits(width, height);
  for (let from = mask.indexOf(value); from >= 0; ) {
    const rowEnd = from - (from % width) + width;
    let to = from + 1;
    while (to < rowEnd && mask[to] === value) to++;
    setRun(bits, from, to);
    from = mask[to] === value ? to : mask.indexOf(value, to);
  }
  return bits;
}

/** Sets elements from ≤ o < to of one row; elements are numbered row by row. */
export function setRun({ width, across, words }: Bits, from: number, to: number): void {
  const row = Math.floor(from / width);
  const first = from - row * width;
  const last = to - 1 - row * width;
  const head = -1 << (first & 31);
  const tail = -1 >>> (31 - (last & 31));
  let w = row * across + (first >> 5);
  const end = row * across + (last >> 5);
  if (w === end) {
    words[w]! |= head & tail;
    return;
  }
  words[w++]! |= head;
  while (w < end) words[w++] = -1;
  words[w]! |= tail;
}

export const hasBit = ({ across, words }: Bits, i: number, j: number): boolean =>
  ((words[j * across + (i >> 5)]! >>> (i & 31)) & 1) !== 0;

/** How many of row j's elements from ≤ i < to are set. */
export function countIn({ across, words }: Bits, j: number, from: number, to: number): number {
  if (to <= from) return 0;
  let w = j * across + (from >> 5);
  const end = j * across + ((to - 1) >> 5);
  const head = -1 << (from & 31);
  const tail = -1 >>> (31 - ((to - 1) & 31));
  if (w === end) return setIn(words[w]! & head & tail);
  let many = setIn(words[w++]! & head);
  while (w < end) many += setIn(words[w++]!);
  return many + setIn(words[w]! & tail);
}

export function countAll({ words }: Bits): number {
  let many = 0;
  for (let w = 0; w < words.length; w++) many += setIn(words[w]!);
  return many;
}

/** Bits set in each byte of a word, side by side. */
export function setInBytes(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return (fours + (fours >>> 4)) & 0x0f0f0f0f;
}

const setIn = (word: number): number => Math.imul(setInBytes(word), 0x01010101) >>> 24;

/** What is in one and not in the other. */
export function without(one: Bits, other: Bits): Bits {
  const words = new Int32Array(one.words.length);
  for (let w = 0; w < words.length; w++) words[w] = one.words[w]! & ~other.words[w]!;
  return { ...one, words };
}

export function either(one: Bits, other: Bits): Bits {
  const words = new Int32Array(one.words.length);
  for (let w = 0; w < words.length; w++) words[w] = one.words[w]! | other.words[w]!;
  return { ...one, words };
}
