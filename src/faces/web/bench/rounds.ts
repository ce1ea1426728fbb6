import type { JobAnswer } from '../../../shop/answer-job.ts';
import type { RoundValue } from './trend-gauge.tsx';

/** A feature over the rounds before this one, oldest first. */
export const pastRounds = (answer: JobAnswer | undefined, feature: string, before: number): RoundValue[] =>
  (answer?.rounds ?? []).flatMap(({ round, features }) => {
    const value = features.find((one) => one.name === feature);
    return value && round < before ? [{ ...value, label: `R${round}` }] : [];
  });
