import { expect, it } from 'vitest';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { runLoop } from '../../src/core/practice/loop.ts';
import { practiceMachine } from '../../src/core/practice/machine.ts';
import { practiceSlides } from '../../src/core/practice/slides.ts';
import { steer } from '../../src/shop/steer.ts';

it('twenty simulated saddles, their truth hidden: nine in ten stop in band, none stops out by more than half the band', async () => {
  const task = practiceSlides['V and flat']!('liner');
  let stopped = 0;
  const rounds: number[] = [];
  for (let seed = 1; seed <= 20; seed++) {
    const machine = practiceMachine(task, seed);
    const end = await runLoop(
      machine,
      task,
      async (input) => {
        const answer = await steer(input, solveWithHighs);
        if (!answer.ok) throw new Error(`seed ${seed}: ${answer.text}`);
        return { action: answer.plan.action, passes: answer.plan.zones.map((zone) => zone.passes_now) };
      },
      25,
    );
    if (!end.stopped) continue;
    rounds.push(end.rounds);
    const truth = machine.truth().features;
    const out = task.targets.map(({ feature, low, high }) => {
      const value = truth[feature]!;
      return Math.max(0, low - value, value - high) / ((high - low) / 2);
    });
    expect(Math.max(...out), `seed ${seed}`).toBeLessThanOrEqual(1);
    if (Math.max(...out) === 0) stopped += 1;
  }
  console.log(`seeds 1 to 20: ${stopped} stopped in band, rounds ${rounds.sort((a, b) => a - b).join(' ')}`);
  expect(stopped).toBeGreaterThanOrEqual(18);
});
