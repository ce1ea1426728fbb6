import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runVerb } from '../../../tests/fixture/run-verb.ts';
import { registerLine } from './line.ts';

const worked = (): string => readFileSync('checks/data/cases/line-1.json', 'utf8');

const said = (text: string, ...words: string[]) => runVerb(registerLine, ['line', 'way.csv', ...words], text);

const answerOf = async (text: string, ...words: string[]) => {
  const { code, out, err } = await said(text, '--json', ...words);
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(out);
};

describe('waywright line', () => {
  it('--json prints one document, with the contract’s numbers', async () => {
    const answer = await answerOf(worked());
    // Case 1 of the independent solver.
    expect(answer.straightness_um.minimum_zone).toBeCloseTo(16.52, 4);
    expect(answer.stations_mm).toHaveLength(22);
    expect(answer.endpoint_um[3]).toBeCloseTo(-9.0886, 4);
  });
  it('a table with the contract’s headings gives the same as JSON', async () => {
    const { angles_urad } = JSON.parse(worked()).input;
    const table = ['step_mm,angles_urad', ...angles_urad.map((angle: number) => `200,${angle}`)].join('\n');
    expect(await answerOf(table)).toEqual(await answerOf(worked()));
    const bare = ['angles_urad', ...angles_urad].join('\r\n');
    expect(await answerOf(bare, '--step', '200')).toEqual(await answerOf(worked()));
  });
  it('inches and thou in the headings, a tab between: the same way in mm and µm', async () => {
    const shop = await answerOf('station [in]\theight [thou]\n0\t0\n10\t1.5\n20\t-.5\n30\t2');
    expect(shop.stations_mm).toEqual([0, 254, 508, 762]);
    expect(shop.heights_um.map((um: number) => Number(um.toFixed(9)))).toEqual([0, 38.1, -12.7, 50.8]);
  });
  it('a comma in a heading, a step above the headings, a unit of its own in a column, blank steps below the first', async () => {
    const shop = await answerOf('station, in\theight, thou\n0\t0\n10\t1.5\n20\t-.5');
    expect(shop.heights_um.map((um: number) => Number(um.toFixed(9)))).toEqual([0, 38.1, -12.7]);
    const level = await answerOf('step_mm,200\nangle (mm/m)\n0.02\n-0.01\n0.03\n', '--sd', '2');
    expect(level.heights_um.map((um: number) => Number(um.toFixed(9)))).toEqual([0, 4, 2, 8]);
    expect(level.sd.endpoint_um[1]).toBeCloseTo(0.4 * Math.sqrt(2 / 3), 9);
    const own = await answerOf('station;height;unit\n0 mm;1;thou\n100 mm;2;thou\n200 mm;12;um');
    expect(own.heights_um.map((um: number) => Number(um.toFixed(9)))).toEqual([25.4, 50.8, 12]);
    const blank = await answerOf('step_mm,angles_urad\n150,3\n,-8\n,2');
    expect(blank.stations_mm).toEqual([0, 150, 300, 450]);
  });
  it('says straightness, station by station, which way is plus, and what is not known', async () => {
    const { code, out } = await said(worked());
    expect(code).toBe(0);
    const text = out.replaceAll('\u00a0', ' ');
    expect(text).toContain('minimum zone 16.5 µm');
    expect(text).toMatch(/^ +600 +−9.1 +−8.6 +low$/m);
    expect(text).toContain('Plus is proud');
    expect(text).toContain('No doubt is known');
  });
  it('an empty cell in the middle leaves with 2 and names the line', async () => {
    const { code, out, err } = await said('stations_mm,heights_um\n0,1\n100,\n200,4\n300,2');
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe('way.csv: line 3: nothing under "heights_um"; expected a value: one is missing here');
  });
  it('an unknown heading and a heading without a unit are refused', async () => {
    expect((await said('stations_mm,hights\n0,1')).err).toContain('line 1: the heading "hights"; expected');
    expect((await said('station,height\n0,1\n100,2\n200,3')).err).toContain(
      'line 2: "0" under "station", without a unit; expected mm or in',
    );
  });
  it('an option that is no number is named as it was typed', async () => {
    expect((await said('angles_urad\n1\n2', '--step', 'soft')).err).toBe(
      'way.csv: --step: "soft"; expected the distance between the feet, mm, 0.001 or more',
    );
    expect((await said('angles_urad\n1\n2', '--step', '100', '--sd', '-1')).err).toContain('--sd: "-1"');
  });
  it('a kind that does not exist, and a short return run, are named', async () => {
    expect((await said('{"kind": "angels", "step_mm": 200}')).err).toContain(
      'kind: "angels"; expected "angles" or "heights"',
    );
    const short = { kind: 'angles', step_mm: 200, angles_urad: [1, 2, 4], return_urad: [4, 2] };
    expect((await said(JSON.stringify(short))).err).toBe(
      'way.csv: return_urad: a list of 2; expected 3, one for each step of the run there',
    );
  });
});

describe('waywright line --svg', () => {
  it('writes the strip with its sentence, and still answers', async () => {
    const { code, out, written } = await said(worked(), '--svg', 'v.svg');
    expect(code).toBe(0);
    expect(out).toContain('straightness');
    expect(written['v.svg']).toMatch(/^<svg xmlns.*heights × \d+.*<\/svg>\n$/s);
  });
  it('bad input writes nothing', async () => {
    const { code, written } = await said('angles_urad\n1\nsoft', '--svg', 'v.svg', '--step', '200');
    expect([code, written]).toEqual([2, {}]);
  });
});

describe('waywright line, twist and parallelism', () => {
  it('twist of a bridge level, as a sentence in mm/m and for each metre', async () => {
    const twist = {
      kind: 'twist',
      stations_mm: [0, 500, 1000, 1500],
      tilts_urad: [3, 13, 21, 34],
      bridge_mm: 320,
      reading_sd_urad: 1,
      limit_urad: 20,
    };
    const { code, out } = await said(JSON.stringify(twist));
    expect(code).toBe(0);
    const text = out.replaceAll('\u00a0', ' ').replace(/[\u2009\u202f]/g, ' ');
    expect(text).toContain('twist by 0.031 ± 0.003 mm/m over 1500 mm');
    expect(text).toContain('Outside 0.02 mm/m');
    expect(text).toContain('over the bridge 9.9 µm');
    const { err } = await said(JSON.stringify({ ...twist, tilts_urad: [3, 13, 21] }));
    expect(err).toBe('way.csv: tilts_urad: a list of 3; expected 4, one for each station');
  });
});

describe('waywright line --draws', () => {
  it('draws the readings anew: the same seed says the same, a number that is none is refused', async () => {
    const input = JSON.stringify({ ...JSON.parse(worked()).input, reading_sd_urad: 2 });
    const one = await answerOf(input, '--draws', '200', '--seed', '9');
    expect(one.monte_carlo).toEqual((await answerOf(input, '--draws', '200', '--seed', '9')).monte_carlo);
    expect(Math.abs(one.monte_carlo.minimum_zone.mean - 16.52)).toBeLessThan(2);
    expect((await said(input, '--draws', 'many')).err).toBe(
      'way.csv: --draws: many; expected a whole number from 100 to 100000',
    );
  });
});
