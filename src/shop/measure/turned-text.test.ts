import { expect, it } from 'vitest';
import { readDeviation } from '../../core/quantity/deviation.ts';
import { turnedText } from './turned-text.ts';

it('a reading with its sign turned is read as the same size the other way', () => {
  for (const typed of ['+6.5', '6.5', '-6.5', '− 12 um', 'half thou', '1 1/2 thou', '-.0005']) {
    const there = readDeviation(typed, 'thou');
    const back = readDeviation(turnedText(typed), 'thou');
    expect(there.ok && back.ok && back.um).toBe(there.ok && -there.um);
  }
});
