/** A seeded source of chance: the same seed gives the same sequence on every machine. */
export interface Random {
  /** Even between 0 (included) and 1 (not). */
  readonly even: () => number;
  /** Standard normal; with arguments, of this mean and sd. */
  readonly normal: (mean?: number, sd?: number) => number;
}

/**
 * Jenkins' small fast generator of 32-bit words with a counter (sfc32), stirred twenty times; normal values by Box and
 * Muller's rule. Both from memory; their moments are held in the test.
 * @param seed  any whole number
 */
export function seededRandom(seed: number): Random {
  let a = seed | 0;
  let b = Math.floor(seed / 2 ** 32) | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  const word = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return sum >>> 0;
  };
  for (let k = 0; k < 20; k++) word();
  const even = (): number => word() / 2 ** 32;
  let spare: number | undefined;
  const standard = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    // 1 − u is above 0, so that the logarithm exists.
    const radius = Math.sqrt(-2 * Math.log(1 - even()));
    const angle = 2 * Math.PI * even();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { even, normal: (mean = 0, sd = 1) => mean + sd * standard() };
}
