import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { pdfPages, type ReadPage } from '../../../tests/fixture/pdf-pages.ts';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { faceRule } from '../../adapters/paper/face.ts';
import { pressPdf } from '../../adapters/paper/press.ts';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import type { ChartReport } from '../../shop/chart/chart-report.ts';
import { registerChart } from './chart.ts';
import type { Doors } from './doors.ts';
import { run } from './run.ts';

const lathe = readFileSync('demo/lathe.chart.json', 'utf8');
const saddle = readFileSync('demo/saddle.job.json', 'utf8');
const kept: Record<string, string> = { 'lathe.chart.json': lathe, 'saddle.job.json': saddle };

async function waywright(words: string, files: Record<string, string> = {}) {
  const out: string[] = [];
  const err: string[] = [];
  const written = new Map<string, string | Uint8Array>();
  const doors = {
    say: (text: string) => out.push(text),
    complain: (text: string) => err.push(text),
    readText: async (file: string) =>
      ({ ...kept, ...files })[file] ?? Promise.reject(new Error(`no ${file}`)),
    writeText: async (file: string, text: string) => void written.set(file, text),
    withStore: async (work: (store: unknown) => unknown) => work({ entries: async () => undefined }),
    solve: solveWithHighs,
    now: () => '2031-11-25T09:40:00.000Z',
  } as unknown as Doors;
  const chart = registerChart({
    testLists: () => readTestLists(),
    press: pressPdf,
    faceRule: async () => faceRule(),
    writeBytes: async (file, bytes) => void written.set(file, bytes),
    paperPhoto: async () => undefined,
  });
  const code = await run(['chart', ...words.split(' ')], doors, [chart], '0');
  return { code, out: out.join('\n'), err: err.join('\n'), written };
}

const plain = (text: string): string => text.replace(/[\u00a0\u2009\u202f]/g, ' ');
const both = 'saddle.job.json --results lathe.chart.json';

