import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BadInput } from './refusal.ts';
import { restInput } from './rest.ts';

const good = () => JSON.parse(readFileSync('checks/data/cases/rest-1.json', 'utf8')).input;

function issuesOf(value: unknown): string[] {
  try {
    restInput(value);
  } catch (refused) {
    if (refused instanceof BadInput) return refused.issues.map((issue) => issue.path);
    throw refused;
  }
  return [];
}

describe('what rest refuses', () => {
  it('takes a case as it stands', () => expect(issuesOf(good())).toEqual([]));
  it.each<[string, (input: ReturnType<typeof good>) => void, string]>([
    ['a key that is not known', (i) => Object.assign(i, { colour: 'blue' }), 'colour'],
    ['a pad without gaps', (i) => i.gaps_um.pop(), 'gaps_um'],
    ['a gap too few', (i) => i.gaps_um[1].pop(), 'gaps_um[1]'],
    ['a gap in words', (i) => i.gaps_um[2].splice(3, 1, 'wide'), 'gaps_um[2][3]'],
    ['a load of nothing', (i) => Object.assign(i.load, { force_N: 0 }), 'load.force_N'],
    ['a load with no direction', (i) => Object.assign(i.load, { direction: [0, 0, 0] }), 'load.direction'],
    ['no stiffness', (i) => delete i.stiffness_N_per_mm3, 'stiffness_N_per_mm3'],
    ['a film that is not a number', (i) => Object.assign(i, { film_um: Number.NaN }), 'film_um'],
    ['missing pads', (i) => delete i.slide.pads, 'slide.pads'],
  ])('%s', (_, spoil, path) => {
    const input = good();
    spoil(input);
    expect(issuesOf(input)).toContain(path);
  });
});
