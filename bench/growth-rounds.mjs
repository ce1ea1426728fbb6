import { solveWithHighs } from '../dist/adapters/solver/highs.js';
import { estimateSlide } from '../dist/core/estimate/estimate-slide.js';
import { steer } from '../dist/shop/steer.js';
import { grows } from './grows.mjs';
import { benchInput } from './slide.mjs';

/** The saddle among the bench's that takes longest to prove. */
const seed = 3;
const rounds = [1, 2, 4, 8];

/** Estimate and the whole of steer with the rounds known: the same saddle, looked at ever later in its history. */
export async function roundsGrow(seconds) {
  const whole = await benchInput(seed, rounds.at(-1));
  if (whole.rounds.length < rounds.at(-1)) throw new Error(`the saddle ${seed} is proven too early`);
  // The last round of a history is only measured and printed; what was scraped after it came later.
  const upTo = (many) => ({
    ...whole,
    rounds: whole.rounds.slice(0, many).map(({ scraped, ...round }, k) => ({
      ...round,
      ...(k + 1 < many ? { scraped } : {}),
    })),
  });
  const estimate = await grows('estimate', 'rounds', rounds, (many) => () => estimateSlide(upTo(many)), {
    seconds,
  });
  // A steer may take half a second where passes are chosen anew.
  const few = { seconds, least: 2, warm: 1 };
  const steered = await grows(
    'steer, whole',
    'rounds',
    rounds,
    (many) => () => steer(upTo(many), solveWithHighs),
    few,
  );
  return [...estimate, ...steered];
}