describe('waywright chart', () => {
  it('sets a job’s features beside results by hand: its facing answers the cross slide’s line, its levels are lines of their own', async () => {
    const report = JSON.parse((await waywright(`${both} --json`)).out) as ChartReport;
    const lines = report.groups.flatMap((group) => group.lines);
    const facing = lines.find((line) => line.id === 'cross-slide-square')!;
    expect(facing).toMatchObject({ limit_text: '0 to +20', is_final: true, verdict: 'not proven' });
    expect(facing.worked_to_text).toBe('+6 to +20');
    expect(lines.slice(-2).map((line) => [line.id, line.limit_text])).toEqual([
      ['job:level across', '−6 to +6'],
      ['job:level along', '−6 to +6'],
    ]);
    expect(Object.values(report.tally).reduce((sum, one) => sum + one)).toBe(lines.length);
  });

  it('says what is still to be proven and the cheapest next measurement', async () => {
    const { out } = await waywright('lathe.chart.json');
    expect(out).toContain('Still to be proven, the least work first');
    expect(out).toMatch(/Cheapest next: “.+”, .+, about 10 minutes/);
    expect(out).toContain('nothing is proven without its doubt');
    expect(out).toContain('as remembered of ISO 1708:1989');
    expect(out).not.toMatch(/conforms/i);
  });

  it('a slope over its own length is the same tilt in either system: 20 µm in 300 mm is 0.8 thou in 12 in', async () => {
    const report = JSON.parse((await waywright('lathe.chart.json --units inch --json')).out) as ChartReport;
    const line = report.groups.flatMap((group) => group.lines).find((one) => one.id === 'axis-up')!;
    expect([line.limit_text, plain(line.unit_text)]).toEqual(['0 to +0.8', 'thou in 12 in']);
    // 8.2 µm in 300 mm is 8.2 · 304.8 / 300 = 8.3312 µm in 12 in, 0.328 thou; ± 3.0 is 0.12.
    expect(plain(line.now!.text)).toBe('+0.33 ± 0.12');
  });

  it('shows how a verdict comes about when asked: value less and plus its doubt against the limits', async () => {
    const { out } = await waywright('lathe.chart.json --working');
    // 12.4 ± 3.4 against 0 to 15.
    expect(out).toContain('0 against 12.4 − 3.4 = 9; 12.4 + 3.4 = 15.8 against 15 µm in 300 mm: not proven');
    expect((await waywright('lathe.chart.json')).out).not.toContain('Working');
  });

  it('as CSV every line with numbers as numbers', async () => {
    const { written } = await waywright('lathe.chart.json --csv chart.csv');
    const { data, errors } = Papa.parse<Record<string, string>>(String(written.get('chart.csv')), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    const axis = data.find((row) => row.test === 'axis-sideways')!;
    expect([axis.low, axis.high, axis.first, axis.final, axis.final_doubt_2sd, axis.verdict]).toEqual([
      '0',
      '15',
      '-4.5',
      '12.4',
      '3.4',
      'not proven',
    ]);
  });

  it('as SVG with a gauge in every line', async () => {
    const { written, out } = await waywright('lathe.chart.json --svg chart.svg');
    const svg = String(written.get('chart.svg'));
    const lines = Number(/Of (\d+) lines/.exec(out)![1]);
    expect(svg.match(/<title>[^<]*, limit /g)).toHaveLength(lines);
    expect(svg).toContain('@font-face');
    expect(svg).not.toContain('var(--');
  });

  it.each([
    ['lathe.chart.json --paper a5', '--paper: "a5"; expected a4 or letter'],
    ['lathe.chart.json --units cm', '--units: "cm"; expected metric or inch'],
    ['nobody', 'job: "nobody"; expected a job of this workshop'],
    ['lathe.chart.json --list press', 'lathe.chart.json: list: press; expected one of "engine-lathe"'],
    ['lathe.chart.json --results lathe.chart.json', 'a file of results already'],
  ])('refuses %s', async (words, said) => {
    const { code, err, written } = await waywright(words);
    expect([code, written.size]).toEqual([2, 0]);
    expect(err).toContain(said);
  });
});

describe('the PDF, read by another program', () => {
  const margin = 0.4 * 72;
  const onPage = (page: ReadPage): void => {
    for (const item of page.items) {
      expect(item.x, item.text).toBeGreaterThan(margin);
      expect(item.x + item.width, item.text).toBeLessThan(page.width - margin);
      expect(item.y, item.text).toBeGreaterThan(margin);
      expect(item.y + item.size, item.text).toBeLessThan(page.height - margin);
    }
  };
  /** Letters of one baseline that run into each other. */
  const collisions = (page: ReadPage): string[] => {
    const found: string[] = [];
    const items = page.items.toSorted((a, b) => a.x - b.x);
    items.forEach((one, k) => {
      for (const other of items.slice(k + 1))
        if (Math.abs(one.y - other.y) < 1 && one.x + one.width > other.x + 0.5)
          found.push(`${one.text} | ${other.text}`);
    });
    return found;
  };

  /** What stands on the baseline of a line's number. */
  const rowOf = (pages: readonly ReadPage[], number: number): string[] =>
    pages.flatMap((page) => {
      const head = page.items.find((item) => item.text === String(number) && item.x < 70);
      return head ? page.items.filter((item) => Math.abs(item.y - head.y) < 1).map((item) => item.text) : [];
    });

  it.each([
    ['a4', 'metric', 595.28, 841.89],
    ['letter', 'inch', 612, 792],
  ])(
    '%s, %s: holds every number of the JSON, nothing beyond its margins, nothing over anything else',
    async (paper, units, width, height) => {
      const words = `${both} --paper ${paper} --units ${units}`;
      const report = JSON.parse((await waywright(`${words} --json`)).out) as ChartReport;
      const bytes = (await waywright(`${words} --pdf chart.pdf`)).written.get('chart.pdf') as Uint8Array;
      const { pages, title } = await pdfPages(bytes);
      expect(title).toContain('Saddle of the long lathe');
      const text = pages.map((page) => page.text).join(' ');
      for (const line of report.groups.flatMap((group) => group.lines)) {
        const row = rowOf(pages, line.number);
        for (const one of [line.limit_text, line.first?.text, line.is_final ? line.now?.text : undefined])
          if (one !== undefined) expect(row, line.name).toContain(plain(one).split(', ')[0]);
        expect(row).toContain(line.verdict);
        expect(row).toContain(plain(line.unit_text).split(' ')[0]);
      }
      expect(text).toContain(units === 'inch' ? 'thou in 12 in' : 'µm in 300 mm');
      for (const page of pages) {
        expect(page.width).toBeCloseTo(width, 1);
        expect(page.height).toBeCloseTo(height, 1);
        onPage(page);
        expect(collisions(page)).toEqual([]);
      }
      expect(text).toContain(`page ${pages.length} of ${pages.length}`);
      for (const heading of ['Condition found', 'What was done', 'What it was measured with', 'Cautions'])
        expect(text).toContain(heading);
      expect(text).toContain('19 times in 20');
      expect(text).toContain('not a safety rating');
    },
  );

  it('has its faces embedded, every font of it', async () => {
    const bytes = (await waywright(`${both} --pdf chart.pdf`)).written.get('chart.pdf') as Uint8Array;
    const raw = Buffer.from(bytes).toString('latin1');
    const fonts = raw.match(/\/Type \/FontDescriptor/g) ?? [];
    expect(fonts.length).toBeGreaterThan(2);
    expect(raw.match(/\/FontFile2 /g)).toHaveLength(fonts.length);
    expect(raw).not.toContain('/Helvetica');
  });
});
