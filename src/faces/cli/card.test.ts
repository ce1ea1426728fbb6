import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { pdfPages } from '../../../tests/fixture/pdf-pages.ts';
import { readTemplates } from '../../adapters/file/templates.ts';
import { pressPdf } from '../../adapters/paper/press.ts';
import { cardShape } from '../../core/print/card-shape.ts';
import { registerCard } from './card.ts';
import type { Doors } from './doors.ts';
import { run } from './run.ts';

async function waywright(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const files = new Map<string, Uint8Array>();
  const doors = {
    say: (t: string) => out.push(t),
    complain: (t: string) => err.push(t),
    templates: () => readTemplates(),
    now: () => '2031-11-25T09:40:00Z',
  } as unknown as Doors;
  const writeBytes = async (file: string, bytes: Uint8Array) => void files.set(file, bytes);
  const code = await run(['card', ...words], doors, [registerCard({ writeBytes, press: pressPdf })], '0');
  return { code, out: out.join('\n'), err: err.join('\n'), files };
}

describe('waywright card', () => {
  it.each([
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
  ])(
    'as SVG on %s, to true scale: dark just inside every square, white just outside',
    async (paper, width, height) => {
      const { out, code } = await waywright('--paper', paper);
      expect(code).toBe(0);
      expect(out).toContain(`width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`);
      // Drawn by a general renderer at 10 px a mm.
      const { data, info } = await sharp(Buffer.from(out), { density: 254 })
        .resize(Math.round(10 * width), Math.round(10 * height), { fit: 'fill' })
        .greyscale()
        .raw()
        .toBuffer({ resolveWithObject: true });
      const at = (x: number, y: number) => data[Math.round(10 * y) * info.width + Math.round(10 * x)]!;
      const left = (width - cardShape.length_mm) / 2;
      for (const square of cardShape.squares) {
        const [x, y] = [left + square.x, 30 + square.y];
        for (const [dx, dy] of [
          [0.3, 0.3],
          [13.7, 0.3],
          [13.7, 13.7],
          [0.3, 13.7],
        ] as const) {
          expect(at(x + dx, y + dy)).toBeLessThan(40);
          expect(at(x + dx + Math.sign(dx - 7) * 0.6, y + dy)).toBeGreaterThan(215);
          expect(at(x + dx, y + dy + Math.sign(dy - 7) * 0.6)).toBeGreaterThan(215);
        }
        expect(at(x + 7, y + 7) > 128).toBe(square === cardShape.squares[0]);
      }
      const middle = 30 + cardShape.width_mm / 2;
      for (const x of [left + 24, left + 124]) expect(at(x, middle + 2)).toBeLessThan(200);
    },
  );

  it('as PDF of the sheet’s size, squares 14 mm', async () => {
    const { files, out } = await waywright('--out', 'card.pdf');
    expect(out).toContain('100 %');
    const text = Buffer.from(files.get('card.pdf')!).toString('latin1');
    expect(text.startsWith('%PDF-')).toBe(true);
    // ISO 32000-1: a point is 1/72 inch; A4 is 595.28 × 841.89 points.
    expect(text).toMatch(/MediaBox \[0 0 595\.2\d* 841\.8\d*\]/);
    expect(text.trimEnd().endsWith('%%EOF')).toBe(true);
  });

  it('refuses another paper and another kind of file', async () => {
    expect(await waywright('--paper', 'a5')).toMatchObject({
      code: 2,
      err: '--paper: "a5"; expected a4 or letter',
    });
    const { code, err, files } = await waywright('--out', 'card.doc');
    expect([code, files.size]).toEqual([2, 0]);
    expect(err).toContain('.svg or .pdf');
  });
});

describe('waywright card --bench', () => {
  const words = ['Signs', 'The push test', 'burnished', 'not proven', 'Cautions', 'headstock end'];
  it.each(['a4', 'letter'])('is one page of %s with all its words inside the margins', async (paper) => {
    const { files, out, code } = await waywright('--bench', '--paper', paper, '--out', 'bench.pdf');
    expect(code).toBe(0);
    expect(out).toBe('The bench card is in bench.pdf.');
    const { pages } = await pdfPages(files.get('bench.pdf')!);
    expect(pages).toHaveLength(1);
    const { items, width } = pages[0]!;
    for (const word of words) expect(items.map((item) => item.text)).toContain(word);
    for (const item of items.filter((one) => one.turned_deg === 0)) {
      expect(item.x, item.text).toBeGreaterThan(40);
      expect(item.x + item.width, item.text).toBeLessThan(width - 40);
    }
  });
  it('is a drawing too, with its name and what it says', async () => {
    const { out } = await waywright('--bench');
    expect(out).toContain('<title>Bench card</title>');
    for (const word of words) expect(out).toContain(word);
  });
});
