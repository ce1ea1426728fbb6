import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Doors } from './doors.ts';
import { run } from './run.ts';
import { registerSite } from './site.ts';

const input = () => JSON.parse(readFileSync('checks/data/cases/site-1.json', 'utf8')).input;

async function said(value: unknown, ...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    readText: async () => JSON.stringify(value),
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
  } as unknown as Doors;
  const code = await run(['site', 'bed.json', ...words], doors, [registerSite], '0');
  return { code, out: out.join('\n').replaceAll('\u00a0', ' '), err: err.join('\n') };
}

describe('waywright site', () => {
  it('says the best place, why, and what each place costs', async () => {
    const { code, out } = await said(input());
    expect(code).toBe(0);
    expect(out).toMatch(/^Printed at \d+ mm, turned diameters wander \d+\.\d µm rms over your work/);
    expect(out.match(/ \*/g)).toHaveLength(1);
    expect(out).toContain('The worst of these places');
    const json = JSON.parse((await said(input(), '--json')).out);
    const least = Math.min(
      ...json.candidates.map((one: { parts: { both_um: number } }) => one.parts.both_um),
    );
    expect(
      json.candidates.find((one: { at_mm: number }) => one.at_mm === json.best.at_mm).parts.both_um,
    ).toBe(least);
  });

  it('names the field, what was found and what is expected', async () => {
    const beyond = await said({
      ...input(),
      positions_mm: input().positions_mm.map((at: number) => at + 2000),
    });
    expect([beyond.code, beyond.out]).toEqual([2, '']);
    expect(beyond.err).toContain('positions_mm[0]: 2255; expected');
    const unsteady = input();
    unsteady.bed.stations_mm[3] = 0;
    expect((await said(unsteady)).err).toContain('bed.stations_mm[3]: 0; expected more than the one before');
    const lone = input();
    lone.bed.ways.pop();
    expect((await said(lone)).err).toContain('a way for "flat"');
    expect((await said({ ...input(), duty: [0] })).err).toContain('duty');
  });

  it('a load that lifts the slide leaves with 3', async () => {
    const lifted = { ...input(), load: { ...input().load, direction: [0, 0, 1] } };
    expect((await said(lifted)).code).toBe(3);
  });
});
