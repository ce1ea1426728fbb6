import { describe, it } from 'vitest';
import { expectPrinted } from './near.ts';
import { sumOf } from './sum-of.ts';

/*
 * All derived: a circle touching both flanks stands R / sin(half the angle) above the corner; a slide closed up on both
 * flanks moves by each flank's metal along that flank's normal. Worked by hand, no evidence from outside.
 */
describe('a roll in a V', () => {
  it.each([
    [90, 20, '14.142135624', '24.142135624'],
    [60, 20, '20.0000000', '30.0000000'],
    [120, 30, '17.320508076', '32.320508076'],
    [110, 25, '15.259682360', '27.759682360'],
  ])('%d°, roll of %d: middle %s, top %s above the corner', (angle_deg, roll_mm, middle, top) => {
    const got = sumOf('v-over-roll', { angle_deg, roll_mm });
    expectPrinted(got.middle!.value, middle);
    expectPrinted(got.top!.value, top);
  });
  it('tops of rolls of 20 and 40 at 24.142135624 and 48.284271247: 90°', () =>
    expectPrinted(
      sumOf('v-angle', { small_mm: 20, large_mm: 40, top_small_mm: 24.142135624, top_large_mm: 48.284271247 })
        .angle!.value,
      '90.00000',
    ));
});

describe('metal off the flanks of a V', () => {
  const drop = (first: number, second: number, off_first: number, off_second: number) =>
    sumOf('v-drop', {
      first_lean_deg: first,
      second_lean_deg: second,
      first_off_um: off_first,
      second_off_um: off_second,
    });
  it('10 µm off both flanks of a 90° V: 14.142136 down, nothing sideways', () => {
    const got = drop(45, 45, 10, 10);
    expectPrinted(got.down!.value, '14.142136');
    expectPrinted(got.aside!.value, '0.000000');
  });
  it('10 µm off one flank: 7.071068 down and 7.071068 closing on the scraped flank', () => {
    const got = drop(45, 45, 10, 0);
    expectPrinted(got.down!.value, '7.071068');
    expectPrinted(got.aside!.value, '7.071068');
  });
  it('flanks at 70° and 20°, 10 µm off both: 12.817128 down, 5.976725 closing on the 70° flank', () => {
    const got = drop(70, 20, 10, 10);
    expectPrinted(got.down!.value, '12.817128');
    expectPrinted(got.aside!.value, '5.976725');
  });
  it('worn 30 and 50 µm: at 45° and 45° 56.57 down and 14.14 towards the more worn; at 30° and 60° 50.98 and 28.30', () => {
    const even = drop(45, 45, 30, 50);
    expectPrinted(even.down!.value, '56.57');
    expectPrinted(-even.aside!.value, '14.14');
    const odd = drop(30, 60, 30, 50);
    expectPrinted(odd.down!.value, '50.98');
    expectPrinted(-odd.aside!.value, '28.30');
  });
});
