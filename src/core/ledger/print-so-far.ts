import { bearsFromBlue } from '../print/cover.ts';
import type { BlueWord } from './entry.ts';

/**
 * The print of a round as taps and photos add up: zone by zone the last word wins, and a photo that cannot tell of a zone
 * leaves what was there.
 */
export class PrintSoFar {
  readonly #share: Record<string, readonly (number | null)[]> = {};
  readonly #words: Record<string, readonly BlueWord[]> = {};

  tapped(
    share: Readonly<Record<string, readonly number[]>>,
    words: Readonly<Record<string, readonly BlueWord[]>> = {},
  ): void {
    for (const pad of Object.keys(share)) delete this.#words[pad];
    Object.assign(this.#share, share);
    Object.assign(this.#words, words);
  }

  /** @param shares  of each zone's area that the photo shows blue */
  photographed(pad: string, shares: readonly (number | null)[]): void {
    const before = this.#share[pad];
    this.#share[pad] = shares.map((share, zone) =>
      share === null ? (before?.[zone] ?? null) : bearsFromBlue(share),
    );
    // The words no longer say what the shares do.
    if (shares.some((share) => share !== null)) delete this.#words[pad];
  }

  /** `print` of the round's record; a pad with a zone that nobody has told of yet is left out of it. */
  known(): {
    print?: { share: Record<string, readonly number[]>; tapped: Record<string, readonly BlueWord[]> };
  } {
    const whole = Object.entries(this.#share).filter((pad): pad is [string, readonly number[]] =>
      pad[1].every((share) => share !== null),
    );
    return whole.length > 0 ? { print: { share: Object.fromEntries(whole), tapped: this.#words } } : {};
  }
}
