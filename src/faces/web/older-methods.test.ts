import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrayMethods, hasOwn } from './older-methods.ts';

const lists = fc.array(fc.integer({ min: -9, max: 9 }), { maxLength: 8 });
const places = fc.integer({ min: -10, max: 10 });
const odd = (n: unknown) => (n as number) % 2 !== 0;
/** What it gives, or that it refuses. */
const outcome = (ask: () => unknown) => {
  try {
    return ask();
  } catch (failure) {
    return (failure as Error).name;
  }
};

/** Reference: the same methods of the engine the tests run on. */
describe('methods for browsers of 2021', () => {
  it('give what the engine’s own give', () => {
    fc.assert(
      fc.property(lists, places, places, (list, at, count) => {
        expect(arrayMethods.at.call(list, at)).toBe(list.at(at));
        expect(arrayMethods.at.call('way', at)).toBe('way'.at(at));
        expect(arrayMethods.findLast.call(list, odd)).toBe(list.findLast(odd));
        expect(arrayMethods.findLastIndex.call(list, odd)).toBe(list.findLastIndex(odd));
        expect(arrayMethods.toReversed.call(list)).toEqual(list.toReversed());
        expect(arrayMethods.toSorted.call(list)).toEqual(list.toSorted());
        const falling = (a: number, b: number) => b - a;
        expect(arrayMethods.toSorted.call(list, falling as never)).toEqual(list.toSorted(falling));
        expect(arrayMethods.toSpliced.call(list, at, count, 7)).toEqual(list.toSpliced(at, count, 7));
        expect(outcome(() => arrayMethods.with.call(list, at, 7))).toEqual(outcome(() => list.with(at, 7)));
      }),
    );
  });

  it('leave what they are asked of as it was', () => {
    const list = [3, 1, 2];
    arrayMethods.toSorted.call(list);
    arrayMethods.toReversed.call(list);
    arrayMethods.toSpliced.call(list, 0, 1);
    arrayMethods.with.call(list, 0, 9);
    expect(list).toEqual([3, 1, 2]);
  });

  it('know a thing’s own from what it inherits', () => {
    expect(hasOwn({ way: 1 }, 'way')).toBe(true);
    expect(hasOwn({ way: 1 }, 'toString')).toBe(false);
  });
});
