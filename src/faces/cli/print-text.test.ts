import { describe, expect, it } from 'vitest';
import type { PhotoReading } from '../../shop/print/photo-reading.ts';
import { agreementText, printText } from './print-text.ts';

const cell = { net_mm2: 625, unreadable_pct: 0, partial: false };
const reading: PhotoReading = {
  photo: { format: 'jpeg', width_px: 2592, height_px: 1944 },
  corners: [
    { x: 1, y: 2 },
    { x: 500, y: 2 },
    { x: 500, y: 300 },
    { x: 1, y: 300 },
  ],
  corners_found: { how: 'card', doubt_px: 1.44 },
  size: { length_mm: 60, width_mm: 40 },
  cell_mm: 25,
  cells: [
    { ...cell, col: 0, row: 0, count: 17, bearing_pct: 27.4 },
    { ...cell, col: 1, row: 0, count: 12, bearing_pct: 18.1, unreadable_pct: 9 },
    { ...cell, col: 2, row: 0, count: 4, bearing_pct: 22.2, partial: true },
    { ...cell, col: 0, row: 1, count: 8, bearing_pct: 31.2, partial: true },
  ],
  spots: [{ x_mm: 1, y_mm: 2, area_mm2: 3, burnished: 0 }],
  density_per_25mm: 18.1,
  bearing_pct: 27.24,
  net_area_mm2: 2400,
  evenness: {
    dispersion: 0.62,
    bearing_cv: 0.14,
    empty_squares: 1,
    longest_bare_mm: 12.4,
    along_pct: -3.25,
    across_pct: 0.55,
  },
  area_percentiles_mm2: [0.9, 1.6, 3.8, 10.8, 25.2],
  largest_share: 0.07,
  zone_shares: [0.31, undefined],
  trust: { confidence: 0.44, px_per_mm: 6.61, blur_mm: 0.123, glare_pct: 0.9, separation: 11.2 },
  doubt: { bearing_pct: 0.7, density_per_25mm: 0.45, square_count: 1.35 },
  warnings: [{ code: 'blurred', text: 'Blurred: hold still and take it again.' }],
};

describe('a second photo in words', () => {
  it('says whether it agrees, how far off it is with its doubt, and where', () => {
    const apart = agreementText(
      {
        agrees: false,
        bearing_pct: { value: 4.2, sd: 1 },
        density_per_25mm: { value: -0.4, sd: 0.6 },
        squares_apart: [{ col: 1, row: 0, first: 5, second: 12 }],
        squares: 8,
      },
      25,
    );
    expect(apart).toContain('does not agree');
    expect(apart).toContain('−0.4 ± 1.2 spots in a 25\u00a0mm square, +4.2 ± 2.0 points of bearing');
    expect(apart).toContain('1 of 8 whole squares apart');
    expect(apart).toContain('square at 25, 0 mm: 5 spots, then 12');
  });
});

describe('a print in words', () => {
  const text = printText(reading);
  it('gives counts by square as they lie, cut ones in brackets, unreadable ones a dash', () => {
    expect(text).toMatch(/mm\s+0\s+25\s+50\n─.*\n\s*0\s+17\s+–\s+\(4\)\n\s*25\s+\(8\)/);
    expect(text).toMatch(/Bearing of each, %\nmm.*\n─.*\n\s*0\s+27\s+–\s+\(22\)/);
  });
  it('says density by 25 mm and by inch: 645.16 over 625 mm²', () => {
    expect(text).toContain('18.1 ± 0.9 in a 25 mm square, 18.7 in an inch square');
  });
  it('in inches to an inch shop: 60 by 40 mm, squares of an inch, no metric figure', () => {
    const inch = printText({ ...reading, cell_mm: 25.4 }, 'inch');
    expect(inch).toContain('2.3622 × 1.5748 in, from');
    expect(inch).toContain('18.7 ± 0.9 in an inch square; 1 in all');
    expect(inch).not.toMatch(/\bmm/);
  });
  it('says trend with sign, trust with what to do, corners with their doubt, and each warning', () => {
    expect(text).toContain('−3.3 points from x = 0 to the far end, +0.6 from y = 0');
    expect(text).toContain('trust     0.44: take it again (6.6 px per mm');
    expect(text).toContain('corners found with the card, ± 1.4 px');
    expect(text).toContain('zones     31 %, not readable (zone 1 at x = 0)');
    expect(text).toContain('; 1 empty square; ');
  });
  it('an unsound photo begins with “take it again” and why; a sound one does not, and its warnings stand at the end', () => {
    expect(text.startsWith('Take it again: blurred: hold still and take it again.\n\n60 × 40 mm')).toBe(true);
    expect(text).not.toContain('! Blurred');
    const sound = printText({
      ...reading,
      trust: { ...reading.trust, confidence: 0.9 },
      warnings: [{ code: 'merged contact', text: 'One region holds much.' }],
    });
    expect(sound).not.toMatch(/take it again/i);
    expect(sound.endsWith('! One region holds much.')).toBe(true);
  });
});
