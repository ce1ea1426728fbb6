// biome-ignore lint/suspicious/noExplicitAny: as general as the methods they stand for
export type Methods = Readonly<Record<string, (this: any, ...given: any[]) => unknown>>;

/** A place counted from the end when it is negative. */
const placeOf = (length: number, at: number): number => (at < 0 ? length + at : at);

/**
 * Methods of arrays by the language's standard of 2022 and 2023 (ECMAScript, ECMA-262, section 23.1.3), as plain functions of
 * `this`. Holes and subclasses are not minded: the page has neither.
 */
export const arrayMethods = {
  at(this: ArrayLike<unknown>, at = 0): unknown {
    return this[placeOf(this.length, Math.trunc(at) || 0)];
  },
  findLastIndex(this: readonly unknown[], fits: (one: unknown, at: number, all: unknown) => unknown): number {
    let at = this.length - 1;
    while (at >= 0 && !fits(this[at], at, this)) at--;
    return at;
  },
  findLast(this: readonly unknown[], fits: (one: unknown, at: number, all: unknown) => unknown): unknown {
    return this[arrayMethods.findLastIndex.call(this, fits)];
  },
  toReversed(this: readonly unknown[]): unknown[] {
    return [...this].reverse();
  },
  toSorted(this: readonly unknown[], compare?: (a: unknown, b: unknown) => number): unknown[] {
    return [...this].sort(compare);
  },
  toSpliced(this: readonly unknown[], ...given: readonly unknown[]): unknown[] {
    const copy = [...this];
    copy.splice(...(given as [number, number, ...unknown[]]));
    return copy;
  },
  with(this: readonly unknown[], at: number, value: unknown): unknown[] {
    const place = placeOf(this.length, Math.trunc(at) || 0);
    if (place < 0 || place >= this.length)
      throw new RangeError(`place ${at} is not in an array of ${this.length}`);
    const copy = [...this];
    copy[place] = value;
    return copy;
  },
};

/** `Object.hasOwn` of the same standard. Not by `hasOwnProperty.call`: tools that tidy code make that the very call that is missing. */
export const hasOwn = (held: object, name: PropertyKey): boolean =>
  Object.getOwnPropertyDescriptor(held, name) !== undefined;
