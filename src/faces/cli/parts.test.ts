import { describe, expect, it } from 'vitest';
import type { Doors } from './doors.ts';
import { registerParts } from './parts.ts';
import { run } from './run.ts';

const three = (of: (k: number) => readonly number[]) => Array.from({ length: 7 }, (_, k) => of(k));
/** An invented lathe whose saddle goes away from the operator by 1 µm every 100 mm, and an invented mill. */
const input = () => ({
  lathe: {
    travel: {
      stations_mm: [0, 150, 300, 450, 600, 750, 900],
      shift_um: three((k) => [0, -1.5 * k, 0]),
      turn_urad: three(() => [0, 0, 40]),
      shift_sd_um: three(() => [0, 0.4, 0.4]),
      turn_sd_urad: three(() => [0, 0, 3]),
    },
    tool_mm: [0, -60, 150],
    square_urad: { value: 5, sd: 4 },
    turned: [{ name: 'bar', radius_mm: 20, from_mm: 0, to_mm: 300 }],
    faced: [
      { name: 'flange', at_mm: 300, rim_mm: 150 },
      { name: 'shoulder', at_mm: 300, rim_mm: 40, inner_mm: 20, beside: 'bar' },
    ],
  },
  mill: {
    tool_mm: [0, 0, 60],
    carriages: [
      {
        name: 'table',
        along: 'x',
        carries: 'work',
        reference_mm: [0, 0, -60],
        stations_mm: [-200, 200],
        shift_um: [
          [0, 0, -20],
          [0, 0, 20],
        ],
      },
    ],
    blocks: [{ name: 'vice block', middle_mm: [0, 0, 30], size_mm: [160, 100, 60], faces: ['+z', '+y'] }],
  },
  wear: {
    per: '1000 h',
    features: [{ name: 'facing', unit: 'urad', value: 40, sd: 3, low: 20, high: 66, rate: -5, rate_sd: 1 }],
  },
});

async function said(value: unknown, ...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const written: Record<string, string> = {};
  const doors = {
    readText: async () => JSON.stringify(value),
    writeText: async (file: string, text: string) => {
      written[file] = text;
    },
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
  } as unknown as Doors;
  const code = await run(['parts', 'lathe.json', ...words], doors, [registerParts], '0');
  const spaces = /[\u00a0\u2009\u202f]/g;
  return { code, out: out.join('\n').replace(spaces, ' '), err: err.join('\n'), written };
}

