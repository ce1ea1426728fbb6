import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldKit, type KitDeed, type KitEntry, kitOf } from './kit-ledger.ts';

const dial = (name: string, graduation_um = 1) =>
  ({ kind: 'indicator', name, graduation_um, repeatability_um: 0.5 }) as const;
const ledger = (...deeds: KitDeed[]): KitEntry[] =>
  deeds.map((deed, i) => ({ ...deed, id: `e${i + 1}`, at: '2031-11-25T14:00:00Z', seq: i + 1 }));
const names = (entries: readonly KitEntry[]) => foldKit(entries).map(({ thing }) => thing.name);

describe('the kit from its ledger', () => {
  it('adds, changes in place and takes out', () => {
    const entries = ledger(
      { kind: 'put', item: 'a', thing: dial('dial') },
      { kind: 'put', item: 'b', thing: dial('lever') },
      { kind: 'put', item: 'a', thing: dial('dial, mended') },
      { kind: 'taken out', item: 'b' },
    );
    expect(names(entries)).toEqual(['dial, mended']);
    expect(names(entries.slice(0, 3))).toEqual(['dial, mended', 'lever']);
  });
  it('an undo brings back what was changed or taken out, and can itself be undone', () => {
    const entries = ledger(
      { kind: 'put', item: 'a', thing: dial('dial') },
      { kind: 'put', item: 'a', thing: dial('dial', 10) },
      { kind: 'taken out', item: 'a' },
      { kind: 'undone', entry: 'e3' },
      { kind: 'undone', entry: 'e2' },
      { kind: 'undone', entry: 'e5' },
    );
    expect(names(entries.slice(0, 3))).toEqual([]);
    expect(foldKit(entries.slice(0, 4))[0]!.thing).toEqual(dial('dial', 10));
    expect(foldKit(entries.slice(0, 5))[0]!.thing).toEqual(dial('dial'));
    expect(foldKit(entries)[0]!.thing).toEqual(dial('dial', 10));
  });
  it('undoing the last entry is as if it had not been written, whatever came before', () => {
    const deed = fc.oneof(
      fc.record({
        kind: fc.constant('put' as const),
        item: fc.constantFrom('a', 'b', 'c'),
        thing: fc.constantFrom(dial('one'), dial('two')),
      }),
      fc.record({ kind: fc.constant('taken out' as const), item: fc.constantFrom('a', 'b', 'c') }),
    );
    fc.assert(
      fc.property(fc.array(deed, { minLength: 1, maxLength: 12 }), (deeds) => {
        const entries = ledger(...deeds, { kind: 'undone', entry: `e${deeds.length}` });
        expect(foldKit(entries.toReversed())).toEqual(foldKit(entries.slice(0, deeds.length - 1)));
      }),
    );
  });
  it('two things of one name are told apart', () => {
    const items = foldKit(
      ledger(
        { kind: 'put', item: 'a', thing: dial('dial') },
        { kind: 'put', item: 'b', thing: dial('dial') },
      ),
    );
    expect(kitOf(items).instruments.map((one) => one.name)).toEqual(['dial', 'dial (2)']);
  });
});
