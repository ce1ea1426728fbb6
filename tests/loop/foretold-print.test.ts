import { beforeAll, describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import type { Pad } from '../../src/core/body/pad.ts';
import { settledPose, settling } from '../../src/core/body/settle.ts';
import { type Slide, zonesOf, zoneVector } from '../../src/core/body/slide.ts';
import { add, axisVector, cross, scale, unit } from '../../src/core/body/vector.ts';
import { estimateSlide } from '../../src/core/estimate/estimate-slide.ts';
import { product } from '../../src/core/math/gaussian.ts';
import { seededRandom } from '../../src/core/math/random.ts';
import { cellsAcross, cellsAlong, cellsOf, zoneMeans } from '../../src/core/practice/cells.ts';
import { usualWear, wornGaps } from '../../src/core/practice/form.ts';
import { runLoop } from '../../src/core/practice/loop.ts';
import { practiceMachine } from '../../src/core/practice/machine.ts';
import { seatCells } from '../../src/core/practice/seat.ts';
import { practiceSlides } from '../../src/core/practice/slides.ts';
import { foretellPrint } from '../../src/core/print/foretold.ts';
import { wrenchOf } from '../../src/core/rest/load.ts';
import { restUnder } from '../../src/core/rest/rest.ts';
import { roughRest } from '../../src/core/rest/rough-rest.ts';
import { steerFrom } from '../../src/shop/steer.ts';

const task = practiceSlides['V and flat']!('liner');
const { slide, weight, film_um } = task;
const wrench = wrenchOf(weight);
const { stiffness_N_per_mm3 } = weight;
const zones = zonesOf(slide);
const seeds = Array.from({ length: 20 }, (_, k) => k + 1);
/** Height sd within a zone of the practice machines, µm: their form, cell by cell, about the zones' means. */
const roughness_um = 2.7;
/** The mark: shares that differ by less than this. */
const near = 0.1;

interface Held {
  readonly told: number;
  readonly sd: number;
  readonly is: number;
}
const alike = (held: readonly Held[]): number =>
  held.filter(({ told, is }) => Math.abs(told - is) < near).length / held.length;
const bias = (held: readonly Held[]): number =>
  held.reduce((sum, { told, is }) => sum + told - is, 0) / held.length;
const withinTwoSd = (held: readonly Held[]): number =>
  held.filter(({ told, is, sd }) => Math.abs(told - is) <= 2 * Math.max(sd, 1e-9)).length / held.length;
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const say = (what: string, held: readonly Held[]): void =>
  console.log(
    `${what}: ${percent(alike(held))} of ${held.length} zones differ by less than 10 % of their area, ${held.some(({ sd }) => sd > 0) ? `${percent(withinTwoSd(held))} within two sd, ` : ''}bias ${bias(held).toFixed(3)}`,
  );

/** From zone means at any nominal pose: rest of rough faces, then the print. */
function foretold(gap_um: readonly number[]): { share: number; sd: number }[] {
  const seat = roughRest({ slide, gap_um, wrench, stiffness_N_per_mm3, roughness_um });
  expect(seat.converged).toBe(true);
  return foretellPrint({ slide, gap_um: seat.gap_um, roughness_um, film_um, film_sd_um: 0.12 * film_um });
}

/** Each pad cut in strips and each zone in cells: a form as fine as the practice machine's, in its order. */
const fineSlide: Slide = {
  ...slide,
  pads: slide.pads.flatMap((pad) =>
    Array.from({ length: cellsAcross }, (_, strip): Pad => {
      const sideways = cross(unit(pad.normal), axisVector(slide.free));
      const across = (strip + 0.5) / (cellsAcross / 2) - 1;
      return {
        ...pad,
        name: `${pad.name} ${strip}`,
        centre_mm: add(pad.centre_mm, scale(sideways, (across * pad.width_mm) / 2)),
        width_mm: pad.width_mm / cellsAcross,
        zones: pad.zones * cellsAlong,
      };
    }),
  ),
};

describe('a plan carried out, its form known cell by cell: prints of core/rest and of the practice machine', () => {
  it('agree in nine zones of ten and more', () => {
    const cells = cellsOf(slide);
    const held: Held[] = [];
    const byZone: Held[] = [];
    for (const seed of seeds) {
      const random = seededRandom(seed);
      const turn = usualWear.turn_urad.map((sd) => random.normal(0, sd));
      const gaps = wornGaps(cells, slide.pads.length, [0, 0, 0, ...turn], usualWear, random);
      // The plan: whole passes of 8 µm that bring each zone down to its pad's lowest.
      const settled = settling(slide);
      const means = zoneMeans(cells, gaps, zones.length);
      const pose = settledPose(settled, means);
      const high = means.map((mean, z) => mean + product(settled.rows[z]!, pose));
      const depth = high.map((gap) => 8 * Math.max(0, Math.round((Math.max(...high) - gap) / 8)));
      const after = gaps.map((gap, c) => gap + depth[cells[c]!.zone]!);

      const seat = seatCells(cells, after, weight, pose);
      const isBlue = cells.map((cell, c) => (after[c]! + product(cell.row, seat) <= film_um ? 1 : 0));
      const simulated = zoneMeans(cells, isBlue, zones.length);
      const rested = restUnder({ slide: fineSlide, stiffness_N_per_mm3, film_um }, after, wrench);
      expect(rested.converged).toBe(true);
      const predicted = zoneMeans(
        cells,
        rested.gap_um.map((gap) => (gap <= film_um ? 1 : 0)),
        zones.length,
      );
      const fromMeans = foretold(zoneMeans(cells, after, zones.length));
      simulated.forEach((is, z) => {
        held.push({ told: predicted[z]!, sd: 0, is });
        byZone.push({ told: fromMeans[z]!.share, sd: fromMeans[z]!.sd, is });
      });
    }
    say('form known cell by cell', held);
    say('form known by zone', byZone);
    // The mark, met where the form is known as finely as the machine has it.
    expect(alike(held)).toBeGreaterThan(0.9);
    // A zone of twelve cells known by its mean alone: chance moves its share by up to 14 points.
    expect(withinTwoSd(byZone)).toBeGreaterThan(0.9);
  });
});

describe('twenty jobs steered with the truth hidden', () => {
  const planned: Held[] = [];
  const known: Held[] = [];
  beforeAll(async () => {
    for (const seed of seeds) {
      const machine = practiceMachine(task, seed);
      let last: readonly { readonly told: number; readonly sd: number }[] | undefined;
      await runLoop(
        machine,
        task,
        async (input) => {
          const truth = machine.truth();
          const is = zoneVector(slide, truth.bearing);
          last?.forEach((told, z) => {
            planned.push({ ...told, is: is[z]! });
          });
          foretold(truth.gaps_um).forEach(({ share, sd }, z) => {
            known.push({ told: share, sd, is: is[z]! });
          });
          const answer = await steerFrom(input, estimateSlide(input), solveWithHighs);
          if (!answer.ok) throw new Error(answer.text);
          const sds = zoneVector(slide, answer.rest.print_sd);
          last = zoneVector(slide, answer.rest.print).map((told, z) => ({ told, sd: sds[z]! }));
          return { action: answer.plan.action, passes: answer.plan.zones.map((zone) => zone.passes_now) };
        },
        25,
      );
    }
  }, 600_000);

  it('where the zones’ mean gaps are known the print lies within its doubt', () => {
    say('mean gaps known', known);
    expect(withinTwoSd(known)).toBeGreaterThan(0.9);
    expect(Math.abs(bias(known))).toBeLessThan(0.05);
    expect(alike(known)).toBeGreaterThan(0.5);
  });

  it('what a plan says of the next print leans to neither side, and lies within the doubt told with it', () => {
    say('the plan’s own forecast', planned);
    // Before rough faces were reckoned with it said 19 points too much blue.
    expect(Math.abs(bias(planned))).toBeLessThan(0.05);
    // Passes scatter by a fifth and the estimate has its doubt: nine in ten is out of reach, four in ten is what was measured.
    expect(alike(planned)).toBeGreaterThan(0.35);
    expect(withinTwoSd(planned)).toBeGreaterThan(0.9);
    expect(withinTwoSd(planned)).toBeLessThan(0.99);
  });
});
