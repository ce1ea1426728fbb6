import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { steerInput } from '../../contract/steer.ts';
import { estimateSlide } from '../estimate/estimate-slide.ts';
import type { SteerInput } from '../observe/round.ts';
import { planSlide } from './plan-slide.ts';

const steerCase = (k: number): SteerInput =>
  steerInput(JSON.parse(readFileSync(`checks/data/cases/steer-${k}.json`, 'utf8')).input);
const plan = (input: SteerInput) => planSlide(input, estimateSlide(input), solveWithHighs);

describe('a first round', () => {
  it('in band but off its aims asks no passes, and still says the depth that would reach them', async () => {
    const asked = steerCase(4);
    const wide: SteerInput = {
      ...asked,
      targets: asked.targets.map((target) => ({ ...target, low: -500, high: 500 })),
    };
    const answer = await plan(wide);
    if (!answer.ok) throw new Error(answer.text);
    expect(answer.action).toBe('spot');
    expect(answer.zones.every((zone) => zone.passes === 0)).toBe(true);
    // The band does not enter the continuous answer: the case's own least volume, by an independent solver.
    expect(Math.abs(answer.volume_mm3 / 333.1296 - 1)).toBeLessThan(1e-3);
  });

  it('whose stock takes the depth but not the whole passes names the pad and what is short', async () => {
    const asked = steerCase(4);
    // Depths up to 19.9 µm fit under 20.5 µm; a pass of 21 µm does not.
    const tight: SteerInput = {
      ...asked,
      passes: { liner: { um: 21, sd_um: 5 } },
      slide: { ...asked.slide, pads: asked.slide.pads.map((pad) => ({ ...pad, stock_um: 20.5 })) },
    };
    const answer = await plan(tight);
    if (answer.ok) throw new Error('expected no answer');
    expect(answer.why).toBe('limits');
    expect(answer.limits.map((limit) => limit.kind)).toContain('stock');
    expect(answer.limits.find((limit) => limit.kind === 'stock')!.short).toBeCloseTo(0.5, 3);
    expect(answer.text).toMatch(/stock of pad "[a-z ]+" is short by 0\.5 µm/);
  });

  it('whose band is narrower than whole passes can meet names the feature', async () => {
    const asked = steerCase(4);
    const narrow: SteerInput = {
      ...asked,
      targets: asked.targets.map((target, k) => (k === 0 ? { ...target, low: 39.999999, high: 40 } : target)),
    };
    const answer = await plan(narrow);
    if (answer.ok) throw new Error('expected no answer');
    expect(answer.text).toMatch(/feature "facing" stays .* µrad outside its band/);
  });
});
