import { describe, expect, it } from 'vitest';
import type { Slide } from '../core/body/slide.ts';
import type { HeightSetup, LevelSetup, PlaceWords, SweepSetup } from '../core/ledger/setup.ts';
import { doubtShares } from './doubt-shares.ts';
import { gauge } from './gauge.ts';
import { mark, numberMark, strokesMark, verdictMark } from './mark.ts';
import { passStrip } from './pass-strip.ts';
import { pushDrawing } from './push-drawing.ts';
import { rowGauge } from './row-gauge.ts';
import { scrapeMap } from './scrape-map.ts';
import { setupDrawing } from './setup/figures.ts';
import { nodesOf, type Shape, svgText } from './shape.ts';
import { solidView } from './solid-view.ts';
import { sweepPlot } from './sweep-plot.ts';
import { textWidth } from './text.ts';
import { trend } from './trend.ts';

const q = Math.SQRT1_2;
const slide: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [
    {
      name: 'front flank',
      centre_mm: [0, -9.9, 0],
      normal: [0, -q, q],
      length_mm: 480,
      width_mm: 28,
      zones: 6,
      material: 'liner',
    },
    {
      name: 'rear flank',
      centre_mm: [0, 9.9, 0],
      normal: [0, q, q],
      length_mm: 480,
      width_mm: 28,
      zones: 6,
      material: 'liner',
    },
    {
      name: 'flat',
      centre_mm: [0, 300, 0],
      normal: [0, 0, 1],
      length_mm: 480,
      width_mm: 60,
      zones: 6,
      material: 'liner',
    },
  ],
};
/** A dovetail flank overhangs its way; the far pad of two flats. */
const dovetail: Slide = {
  name: 'knee-mill saddle',
  free: 'x',
  pads: [
    {
      name: 'right flat',
      centre_mm: [0, -90, 0],
      normal: [0, 0, 1],
      length_mm: 310,
      width_mm: 50,
      zones: 5,
      material: 'iron',
    },
    {
      name: 'left flat',
      centre_mm: [0, 90, 0],
      normal: [0, 0, 1],
      length_mm: 310,
      width_mm: 50,
      zones: 5,
      material: 'iron',
    },
    {
      name: 'dovetail flank',
      centre_mm: [0, 48, 8],
      normal: [0, 0.819, -0.574],
      length_mm: 310,
      width_mm: 24,
      zones: 5,
      material: 'iron',
    },
  ],
};
const places: PlaceWords = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: 'operator’s side',
  plus_side: 'back of the machine',
  travel: 'x',
};
const passes = {
  'front flank': [0, 1, 2, 2, 3, 4],
  'rear flank': [4, 4, 2, 1, 1, 0],
  flat: [4, 4, 3, 4, 5, 7],
};
const share = {
  'front flank': [0.51, 0.28, 0.23, 0.04, 0.47, 0.95],
  'rear flank': [0.96, 0.74, 0.05, 0.77, 0.94, 0.72],
  flat: [0.97, 0.06, 0.73, 0.52, 0.95, 0.76],
};
const card = {
  id: 'a',
  name: 'a set-up',
  question: 'Is it square?',
  tells: ['facing'],
  rides_words: 'the cross slide.',
  touches_words: 'the square.',
  plus_words: 'plunger in.',
  climbs_words: 'concave',
  falls_words: 'convex',
};
const square: SweepSetup = {
  ...card,
  kind: 'sweep',
  drawing: 'square-cross-sweep',
  rides: 'slide',
  touches: 'reference',
  plunger: [-1, 0, 0],
  from_mm: [0, 0, 90],
  to_mm: [0, 200, 90],
  points: 11,
  reading_sd_um: 1.5,
  face: 'square',
  face_slope_urad: 0,
  face_slope_sd_urad: 4,
};
const level: LevelSetup = { ...card, kind: 'level', drawing: 'level-across', along: [0, 1, 0], sd_urad: 5 };
const height: HeightSetup = {
  ...card,
  kind: 'height',
  drawing: 'height-gauge',
  at_mm: [90, 140, 200],
  direction: [0, 0, 1],
  sd_um: 2,
};
const signed = (value: number): string => (value === 0 ? '0' : `${value > 0 ? '+' : '−'}${Math.abs(value)}`);

const phone = 358;
const tablet = 716;
const map = { title: 'Passes by zone', slide, places, turnedOver: 'end over end', width: phone } as const;
const facing = {
  title: 'Facing',
  width: phone,
  band: { low: 6, high: 20, low_text: '+6', high_text: '+20' },
  minus_word: 'convex',
  plus_word: 'concave',
} as const;

