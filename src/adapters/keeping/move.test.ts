import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Cluster, newCluster } from '../../../tests/fixture/cluster.ts';
import { filled, newPlace } from '../../../tests/fixture/whole-workshop.ts';
import { carryWorkshop } from '../../shop/keeping/carry.ts';
import { workshopSum } from '../../shop/keeping/workshop-sum.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import type { Store } from '../../shop/store.ts';
import { openWorkshop } from '../workshop/open-workshop.ts';
import { placeAt } from '../workshop/place.ts';
import { moveWorkshop, withWorkshop } from './keeping.ts';

let cluster: Cluster;
beforeAll(async () => {
  cluster = await newCluster();
}, 60_000);
afterAll(() => cluster.stop());

describe('a workshop moved', () => {
  it('to PostgreSQL and back to a file is the same by count and hash, its photos too', async () => {
    const shop = await filled();
    const before = await workshopSum(shop);
    expect(before.jobs.map(({ id }) => id)).toEqual(['demo-saddle', 'zebra', 'apple']);
    const url = await cluster.database();
    const there = await moveWorkshop(shop.place, url);
    expect(there.sum).toEqual(before);
    expect(there.words).not.toContain('waywright@');
    const back = newPlace();
    expect((await moveWorkshop(placeAt(url, back.folder), back.at)).sum).toEqual(before);
    await withWorkshop(back, async ({ photos, store }) => {
      for (const hash of shop.hashes)
        expect((await photos.open(hash))?.bytes).toEqual((await shop.photos.open(hash))?.bytes);
      expect(await store.entries('demo-saddle')).toEqual(await shop.store.entries('demo-saddle'));
    });
    // What it was carried from is as it was.
    expect(await workshopSum(shop)).toEqual(before);
    await shop.close();
  });

  it('to a place that holds something else is refused by name, and nothing is written there', async () => {
    const [shop, other] = [await filled(), await filled()];
    await other.store.append('zebra', { kind: 'note', text: 'ours', id: 'n', at: '2031-11-25T14:32:00Z' });
    const before = await workshopSum(other);
    await expect(carryWorkshop(shop, other)).rejects.toThrow(/to: job "zebra" with 2 entries of its own/);
    expect(await workshopSum(other)).toEqual(before);
    await expect(moveWorkshop(shop.place, shop.place.at)).rejects.toThrow(/is there already/);
    await expect(moveWorkshop(shop.place, 'mysql://x/y')).rejects.toThrow(/address of "mysql"/);
    await shop.close();
    await other.close();
  });

  it('cut short at any step, goes on where it was when it is sent again', async () => {
    const shop = await filled();
    const before = await workshopSum(shop);
    for (let steps = 0; steps < 6; steps++) {
      const goal = await openWorkshop(newPlace());
      let left = steps;
      const step = () => {
        if (left-- <= 0) throw new Error('cut short');
      };
      const cut: Store = {
        ...goal.store,
        make: async (...one) => {
          step();
          return goal.store.make(...one);
        },
        keepKit: async (...one) => {
          step();
          return goal.store.keepKit(...one);
        },
      };
      const photos: PhotoStore = {
        ...goal.photos,
        keep: async (one) => {
          step();
          return goal.photos.keep(one);
        },
      };
      await expect(carryWorkshop(shop, { store: cut, photos })).rejects.toThrow('cut short');
      expect((await carryWorkshop(shop, goal)).sum).toEqual(before);
      await goal.close();
    }
    await shop.close();
  });

  it('says which photo is damaged and leaves it behind; the rest arrives', async () => {
    const shop = await filled();
    const [hurt] = shop.hashes as [string];
    writeFileSync(join(shop.place.photos, hurt.slice(0, 2), `${hurt}.jpeg`), 'something else');
    const goal = newPlace();
    const { damaged, sum } = await moveWorkshop(shop.place, goal.at);
    expect(damaged).toEqual([hurt]);
    expect(sum.photos).toHaveLength(1);
    expect(sum.missing).toEqual([hurt]);
    await shop.close();
  });

  it('written to meanwhile, what arrived is the moment it began, and the same again brings the rest', async () => {
    const shop = await filled();
    const goal = await openWorkshop(newPlace());
    let written = 0;
    const busy: Store = {
      ...goal.store,
      keepKit: async (...one) => {
        written += 1;
        await shop.store.append('apple', {
          kind: 'note',
          text: 'late',
          id: 'late',
          at: '2031-11-25T14:32:00Z',
        });
        return goal.store.keepKit(...one);
      },
    };
    // The source's own hashes were taken before the late entry; what arrived is without it, and so is whole for that moment.
    const first = await carryWorkshop(shop, { ...goal, store: busy });
    expect(written).toBe(1);
    expect(first.sum.jobs.at(-1)).toMatchObject({ id: 'apple', entries: 1 });
    const again = await carryWorkshop(shop, goal);
    expect(again.sum).toEqual(await workshopSum(shop));
    expect(again.sum.jobs.at(-1)).toMatchObject({ id: 'apple', entries: 2 });
    await shop.close();
    await goal.close();
  });
});
