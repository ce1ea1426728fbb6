import { describe, expect, it } from 'vitest';
import type { PlaceWords } from '../../core/ledger/setup.ts';
import type { Corners } from '../../core/print/picture.ts';
import type { Cell, Evenness, PhotoTrust } from '../../core/print/reading.ts';
import { phraseText } from '../phrase.ts';
import {
  agreementFigures,
  agreementSentence,
  changeSentence,
  planSentence,
  planWord,
  signedPoints,
  zoneChanges,
} from './compare-words.ts';
import {
  asItLies,
  cornerNames,
  cornersFoundWords,
  mirrored,
  startCorners,
  turnedRound,
} from './corner-words.ts';
import { photoRefusal } from './photo-words.ts';
import { evennessWords, readingSentence, spotsPerSquare, withDoubt } from './reading-words.ts';
import { trustWords } from './trust-words.ts';

const places: PlaceWords = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: "operator's side",
  plus_side: 'back of the machine',
  travel: 'x',
};
const evenness: Evenness = {
  empty_squares: 0,
  longest_bare_mm: 14.2,
  along_pct: 0,
  across_pct: 0,
  dispersion: 1,
};
const cell: Cell = {
  col: 0,
  row: 0,
  count: 14,
  bearing_pct: 30,
  partial: false,
  net_mm2: 625,
  unreadable_pct: 0,
};
const cells = (many: number): Cell[] => Array.from({ length: many }, (_, col) => ({ ...cell, col }));

describe('a reading in words', () => {
  const says = (along_pct: number, across_pct = 0, units: 'metric' | 'inch' = 'metric') =>
    phraseText(
      readingSentence(
        { bearing_pct: 31.2, density_per_25mm: 14.1, evenness: { ...evenness, along_pct, across_pct } },
        places,
        units,
      ),
    );
  it('says the share, the spots and where most', () => {
    expect(says(-12)).toBe('Bears on 31\u00a0%. 14 spots a 25\u00a0mm square. Richest at the headstock end.');
    expect(says(12)).toContain('Richest at the tailstock end.');
    expect(says(0, -11)).toContain('Even from end to end, richest toward the operator');
    expect(says(3)).toContain('Even from end to end.');
  });
  it('counts by the square of the units: an inch square is 645.16 mm², 3.2 % more', () => {
    expect(spotsPerSquare(100, 'inch')).toBeCloseTo(100 * (645.16 / 625), 9);
    expect(says(0, 0, 'inch')).toContain('15 spots a square inch');
  });
  it('one spot is one, and no blue is nowhere', () => {
    const one = { bearing_pct: 1.24, density_per_25mm: 1.2, evenness };
    expect(phraseText(readingSentence(one, places, 'metric'))).toContain('Bears on 1.2\u00a0%. 1 spot a');
    expect(phraseText(readingSentence({ ...one, bearing_pct: 0 }, places, 'metric'))).toContain(
      'It bears nowhere',
    );
  });
  it('holds the spread against chance, by how many squares there are', () => {
    const spread = (dispersion: number, many: number) =>
      evennessWords(
        { bearing_pct: 30, cells: cells(many), evenness: { ...evenness, dispersion } },
        places,
        'metric',
      )[0];
    expect(spread(0.3, 30)).toContain('more evenly than chance');
    expect(spread(1.2, 30)).toContain('as chance would');
    expect(spread(2, 30)).toContain('in clumps');
    // Of five squares, twice the mean is within chance: χ² with 4 degrees has an sd of 0.71 of its mean.
    expect(spread(2, 5)).toContain('as chance would');
    expect(spread(2, 2)).toContain('Too few');
  });
  it('says bare squares, the longest bare run and both trends', () => {
    const lines = evennessWords(
      {
        bearing_pct: 30,
        cells: cells(12),
        evenness: { ...evenness, empty_squares: 1, along_pct: -14, across_pct: 2 },
      },
      places,
      'inch',
    );
    expect(lines).toContain('1 whole square of 12 is bare.');
    expect(lines).toContain('Longest bare run along it: 0.56\u00a0in.');
    expect(lines).toContain('14 points more at the headstock end than at the tailstock end.');
    expect(lines).toContain('Even from edge to edge.');
  });
});

