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

  it('says of every other place how much more or less it costs, worked out from the figures themselves', async () => {
    const { out } = await said(input());
    const { candidates, best } = JSON.parse((await said(input(), '--json')).out);
    const at = candidates.find((one: { at_mm: number }) => one.at_mm === best.at_mm).parts.diameter_rms_um;
    for (const one of candidates) {
      if (one.at_mm === best.at_mm) continue;
      const more = one.parts.diameter_rms_um - at;
      expect(out).toContain(
        `At ${one.at_mm} mm diameters wander ${one.parts.diameter_rms_um.toFixed(1)} µm (${Math.abs(more).toFixed(1)} µm ${more > 0 ? 'more' : 'less'})`,
      );
    }
  });

  it('puts the bed first where no place keeps parts within what is allowed, and says what is worn', async () => {
    const tight = await said({ ...input(), allow: { diameter_um: 0.5, facing_um: 0.2 } });
    expect(tight.code).toBe(0);
    expect(tight.out).toMatch(/^Put the bed right first: no place is good enough\. Even at \d+ mm/);
    expect(tight.out).toContain('you allow 0.5 µm and 0.2 µm');
    expect(tight.out).toMatch(/the way that carries the .+ is \d+\.\d µm out of straight/);
    const deep = input();
    for (const way of deep.bed.ways) way.height_um = way.height_um.map((um: number) => 12 * um);
    const worn = await said(deep);
    expect(worn.out).toContain('Regrind the bed');
    const straight = input();
    for (const way of straight.bed.ways) way.height_um = way.height_um.map(() => 0);
    const { advice } = JSON.parse((await said(straight, '--json')).out);
    expect(advice).toBe('print');
  });

  it('takes the place within what is allowed before a place that costs less together', async () => {
    const { candidates } = JSON.parse((await said(input(), '--json')).out);
    const byFacing = candidates.toSorted(
      (a: { parts: { facing_rms_um: number } }, b: { parts: { facing_rms_um: number } }) =>
        a.parts.facing_rms_um - b.parts.facing_rms_um,
    );
    // Only the place whose faces lean least is allowed.
    const facing_um = (byFacing[0].parts.facing_rms_um + byFacing[1].parts.facing_rms_um) / 2;
    const answer = JSON.parse(
      (await said({ ...input(), allow: { diameter_um: 1000, facing_um } }, '--json')).out,
    );
    expect(answer.best.at_mm).toBe(byFacing[0].at_mm);
    expect(answer.candidates.filter((one: { allowed: boolean }) => one.allowed)).toHaveLength(1);
    const wrong = await said({ ...input(), allow: { diameter_um: -1, facing_um: 5 } });
    expect([wrong.code, wrong.out]).toEqual([2, '']);
    expect(wrong.err).toContain('allow.diameter_um: -1; expected');
  });
});
