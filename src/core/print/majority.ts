import { type Bits, noBits } from './bits.ts';

/**
 * Each element as most of its nine are: closes cracks and takes off hairs. The outermost stay as they are.
 *
 * Thirty-two elements at once, by the logic of adders: of each row's three neighbours the sum has a bit for one and a bit for
 * two; three such rows have five or more when three of their twos are set, or two of them and an odd one left.
 */
export function majority(mask: Bits): Bits {
  const { width, height, across, words } = mask;
  const result = noBits(width, height);
  result.words.set(words);
  const ones = new Int32Array(words.length);
  const twos = new Int32Array(words.length);
  for (let j = 0, w = 0; j < height; j++)
    for (let k = 0; k < across; k++, w++) {
      const here = words[w]!;
      const before = (here << 1) | (k > 0 ? words[w - 1]! >>> 31 : 0);
      const after = (here >>> 1) | (k + 1 < across ? words[w + 1]! << 31 : 0);
      ones[w] = here ^ before ^ after;
      twos[w] = (here & before) | (after & (here | before));
    }
  const last = (width - 1) >> 5;
  const lastBit = 1 << ((width - 1) & 31);
  for (let j = 1; j < height - 1; j++)
    for (let k = 0, w = j * across; k < across; k++, w++) {
      const up = ones[w - across]!;
      const here = ones[w]!;
      const down = ones[w + across]!;
      const odd = up ^ here ^ down;
      const carried = (up & here) | (down & (up | here));
      const a = twos[w - across]!;
      const b = twos[w]!;
      const c = twos[w + across]!;
      const both = a & b;
      const others = c & carried;
      const three = (both & (c | carried)) | (others & (a | b));
      const two = both | others | ((a ^ b) & (c ^ carried));
      const edges = (k === 0 ? 1 : 0) | (k === last ? lastBit : 0);
      result.words[w] = ((three | (two & odd)) & ~edges) | (words[w]! & edges);
    }
  return result;
}
