import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bitsOf, hasBit } from './bits.ts';
import { majority } from './majority.ts';

describe('each element as most of its nine', () => {
  it('is what counting the nine gives, the outermost as they were', () => {
    const mask = fc
      .tuple(fc.integer({ min: 1, max: 70 }), fc.integer({ min: 1, max: 12 }))
      .chain(([width, height]) =>
        fc.tuple(
          fc.constant(width),
          fc.uint8Array({ minLength: width * height, maxLength: width * height, max: 1 }),
        ),
      );
    fc.assert(
      fc.property(mask, ([width, given]) => {
        const height = given.length / width;
        const found = majority(bitsOf(given, width, height));
        for (let j = 0; j < height; j++)
          for (let i = 0; i < width; i++) {
            let many = 0;
            for (let b = -1; b <= 1; b++)
              for (let a = -1; a <= 1; a++) many += given[(j + b) * width + i + a] ?? 0;
            const isEdge = i === 0 || j === 0 || i === width - 1 || j === height - 1;
            const expected = isEdge ? given[j * width + i] === 1 : many >= 5;
            if (hasBit(found, i, j) !== expected) expect.fail(`element ${i}, ${j} is not ${expected}`);
          }
      }),
    );
  });
});
