import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { cornersText, printedPhoto } from '../../../tests/fixture/printed-photo.ts';
import { decodePhoto } from '../../adapters/photo/decode.ts';
import { drawnOver, uprightJpeg } from '../../adapters/photo/overlay.ts';
import type { Doors } from './doors.ts';
import { registerPrint } from './print.ts';
import { run } from './run.ts';

const mask = {
  exclusions: [
    {
      type: 'polyline',
      width: 6,
      points: [
        [0, 25],
        [100, 25],
      ],
    },
  ],
};

async function waywright(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const written = new Map<string, Uint8Array>();
  const photo = await printedPhoto();
  const doors = {
    readText: async (file: string) => (file === 'mask.json' ? JSON.stringify(mask) : '{"exclusions": 3}'),
    say: (text: string) => out.push(text),
    complain: (text: string) => err.push(text),
  } as unknown as Doors;
  const register = registerPrint({
    readBytes: async (file) => (file === 'flat.jpg' ? photo : Buffer.from('text')),
    writeBytes: async (file, bytes) => void written.set(file, bytes),
    decode: decodePhoto,
    laidOver: drawnOver,
    upright: uprightJpeg,
  });
  const code = await run(['print', ...words], doors, [register], '0');
  return { code, out: out.join('\n'), err: err.join('\n'), written };
}
const flat = ['flat.jpg', '--size', '100x50', '--corners', cornersText];

describe('waywright print', () => {
  it('--json prints one document with the contract’s keys', async () => {
    const { code, out, err } = await waywright(...flat, '--json', '--zones', '4');
    expect([code, err]).toEqual([0, '']);
    const reading = JSON.parse(out);
    expect(reading.cells.map((cell: { col: number; row: number }) => [cell.col, cell.row])).toContainEqual([
      3, 1,
    ]);
    expect(reading.cells).toHaveLength(8);
    // The photo has 112 spots, some of which touch.
    expect(reading.spots.length).toBeGreaterThan(80);
    expect(reading.spots.length).toBeLessThan(125);
    expect(reading.zone_shares).toHaveLength(4);
    expect(reading).toMatchObject({ cell_mm: 25, size: { length_mm: 100, width_mm: 50 } });
  });

  it('says figures, squares and trust', async () => {
    const { out } = await waywright(...flat, '--cell', '25.4');
    expect(out).toContain('100 × 50 mm, from a JPEG of 900 × 600 pixels, corners as given');
    expect(out).toContain('Spots in each 25.4 mm square');
    expect(out).toMatch(/bearing {3}\d+\.\d ± \d+\.\d % of \d+ mm²/);
  });

  it('a second photo of the same print agrees; one that cannot be read is named', async () => {
    const same = ['--second', 'flat.jpg', '--second-corners', cornersText];
    const { out } = await waywright(...flat, ...same);
    expect(out).toContain('The second photo agrees with the first.');
    const json = JSON.parse((await waywright(...flat, ...same, '--json')).out);
    expect(json.second.agreement).toMatchObject({ agrees: true, squares_apart: [] });
    const { code, err } = await waywright(...flat, '--second', 'other.jpg');
    expect(code).toBe(2);
    expect(err).toContain('other.jpg');
  });

  it('a mask takes its area out', async () => {
    const net = async (...more: string[]) =>
      JSON.parse((await waywright(...flat, '--json', ...more)).out).net_area_mm2 as number;
    const [whole, masked] = [await net(), await net('--mask', 'mask.json')];
    // A groove of 6 mm along 100 mm: 600 mm², to the raster's tenth of a mm along its edges.
    expect(Math.abs(whole - masked - 600)).toBeLessThan(25);
  });

  it('--overlay draws over the photo as it is shown', async () => {
    const png = (await waywright(...flat, '--overlay', 'seen.png')).written.get('seen.png')!;
    expect(await sharp(png).metadata()).toMatchObject({ format: 'png', width: 900, height: 600 });
    const svg = Buffer.from(
      (await waywright(...flat, '--overlay', 'seen.svg')).written.get('seen.svg')!,
    ).toString();
    expect(svg).toMatch(/^<svg .*<image .*data:image\/jpeg;base64,/);
  });

  it.each<[string, string[], string]>([
    ['text', ['notes.jpg', ...flat.slice(1)], 'notes.jpg: photo: something that does not begin as a picture'],
    [
      'a size in words',
      ['flat.jpg', '--size', 'large'],
      'flat.jpg: size: "large"; expected length and width',
    ],
    ['a corner too few', [...flat.slice(0, 4), '1,2 3,4 5,6'], 'corners: 3 corners; expected four corners'],
    ['corners outside', [...flat.slice(0, 4), '0,0 9000,0 9000,600 0,600'], 'corners[1]: 9000,0; expected'],
    ['another square', [...flat, '--cell', '30'], 'cell_mm: 30; expected 25 or 25.4'],
    ['a mask that is none', [...flat, '--mask', 'other.json'], 'other.json: exclusions: 3; expected a list'],
    [
      'another overlay',
      [...flat, '--overlay', 'seen.gif'],
      '--overlay: "seen.gif"; expected a file ending in',
    ],
  ])('refuses %s by file and field, with 2', async (_, words, text) => {
    const { code, out, err, written } = await waywright(...words);
    expect([code, out, written.size]).toEqual([2, '', 0]);
    expect(err).toContain(text);
  });
});
