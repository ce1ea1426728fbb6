import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTestLists } from '../src/adapters/file/test-lists.ts';
import type { AcceptanceTest } from '../src/core/chart/acceptance-test.ts';
import { localOf } from '../src/core/chart/chart.ts';
import { bandOf, scaledLimit } from '../src/core/chart/limit.ts';
import { expectSame, expectWithin } from './near.ts';

/**
 * Source: acceptance of lathes, ISO 1708:1989 as it is remembered (from memory; the published tables could not be read). Written down
 * line by line from that memory before our file was made: sign, precision column, ordinary column, over what, which way.
 * Scaling: IS 6040:1993, clause 3 (seen): in proportion, at least 0.005 mm, to the nearest 0.002 mm.
 * Levelling: ASA B5.16-1952 (seen, its opening pages).
 */
type Remembered = readonly [
  line: string,
  test: string,
  precision: number,
  ordinary: number,
  over: readonly [number, number] | undefined,
  way: 'plus' | 'minus' | 'either' | 'size',
];
const list = readTestLists().find((one) => one.id === 'engine-lathe')!;
const test = (id: string): AcceptanceTest => list.tests.find((one) => one.id === id)!;

// Limits in µm, lengths in mm; those in steps stand below.
const remembered: readonly Remembered[] = [
  ['G1b ways in one plane', 'ways-twist', 30, 40, [1000, 1000], 'either'],
  ['G4a axial slip', 'spindle-slip', 5, 10, undefined, 'size'],
  ['G4b camming of the nose face', 'nose-face', 10, 20, undefined, 'size'],
  ['G5 nose register', 'nose-run-out', 7, 10, undefined, 'size'],
  ['G6a taper at the nose', 'bore-near', 5, 10, undefined, 'size'],
  ['G6b taper 300 mm out', 'bore-far', 15, 20, undefined, 'size'],
  ['G7a axis, horizontal', 'axis-sideways', 10, 15, [300, 300], 'plus'],
  ['G7b axis, vertical', 'axis-up', 20, 20, [300, 300], 'plus'],
  ['G8 headstock centre', 'headstock-centre', 10, 15, undefined, 'size'],
  ['G9a barrel, horizontal', 'barrel-sideways', 10, 15, [100, 100], 'plus'],
  ['G9b barrel, vertical', 'barrel-up', 15, 20, [100, 100], 'plus'],
  ['G10a tailstock taper, horizontal', 'tailstock-bore-sideways', 20, 30, [300, 300], 'plus'],
  ['G10b tailstock taper, vertical', 'tailstock-bore-up', 20, 30, [300, 300], 'plus'],
  ['G11 centre height', 'centre-height', 20, 40, undefined, 'plus'],
  ['G12 top slide', 'top-slide', 15, 40, [150, 300], 'either'],
  ['G13 cross slide square', 'cross-slide-square', 10, 20, [300, 300], 'plus'],
  ['G14 lead screw axial slip', 'lead-screw-slip', 10, 15, undefined, 'size'],
  ['G15 lead over 300', 'lead-screw-pitch', 30, 40, [300, 300], 'size'],
  ['G15 lead over 60', 'lead-screw-pitch-short', 10, 15, [60, 60], 'size'],
  ['P1 round', 'piece-round', 7, 10, undefined, 'size'],
  ['P1 same diameter over 300', 'piece-taper', 20, 40, [300, 300], 'minus'],
  ['P2 face of 300', 'piece-face', 15, 25, [300, 300], 'plus'],
  ['P3 thread pitch', 'piece-thread', 30, 40, [300, 300], 'size'],
];

