import { describe, expect, it } from 'vitest';
import { partsFace } from './parts-face.ts';
import { partsPlot } from './parts-plot.ts';
import { partsSheet } from './parts-sheet.ts';
import { nodesOf, type Shape, svgText } from './shape.ts';
import { textWidth } from './text.ts';

const places_mm = [0, 50, 100, 150, 200, 250, 300];
const bar = partsPlot({
  title: 'bar',
  words:
    'Over 300 mm near the headstock, turned diameter grows 6 ± 2 µm toward the tailstock. Cylindricity 3.0 ± 1.1 µm.',
  width: 680,
  places_mm,
  value_um: places_mm.map((at) => at / 50 + Math.sin(at / 40)),
  doubt_um: places_mm.map((at) => at / 150),
  fit_um: places_mm.map((at) => at / 49),
  x: { name: 'saddle along the bed', left: '0 mm, headstock end', right: '300 mm' },
  y: { name: 'diameter against the headstock end, µm', text: (v) => `${v}` },
});
const net = [-80, -27, 27, 80];
const top = partsFace({
  title: 'vice block, face +z',
  words: 'Face +z: flat within 3 ± 1 µm.',
  width: 680,
  places_mm: [net, net],
  out_um: net.map((a) => net.map((b) => a / 60 + (b / 80) ** 2)),
  ends: ['+x', '+y'],
});
const figures: Readonly<Record<string, Shape>> = {
  'parts-plot': bar,
  'parts-face': top,
  'parts-sheet': partsSheet('What parts come off', [bar, top]),
};

describe.each(Object.entries(figures))('%s', (name, root) => {
  it('is the drawing that was last looked at', async () => {
    await expect(`${svgText(root)}\n`).toMatchFileSnapshot(`snapshots/${name}.svg`);
  });
  it('says how many times too tall it is drawn, in letters of 14 px or more, without ids', () => {
    const texts = nodesOf(root).filter((node) => node.tag === 'text');
    expect(texts.some((text) => /^heights × \d+$/.test(String(text.children[0])))).toBe(true);
    for (const text of texts) expect(Number(text.attributes['font-size'])).toBeGreaterThanOrEqual(14);
    expect(nodesOf(root).filter((node) => 'id' in node.attributes)).toEqual([]);
    expect(svgText(root)).not.toMatch(/NaN|Infinity|undefined/);
  });
  it('keeps every word on the sheet', () => {
    for (const text of nodesOf(root).filter((node) => node.tag === 'text')) {
      const wide = textWidth(String(text.children[0]), Number(text.attributes['font-size']));
      const left = Number(text.attributes.x) - (text.attributes['text-anchor'] === 'end' ? wide : 0);
      expect([text.children[0], left >= -1.5 && left + wide <= 682]).toEqual([text.children[0], true]);
    }
  });
});

describe('exaggeration', () => {
  it('is upright px per mm of height over px per mm along', () => {
    const flat = partsPlot({
      title: 'bar',
      width: 680,
      height: 270,
      places_mm: [0, 300],
      value_um: [0, 10],
      doubt_um: [0, 0],
      x: { name: '', left: '', right: '' },
      y: { name: '', text: () => '' },
    });
    // 10 µm and a tenth of air to each side over 192 px; 300 mm over 628 px: 16000 px and 2.093 px a mm.
    const said = nodesOf(flat).find((node) => String(node.children[0]).startsWith('heights'));
    expect(said!.children[0]).toBe('heights × 7600');
  });
  it('a part without any error is drawn level, not blown up', () => {
    const level = partsFace({
      title: 'true',
      width: 400,
      places_mm: [net, net],
      out_um: net.map(() => net.map(() => 1e-16)),
      ends: ['+x', '+y'],
    });
    expect(svgText(level)).not.toMatch(/NaN/);
  });
});
