import { byPad } from '../dist/core/body/slide.js';
import { practiceMachine } from '../dist/core/practice/machine.js';
import { practiceSlides } from '../dist/core/practice/slides.js';

const steps = [2, 1, 3, 1, 2, 0, 1, 2];

/**
 * A simulated saddle on V and flat, three pads of eight zones, measured, blued and scraped over some rounds (a fixed pattern
 * of passes, so that nothing timed here decides what is timed).
 * @returns {import('../dist/core/observe/round.js').SteerInput}
 */
export function benchInput(seed, rounds) {
  const task = practiceSlides['V and flat']('liner');
  const machine = practiceMachine(task, seed);
  const { slide, features, targets, passes, film_um } = task;
  const history = Array.from({ length: rounds }, (_, k) => {
    const { sweeps, levels } = machine.measure();
    const print = machine.print();
    if (k === rounds - 1) return { sweeps, levels, print };
    const made = slide.pads.flatMap((pad, p) =>
      Array.from({ length: pad.zones }, (_, z) => steps[(z + 3 * p + k) % steps.length]),
    );
    machine.scrape(made);
    return { sweeps, levels, print, scraped: { spot: false, passes: byPad(slide, made) } };
  });
  return { slide, features, targets, passes, film_um, rounds: history };
}

/** Seeds of the saddles timed. */
export const seeds = [1, 2, 3, 4, 5, 6];
