import { describe, expect, it } from 'vitest';
import type { Pad } from '../body/pad.ts';
import { zoneRoughness } from './bearing.ts';
import { estimateSlide } from './estimate-slide.ts';
import { drawnOut } from './scraping.ts';

const pad = (name: string, y: number): Pad => ({
  name,
  centre_mm: [0, y, 0],
  normal: [0, 0, 1],
  length_mm: 300,
  width_mm: 50,
  zones: 3,
  material: 'liner',
});
const estimate = estimateSlide({
  slide: { name: 'table', free: 'x', pads: [pad('near', -100), pad('far', 100)] },
  features: [{ name: 'level along', kind: 'turn', axis: 'y' }],
  targets: [],
  passes: { liner: { um: 8, sd_um: 2 } },
  rounds: [
    { sweeps: [], levels: [{ name: 'along', along: [1, 0, 0], reading_urad: 0, sd_urad: 4 }], print: {} },
  ],
});
const { model, known } = estimate;

describe('strokes that run over a zone’s edge', () => {
  it('bring an eighteenth of the difference over each edge, by hand; another pad has none of it', () => {
    const { count } = drawnOut(model, { spot: false, count: [0, 9, 0, 4, 4, 4], wider: 1 });
    for (const [z, passes] of [0.5, 8, 0.5, 4, 4, 4].entries()) expect(count[z]).toBeCloseTo(passes, 12);
  });
  it('are not drawn in spotting, which stays on the blue', () => {
    const made = { spot: true, count: [0, 2, 0, 0, 0, 0], wider: 1 };
    expect(drawnOut(model, made)).toBe(made);
  });
});

describe('the roughness of a zone', () => {
  const roughAfter = (passes: number, pass_um: number): number => {
    const state = { ...known.state, mean: known.state.mean.slice() };
    state.mean[model.layout.whole(0)] = pass_um;
    return zoneRoughness(
      model,
      state,
      model.zones.map(() => passes),
    )[0]!;
  };
  it('does not hang on the hand before any pass, and then falls under a light one and grows under a heavy one', () => {
    expect(roughAfter(0, 3)).toBe(roughAfter(0, 14));
    expect(roughAfter(1, 3)).toBeLessThan(roughAfter(0, 3));
    expect(roughAfter(6, 3)).toBeLessThan(roughAfter(1, 3));
    expect(roughAfter(6, 14)).toBeGreaterThan(roughAfter(1, 14));
  });
  // Height sds within the zones of the practice saddle, seeds 1 to 100, six passes and more: hands of 5.7, 8.3 and 11.5 µm.
  it.each([
    [5.7, 2.72],
    [8.3, 3.53],
    [11.5, 4.5],
  ])('after many passes of %f µm is what the practice saddles have, %f µm, within a tenth', (pass_um, is) => {
    expect(Math.abs(roughAfter(8, pass_um) / is - 1)).toBeLessThan(0.1);
  });
});
