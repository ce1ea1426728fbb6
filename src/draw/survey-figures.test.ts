import { describe, expect, it } from 'vitest';
import { lineStrip } from './line-strip.ts';
import { leastText } from './palette.ts';
import { plateMap } from './plate-map.ts';
import { nodesOf, svgText } from './shape.ts';

const strip = lineStrip({
  title: 'Front V, top',
  desc: 'Hollow.',
  width: 640,
  stations: [0, 210, 430, 640, 850, 1070],
  values: [0, -3.1, -7.9, -6.2, -2.4, 0],
  doubts: [0, 1.1, 1.5, 1.6, 1.2, 0],
  zone: { high: [0.3, 0.3], low: [-7.9, -7.4] },
  contacts: [
    { index: 0, side: 'high' },
    { index: 5, side: 'high' },
    { index: 2, side: 'low' },
  ],
  unworn: [[0, 215]],
  x: { name: 'mm along the way', text: (mm) => String(mm) },
  y: { name: 'from the ends, µm', text: (um) => String(um) },
  x_unit_mm: 1,
  y_unit_mm: 0.001,
});
const worn = lineStrip({
  title: 'Worn',
  width: 358,
  stations: [0, 500, 1000],
  values: [0, -26, 0],
  unworn: [
    [0, 10],
    [990, 1000],
  ],
  wear: { line: [1, 3], deepest: 1, text: 'worn 28 ± 1 µm' },
  x: { name: 'mm', text: (mm) => String(mm) },
  y: { name: 'µm', text: (um) => String(um) },
  x_unit_mm: 1,
  y_unit_mm: 0.001,
});

it('wear is an arrow from the line through what was not run on down to the deepest place', () => {
  const nodes = nodesOf(worn);
  const point = nodes.filter((node) => node.tag === 'circle')[1]!;
  const shafts = nodes.filter((node) => node.tag === 'line' && node.attributes['stroke-width'] === 2);
  expect(shafts).toHaveLength(1);
  const [shaft] = shafts;
  expect(shaft!.attributes.x1).toBe(point.attributes.cx);
  expect(Number(shaft!.attributes.y1)).toBeLessThan(Number(point.attributes.cy) - 100);
  const datum = nodes.find((node) => node.tag === 'line' && node.attributes['stroke-width'] === 1.6)!;
  // Halfway along the line stands at 2, where the arrow begins.
  expect(Number(shaft!.attributes.y1)).toBeCloseTo(
    (Number(datum.attributes.y1) + Number(datum.attributes.y2)) / 2,
    6,
  );
  expect(svgText(worn)).toContain('worn 28 ± 1 µm');
});

const map = plateMap({
  title: 'Table',
  width: 640,
  points: [0, 1, 2, 3].flatMap((row) =>
    [0, 1, 2, 3, 4].map((column) => ({
      x: 130 * column,
      y: 110 * row,
      depth: Math.abs(column - 2) + 0.7 * row,
      text: String(column + row),
    })),
  ),
  contacts: [
    { index: 19, side: 'high' },
    { index: 2, side: 'low' },
  ],
  key: 'to take off, µm',
  long: '520 mm',
  broad: '330 mm',
});

describe('the survey’s figures', () => {
  it('look as they did when somebody last looked at them', async () => {
    await expect(svgText(strip)).toMatchFileSnapshot('snapshots/line-strip.svg');
    await expect(svgText(map)).toMatchFileSnapshot('snapshots/plate-map.svg');
  });
  it('the strip states its exaggeration: 640 px over 1070 mm, some 187 px over 10 µm', () => {
    const text = svgText(strip);
    const times = Number(/heights × ([\d.]+)/.exec(text)![1]);
    const zero = Number(
      /<line [^>]*y1="([\d.]+)"[^>]*stroke="var\(--edge[^>]*stroke-width="1.3"/.exec(text)![1],
    );
    const circles = nodesOf(strip).filter((node) => node.tag === 'circle' && node.attributes.r === 3);
    const [first, , lowest] = circles;
    const perMm = (Number(circles.at(-1)!.attributes.cx) - Number(first!.attributes.cx)) / 1070;
    const perUm = (Number(lowest!.attributes.cy) - zero) / 7.9;
    expect(Math.abs((perUm * 1000) / perMm / times - 1)).toBeLessThan(0.05);
  });
  it('letters are large enough, and discs grow with what must come off', () => {
    for (const node of [...nodesOf(strip), ...nodesOf(map)])
      if (node.tag === 'text') expect(Number(node.attributes['font-size'])).toBeGreaterThanOrEqual(leastText);
    const discs = nodesOf(map).filter((node) => node.tag === 'circle' && node.attributes['fill-opacity']);
    const radius = (index: number) => Number(discs[index]!.attributes.r);
    expect(radius(19)).toBeGreaterThan(radius(15 + 2));
    expect(radius(19) ** 2 / radius(17) ** 2).toBeCloseTo(4.1 / 2.1, 6);
  });
  it('the operator’s side is below: a larger y stands higher', () => {
    const discs = nodesOf(map).filter((node) => node.tag === 'circle' && node.attributes['fill-opacity']);
    expect(Number(discs[19]!.attributes.cy)).toBeLessThan(Number(discs[0]!.attributes.cy));
    expect(Number(discs[19]!.attributes.cx)).toBeGreaterThan(Number(discs[0]!.attributes.cx));
  });
});
