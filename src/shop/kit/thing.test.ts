import { describe, expect, it } from 'vitest';
import { sentKitEntry } from '../../contract/kit-entry.ts';
import type { KitThing } from '../../core/ledger/kit-ledger.ts';
import { thingKinds } from './thing-fields.ts';
import { readThing, thingTexts } from './thing-typed.ts';
import { thingLine } from './thing-words.ts';

const things: readonly KitThing[] = [
  { kind: 'indicator', name: 'lever', graduation_um: 2, repeatability_um: 0.5, checked: '2031-11-25' },
  { kind: 'level', name: 'big level', graduation_urad: 20, repeatability_urad: 4, base_mm: 200, class: 'A' },
  {
    kind: 'electronic level',
    name: 'e',
    graduation_urad: 1,
    repeatability_urad: 1,
    base_mm: 150,
    zero_urad: 3,
  },
  { kind: 'autocollimator', name: 'ac', graduation_urad: 0.5, repeatability_urad: 0.3, base_mm: 100 },
  {
    kind: 'square',
    name: 'sq',
    length_mm: 300,
    known: { by: 'grade', standard: 'DIN 875', grade: '00' },
    reseat_um: 1,
  },
  {
    kind: 'straightedge',
    name: 'edge',
    length_mm: 1000,
    known: { by: 'certificate', doubt_um: 3 },
    depth_mm: 60,
    material: 'cast iron',
  },
  {
    kind: 'plate',
    name: 'plate',
    length_mm: 630,
    width_mm: 400,
    known: { by: 'grade', standard: 'ISO 8512-2', grade: '1' },
  },
  {
    kind: 'test bar',
    name: 'bar',
    length_mm: 300,
    known: { by: 'limit', limit_um: 3 },
    depth_mm: 40,
    bore_mm: 0,
    material: 'steel',
  },
  { kind: 'parallels', name: 'pair', length_mm: 150, known: { by: 'limit', limit_um: 2 } },
  {
    kind: 'gauge blocks',
    name: 'blocks',
    length_mm: 200,
    known: { by: 'grade', standard: 'ISO 3650', grade: '1' },
  },
];

describe('a thing of the kit as it is typed', () => {
  it('has one of every kind here', () => {
    expect(things.map((one) => one.kind).sort()).toEqual(thingKinds.map((one) => one.kind).sort());
  });
  it.each(
    things.flatMap((thing) =>
      (['metric', 'inch'] as const).map((system) => [thing.kind, system, thing] as const),
    ),
  )(
    '%s: shown to be changed in %s units and kept unchanged, it is the same, and the shop takes it',
    (kind, system, thing) => {
      const read = readThing(kind, thingTexts(thing, system), system, []);
      expect(read.thing).toEqual(thing);
      const at = '2031-11-25T14:00:00Z';
      expect(
        sentKitEntry({ kind: 'put', item: 'item-1', id: 'entry-1', at, thing: read.thing }),
      ).toMatchObject({ thing });
      expect(thingLine(thing, system)).toMatch(/\d/);
    },
  );
  it('a bare number takes its field’s unit, and a doubt of two sd is kept as one', () => {
    const typed = { name: 'dial', graduation: 'half thou', repeat: '.1' };
    expect(readThing('indicator', typed, 'inch', []).thing).toEqual({
      kind: 'indicator',
      name: 'dial',
      graduation_um: 12.7,
      repeatability_um: 1.27,
    });
  });
  it.each([
    ['name', 'dial', /in the kit already/],
    ['graduation', '1 mmm', /I can read 1, but not “mmm”/],
    ['graduation', '0', /expected more than 0/],
    ['graduation', '1 +- 1', /without a doubt/],
    ['repeat', '-1', /expected nothing below 0/],
    ['checked', '2031-02-29', /Write 2031-11-25/],
  ])('%s “%s” is refused with what is expected', (key, text, why) => {
    const read = readThing(
      'indicator',
      { name: 'new', graduation: '1', repeat: '1', [key]: text },
      'metric',
      ['dial'],
    );
    expect(read.thing).toBeUndefined();
    expect(read.fields[key]).toMatchObject({ state: 'wrong', why: expect.stringMatching(why) });
  });
  it('what is needed and empty keeps it from being a thing, without being called wrong', () => {
    const read = readThing('level', { name: 'l' }, 'metric', []);
    expect(read.thing).toBeUndefined();
    expect(read.fields.base).toEqual({ state: 'empty' });
  });
  it('a bore as wide as its bar is refused', () => {
    const typed = { name: 'b', length: '300', by: 'limit', limit: '3', depth: '40', bore: '40' };
    expect(readThing('test bar', typed, 'metric', []).fields.bore).toMatchObject({ state: 'wrong' });
  });
});
