import { describe, expect, it } from 'vitest';
import { type Delivery, newId, Outbox, type Parcel } from './outbox.ts';
import type { Shelf } from './shelf.ts';

function mapShelf(): Shelf {
  const map = new Map<string, string>();
  return {
    keys: () => [...map.keys()],
    read: (key) => map.get(key) ?? null,
    write: (key, text) => void map.set(key, text),
    drop: (key) => void map.delete(key),
  };
}

const note = (text: string): Parcel => ({
  job: 'saddle',
  entry: { kind: 'note', text, id: newId(), at: '2031-11-25T14:32:00Z' },
});

const texts = (parcels: readonly Parcel[]) =>
  parcels.map((parcel) => (parcel.entry.kind === 'note' ? parcel.entry.text : ''));

describe('entries on this phone', () => {
  it('waits in order while the shop is out of reach, survives a reload, and arrives in order', async () => {
    const shelf = mapShelf();
    const offline = new Outbox(shelf, async () => ({ kind: 'out of reach' }));
    for (const text of ['first', 'second', 'third']) offline.add(note(text));
    await offline.deliver();
    expect(texts(offline.state().waiting)).toEqual(['first', 'second', 'third']);

    const arrived: Parcel[] = [];
    const online = new Outbox(shelf, async (parcel) => {
      arrived.push(parcel);
      return { kind: 'kept', seq: 7 };
    });
    expect(texts(online.state().waiting)).toEqual(['first', 'second', 'third']);
    await online.deliver();
    expect(texts(arrived)).toEqual(['first', 'second', 'third']);
    expect(online.state().waiting).toEqual([]);
    expect(Object.keys(online.state().kept)).toEqual(['saddle']);
    expect(shelf.keys()).toEqual([]);
  });

  it('sends nothing past an entry that could not be handed over', async () => {
    const tried: string[] = [];
    let answer: Delivery = { kind: 'cannot keep', why: 'the disk is full' };
    const outbox = new Outbox(mapShelf(), async (parcel) => {
      tried.push(...texts([parcel]));
      return answer;
    });
    outbox.add(note('one'));
    await outbox.deliver();
    outbox.add(note('two'));
    await outbox.deliver();
    expect(tried).toEqual(['one', 'one']);
    expect(outbox.state().trouble).toBe('the disk is full');
    answer = { kind: 'kept', seq: 7 };
    await outbox.deliver();
    expect(outbox.state().trouble).toBeUndefined();
    expect(tried).toEqual(['one', 'one', 'one', 'two']);
  });

  it('keeps a refused entry with the reason, and goes on with the next', async () => {
    const outbox = new Outbox(mapShelf(), async (parcel) =>
      texts([parcel])[0] === 'bad'
        ? { kind: 'refused', why: 'round: 9; expected 3' }
        : { kind: 'kept', seq: 7 },
    );
    outbox.add(note('bad'));
    outbox.add(note('good'));
    await outbox.deliver();
    expect(outbox.state().waiting).toEqual([]);
    expect(outbox.state().refused.map((one) => one.why)).toEqual(['round: 9; expected 3']);
    outbox.letGo(outbox.state().refused[0]!.entry.id);
    expect(outbox.state().refused).toEqual([]);
  });

  it('an entry that the phone has no room for is not silently dropped', () => {
    const full: Shelf = {
      ...mapShelf(),
      write: () => {
        throw new Error('quota');
      },
    };
    const outbox = new Outbox(full, async () => ({ kind: 'kept', seq: 7 }));
    expect(() => outbox.add(note('lost?'))).toThrow('quota');
  });

  it('makes ids of UUID version 4, each another', () => {
    const ids = Array.from({ length: 200 }, newId);
    expect(new Set(ids).size).toBe(200);
    for (const id of ids)
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });
});