describe('the engine lathe’s list, line by line beside the published one as remembered', () => {
  it.each(remembered)('%s: %s', (_, id, precision, ordinary, over, way) => {
    const { toolroom, ordinary: usual } = test(id).limits;
    expectSame([toolroom!.um, usual!.um], [precision, ordinary]);
    expect([toolroom!.over_mm, usual!.over_mm]).toEqual([over?.[0], over?.[1]]);
    expect([toolroom!.sense, usual!.sense]).toEqual([way, way]);
    expect([toolroom!.source.came, usual!.source.came]).toEqual(['from memory', 'from memory']);
  });

  // Steps by the distance between centres, mm → µm.
  it.each([
    ['G1a ways, vertical', 'front-way-form-up', 'toolroom', 'plus', { 500: 10, 1000: 15, 1500: 20 }],
    [
      'G1a ways, vertical',
      'front-way-form-up',
      'ordinary',
      'plus',
      { 500: 10, 1000: 20, 2000: 30, 3000: 40 },
    ],
    [
      'G2 travel, horizontal',
      'carriage-path-sideways',
      'toolroom',
      'either',
      { 500: 10, 1000: 15, 1500: 20 },
    ],
    [
      'G2 travel, horizontal',
      'carriage-path-sideways',
      'ordinary',
      'either',
      { 500: 15, 1000: 20, 2000: 25, 3000: 30, 6000: 30 },
    ],
    ['G3a tailstock, horizontal', 'tailstock-way-sideways', 'toolroom', 'either', { 800: 20, 1500: 20 }],
    [
      'G3a tailstock, horizontal',
      'tailstock-way-sideways',
      'ordinary',
      'either',
      { 1500: 30, 1501: 40, 4000: 40 },
    ],
    ['G3b tailstock, vertical', 'tailstock-way-up', 'toolroom', 'either', { 800: 20, 1500: 20 }],
    ['G3b tailstock, vertical', 'tailstock-way-up', 'ordinary', 'either', { 1500: 30, 1501: 40, 4000: 40 }],
  ] as const)('%s: %s, %s', (_, id, cls, way, steps) => {
    const limit = test(id).limits[cls]!;
    expect(limit.sense).toBe(way);
    for (const [centres, um] of Object.entries(steps))
      expectSame(bandOf(limit, list.scaling, Number(centres), Number(centres)).high, um);
  });

  it.each([
    ['front-way-form-up', 'toolroom', 900, 5, 250],
    ['front-way-form-up', 'ordinary', 900, 7.5, 250],
    ['front-way-form-up', 'ordinary', 1800, 15, 500],
    ['tailstock-way-sideways', 'toolroom', 900, 10, 500],
    ['tailstock-way-sideways', 'ordinary', 900, 20, 500],
    ['tailstock-way-up', 'ordinary', 1900, 30, 500],
  ] as const)(
    'local limit of %s, %s, on a machine of %d mm: %d µm in any %d mm',
    (id, cls, centres, um, any) =>
      expectSame((({ um: found, any_mm }) => [found, any_mm])(localOf(test(id).limits[cls]!, centres)!), [
        um,
        any,
      ]),
  );

  it('every published line is there, and whatever else stands in the list says that it is not of that standard', () => {
    const published = new Set([
      ...remembered.map((one) => one[1]),
      'front-way-form-up',
      'carriage-path-sideways',
      'tailstock-way-sideways',
      'tailstock-way-up',
    ]);
    const others = list.tests.filter((one) => !published.has(one.id));
    expect(others.map((one) => one.id)).toEqual([
      'bed-level',
      'tool-path',
      'lead-screw-sideways',
      'lead-screw-up',
      'half-nut',
    ]);
    for (const other of others)
      for (const limit of Object.values(other.limits)) expect(limit.source.words).not.toContain('ISO 1708');
    expect(list.left_out.length).toBeGreaterThan(3);
  });

  it('docs/acceptance.md shows every test and names everything left out, of every list', () => {
    // Columns are padded to line up.
    const page = readFileSync('docs/acceptance.md', 'utf8').replace(/ {2,}/g, ' ');
    for (const one of list.tests) expect(page).toContain(`| ${one.name} |`);
    for (const its of readTestLists()) for (const one of its.left_out) expect(page).toContain(one.what);
  });

  it('each permitted direction has its reason', () => {
    for (const one of list.tests)
      if (Object.values(one.limits).some((limit) => limit.sense === 'plus' || limit.sense === 'minus'))
        expect(one.direction?.reason, one.id).toBeTruthy();
  });
});

describe('scaling as IS 6040:1993 has it, worked by hand (seen)', () => {
  it.each([
    [0.02, 300, 150, 0.01],
    [0.02, 300, 100, 0.006],
    [0.015, 300, 60, 0.005],
    [0.04, 1000, 600, 0.024],
    [0.03, 300, 500, 0.05],
  ])('%d mm in %d over %d is %d mm', (stated, over, length, expected) =>
    expectWithin(scaledLimit(stated * 1000, over, length, list.scaling) / 1000, expected, 5e-10),
  );
  it('half a thou of level in a foot is 12.7 µm in 304.8 mm', () =>
    expect(test('bed-level').limits.ordinary).toMatchObject({ um: 12.7, over_mm: 304.8 }));
});

describe('the other two lists', () => {
  it.each(['vertical-knee-mill', 'surface-grinder'])(
    '%s: all three curves are told apart, every limit has a source',
    (id) => {
      const its = readTestLists().find((one) => one.id === id)!;
      for (const one of its.tests)
        for (const limit of Object.values(one.limits)) expect(limit.source.words.length).toBeGreaterThan(20);
      expect(new Set(its.tests.map((one) => one.name)).size).toBe(its.tests.length);
      expect(new Set(its.tests.flatMap((one) => one.curve ?? [])).size).toBeGreaterThan(1);
    },
  );
  // As remembered of ISO 1701-2, medium confidence.
  it.each([
    ['table-flat', 'minus', 1000, 40],
    ['table-flat', 'minus', 1600, 45],
    ['table-flat', 'minus', 4000, 50],
  ] as const)('a mill’s %s, %s, on %d mm: %d µm', (id, sense, size, um) => {
    const its = readTestLists().find((one) => one.id === 'vertical-knee-mill')!;
    const limit = its.tests.find((one) => one.id === id)!.limits.ordinary!;
    expect(limit.sense).toBe(sense);
    expectSame(bandOf(limit, its.scaling, size, size), { low: -um, high: 0 });
  });
});
