import { describe, expect, it } from 'vitest';
import { angleFound } from '../src/core/gib/dovetail-angle.ts';
import { type PlayRead, playFound } from '../src/core/gib/gib-play.ts';
import { taperFound, taperMatch } from '../src/core/gib/gib-shape.ts';
import { keeperFound } from '../src/core/gib/keeper.ts';
import { type RollsRead, rollsFound } from '../src/core/gib/rolls.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Rolls: Machinery's Handbook, "Measuring Dovetail Slides" (rule second hand, numbers derived): 60°, root 40, rolls of 10:
 * 67.320508076; 60°, floor 100, rolls of 12: 67.215390309; 55° and root 40, rolls of 8 and 16: 63.367857016 and 86.735714034;
 * 10 mm rolls change by 5.817764 µm a minute of arc at 60°.
 * A gib that was made and told of in a machinists' forum in 2021 (seen): 12.25 in long, 0.355 to 0.213 in thick, printed as
 * 0.0116 in an inch; it had bowed 0.003 in when it was milled.
 * Tapers (definition; also handbook tables, from memory): 1:60 pushed in by 12 mm: 0.2 mm; 0.03 mm by 1:50: 1.5 mm; 0.001 in by
 * 1/4 in per foot: 0.048 in; a screw of 1.5 mm on 1:60: 25 µm a turn; 0.10 mm at 1:60 takes 6 mm of travel.
 * Bands of play and clearance are common practice; what is done about them is worked by hand here.
 */
const rolls = (read: Partial<RollsRead>): RollsRead => ({
  kind: 'male',
  roll_mm: 10,
  angle_deg: 60,
  stations_mm: [0, 300],
  read_mm: [67.320508076, 67.320508076],
  reading_sd_um: 2,
  ...read,
});

describe('a dovetail over rolls at both ends', () => {
  it('widths are those of the handbook’s rule, male and female', () => {
    expectPrinted(rollsFound(rolls({})).width_mm[0]!, '40.00000000');
    const female = rolls({ kind: 'female', roll_mm: 12, read_mm: [67.215390309, 67.215390309] });
    expectPrinted(rollsFound(female).width_mm[1]!, '100.0000000');
  });
  it('wider by 0.0231 mm at the far end: 0.020 mm off the flank there, since a cut w square to a flank changes the rolls by w / sin 60° = 1.155 w', () => {
    const found = rollsFound(rolls({ read_mm: [67.32, 67.3431] }));
    expectPrinted(found.wider_um, '23.1');
    expectPrinted(found.take_um / 1000, '0.0200');
    expectSame(found.take_at, 'far');
    // Two readings of sd 2 µm at the ends differ with 2√2.
    expectPrinted(found.sd_um, '2.828');
    // Between the flanks of a female one the narrow end holds the metal.
    expectSame(rollsFound(rolls({ kind: 'female', read_mm: [67.32, 67.3431] })).take_at, 'near');
  });
  it('at 55°, not 60°: a cut changes the rolls by 1.2208 w', () => {
    const found = rollsFound(rolls({ angle_deg: 55, read_mm: [67.32, 67.34442] }));
    expectPrinted(found.take_um / 1000, '0.0200');
  });
  it('flats 0.02 mm lower at the far end let the rolls in by 2 × 0.02 × cot 60° = 0.0231 mm and make nothing narrower', () => {
    const found = rollsFound(rolls({ read_mm: [67.3431, 67.32], flats_low_um: [0, 20] }));
    expectWithin(found.wider_um, 0, 0.01);
    const female = rolls({ kind: 'female', read_mm: [67.32, 67.3431], flats_low_um: [0, 20] });
    expectWithin(rollsFound(female).wider_um, 0, 0.01);
  });
});

describe('the angle from two sizes of roll', () => {
  const read = { small_mm: 8, large_mm: 16, flank_mm: 20, reading_sd_um: 2 };
  it('63.367857016 over 8 and 86.735714034 over 16: 55°', () => {
    const found = angleFound({
      ...read,
      over_small_mm: 63.367857016,
      over_large_mm: 86.735714034,
      drawn_deg: 55,
    });
    expectPrinted(found.angle_deg, '55.0000000');
    expectWithin(found.gap_um, 0, 1e-3);
  });
  it('rolls of 10 and 20 that read 5.8178 and 11.6355 µm less than at 60°: one minute steeper, 5.8 µm over a flank of 20', () => {
    const over = (roll: number, less_um: number): number => 40 + roll * 2.732050808 - less_um / 1000;
    const found = angleFound({
      ...read,
      small_mm: 10,
      large_mm: 20,
      over_small_mm: over(10, 5.8178),
      over_large_mm: over(20, 11.6355),
      drawn_deg: 60,
    });
    expectPrinted(found.off_min, '1.00');
    // 20 mm × 1 minute of arc (0.00029089).
    expectPrinted(found.gap_um, '5.82');
  });
});

describe('a taper', () => {
  it('12.25 in long, 0.355 to 0.213 in: printed 0.0116 in an inch, 1 in 86 (seen)', () => {
    const gib = taperFound({
      stations_mm: [0, 12.25 * 25.4],
      thick_mm: [0.213 * 25.4, 0.355 * 25.4],
      reading_sd_um: 2,
    });
    expectPrinted(gib.taper, '0.0116');
    expectPrinted(gib.one_in, '86');
  });
  it('a gib of 1:60 in a space of 1:62 over 330 mm is proud by 330/60 − 330/62 = 0.1774 mm at its thick end, and bears there alone', () => {
    const wedge = (one_in: number) =>
      taperFound({ stations_mm: [0, 330], thick_mm: [5, 5 + 330 / one_in], reading_sd_um: 2 });
    const match = taperMatch(wedge(60), wedge(62), 330);
    expectPrinted(match.proud_um / 1000, '0.1774');
    expectSame(match.tight, 'thick end');
    expectSame(taperMatch(wedge(62), wedge(60), 330).tight, 'thin end');
  });
  it('that does not grow is none', () => {
    expect(() => taperFound({ stations_mm: [0, 330], thick_mm: [6, 5], reading_sd_um: 2 })).toThrow(
      'does not grow',
    );
  });
});