describe('waywright parts', () => {
  it('says what comes off, with sign in words and doubt', async () => {
    const { code, out, err } = await said(input());
    expect([code, err]).toEqual([0, '']);
    // 3 µm toward the operator over 300 mm: 6 µm of diameter.
    expect(out).toMatch(
      /Over 300 mm near the headstock, turned diameter grows 6 ± 2 µm toward the tailstock/,
    );
    expect(out).toMatch(
      /A face of 300 mm across comes out concave, 6.8 ± 1.5 µm from rim to centre \(\+45 ± 10 µrad/,
    );
    expect(out).toMatch(/The corner with bar is tighter than square: −55 ± 1\d µrad/);
    expect(out).toContain('parallel to the table within 16 µm');
    expect(out).toContain('reaches the low limit after 4000 h, at the earliest 2500 h, at the latest 7100 h');
    expect(out).toContain('Aimed at +60 µrad it would stay for 8000 h');
    // The mill’s poses have no sds.
    expect(out).toContain('no doubt is known');
  });

  it('--json prints one document', async () => {
    const { out } = await said(input(), '--json');
    const answer = JSON.parse(out);
    expect(answer.turned[0].taper_um.value).toBeCloseTo(6, 9);
    expect(answer.turned[0].diameter_sd_um[0]).toBe(0);
    expect(answer.faced[1].corner_urad.value).toBeCloseTo(-55, 9);
    expect(answer.blocks[0].faces[0].parallel_um.value).toBeCloseTo(16, 9);
    expect(answer.wear[0]).toMatchObject({ toward: 'low', time_unit: 'h', lasts: 4000, better_aim: 60 });
    expect(answer.doubt_known).toBe(false);
  });

  it('a feature that may not wear at all has no end, and JSON says null', async () => {
    const { wear } = input();
    const unsure = { wear: { per: 'year', features: [{ ...wear.features[0], rate_sd: 4 }] } };
    expect(JSON.parse((await said(unsure, '--json')).out).wear[0].lasts_high).toBeNull();
    expect((await said(unsure)).out).toContain('without end');
  });

  it('--svg writes the drawings whole, and says how much too tall', async () => {
    const { written, code } = await said(input(), '--svg', 'parts.svg');
    expect(code).toBe(0);
    expect(Object.keys(written)).toEqual(['parts.svg']);
    expect(written['parts.svg']!.match(/heights × \d+/g)).toHaveLength(5);
    expect(written['parts.svg']).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('refuses a picture of another kind, or of wear, before anything is written', async () => {
    const other = await said(input(), '--svg', 'parts.png');
    expect([other.code, other.err, other.written]).toEqual([
      2,
      '--svg: "parts.png"; expected a file ending in .svg',
      {},
    ]);
    const worn = await said({ wear: input().wear }, '--svg', 'parts.svg');
    expect([worn.code, worn.out, worn.written]).toEqual([2, '', {}]);
    expect(worn.err).toContain('only wear was asked');
  });

  it('from a surveyed bed: the poses that site finds', async () => {
    const { readFileSync } = await import('node:fs');
    const site = JSON.parse(readFileSync('checks/data/cases/site-1.json', 'utf8')).input;
    const [first, last] = [site.positions_mm[0], site.positions_mm.at(-1)];
    const lathe = {
      on_bed: { site, printed_mm: site.candidates_mm[0], height_sd_um: 1 },
      turned: [{ name: 'shaft', radius_mm: 25, from_mm: first, to_mm: last }],
    };
    const { code, out } = await said({ lathe });
    expect(code).toBe(0);
    expect(out).toMatch(/of the whole travel, turned diameter .*±/);
    const elsewhere = { ...lathe, on_bed: { ...lathe.on_bed, printed_mm: 1 } };
    expect((await said({ lathe: elsewhere })).err).toContain(
      'lathe.on_bed.printed_mm: 1; expected one of site.candidates_mm',
    );
    const lifted = { ...site, load: { ...site.load, direction: [0, 0, 1] } };
    const none = await said({ lathe: { ...lathe, on_bed: { ...lathe.on_bed, site: lifted } } });
    expect([none.code, none.out]).toEqual([3, '']);
    expect(none.err).toContain('lifts or tips it off its pads');
  });
});

describe('bad input is refused by field, with what was found and what is expected', () => {
  const refused = async (change: (value: ReturnType<typeof input>) => void) => {
    const value = input();
    change(value);
    const { code, out, err } = await said(value);
    expect([code, out]).toEqual([2, '']);
    return err;
  };
  it.each<[string, (value: ReturnType<typeof input>) => void, string]>([
    [
      'a station twice',
      (v) => v.lathe.travel.stations_mm.splice(2, 1, 150),
      'lathe.travel.stations_mm[2]: 150; expected more than the one before (150)',
    ],
    [
      'a row too few',
      (v) => v.lathe.travel.shift_um.pop(),
      'lathe.travel.shift_um: "6 rows"; expected 7 rows, one for each station',
    ],
    [
      'a cut past the bed',
      (v) => Object.assign(v.lathe.turned[0]!, { to_mm: 901 }),
      'lathe.turned[0].to_mm: 901; expected 0 to 900, the travel',
    ],
    [
      'a cut the wrong way',
      (v) => Object.assign(v.lathe.turned[0]!, { to_mm: 0 }),
      'expected more than from_mm (0)',
    ],
    [
      'a shoulder inside out',
      (v) => Object.assign(v.lathe.faced[1]!, { inner_mm: 50 }),
      'lathe.faced[1].inner_mm: 50; expected less than rim_mm (40)',
    ],
    [
      'a part that is not there',
      (v) => Object.assign(v.lathe.faced[1]!, { beside: 'rod' }),
      'lathe.faced[1].beside: "rod"; expected the name of a turned part',
    ],
    [
      'a name twice',
      (v) => Object.assign(v.lathe.faced[0]!, { name: 'bar' }),
      'lathe.faced[0].name: "bar"; expected a name that is not taken',
    ],
    [
      'a block that does not fit',
      (v) => Object.assign(v.mill.blocks[0]!, { size_mm: [500, 100, 60] }),
      'mill.blocks[0].size_mm[0]: 500; expected a block that table reaches',
    ],
    [
      'a face that nothing sweeps',
      (v) => Object.assign(v.mill.blocks[0]!, { faces: ['+x'] }),
      'mill.blocks[0].faces[0]: "+x"; expected a face that travel x sweeps',
    ],
    [
      'limits the wrong way round',
      (v) => Object.assign(v.wear.features[0]!, { high: 10 }),
      'wear.features[0].high: 10; expected more than low (20)',
    ],
    [
      'a covariance that is none',
      (v) =>
        Object.assign(v.lathe.travel, {
          common_covariance: Array.from({ length: 6 }, (_, i) =>
            Array.from({ length: 6 }, (_, j) => (i === j ? 1 : 2)),
          ),
        }),
      'lathe.travel.common_covariance[1][0]: 2; expected at most',
    ],
    [
      'a covariance too small',
      (v) => Object.assign(v.lathe.travel, { covariance: [[1]] }),
      'lathe.travel.covariance: "1 rows"; expected 42 rows of 42 numbers',
    ],
    ['a key nobody knows', (v) => Object.assign(v.lathe, { taper: 1 }), 'lathe.taper'],
    ['a unit that is none', (v) => Object.assign(v.wear, { per: 'week' }), 'wear.per: "week"'],
  ])('%s', async (_, change, wanted) => {
    expect(await refused(change)).toContain(wanted);
  });
  it('nothing asked, and two ways of saying how the saddle goes', async () => {
    expect((await said({})).err).toContain('expected "lathe", "mill" or "wear", at least one');
    expect((await said({ lathe: { turned: [] } })).err).toContain('either "travel" or "on_bed"');
  });
});