const figures: Readonly<Record<string, Shape>> = {
  'gauge-outside': gauge({
    ...facing,
    rows: [
      { kind: 'past', label: 'R1', value: -43.3, doubt: 5, text: '−43 ± 5' },
      { kind: 'past', label: 'R2', value: -21.6, doubt: 4.6, text: '−22 ± 5' },
      {
        kind: 'now',
        label: 'R3',
        value: -15.3,
        doubt: 4.3,
        text: '−15 ± 4',
        verdict: 'outside',
        to_go: '21 to go',
      },
      { kind: 'forecast', label: 'R4', value: 10.9, doubt: 10, text: 'forecast +11 ± 10' },
    ],
  }),
  'gauge-not-proven': gauge({
    ...facing,
    show_now_text: true,
    rows: [{ kind: 'now', label: 'R5', value: 18.7, doubt: 3.4, text: '+19 ± 3', verdict: 'not proven' }],
  }),
  'gauge-empty': gauge({ ...facing, rows: [] }),
  'row-gauge': rowGauge({
    title: 'Level across',
    width: 118,
    band: { low: -6, high: 6 },
    now: { value: 7.7, doubt: 2.7, verdict: 'not proven' },
    as_found: { value: 17.8, doubt: 3.5 },
  }),
  'map-passes': scrapeMap({ ...map, show: { kind: 'passes', passes } }),
  'map-front-to-back': scrapeMap({ ...map, turnedOver: 'front to back', show: { kind: 'passes', passes } }),
  'map-pass-2': scrapeMap({ ...map, show: { kind: 'pass', pass: 2, passes } }),
  'map-blue': scrapeMap({ ...map, show: { kind: 'blue', share, round: 6 } }),
  'map-words': scrapeMap({
    ...map,
    show: { kind: 'words', round: 6, words: { flat: ['burnished', 'heavy', 'faint', 'none'] } },
  }),
  'map-seen': scrapeMap({
    ...map,
    show: {
      kind: 'words',
      round: 6,
      words: { flat: ['burnished', 'heavy', undefined, undefined] },
      seen: { flat: [0.95, 0.7, 0.3, 0, 0.5, 1] },
    },
  }),
  'push-fell': pushDrawing({ shows: '−420', width: 358 }),
  'map-heights': scrapeMap({
    ...map,
    show: {
      kind: 'heights',
      values: { flat: [0, 2.1, 3.4, 5.2, 7.7, 9.6] },
      texts: { flat: ['0', '+2', '+3', '+5', '+8', '+10'] },
    },
    chosen: { pad: 'flat', zone: 3 },
  }),
  'map-tablet': scrapeMap({ ...map, width: tablet, show: { kind: 'passes', passes } }),
  'map-dovetail': scrapeMap({
    ...map,
    slide: dovetail,
    show: { kind: 'passes', passes: { 'left flat': [1, 2, 3, 4, 5] } },
  }),
  'map-narrow': scrapeMap({
    ...map,
    slide: { ...slide, pads: slide.pads.map((pad) => ({ ...pad, zones: 8 })) },
    turnedOver: 'front to back',
    show: { kind: 'passes', passes },
  }),
  'pass-strip': passStrip({
    title: 'Passes one by one',
    slide,
    turnedOver: 'end over end',
    passes,
    now: 2,
    width: tablet,
  }),
  'sweep-plot': sweepPlot({
    title: 'Readings along the sweep',
    width: phone,
    points: [0, -1.5, -2.5, -3.5, -4, -4.5, -9, 6.5, -9.5, -11.5, -14].map((value, i) => ({
      at: i * 20,
      value,
      ...(i === 7 ? { left_out: '140 mm left out' } : {}),
    })),
    fit: [0, 100, 200].map((at) => ({ at, value: -0.3 - 0.066 * at, doubt: 0.8 + Math.abs(at - 100) / 100 })),
    x: { name: 'from the first place', text: (at) => `${at} mm` },
    y: { name: 'µm, plus pushes the plunger in', text: signed },
    x_unit_mm: 1,
    y_unit_mm: 0.001,
  }),
  'doubt-shares': doubtShares({
    title: 'Where the doubt comes from',
    width: phone,
    shares: [
      { name: 'How much a pass takes', doubt: 6, text: '± 6 µm' },
      { name: 'The readings so far, and the square’s own error', doubt: 4.3, text: '± 4 µm' },
    ],
    together: { name: 'Together', doubt: 7.4, text: '± 7 µm' },
  }),
  trend: trend({
    title: 'Bearing by round',
    width: phone,
    band: { low: 70 },
    rounds: [
      { label: 'R5', value: 42, doubt: 6, text: '42 ± 6 %' },
      { label: 'R6', value: 61, doubt: 4, text: '61 ± 4 %' },
    ],
    forecast: { label: 'R7', value: 80, doubt: 9, text: 'forecast 80 ± 9 %' },
    name: 'bearing, %',
    axisText: String,
  }),
  'solid-view': solidView({
    title: 'As it sits',
    slide,
    pose: { t_um: [0, 0, -4], turn_urad: [26, 4, -51] },
    wanted: { t_um: [0, 0, -12], turn_urad: [0, 0, 43] },
    places,
    width: 400,
  }),
  'setup-square': setupDrawing({ setup: square, slide, places, width: phone }),
  'setup-square-tablet': setupDrawing({
    setup: square,
    slide,
    places,
    width: 680,
    words: { rides: 'cross slide', touches: 'the square', travel: 'stop each 20 mm' },
  }),
  'setup-level-across': setupDrawing({ setup: level, slide, places, width: phone }),
  'setup-level-along': setupDrawing({
    setup: { ...level, drawing: 'level-along', along: [-1, 0, 0] },
    slide: dovetail,
    places,
    width: phone,
  }),
  'setup-height': setupDrawing({ setup: height, slide, places, width: phone }),
  'setup-generic': setupDrawing({
    setup: {
      ...square,
      drawing: 'generic',
      plunger: [0, 1, 0],
      from_mm: [180, -60, 60],
      to_mm: [-180, -60, 60],
    },
    slide,
    places,
    width: phone,
  }),
};

