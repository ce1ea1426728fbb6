import { exampleText } from '../../../core/sums/said.ts';
import type { SumUnit } from '../../../core/sums/sum.ts';
import { readSumInput } from '../../../core/sums/typed.ts';
import type { Units } from '../keep/settings.ts';

/** How the unit of a bare number is written behind it. */
const written: Partial<Record<SumUnit, Record<Units, string>>> = {
  mm: { metric: 'mm', inch: 'in' },
  um: { metric: 'um', inch: 'thou' },
  urad: { metric: 'urad', inch: 'thou in 12 in' },
};

/** What was typed in one system, so that it means the same read in another: a bare number gets the unit it was typed in. */
export function sameMeaning(text: string, unit: SumUnit, from: Units, to: Units): string {
  const units = written[unit];
  const before = readSumInput(text, unit, from);
  if (!units || !before.ok) return text;
  const means = (other: string): boolean => {
    const read = readSumInput(other, unit, to);
    return read.ok && read.value === before.value && read.sd === before.sd;
  };
  if (means(text)) return text;
  const [value, ...doubt] = text.split(/(?=±|\+\/-|\+-)/);
  const withUnit = `${value!.trim()} ${units[from]} ${doubt.join('')}`.trim();
  if (means(withUnit)) return withUnit;
  const doubtText = before.sd === undefined ? '' : ` ± ${exampleText(2 * before.sd, unit, to)}`;
  return exampleText(before.value, unit, to) + doubtText;
}
