import type { KeyboardEvent } from 'react';
import type { SumUnit } from '../../../core/sums/sum.ts';
import type { Units } from '../keep/settings.ts';

/** The unit of a cell, as it stands behind its label. */
export const unitWords = (unit: SumUnit, system: Units): string => {
  const inch = system === 'inch';
  const words: Record<SumUnit, string> = {
    mm: inch ? 'in' : 'mm',
    um: inch ? 'thou' : 'µm',
    urad: inch ? 'thou in 12 in' : 'µrad',
    deg: '°',
    ratio: '1 in so many',
    K: 'K',
    um_mK: 'µm/m/K',
    GPa: 'GPa',
    kg_m3: 'kg/m³',
    kg: 'kg',
    divisions: 'divisions',
  };
  return words[unit];
};

/** Enter goes on to the next cell of the form. */
export function onToNext(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  const cells = [...(event.currentTarget.form?.querySelectorAll<HTMLInputElement>('input') ?? [])];
  cells[cells.indexOf(event.currentTarget) + 1]?.focus();
}
