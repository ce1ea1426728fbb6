import { describe, expect, it } from 'vitest';
import { kitQuestion } from './kit.ts';
import { BadInput } from './refusal.ts';

const given = {
  instruments: [
    { kind: 'indicator', name: 'lever', graduation_um: 2, repeatability_um: 0.7, checked: '2024-03-01' },
    { kind: 'level', name: 'level', graduation_urad: 20, repeatability_urad: 5, base_mm: 200 },
  ],
  references: [
    {
      kind: 'square',
      name: 'square',
      length_mm: 300,
      known: { by: 'grade', standard: 'DIN 875', grade: '0' },
    },
    { kind: 'plate', name: 'plate', length_mm: 630, width_mm: 400, known: { by: 'limit', limit_um: 6 } },
  ],
  targets: [
    { name: 'facing', low_um: 6, high_um: 20, over_mm: 300 },
    { name: 'straight', high_um: 10 },
  ],
  setups: [
    {
      method: 'square sweep',
      name: 'a',
      target: 'facing',
      instrument: 'lever',
      reference: 'square',
      length_mm: 250,
      points: 11,
    },
    { method: 'level walk', name: 'b', target: 'straight', instrument: 'level', length_mm: 1200 },
  ],
};
type Given = typeof given;
/** The same with one thing put at a path. */
function changed(path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone(given) as Given;
  let node = copy as unknown as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) node = node[step] as Record<string | number, unknown>;
  node[path.at(-1)!] = value;
  return copy;
}
const paths = (value: unknown): string[] => {
  try {
    kitQuestion(value);
    return [];
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map((issue) => issue.path);
    throw failure;
  }
};

describe('a kit with its targets and set-ups', () => {
  it('a limit over a length becomes a slope, and what is left out is once', () => {
    const got = kitQuestion(given);
    expect(got.targets[0]).toMatchObject({ unit: 'urad', low: 20 });
    expect(got.targets[0]!.high).toBeCloseTo(66.6667, 3);
    expect(got.targets[1]).toEqual({ name: 'straight', high: 10, unit: 'um' });
    expect(got.setups[0]!.setup).toMatchObject({ sweeps: 1, seats: 1, turned_over: false });
    expect(got.wanted).toBe(4);
  });
  it.each([
    ['an instrument the kit has not', ['setups', 0, 'instrument'], 'laser', ['setups[0].instrument']],
    ['an instrument that cannot do it', ['setups', 0, 'instrument'], 'level', ['setups[0].instrument']],
    ['a reference of another kind', ['setups', 0, 'reference'], 'plate', ['setups[0].reference']],
    ['a target that is not there', ['setups', 1, 'target'], 'flat', ['setups[1].target']],
    [
      'a slope held to a height',
      ['setups', 0, 'target'],
      'straight',
      ['setups[0].target', 'setups[0].target'],
    ],
    ['a height held to a slope', ['setups', 1, 'target'], 'facing', ['setups[1].target']],
    ['a sweep longer than its square', ['setups', 0, 'length_mm'], 301, ['setups[0].length_mm']],
    ['limits the wrong way round', ['targets', 0, 'low_um'], 30, ['targets[0].high_um']],
    [
      'a standard for something else',
      ['references', 0, 'known', 'standard'],
      'DIN 876',
      ['references[0].known.standard'],
    ],
    [
      'a grade that the standard has not',
      ['references', 0, 'known', 'grade'],
      'AA',
      ['references[0].known.grade'],
    ],
    ['two of one name', ['instruments', 1, 'name'], 'lever', ['instruments[1].name', 'setups[1].instrument']],
    ['a key that is not known', ['instruments', 0, 'colour'], 'blue', ['instruments[0].colour']],
    ['a graduation of nothing', ['instruments', 0, 'graduation_um'], 0, ['instruments[0].graduation_um']],
    ['a date that is none', ['instruments', 0, 'checked'], 'March', ['instruments[0].checked']],
    ['no targets', ['targets'], [], ['targets']],
  ] as [string, (string | number)[], unknown, string[]][])('refuses %s', (_, path, value, expected) =>
    expect(paths(changed(path, value))).toEqual(expect.arrayContaining(expected)),
  );
});
