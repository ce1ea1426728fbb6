import type { AskedSlip } from '../../core/practice/record.ts';

/** Slips that can be asked for, as a person picks them. */
export const slipChoices: readonly {
  readonly slip: AskedSlip;
  readonly words: string;
  readonly small: string;
}[] = [
  { slip: 'sweep reversed', words: 'Signs turned', small: 'one sweep is read the wrong way round' },
  { slip: 'reference moved', words: 'Square moved', small: 'the reference shifts between two rounds' },
  { slip: 'zone missed', words: 'Zone missed', small: 'one zone of a plan is not scraped' },
  { slip: 'pass too many', words: 'Pass too many', small: 'one pad is scraped once more than ticked' },
  { slip: 'surprise', words: 'Surprise me', small: 'one of these, or none: find out' },
];
