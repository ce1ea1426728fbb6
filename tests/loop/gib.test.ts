import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { plannedJob, templateInput } from '../../src/contract/template.ts';
import { runLoop } from '../../src/core/practice/loop.ts';
import { practiceMachine } from '../../src/core/practice/machine.ts';
import type { PracticeTask } from '../../src/core/practice/slides.ts';
import { steer } from '../../src/shop/steer.ts';

const template = templateInput(JSON.parse(readFileSync('machines/taper-gib.json', 'utf8')));

/** A gib of the template in its place: the slide's weight on the flats, a hand's pull that brings it onto the gib. */
function gibTask(): PracticeTask {
  const { slide, features, targets, passes, setups, film_um } = plannedJob(template, {}, 'gib');
  return {
    slide,
    features,
    targets,
    passes,
    film_um: film_um!,
    sweeps: [],
    levels: [],
    heights: setups.flatMap((setup) =>
      setup.kind === 'height'
        ? [
            {
              name: setup.name,
              at_mm: setup.at_mm,
              direction: setup.direction,
              reading_um: 0,
              sd_um: setup.sd_um,
            },
          ]
        : [],
    ),
    weight: { force_N: 640, at_mm: [0, 0, 9], direction: [0, -400, -500], stiffness_N_per_mm3: 100 },
    removal: { iron: { median_um: 3.6, log_sd: 0.28 } },
    wear: { turn_urad: [0, 0, 110], bow_um: 4, cubic_um: 3, wave_um: 2, across_um: 0.5, cell_um: 1 },
  };
}

it('a gib scraped from the plays at its ends and its prints: twelve simulated ones end alike at both ends, printing all along, flats untouched', async () => {
  const task = gibTask();
  const [target] = task.targets;
  const rounds: number[] = [];
  for (let seed = 1; seed <= 12; seed++) {
    const machine = practiceMachine(task, seed);
    const end = await runLoop(
      machine,
      task,
      async (input) => {
        const answer = await steer(input, solveWithHighs);
        if (!answer.ok) throw new Error(`seed ${seed}: ${answer.text}`);
        const flats = answer.plan.zones.filter((zone) => zone.pad !== 'gib face');
        expect(
          flats.every((zone) => zone.passes === 0),
          `seed ${seed}`,
        ).toBe(true);
        return { action: answer.plan.action, passes: answer.plan.zones.map((zone) => zone.passes_now) };
      },
      25,
    );
    expect(end.stopped, `seed ${seed}`).toBe(true);
    rounds.push(end.rounds);
    const truth = machine.truth();
    const half = (target!.high - target!.low) / 2;
    expect(Math.abs(truth.features['gib ends']!), `seed ${seed}`).toBeLessThan(1.5 * half);
    const face = truth.bearing['gib face']!;
    expect(face.reduce((sum, share) => sum + share, 0) / face.length, `seed ${seed}`).toBeGreaterThan(0.5);
  }
  console.log(`gibs 1 to 12: rounds ${rounds.sort((a, b) => a - b).join(' ')}`);
});
