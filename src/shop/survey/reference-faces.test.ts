import { describe, expect, it } from 'vitest';
import { inventedPlan, written } from '../../../tests/fixture/invented-job.ts';
import { planFits } from '../../contract/plan-fits.ts';
import type { Reference } from '../../core/kit/kit.ts';
import type { Deed } from '../../core/ledger/entry.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';
import { faceColumn } from '../../core/observe/sweep.ts';
import { faceFromKit, faceFromTwoSides, referenceFaces, referencesFor } from './reference-faces.ts';

const square = { kind: 'square', length_mm: 300, known: { by: 'certificate', doubt_um: 2 } } as const;
const swept = (plan: Pick<typeof inventedPlan, 'setups'>) =>
  plan.setups.filter((setup): setup is SweepSetup => setup.kind === 'sweep');

describe('faces a job is held against', () => {
  it('are told with their slope, their cards, the length swept and the rounds they were turned over in', () => {
    const taken = {
      kind: 'sweep taken',
      round: 2,
      setup: 'square',
      record: { turned_over: true },
      readings: [],
    } as Deed;
    expect(referenceFaces(inventedPlan, written([taken]))).toEqual([
      {
        face: 'square',
        kind: 'square',
        slope_urad: 2,
        sd_urad: 3,
        cards: ['cross ways against the square'],
        length_mm: 160,
        turnedIn: [2],
      },
    ]);
  });

  it('one picked from the kit brings what its certificate and its seat leave, and its name', () => {
    const thing: Reference = { ...square, name: 'granite', reseat_um: 0.75 };
    const change = faceFromKit(inventedPlan, 'square', thing);
    expect(planFits({ ...inventedPlan, ...change }, 'change')).toEqual([]);
    const [sweep] = swept(change);
    // Certificate ± 2 µm is an sd of 1; with 0.75 of seat 1.25 µm over 300 mm: 4.1667 µrad.
    expect(sweep!.face_slope_sd_urad).toBeCloseTo(1.25e3 / 300, 9);
    expect(sweep!.face).toBe('square “granite”');
    expect(change.setups[1]).toEqual(inventedPlan.setups[1]);
    const again = faceFromKit({ ...inventedPlan, ...change }, sweep!.face, { ...thing, name: 'steel' });
    expect(swept(again)[0]!.face).toBe('square “steel”');
    const [face] = referenceFaces({ ...inventedPlan, ...again }, []);
    expect(face).toMatchObject({ kind: 'square', thing: 'steel' });
    expect(referencesFor(face!, { instruments: [], references: [thing] })).toEqual([thing]);
  });
});

it('two sides part the machine from the square, with the sign that a sweep of the job takes out', () => {
  const [setup] = swept(inventedPlan);
  // What the contract says a sweep reads at its last stop: M less face_slope · length, the square turned over: plus.
  const machine = 18;
  const face_slope = 25;
  const points_mm = [setup!.from_mm, setup!.to_mm];
  const last = (turned_over: boolean) =>
    faceColumn({ ...setup!, points_mm, readings_um: [], turned_over })[1]!;
  const found = faceFromTwoSides(inventedPlan, 'square', {
    first_um: machine + face_slope * last(false),
    turned_um: machine + face_slope * last(true),
    length_mm: 160,
    sd_um: 1.2,
  });
  expect(found.machine_um).toBeCloseTo(machine, 9);
  expect(found.slope_urad).toBeCloseTo(face_slope, 9);
  // Evans, Hocken, Estler 1996 (from memory): each half has the variance (u² + u²)/4.
  expect(found.sd_um).toBeCloseTo(1.2 / Math.SQRT2, 9);
  expect(found.slope_sd_urad).toBeCloseTo((1.2 / Math.SQRT2 / 160) * 1e3, 9);
  expect(swept(found.change)[0]).toMatchObject({ face_slope_urad: found.slope_urad, face: 'square' });
  expect(planFits({ ...inventedPlan, ...found.change }, 'change')).toEqual([]);
});
