import { describe, expect, it } from 'vitest';
import { sums } from '../../core/sums/sums.ts';
import { nodesOf, svgText } from '../shape.ts';
import { textWidth } from '../text.ts';
import { box } from './pen.ts';
import { sumDrawing } from './sum-drawing.ts';

const shown = (sum: (typeof sums)[number], width: number) =>
  sumDrawing({
    drawing: sum.drawing,
    title: sum.title,
    legend: [...Object.values(sum.inputs), ...Object.values(sum.results)].map(({ symbol, label }) => ({
      symbol,
      label,
      text: '40.000 ± 0.004 mm',
    })),
    width,
  });

describe.each(sums.map((sum) => [sum.name, sum] as const))('the drawing of %s', (_, sum) => {
  it.each([344, 420])('%d px wide: named, letters of 14 px or more, every word on the sheet', (width) => {
    const root = shown(sum, width);
    expect(root.attributes).toMatchObject({ role: 'img', width });
    const inFigure = new Set(nodesOf(nodesOf(root).find((node) => node.tag === 'g')!));
    for (const text of nodesOf(root).filter((node) => node.tag === 'text')) {
      const words = String(text.children[0]);
      const size = Number(text.attributes['font-size']);
      expect(size).toBeGreaterThanOrEqual(14);
      const wide = textWidth(words, size);
      const anchor = text.attributes['text-anchor'];
      const left = Number(text.attributes.x) - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0);
      const [most, low] = inFigure.has(text)
        ? [box.width, box.height + 8]
        : [width, Number(root.attributes.height)];
      expect([words, left >= -2, left + wide <= most + 2, Number(text.attributes.y) <= low]).toEqual([
        words,
        true,
        true,
        true,
      ]);
    }
    expect(svgText(root)).not.toMatch(/NaN|Infinity|undefined/);
    expect(nodesOf(root).filter((node) => 'id' in node.attributes)).toEqual([]);
  });
  it('is the drawing that was last looked at', async () => {
    await expect(`${svgText(shown(sum, 344))}\n`).toMatchFileSnapshot(`snapshots/${sum.name}.svg`);
  });
  it('has every letter it draws in its legend', () => {
    const letters = nodesOf(nodesOf(shown(sum, 344)).find((node) => node.tag === 'g')!)
      .filter((node) => node.tag === 'text' && node.attributes['font-weight'] === 680)
      .flatMap((node) => String(node.children[0]).split(/[, ]+/))
      .filter((word) => word !== '' && !['slide', 'way'].includes(word));
    const known = sums
      .filter((one) => one.drawing === sum.drawing)
      .flatMap((one) =>
        [...Object.values(one.inputs), ...Object.values(one.results)].map((each) => each.symbol),
      );
    for (const one of letters) expect(known).toContain(one);
  });
});
