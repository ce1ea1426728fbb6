/**
 * A number in a machine's file: the number itself, or a short sum over the machine's dimensions.
 *
 *     "length"      "-sweep/2"      "across/2 + 14"      "height - 3*pad"
 *
 * Terms are added or subtracted; a term is a number or a dimension's key, times or over a number if wished.
 */
export type Measure = number | string;

export const measurePattern =
  /^\s*[+-]?\s*[\w.]+(\s*[*/]\s*[\w.]+)?(\s*[+-]\s*[\w.]+(\s*[*/]\s*[\w.]+)?)*\s*$/;
const term = /([+-]?)\s*([\w.]+)(?:\s*([*/])\s*([\w.]+))?/g;

/**
 * What a measure comes to.
 * @param dimensions  the machine's dimensions by key; an optional one that was not given is undefined
 * @returns           undefined when it rests on a dimension that was not given
 * @throws RangeError the measure cannot be read, or names a dimension that the machine does not have
 * @example measured('across/2 + 14', { across: 200 })      // 114
 */
export function measured(
  measure: Measure,
  dimensions: Readonly<Record<string, number | undefined>>,
): number | undefined {
  if (typeof measure === 'number') return measure;
  if (!measurePattern.test(measure)) throw new RangeError(`"${measure}" is not a sum of dimensions`);
  const worth = (word: string): number | undefined => {
    if (/^[\d.]/.test(word)) {
      const value = Number(word);
      if (Number.isNaN(value)) throw new RangeError(`"${word}" in "${measure}" is not a number`);
      return value;
    }
    if (!Object.hasOwn(dimensions, word))
      throw new RangeError(`"${measure}" names the dimension "${word}", which this machine does not have`);
    return dimensions[word];
  };
  let sum = 0;
  for (const [, sign, first, operator, second] of measure.matchAll(term)) {
    const left = worth(first!);
    const right = second === undefined ? 1 : worth(second);
    if (left === undefined || right === undefined) return undefined;
    sum += (sign === '-' ? -1 : 1) * (operator === '/' ? left / right : left * right);
  }
  return sum;
}
