import { solveWithHighs } from '../dist/adapters/solver/highs.js';
import { steer } from '../dist/shop/steer.js';
import { summary } from './clock.mjs';
import { highsAlone, recording } from './highs.mjs';
import { benchInputs } from './slide.mjs';

const rounds = 4;

/** The whole of steer, as a face asks for it. */
export async function steerTiming(quick) {
  const groups = [];
  const times = [];
  const inputs = await benchInputs(rounds);
  for (const input of quick ? inputs.slice(0, 2) : inputs) {
    const record = recording(solveWithHighs);
    const start = performance.now();
    await steer(input, record.solve);
    times.push(performance.now() - start);
    groups.push(record.programs);
  }
  return [
    {
      what: `steer, whole, ${rounds} rounds`,
      aim: 'never over 3 s',
      times: summary(times),
      highs: highsAlone(groups, 1),
    },
  ];
}