const texts = (root: Shape): Shape[] => nodesOf(root).filter((node) => node.tag === 'text');

describe.each(Object.entries(figures))('%s', (name, root) => {
  it('is the drawing that was last looked at', async () => {
    await expect(`${svgText(root)}\n`).toMatchFileSnapshot(`snapshots/${name}.svg`);
  });

  it('is an image with a name', () => {
    expect(root.attributes.role).toBe('img');
    const title = root.children.find((child) => typeof child !== 'string' && child.tag === 'title');
    expect(title).toMatchObject({ children: [expect.stringMatching(/\w/)] });
  });

  it('has letters of 14 px or more, and no hyphen for a minus', () => {
    for (const text of texts(root)) {
      expect(Number(text.attributes['font-size'])).toBeGreaterThanOrEqual(14);
      expect(String(text.children[0])).not.toMatch(/(^|\s)-\d/);
    }
  });

  it('keeps every word on the sheet', () => {
    const [, , width, height] = String(root.attributes.viewBox).split(' ').map(Number);
    for (const text of texts(root)) {
      if (text.attributes.transform !== undefined) continue;
      const wide = textWidth(String(text.children[0]), Number(text.attributes['font-size']));
      const { x, y, 'text-anchor': anchor } = text.attributes;
      const left = Number(x) - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0);
      expect([text.children[0], left >= -1.5]).toEqual([text.children[0], true]);
      expect([text.children[0], left + wide <= width! + 1.5]).toEqual([text.children[0], true]);
      expect([text.children[0], Number(y) <= height!]).toEqual([text.children[0], true]);
    }
  });

  it('has no name of its own in the page, and no number that is not one', () => {
    expect(nodesOf(root).filter((node) => 'id' in node.attributes)).toEqual([]);
    expect(svgText(root)).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('marks', () => {
  it('are drawn, not letters, and hidden from readers unless they are named', () => {
    for (const shape of [mark('kept'), mark('tick'), strokesMark(3), verdictMark('outside', 'low')]) {
      expect(texts(shape)).toEqual([]);
      expect(shape.attributes['aria-hidden']).toBe('true');
    }
    expect(mark('caution', 20, 'caution').attributes).toMatchObject({ role: 'img', width: 20 });
  });
  it('turn with the passes, and stand on the side the value is out', () => {
    expect(strokesMark(1)).toEqual(mark('strokes'));
    expect(strokesMark(4)).toEqual(mark('strokes back'));
    expect(verdictMark('not proven', 'high')).toEqual(mark('not proven high'));
    expect(verdictMark('within', 'high')).toEqual(mark('within'));
  });
  it('count in a disc', () => {
    expect(svgText(numberMark(2))).toContain('>2</text>');
  });
});

describe('the small solid view', () => {
  it('keeps clear of its own words however the slide is moved', () => {
    for (const turn_urad of [
      [90, 0, 0],
      [0, -80, 0],
      [30, 40, -120],
    ] as const) {
      const root = solidView({
        title: 't',
        slide,
        pose: { t_um: [0, 9, -40], turn_urad },
        places,
        width: 358,
      });
      const height = Number(String(root.attributes.viewBox).split(' ')[3]);
      const ys = nodesOf(root)
        .filter((node) => node.tag === 'path')
        .flatMap((node) => [...String(node.attributes.d).matchAll(/[ML]-?[\d.]+ (-?[\d.]+)/g)])
        .map(([, y]) => Number(y));
      expect(ys.length).toBeGreaterThan(50);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(35);
      expect(Math.max(...ys)).toBeLessThanOrEqual(height - 18);
    }
  });
  it('says what stands there and what is dashed, with how many times too far out', () => {
    const root = solidView({
      title: 't',
      slide,
      pose: { t_um: [0, 0, -40], turn_urad: [0, 0, 0] },
      places,
      width: 358,
      sits_words: 'standing at 250 mm',
      wanted_words: 'as printed at 600 mm',
    });
    const words = texts(root).map((text) => String(text.children[0]));
    expect(words[0]).toMatch(/^standing at 250 mm, × \d+$/);
    expect(words[1]).toBe('dashed: as printed at 600 mm');
  });
});
