import { describe, expect, it } from 'vitest';
import { readTestLists } from '../adapters/file/test-lists.ts';
import { chartFile } from './chart.ts';
import { BadInput } from './refusal.ts';
import { testListInput } from './test-list.ts';

const refusal = (work: () => unknown): string => {
  try {
    work();
  } catch (failure) {
    if (failure instanceof BadInput) return failure.message;
    throw failure;
  }
  return '';
};

const source = { came: "shop's own", words: 'asked for this machine' };
const straight = {
  id: 'way',
  group: 'Bed',
  name: 'Front way, form of the way',
  curve: 'form of the way',
  kind: 'size',
  plus: 'the middle is high',
  how: 'a level stepped along it',
  length: 'centres',
  by: 'centres',
  limits: {
    ours: {
      sense: 'plus',
      steps: [
        { up_to_mm: 700, um: 13 },
        { up_to_mm: 1100, um: 17 },
      ],
      source,
    },
  },
  minutes: 40,
};
const { limits: _limits, ...withoutLimits } = straight;
const list = (...tests: unknown[]) => ({
  id: 'sample',
  machine: 'sample machine',
  about: 'made for this test',
  classes: [{ id: 'ours', name: 'ours' }],
  dimensions: [{ key: 'centres', label: 'Between centres', value: 900, low: 200, high: 3000 }],
  scaling: { floor_um: 5, round_um: 2, source },
  groups: ['Bed'],
  tests,
  left_out: [],
});
const lists = readTestLists();

describe('a list of acceptance tests', () => {
  it('those that come with the package fit their schema, and say where every limit comes from', () => {
    expect(lists.map((one) => one.id)).toEqual(['engine-lathe', 'surface-grinder', 'vertical-knee-mill']);
    for (const one of lists) expect(one.tests.length).toBeGreaterThan(10);
  });
  it('is taken as it is when all fits', () => expect(testListInput(list(straight)).tests).toHaveLength(1));

  it.each([
    [
      'two tests of one name',
      [straight, { ...straight, id: 'other' }],
      'tests[1].name: Front way, form of the way; expected a name',
    ],
    [
      'a curve under another’s name',
      [{ ...straight, name: 'Front way, path of the carriage' }],
      'not to say "path of the carriage"',
    ],
    [
      'a curve that its name does not tell',
      [{ ...straight, name: 'Front way' }],
      'tests[0].name: Front way; expected it to say "form of the way"',
    ],
    [
      'a name that speaks of a curve it is not',
      [{ ...straight, curve: undefined }],
      'none of the three curves',
    ],
    [
      'a word that a standard is met',
      [{ ...straight, how: 'conforms to a standard' }],
      'tests[0].how: "conforms to a standard"; expected no word that a standard is met',
    ],
    [
      'a limit without source',
      [{ ...straight, limits: { ours: { sense: 'plus', um: 9 } } }],
      'tests[0].limits.ours.source: nothing; expected an object',
    ],
    [
      'a limit with neither number nor steps',
      [{ ...straight, limits: { ours: { sense: 'plus', source } } }],
      'tests[0].limits.ours: neither um nor steps',
    ],
    [
      'steps that fall back',
      [
        {
          ...straight,
          limits: {
            ours: {
              sense: 'plus',
              source,
              steps: [
                { up_to_mm: 700, um: 13 },
                { up_to_mm: 600, um: 17 },
              ],
            },
          },
        },
      ],
      'steps[1].up_to_mm: 600; expected more than 700',
    ],
    [
      'a slope whose limit has no length',
      [{ ...straight, kind: 'slope' }],
      'tests[0].limits.ours.over_mm: nothing',
    ],
    ['a group that is not there', [{ ...straight, group: 'Table' }], 'tests[0].group: Table; expected "Bed"'],
    ['steps by a size the list does not have', [{ ...straight, by: 'swing' }], 'tests[0].by: swing'],
    [
      'a direction without a word for plus',
      [{ ...straight, plus: undefined }],
      'tests[0].plus: nothing; expected what plus means',
    ],
  ])('refuses %s', (_, tests, said) => expect(refusal(() => testListInput(list(...tests)))).toContain(said));
});

describe('a chart’s file', () => {
  const file = (more: object) => chartFile({ list: 'engine-lathe', ...more }, lists);
  it('puts own limits in place of the list’s, as the shop’s own', () => {
    const own = file({ limits: [{ test: 'axis-up', sense: 'plus', um: 12, over_mm: 250 }] });
    expect(own.tests.find((test) => test.id === 'axis-up')!.limits.ordinary).toMatchObject({
      um: 12,
      source: { came: "shop's own" },
    });
  });
  it('adds own tests, and leaves out what this machine is not put to', () => {
    const { by: _by, ...plain } = withoutLimits;
    const its = file({
      own_tests: [{ ...plain, group: 'Attachments', limit: { sense: 'plus', um: 21 } }],
      left_out: [{ test: 'piece-thread', why: 'no threads are cut on it' }],
    });
    expect(its.groups.at(-1)).toBe('Attachments');
    expect(its.tests.map((test) => test.id)).toContain('way');
    expect(its.tests.map((test) => test.id)).not.toContain('piece-thread');
  });
  it.each([
    ['a list that is not there', { list: 'press' }, 'list: press; expected one of "engine-lathe"'],
    ['a class that is not there', { class: 'best' }, 'class: best; expected one of "ordinary", "toolroom"'],
    [
      'a size beyond the list’s',
      { dimensions: { centres: 20 } },
      'dimensions.centres: 20; expected 100 to 12000 mm',
    ],
    [
      'a result of no line',
      { results: [{ test: 'nose', final: { value_um: 3 } }] },
      'results[0].test: "nose"; expected a test of this chart',
    ],
    [
      'a local result where there is no local limit',
      { results: [{ test: 'axis-up:local', final: { value_um: 3 } }] },
      'results[0].test',
    ],
    ['an empty result', { results: [{ test: 'axis-up' }] }, 'results[0]: neither first nor final'],
    [
      'the same line twice',
      {
        results: [
          { test: 'axis-up', final: { value_um: 3 } },
          { test: 'axis-up', first: { value_um: 4 } },
        ],
      },
      'results[1].test: "axis-up"; expected each line once',
    ],
    [
      'a run-out below nothing',
      { results: [{ test: 'nose-run-out', final: { value_um: -3 } }] },
      'results[0].final.value_um: -3; expected 0 or above',
    ],
    [
      'another length where nothing slopes',
      { results: [{ test: 'nose-run-out', final: { value_um: 3, over_mm: 70 } }] },
      'only a slope',
    ],
    [
      'a part of the doubt larger than the whole',
      { results: [{ test: 'axis-up', final: { value_um: 3, doubt_um: 2, shared_um: 2.5 } }] },
      'no more than doubt_um',
    ],
    [
      'an own test under a list’s name',
      { own_tests: [{ ...withoutLimits, id: 'axis-up', limit: { sense: 'plus', um: 7 } }] },
      'own_tests[0].id: axis-up',
    ],
    [
      'a kit’s set-up for no line',
      {
        kit: {
          instruments: [],
          references: [],
          setups: [{ method: 'level', name: 'n', target: 'none', instrument: 'l' }],
        },
      },
      'kit.setups[0].target',
    ],
  ])('refuses %s', (_, more, said) => expect(refusal(() => file(more))).toContain(said));
});
