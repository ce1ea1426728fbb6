import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BadInput, parsedJson } from './refusal.ts';
import { steerInput } from './steer.ts';

const text = readFileSync('checks/data/cases/steer-2.json', 'utf8');
// biome-ignore lint/suspicious/noExplicitAny: spoiled on purpose below
const sound = () => JSON.parse(text).input as any;

const pathsOf = (make: () => unknown): string[] => {
  try {
    make();
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map((issue) => issue.path);
    throw failure;
  }
  return [];
};

describe('steer’s input', () => {
  it.each(['__proto__', 'constructor', 'toString'])('no pad or material is named %s', (word) => {
    const named = sound();
    named.slide.pads[0].name = word;
    expect(pathsOf(() => steerInput(named))).toContain('slide.pads[0].name');
    const made = sound();
    made.slide.pads[0].material = word;
    expect(pathsOf(() => steerInput(made))).toContain('slide.pads[0].material');
  });

  it('a key "__proto__" is refused where it stands, and the word in a text is not', () => {
    const spoiled = text.replace('"levels"', '"print": {"__proto__": [1]}, "levels"');
    expect(pathsOf(() => parsedJson(spoiled))).toEqual(['input.rounds[0].print.__proto__']);
    expect(pathsOf(() => parsedJson('{"a": "\\"__proto__\\""}'))).toEqual([]);
  });

  it.each<[string, (input: ReturnType<typeof sound>) => void]>([
    ['slide.pads[0].length_mm', (i) => (i.slide.pads[0].length_mm = 1e300)],
    ['slide.pads[0].centre_mm[1]', (i) => (i.slide.pads[0].centre_mm[1] = 1e30)],
    ['rounds[0].sweeps[0].points_mm[0][0]', (i) => (i.rounds[0].sweeps[0].points_mm[0][0] = -1e30)],
    ['rounds[0].sweeps[0].reading_sd_um', (i) => (i.rounds[0].sweeps[0].reading_sd_um = 1e-300)],
    ['rounds[0].sweeps[0].face_slope_urad', (i) => (i.rounds[0].sweeps[0].face_slope_urad = 1e30)],
    ['rounds[0].levels[0].sd_urad', (i) => (i.rounds[0].levels[0].sd_urad = 1e100)],
    ['passes.liner.um', (i) => (i.passes.liner.um = 1e15)],
    ['passes.liner.sd_um', (i) => (i.passes.liner.sd_um = 1e300)],
    ['targets[0].low', (i) => (i.targets[0].low = -1e300)],
    ['film_um', (i) => (i.film_um = 1e300)],
    ['sink[0].at_mm[0]', (i) => (i.sink = [{ name: 'screw', at_mm: [1e30, 0, 0], most_um: 5 }])],
  ])('%s beyond all reason is a slip of unit', (path, spoil) => {
    const input = sound();
    spoil(input);
    expect(pathsOf(() => steerInput(input))).toEqual([path]);
  });

  it('a refusal stays short, whatever was sent', () => {
    const many = sound();
    for (let k = 0; k < 1000; k++) many[`${'k'.repeat(1000)}${k}`] = 1;
    const paths = pathsOf(() => steerInput(many));
    expect(paths).toHaveLength(51);
    for (const path of paths) expect(path.length).toBeLessThan(100);
    expect(() => steerInput(many)).toThrow(/950 more things wrong/);
  });

  it('text that nests without end is refused as no JSON', () => {
    expect(() => parsedJson('['.repeat(200_000))).toThrow(BadInput);
    expect(() => parsedJson('{"slide":'.repeat(100_000))).toThrow(BadInput);
  });
});
