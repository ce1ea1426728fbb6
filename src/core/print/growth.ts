import { type Bits, countAll, hasBit, noBits } from './bits.ts';
import type { Contact } from './contact.ts';

/**
 * Regions grow by one element, sideways, where film is stronger than `end`; none into another, none onto the outermost
 * elements. What touches several goes to the last of them.
 *
 * @param label  of each element, see Contact
 * @param out    where nothing counts
 */
export function growOnce(
  contact: Contact,
  label: Int32Array,
  strength: Float32Array,
  end: number,
  out: Bits,
): void {
  const { bears, burnished, area, x, y, bright } = contact;
  const { width, height, words } = bears;
  const found = noBits(width, height);
  for (let j = 1; j < height - 1; j++) findInRow(found, bears, out, strength, end, j);
  // All are labelled from what was there before the turn, so that the order of the sweep does not matter.
  const places = placesIn(found);
  const labels = labelsBeside(label, places, width);
  for (let k = 0, j = 0, rowEnd = width; k < places.length; k++) {
    const o = places[k]!;
    const l = labels[k]!;
    for (; o >= rowEnd; rowEnd += width) j++;
    const i = o - j * width;
    label[o] = l;
    area[l]!++;
    x[l]! += i;
    y[l]! += j;
    if (hasBit(burnished, i, j)) bright[l]!++;
  }
  for (let w = 0; w < words.length; w++) words[w]! |= found.words[w]!;
}

function findInRow(
  found: Bits,
  bears: Bits,
  out: Bits,
  strength: Float32Array,
  end: number,
  j: number,
): void {
  const { width, across, words } = bears;
  for (let k = 0, w = j * across; k < across; k++, w++) {
    const here = words[w]!;
    const beside =
      (here << 1) |
      (here >>> 1) |
      (k > 0 ? words[w - 1]! >>> 31 : 0) |
      (k + 1 < across ? words[w + 1]! << 31 : 0);
    let near = (beside | words[w - across]! | words[w + across]!) & ~(here | out.words[w]!);
    if (k === 0) near &= ~1;
    if (k === across - 1) near &= (1 << ((width - 1) & 31)) - 1;
    if (near !== 0) found.words[w] = strongOf(near, strength, end, j * width + 32 * k);
  }
}

/** Of a word's set bits, those whose element is stronger than `end`. */
function strongOf(word: number, strength: Float32Array, end: number, from: number): number {
  let strong = 0;
  for (let left = word; left !== 0; left &= left - 1) {
    const bit = left & -left;
    if (strength[from + 31 - Math.clz32(bit)]! > end) strong |= bit;
  }
  return strong;
}

function placesIn(bits: Bits): Int32Array {
  const { width, across, words } = bits;
  const places = new Int32Array(countAll(bits));
  let many = 0;
  for (let w = 0; w < words.length; w++) {
    if (words[w] === 0) continue;
    const j = Math.floor(w / across);
    const from = j * width + 32 * (w - j * across);
    for (let left = words[w]!; left !== 0; left &= left - 1)
      places[many++] = from + 31 - Math.clz32(left & -left);
  }
  return places;
}

function labelsBeside(label: Int32Array, places: Int32Array, width: number): Int32Array {
  const labels = new Int32Array(places.length);
  for (let k = 0; k < places.length; k++) {
    const o = places[k]!;
    labels[k] = Math.max(label[o - 1]!, label[o + 1]!, label[o - width]!, label[o + width]!);
  }
  return labels;
}
