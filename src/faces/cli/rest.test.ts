import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Doors } from './doors.ts';
import { registerRest } from './rest.ts';
import { run } from './run.ts';

const input = () => JSON.parse(readFileSync('checks/data/cases/rest-4.json', 'utf8')).input;

async function said(text: string, ...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const written: Record<string, string> = {};
  const doors = {
    writeText: async (file: string, svg: string) => {
      written[file] = svg;
    },
    readText: async () => text,
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
  } as unknown as Doors;
  const code = await run(['rest', 'saddle.json', ...words], doors, [registerRest], '0');
  return { code, out: out.join('\n'), err: err.join('\n'), written };
}

describe('waywright rest', () => {
  it('--json prints one document, with the contract’s numbers', async () => {
    const { code, out, err } = await said(JSON.stringify(input()), '--json');
    expect([code, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    // Case 4 of the independent solver.
    expect(answer.shift_um[1]).toBeCloseTo(-10.66, 3);
    expect(answer.bearing_fraction).toBeCloseTo(0.6875, 4);
    expect(answer.gap_um).toHaveLength(24);
  });
  it('says where it rests, its pose with sign and unit, and each zone', async () => {
    const { code, out } = await said(JSON.stringify(input()));
    expect(code).toBe(0);
    const text = out.replaceAll('\u00a0', ' ');
    expect(text).toContain('69 % of the pads');
    expect(text).toContain('y \u22121.3 µm   z \u221210.7 µm');
    expect(text).toContain('about z \u221225.2 µrad');
    expect(text.match(/pressed|blue$|clear/gm)!.length).toBeGreaterThanOrEqual(24);
  });
  it('bad input leaves with 2 and names file and field', async () => {
    const { code, out, err } = await said(JSON.stringify({ ...input(), film_um: 'thin' }));
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe('saddle.json: film_um: "thin"; expected a finite number');
  });
  it('a load that lifts the slide leaves with 3 and says so', async () => {
    const lifted = input();
    lifted.load.direction = [0, 0, 1];
    const { code, err } = await said(JSON.stringify(lifted));
    expect(code).toBe(3);
    expect(err).toContain('lifts or tips the slide off its pads');
  });

  it('tells the blue to expect, and holds a seen print against it', async () => {
    const { expected_print } = JSON.parse((await said(JSON.stringify(input()), '--json')).out);
    const pads = input().slide.pads as { name: string; zones: number }[];
    for (const { name, zones } of pads) expect(expected_print.share[name]).toHaveLength(zones);
    const same = await said(JSON.stringify({ ...input(), print: expected_print.share }));
    expect(same.out).toContain('The print that was seen agrees with the one to expect: score 100 of 100');
    const none = { [pads[0]!.name]: Array(pads[0]!.zones).fill(0) };
    const bare = await said(JSON.stringify({ ...input(), print: none, roughness_um: 2.5 }));
    expect(bare.out).toContain('does not agree');
    expect(bare.out).toMatch(/Beyond three sd:\n {2}front flank, zone \d: seen 0 %, to expect 100 %/);
  });
  it('draws the blue to expect on the pads', async () => {
    const { written, code } = await said(JSON.stringify(input()), '--svg', 'blue.svg');
    expect(code).toBe(0);
    expect(written['blue.svg']).toContain('The blue to expect on saddle');
    expect((await said(JSON.stringify(input()), '--svg', 'blue.gif')).err).toContain('a file ending in .svg');
  });
  it('refuses a print of a pad that is not there, of too few zones, or beyond all of a zone', async () => {
    const refused = async (print: unknown) => (await said(JSON.stringify({ ...input(), print }))).err;
    expect(await refused({ wing: [1] })).toContain('print.wing: "wing"; expected the name of a pad');
    expect(await refused({ flat: [1] })).toContain('shares, one for each zone of "flat"');
    expect(await refused({ flat: Array(8).fill(61) })).toContain('print.flat[0]: 61');
  });
});
