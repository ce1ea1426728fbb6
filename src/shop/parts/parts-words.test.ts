import { describe, expect, it } from 'vitest';
import { inventedPlan as plan } from '../../../tests/fixture/invented-job.ts';
import { phraseText } from '../phrase.ts';
import { bedReach } from '../survey/usual-work.ts';
import { lasting } from './lasting-sentence.ts';
import { faceFrom, facingOf, turnedBySpindle, turnedOnBed } from './lathe-parts.ts';
import { facesSentence, turnedSentence } from './part-sentence.ts';

const plain = (text: string) => text.replace(/[\u00a0\u2009\u202f]/g, ' ');
const words = (phrase: Parameters<typeof phraseText>[0]) => plain(phraseText(phrase));
const trueSpindle = { across_urad: { value: 0 }, up_urad: { value: 0 } };

describe('faces', () => {
  // Geometry: µm = mm × µrad / 1000, plus: concave; hand arithmetic.
  it('50 µrad over 100 mm is 5 µm; a spindle that goes along takes as much off', () => {
    const face = faceFrom({ value: 50, sd: 7 }, trueSpindle, 100);
    expect(face.concave_um.value).toBeCloseTo(5, 9);
    expect(face.concave_um.sd).toBeCloseTo(0.7, 9);
    const along = { ...trueSpindle, across_urad: { value: 50, sd: 24 } };
    const none = faceFrom({ value: 50, sd: 7 }, along, 100);
    expect(none.concave_um.value).toBeCloseTo(0, 9);
    // 7, 24, 25: the doubts are of two measurements.
    expect(none.concave_um.sd).toBeCloseTo(2.5, 9);
    expect(words(facesSentence(face, none, 100, 'metric'))).toBe(
      'Faces come out concave now: 5.0 ± 1.4 µm over 100 mm from rim to centre. The plan brings them flat as far as can be told.',
    );
  });
  it('only a slide whose turn makes faces concave is a lathe’s', () => {
    expect(facingOf(plan)).toBeUndefined();
    const facing = {
      feature: 'facing',
      span_mm: 300,
      minus: 'convex',
      plus: 'concave',
      minus_sentence: '',
      plus_sentence: '',
    };
    expect(facingOf({ ...plan, words: [facing] })).toBe('facing');
    expect(facingOf({ ...plan, words: [facing], slide: { ...plan.slide, free: 'y' } })).toBeUndefined();
  });
});

describe('turned diameters', () => {
  it('an axis 20 µrad away from the operator over 300 mm: 6 µm of radius, 12 of diameter', () => {
    const spindle = { ...trueSpindle, across_urad: { value: 20, sd: 2.5 } };
    const made = turnedBySpindle({ radius_mm: 25, from_mm: 0, to_mm: 300 }, spindle);
    expect(words(turnedSentence(made, 'metric'))).toBe(
      'Over 300 mm the diameter grows 12 ± 3 µm toward the tailstock.',
    );
  });
  it('a straight bed turns straight, wherever it was printed; its doubt is not nothing', () => {
    const stations_mm = [0, 250, 500, 750, 1000];
    const bed = {
      stations_mm,
      ways: plan.slide.pads.map(({ name }) => ({ pad: name, height_um: stations_mm.map(() => 0) })),
    };
    const [first, last] = bedReach(plan.slide, bed);
    // The front pad reaches from 3 − 155 to 3 + 155 mm of the middle.
    expect([first, last]).toEqual([152, 842]);
    const held = {
      ...plan,
      slide: {
        ...plan.slide,
        pads: [
          ...plan.slide.pads,
          {
            ...plan.slide.pads[0]!,
            name: 'rear',
            centre_mm: [3, 20, 0] as const,
            normal: [0, 0.6, 0.8] as const,
          },
        ],
      },
    };
    const ways = held.slide.pads.map(({ name }) => ({ pad: name, height_um: stations_mm.map(() => 0) }));
    const made = turnedOnBed(
      held,
      { stations_mm, ways },
      {
        radius_mm: 25,
        from_mm: first,
        to_mm: last,
        printed_mm: 300,
        tool_across_mm: -60,
        tool_up_mm: 180,
        height_sd_um: 1,
      },
      trueSpindle,
    );
    if ('ok' in made) throw new Error(`no rest at ${made.at_mm} mm`);
    expect(Math.abs(made.taper_um.value)).toBeLessThan(1e-6);
    expect(made.taper_um.sd).toBeGreaterThan(0.5);
  });
});

describe('how long it lasts', () => {
  const ask = { feature: 'facing', value: 40, sd: 2, rate: -5, rate_sd: 1, per: 'year' } as const;
  it('40 µrad wearing 5 a year reaches 20 after 4 years; aimed two sd under 66 it would take 8.4', () => {
    const told = lasting(plan, ask, 'metric');
    expect(words(told.sentence)).toBe('Facing reaches +6 µm in 300 mm after 4 years.');
    expect(plain(told.between!)).toMatch(/^Between 2\.\d+ years and \d[\d.]* years, 19 times in 20\.$/);
    // (66 − 2·2 − 20) / 5
    expect(plain(told.aim!)).toContain('it would stay for 8.4 years');
  });
  it('no wear, a rate hardly known, and a band that is left already', () => {
    expect(words(lasting(plan, { ...ask, rate: 0, rate_sd: 0 }, 'metric').sentence)).toContain(
      'does not wear',
    );
    expect(lasting(plan, { ...ask, rate_sd: 4 }, 'metric').between).toContain('there is no latest');
    expect(words(lasting(plan, { ...ask, value: 10 }, 'metric').sentence)).toContain('left its band already');
    expect(words(lasting(plan, { ...ask, value: 80 }, 'metric').sentence)).toContain('wears back into it');
    expect(() => lasting({ ...plan, targets: [] }, ask, 'metric')).toThrow(RangeError);
  });
});
