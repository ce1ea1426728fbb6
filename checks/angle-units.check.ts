import { describe, expect, it } from 'vitest';
import { rise, slope } from '../src/core/body/displacement.ts';
import { readAngle } from '../src/core/quantity/angle.ts';
import { readSlope, slopeSize } from '../src/core/quantity/slope.ts';
import { expectNear, expectPrinted } from './near.ts';

/*
 * Sources: definitions (1 in = 25.4 mm, 1 arcsec = π/648000 rad); rounding of the arcsecond seen in lecture slides on the
 * autocollimator; 0.004 mm in 200 mm for a 0.02 mm/m level seen in a machine builder's thread; levels graded in
 * 0.0005 in per 10 in seen in a thread on levels of January 2012. The rest is derived.
 */
function urad(typed: string): number {
  const read = readSlope(typed, 'urad');
  if (!read.ok) throw new Error(read.why);
  return read.urad;
}
const arcsec = (typed: string) => urad(typed) / slopeSize('arcsec');

describe('seconds of arc', () => {
  it('one is 4.84813681109536 µrad, and a radian 206264.806247096 of them', () => {
    expectPrinted(urad('1 arcsec'), '4.848136811095');
    expectNear(1e6 / slopeSize('arcsec'), 206264.806247096, 1e-14);
  });
  it('one over 100 mm is 0.484813681 µm, which sources round to 0.5 (rounding seen)', () => {
    const exact = rise(urad('1 arcsec'), 100);
    expectPrinted(exact, '0.484813681');
    expectPrinted(exact, '0.5');
  });
  it('one over 1 m, 1 ft and 4 in', () => {
    expectPrinted(rise(urad('1 arcsec'), 1000), '4.8481368');
    expectPrinted(rise(urad('1 arcsec'), 304.8) / 0.0254, '58.17764');
    expectPrinted(rise(urad('1 arcsec'), 101.6) / 0.0254, '19.39255');
  });
});

describe('levels', () => {
  it('0.02 mm/m is 20 µrad, 4.1252961 arcsec, and 4 µm over 200 mm (4 µm seen)', () => {
    expectNear(urad('0.02 mm/m'), 20, 1e-12);
    expectPrinted(arcsec('0.02 mm/m'), '4.1252961');
    expectPrinted(rise(urad('0.02 mm/m'), 200), '4.0');
  });
  it('0.01 and 0.05 mm/m', () => {
    expectPrinted(arcsec('0.01 mm/m'), '2.0626481');
    expectPrinted(arcsec('0.05 mm/m'), '10.3132403');
  });
  it('half a thou per foot is 0.0416667 mm/m, 8.5943669 arcsec', () => {
    for (const typed of ['.0005 in/ft', 'half thou per foot', '5 tenths in 12 in']) {
      expectPrinted(urad(typed) / slopeSize('mm/m'), '0.0416667');
      expectPrinted(arcsec(typed), '8.5943669');
    }
  });
  it('half a thou per 10 in is 0.05 mm/m (grading seen)', () => {
    expectNear(urad('.0005 in in 10 in'), 50, 1e-12);
    expectPrinted(arcsec('.0005 in in 10 in'), '10.3132403');
  });
});

/** Source: a vial's bubble lies at the highest place of an arc, so a tilt moves it by the tilt times the radius (definition; numbers derived). */
describe('the vial of a level', () => {
  it('of 0.02 mm/m a division of 2 mm is ground to a radius of 100 m', () => {
    expectNear(2 / (urad('0.02 mm/m') / 1e6) / 1000, 100, 1e-12);
    // The other way round: 2 mm along an arc of 100 m are one division.
    expectNear(slope(2000, 100_000), urad('0.02 mm/m'), 1e-12);
  });
});

describe('angles of faces', () => {
  it('a taper of 3/4 in per ft includes 3° 34′ 47.36″ (handbook table, from memory)', () => {
    const read = readAngle(`3° 34' 47.36"`);
    const included_deg = (2 * Math.atan(0.75 / 24) * 180) / Math.PI;
    expect(read.ok && Math.abs(read.deg - included_deg) * 3600).toBeLessThanOrEqual(0.005);
  });
});