const play = (read: Partial<PlayRead>) =>
  playFound({
    how: 'square',
    thick_end_um: 15,
    thin_end_um: 15,
    reading_sd_um: 1,
    angle_deg: 60,
    taper: 1 / 60,
    scrape_um: 0,
    low_um: 8,
    high_um: 25,
    aim_um: 15,
    alike_um: 5,
    ...read,
  });

describe('play on a gib', () => {
  it('0.03 mm too much at 1:50: in by 1.5 mm; one thousandth of an inch at 1/4 in per foot: 0.048 in', () => {
    expectPrinted(play({ thick_end_um: 45, thin_end_um: 45, taper: 1 / 50 }).in_mm, '1.5');
    expectPrinted(play({ thick_end_um: 40.4, thin_end_um: 40.4, taper: 0.25 / 12 }).in_mm / 25.4, '0.048');
  });
  it('a screw of 1.5 mm on 1:60 takes up 25 µm a turn; 0.2 mm is 12 mm and 8 turns', () => {
    const found = play({ thick_end_um: 215, thin_end_um: 215, screw_mm: 1.5 });
    expectPrinted(found.per_turn_um!, '25.0000');
    expectPrinted(found.in_mm, '12.0000');
    expectPrinted(found.turns!, '8.0000');
  });
  it('0.10 mm still to scrape at 1:60 takes 6 mm of travel', () => {
    expectPrinted(play({ scrape_um: 100 }).in_mm, '6.0000');
  });
  it('felt across a dovetail of 60° it is sin 60° of that square to the gib; lifted, cos 60°', () => {
    expectPrinted(play({ how: 'across', thick_end_um: 20 }).thick_um, '17.3205');
    expectPrinted(play({ how: 'lift', thick_end_um: 20 }).thick_um, '10.0000');
    expectPrinted(play({ how: 'across', angle_deg: 55 }).sd_um, '0.8192');
  });
  it('by hand: 12 µm at the thick end, 40 at the thin, 1:60: 28 µm off its face at the tight thick end, then in by (40 − 15) × 60 = 1.5 mm', () => {
    const found = play({ thick_end_um: 12, thin_end_um: 40 });
    expectSame([found.deed, found.tight, found.differ_um], ['scrape, then set', 'thick end', -28]);
    expectPrinted(found.in_mm, '1.5000');
  });
  it('by hand: 0.115 mm too much with 2 mm of travel left at 1:60: 6.9 mm wanted, 4.9 mm missing: a shim of 0.0817 mm', () => {
    const found = play({ thick_end_um: 130, thin_end_um: 130, in_left_mm: 2 });
    expectSame(found.deed, 'shim');
    expectPrinted(found.in_mm, '6.900');
    expectPrinted(found.thickness_um / 1000, '0.0817');
    // Ten times as much wanting is no shim any more.
    expectSame(play({ thick_end_um: 900, thin_end_um: 900, in_left_mm: 2 }).deed, 'line or make new');
  });
  it('too thick: it must come out further than it can; a little is scraped, much is cut again', () => {
    const tight = (out_left_mm: number) => play({ thick_end_um: 1, thin_end_um: 1, aim_um: 20, out_left_mm });
    expectSame([tight(0.5).deed, tight(2).deed], ['scrape thinner', 'set']);
    // 19 µm × 60 = 1.14 mm out, 0.64 mm missing: 10.67 µm.
    expectPrinted(tight(0.5).thickness_um, '10.67');
    const new_gib = play({
      thick_end_um: 0,
      thin_end_um: 0,
      low_um: 8,
      aim_um: 250,
      high_um: 300,
      out_left_mm: 1,
    });
    expectSame(new_gib.deed, 'cut again');
  });
  it('right as it is, it is left; on the edge, measured again', () => {
    expectSame(play({}).deed, 'leave');
    expectSame(play({ thick_end_um: 15, thin_end_um: 15 }).in_mm, 0);
    expectSame(play({ thick_end_um: 24, thin_end_um: 24 }).deed, 'measure again');
    expectSame(play({ thick_end_um: 60, thin_end_um: 60 }).deed, 'set');
  });
});

describe('a keeper', () => {
  const keeper = (...clearance_um: number[]) =>
    keeperFound({
      name: 'front keeper',
      stations_mm: clearance_um.map((_, k) => 250 * k),
      clearance_um,
      reading_sd_um: 1,
      low_um: 10,
      high_um: 40,
      aim_um: 20,
    });
  it('the tightest place rules: 50, 55, 52 µm are closed by 30', () => {
    const found = keeper(55, 50, 52);
    expectSame([found.deed, found.by_um, found.tightest_at_mm], ['close', 30, 250]);
  });
  it('a way whose thickness varies by more than half the clearance comes first', () => {
    expect(keeper(15, 40, 52)).toMatchObject({ deed: 'way first', by_um: 37 });
  });
  it('tight everywhere it is opened; right, it is left; on the edge, measured again', () => {
    expect(keeper(4, 6, 8)).toMatchObject({ deed: 'open', by_um: 16 });
    expectSame(keeper(20, 24, 22).deed, 'leave');
    expectSame(keeper(39, 42, 41).deed, 'measure again');
  });
});