describe('trust in words', () => {
  const trust: PhotoTrust = {
    confidence: 0.42,
    px_per_mm: 4.2,
    blur_mm: 0.2,
    glare_pct: 0.1,
    separation: 12,
  };
  const low = {
    code: 'low resolution',
    text: '4.2 pixels a mm: spots run together below 5. Go nearer.',
  } as const;
  const much = { code: 'over-blued', text: 'blue is dragged along the rub.' } as const;
  it('below a half: take it again, and why; the rest stays', () => {
    const said = trustWords({ trust, warnings: [much, low] });
    expect(said).toEqual({ good: false, words: `Take it again: ${low.text}`, rest: [much] });
  });
  it('from a half on it is read', () => {
    const good = { ...trust, confidence: 0.5 };
    expect(trustWords({ trust: good, warnings: [low] }).words).toBe('The photo can be read, with care.');
    expect(trustWords({ trust: good, warnings: [much] })).toMatchObject({
      good: true,
      words: 'The photo is sound.',
      rest: [much],
    });
  });
});

describe('held against another print', () => {
  const before = [0.45, 0.3, null, 0.2];
  const now = [0.22, 0.31, 0.4, 0.45];
  const changes = zoneChanges(before, now);
  it('tells what differs, with sign, and leaves what is not known', () => {
    expect(changes.map(({ points }) => points && signedPoints(points))).toEqual([
      '−23',
      '+1',
      undefined,
      '+25',
    ]);
    expect(changes.map(planWord)).toEqual(['less', 'as planned', 'not known', 'more']);
  });
  it('in a sentence', () => {
    expect(changeSentence(changes, 3, 'headstock end')).toBe(
      'Since round 3: more blue in zone 4, less in zone 1, counted from the headstock end.',
    );
    expect(planSentence(changes, 'headstock end')).toBe(
      'The print agrees with the last plan in 1 of 3 zones. Zone 4 from the headstock end: planned 20\u00a0%, seen 45\u00a0%.',
    );
    expect(agreementSentence(changes, 'headstock end')).toContain(
      'does not agree with the photo before it of this print in zones 1 and 4',
    );
    expect(changeSentence(zoneChanges(now, now), 3, 'headstock end')).toContain('No zone changed');
    expect(planSentence(zoneChanges([null], [0.3]), 'headstock end')).toContain('No zone can be held');
  });
});

describe('another photo of the same print', () => {
  const same = zoneChanges([0.3, 0.31], [0.31, 0.3]);
  const agreement = {
    agrees: false,
    bearing_pct: { value: -4.24, sd: 1.05 },
    density_per_25mm: { value: 0.02, sd: 0.6 },
    squares_apart: [{ col: 0, row: 0, first: 3, second: 9 }],
    squares: 8,
  };
  it('does not agree where its figures lie apart by more than their doubts, though zones do', () => {
    expect(agreementSentence(same, 'headstock end', agreement)).toMatch(
      /does not agree .*: its figures lie apart by more than their doubts\. Look at the corners/,
    );
    expect(agreementSentence(same, 'headstock end', { ...agreement, agrees: true })).toContain('It agrees');
  });
  it('says so where it would agree turned end for end', () => {
    const turned = zoneChanges([0.45, 0.3, 0.2, 0.1], [0.12, 0.18, 0.33, 0.4]);
    expect(agreementSentence(turned, 'headstock end')).toContain('Turned end for end it does');
    const other = zoneChanges([0.45, 0.3, 0.2, 0.1], [0.12, 0.18, 0.33, 0.1]);
    expect(agreementSentence(other, 'headstock end')).not.toContain('end for end');
  });
  it('says by how much, two sd, in the square in use: 645.16 over 625 mm²', () => {
    expect(agreementFigures(agreement, 'metric')).toBe(
      'Less the photo before it: bearing −4.2\u202f±\u00a02.1 points, 0\u202f±\u00a01.2 spots a 25\u00a0mm square; 1 of 8 squares apart by more than chance.',
    );
    const inch = { ...agreement, density_per_25mm: { value: 10, sd: 5 }, squares_apart: [] };
    expect(agreementFigures(inch, 'inch')).toContain(
      '+10.3\u202f±\u00a010.3 spots a square inch; none of 8 squares',
    );
  });
  it('a figure has as many decimals as its doubt is worth', () => {
    expect(withDoubt(28.04, 0.7)).toEqual({ value: '28', doubt: '1' });
    expect(withDoubt(13.84, 0.3)).toEqual({ value: '14', doubt: '1' });
    expect(withDoubt(2.44, 0.16)).toEqual({ value: '2.4', doubt: '0.3' });
    expect(withDoubt(0, 0.02)).toEqual({ value: '0.0', doubt: '0.1' });
  });
});

