import { describe, expect, it } from 'vitest';
import { inventedPlan } from '../../../tests/fixture/invented-job.ts';
import { bedReach } from './usual-work.ts';
import { workTyped } from './work-typed.ts';

const bed = {
  stations_mm: [0, 700, 1900],
  ways: inventedPlan.slide.pads.map((pad) => ({ pad: pad.name, height_um: [0, -12, 3] })),
};
const [first, last] = bedReach(inventedPlan.slide, bed);

describe('the work as it is typed', () => {
  it('takes the whole bed and what is usual where nothing is typed', () => {
    const { work, wrong } = workTyped(inventedPlan, bed, {}, 'metric');
    expect(wrong).toEqual({});
    expect([work.from_mm, work.to_mm]).toEqual([first, last]);
    expect(work.most_mm).toBeCloseTo(first + (last - first) / 3, 9);
  });
  it('reads lengths in mm or inches and small sizes in µm or thou', () => {
    const inch = workTyped(
      inventedPlan,
      bed,
      { tool_up_mm: '8', diameter_um: '.4', facing_um: '5 µm' },
      'inch',
    );
    expect(inch.wrong).toEqual({});
    expect(inch.work.tool_up_mm).toBeCloseTo(203.2, 9);
    expect(inch.work.diameter_um).toBeCloseTo(10.16, 9);
    expect(inch.work.facing_um).toBeCloseTo(5, 9);
  });
  it('says why not: unreadable, nothing allowed, off the bed, ends before it begins', () => {
    const { wrong, work } = workTyped(
      inventedPlan,
      bed,
      { from_mm: '5000', tool_up_mm: 'high', diameter_um: '0' },
      'metric',
    );
    expect(wrong.from_mm).toMatch(/^Read as 5000\s+mm; expected .* whole slide stands on surveyed bed/);
    expect(wrong.tool_up_mm).toContain('“high”');
    expect(wrong.diameter_um).toContain('expected more than 0');
    expect(work.diameter_um).toBe(10);
    const turned = workTyped(inventedPlan, bed, { from_mm: `${last - 20}`, to_mm: `${last - 90}` }, 'metric');
    expect(turned.wrong.to_mm).toContain('after where its work begins');
  });
});
