import { solveWithHighs } from '../dist/adapters/solver/highs.js';
import { byPad } from '../dist/core/body/slide.js';
import { estimateSlide } from '../dist/core/estimate/estimate-slide.js';
import { planSlide } from '../dist/core/plan/plan-slide.js';
import { practiceMachine } from '../dist/core/practice/machine.js';
import { practiceSlides } from '../dist/core/practice/slides.js';

/** Seeds of the saddles timed. */
export const seeds = [1, 2, 3, 4, 5, 6];

/**
 * A simulated saddle on V and flat, three pads of eight zones, measured, blued and scraped as the planner says: such
 * histories as a job has. Making them is not timed.
 * @returns what steer is asked in that round, or in the last one when the job stopped before
 */
export async function benchInput(seed, rounds) {
  const task = practiceSlides['V and flat']('liner');
  const machine = practiceMachine(task, seed);
  const { slide, features, targets, passes, film_um } = task;
  const before = [];
  for (;;) {
    const round = { ...machine.measure(), print: machine.print() };
    const input = { slide, features, targets, passes, film_um, rounds: [...before, round] };
    if (input.rounds.length === rounds) return input;
    const plan = await planSlide(input, estimateSlide(input), solveWithHighs);
    if (!plan.ok || plan.action === 'stop') return input;
    const made = plan.zones.map((zone) => zone.passes_now);
    const spot = plan.action === 'spot';
    if (spot) machine.spot(made);
    else machine.scrape(made);
    before.push({ ...round, scraped: { spot, passes: byPad(slide, made) } });
  }
}

/** One such history for each seed. */
export const benchInputs = (rounds) => Promise.all(seeds.map((seed) => benchInput(seed, rounds)));
