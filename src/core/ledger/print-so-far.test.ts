import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearsFromBlue } from '../print/cover.ts';
import { PrintSoFar } from './print-so-far.ts';

const pads = ['front', 'flat'] as const;
const zones = 3;
const share = fc.double({ min: 0, max: 1, noNaN: true });
const list = <T>(each: fc.Arbitrary<T>) => fc.array(each, { minLength: zones, maxLength: zones });
const word = fc.oneof(
  fc.record({ pad: fc.constantFrom(...pads), tap: list(share) }),
  fc.record({ pad: fc.constantFrom(...pads), photo: list(fc.option(share)) }),
);

describe('the print as taps and photos add up', () => {
  it('each zone is as the last that told of it said', () => {
    fc.assert(
      fc.property(fc.array(word, { maxLength: 10 }), (told) => {
        const print = new PrintSoFar();
        for (const one of told)
          if ('tap' in one) print.tapped({ [one.pad]: one.tap });
          else print.photographed(one.pad, one.photo);
        for (const pad of pads) {
          const last = Array.from({ length: zones }, (_, z) =>
            told
              .toReversed()
              .filter((one) => one.pad === pad)
              .map((one) => {
                if ('tap' in one) return one.tap[z];
                const blue = one.photo[z];
                return typeof blue === 'number' ? bearsFromBlue(blue) : blue;
              })
              .find((one) => one !== null && one !== undefined),
          );
          const whole = last.every((one) => one !== undefined);
          expect(print.known().print?.share[pad]).toEqual(whole ? last : undefined);
        }
      }),
    );
  });
});