describe('corners in words', () => {
  const wide: Corners = [
    { x: 100, y: 100 },
    { x: 900, y: 120 },
    { x: 890, y: 300 },
    { x: 110, y: 280 },
  ];
  it('are named in the order of the surface, the first as on the map', () => {
    expect(cornerNames(places)).toEqual([
      "headstock end, operator's side",
      "tailstock end, operator's side",
      'tailstock end, back of the machine',
      'headstock end, back of the machine',
    ]);
  });
  it('begin where the map has its first corner', () => {
    // End over end: headstock end at the right, operator's side nearest; front to back: at the left, farthest.
    expect(asItLies(wide, 'end over end')[0]).toBe(wide[2]);
    expect(asItLies(wide, 'front to back')[0]).toBe(wide[0]);
    expect(asItLies(asItLies(wide, 'end over end'), 'end over end')).toEqual(asItLies(wide, 'end over end'));
  });
  it('turned twice, or swapped twice, are as before', () => {
    expect(turnedRound(turnedRound(wide))).toEqual(wide);
    expect(mirrored(mirrored(wide))).toEqual(wide);
    expect(mirrored(wide)[0]).toBe(wide[3]);
  });
  it('start in the middle, along the longer side, inside the photo', () => {
    for (const photo of [
      { width_px: 4000, height_px: 3000 },
      { width_px: 3000, height_px: 4000 },
    ]) {
      const start = startCorners(photo, { length_mm: 480, width_mm: 28 }, 'end over end');
      for (const { x, y } of start) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(photo.width_px);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(photo.height_px);
      }
      const along = Math.hypot(start[1].x - start[0].x, start[1].y - start[0].y);
      expect(along).toBeCloseTo(0.7 * 4000, 6);
      // Clockwise as seen, as a face that lies open is.
      const turn =
        (start[1].x - start[0].x) * (start[2].y - start[1].y) -
        (start[1].y - start[0].y) * (start[2].x - start[1].x);
      expect(turn).toBeGreaterThan(0);
    }
  });
  it('say how they were found, or why not', () => {
    expect(cornersFoundWords({ corners: wide, how: 'outline', doubt_px: 3.6 })).toContain('within 4 pixels');
    expect(cornersFoundWords({ why: 'one side hardly stands out; drag the corners' })).toBe(
      'Corners not found: one side hardly stands out; drag the corners.',
    );
  });
});

it('a refused photo: why, that nothing else is lost, and what to do', () => {
  const issues = [{ found: 'text', expected: 'a JPEG, PNG, WebP or TIFF' }];
  expect(photoRefusal({ message: 'photo: text; expected a JPEG', issues })).toBe(
    'Not kept: text; it takes a JPEG, PNG, WebP or TIFF. Nothing else is lost. Take it again, or choose another.',
  );
});
