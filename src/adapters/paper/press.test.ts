import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { pdfPages } from '../../../tests/fixture/pdf-pages.ts';
import type { Drawn, Piece } from '../../shop/chart/paper.ts';
import { paintOf, plainPaint } from './paint.ts';
import { paperPhoto } from './paper-photo.ts';
import { pressPdf } from './press.ts';

const node = (tag: string, attributes: Drawn['attributes'], ...children: (Drawn | string)[]): Drawn => ({
  tag,
  attributes,
  children,
});
const box = (height: number, ...children: Drawn[]): Drawn =>
  node('svg', { width: 700, height, viewBox: `0 0 700 ${height}` }, ...children);
const words = (text: string, more: Drawn['attributes'] = {}): Drawn =>
  node('text', { x: 40, y: 30, 'font-size': 20, fill: '#12202a', ...more }, text);
const drawn = (drawing: Drawn, more: object = {}): Piece => ({ kind: 'drawing', drawing, ...more });
const press = async (pieces: readonly Piece[]) =>
  pdfPages(
    await pressPdf({ title: 'A test', foot: 'foot', width: 700, pieces, made: '2031-11-25T09:40:00Z' }, 'a4'),
  );
/** Points to one px: the page's breadth between margins of 15 mm, over the drawings' 700 px. */
const scale = ((210 - 30) * 72) / 25.4 / 700;
const margin = (15 * 72) / 25.4;

describe('a drawing on paper', () => {
  it('stands where the drawing has it, from the margin, in the page’s scale', async () => {
    const { pages } = await press([drawn(box(60, words('µ ± ° Δ ″ − ≤ ≥ 0.005')))]);
    const [item] = pages[0]!.items;
    expect(item!.text).toBe('µ ± ° Δ ″ − ≤ ≥ 0.005');
    expect(item!.x).toBeCloseTo(margin + 40 * scale, 1);
    expect(item!.y).toBeCloseTo(841.89 - margin - 30 * scale, 1);
    expect(item!.size).toBeCloseTo(20 * scale, 1);
  });
  it('is moved by groups, anchors and drawings inside drawings as SVG has it', async () => {
    const inner = node(
      'svg',
      { x: 110, y: 13, width: 60, height: 20, viewBox: '0 0 30 10' },
      words('in', { x: 7, y: 9, 'font-size': 4 }),
    );
    const { pages } = await press([
      drawn(
        box(
          90,
          node('g', { transform: 'translate(31 17)' }, words('moved')),
          words('end', { x: 620, 'text-anchor': 'end' }),
          inner,
        ),
      ),
    ]);
    const at = (text: string) => pages[0]!.items.find((item) => item.text === text)!;
    expect(at('moved').x).toBeCloseTo(margin + 71 * scale, 1);
    expect(at('moved').y).toBeCloseTo(841.89 - margin - 47 * scale, 1);
    expect(at('end').x + at('end').width).toBeCloseTo(margin + 620 * scale, 1);
    expect(at('in').x).toBeCloseTo(margin + (110 + 2 * 7) * scale, 1);
    expect(at('in').size).toBeCloseTo(8 * scale, 1);
  });
  it('is moved back and turned too: a minus in a transform counts', async () => {
    const turned = { transform: 'translate(200 100) rotate(-90)', x: 0, y: 0 };
    const { pages } = await press([
      drawn(
        box(
          150,
          node('g', { transform: 'translate(-10 -5)' }, words('back')),
          node('g', { transform: 'translate(0 0)' }, words('turned', turned)),
        ),
      ),
    ]);
    const at = (text: string) => pages[0]!.items.find((item) => item.text === text)!;
    expect(at('back').x).toBeCloseTo(margin + 30 * scale, 1);
    expect(at('back').y).toBeCloseTo(841.89 - margin - 25 * scale, 1);
    expect(at('turned').x).toBeCloseTo(margin + 200 * scale, 1);
    expect(at('turned').turned_deg).toBeCloseTo(90, 6);
  });
  it.each([
    ['a photo inside it', node('image', { href: 'x' })],
    ['a transform that is not known', node('g', { transform: 'skewX(13)' })],
  ])('is refused with %s', async (_, child) => {
    await expect(press([drawn(box(40, child))])).rejects.toThrow(RangeError);
  });
});

describe('pieces over pages', () => {
  const head = box(40, words('the head'));
  it('no piece is cut, and the table’s head stands again on every page', async () => {
    const rows = Array.from({ length: 37 }, (_, k) => drawn(box(53, words(`row ${k + 1}`)), { head }));
    const { pages } = await press([drawn(head, { keep: true }), ...rows]);
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(page.items[0]!.text).toBe('the head');
    expect(
      pages
        .flatMap((page) => page.items.filter((item) => item.text.startsWith('row')))
        .map((item) => item.text),
    ).toEqual(rows.map((_, k) => `row ${k + 1}`));
  });
  it('a heading goes over with what it heads', async () => {
    const { pages } = await press([
      drawn(box(890, words('tall'))),
      drawn(box(45, words('heading')), { keep: true }),
      drawn(box(120, words('what it heads'))),
    ]);
    expect(pages.map((page) => page.items[0]!.text)).toEqual(['tall', 'heading']);
  });
});

describe('photos on paper', () => {
  it('are turned upright, made no larger than paper shows, and each has its words', async () => {
    const large = await sharp({ create: { width: 2300, height: 1700, channels: 3, background: '#335577' } })
      .jpeg()
      .withMetadata({ orientation: 6 })
      .toBuffer();
    const photo = await paperPhoto(large);
    expect([photo.width_px, photo.height_px]).toEqual([739, 1000]);
    const photos = Array.from({ length: 14 }, (_, k) => ({ ...photo, words: `flat, round ${k + 1}` }));
    const { pages } = await press([{ kind: 'photos', photos }]);
    const text = pages.map((page) => page.text).join(' ');
    for (const one of photos) expect(text).toContain(one.words);
  });
});

describe('paint', () => {
  it('is handed down: colours behind variables, the current colour, opacities multiplied', () => {
    const parent = paintOf({ color: 'var(--lead, #a3380a)', opacity: 0.5 }, plainPaint);
    expect(paintOf({ fill: 'currentColor', opacity: 0.4, 'stroke-width': '2.5' }, parent)).toMatchObject({
      fill: '#a3380a',
      opacity: 0.2,
      'stroke-width': 2.5,
      stroke: 'none',
    });
  });
});
