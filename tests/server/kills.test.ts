import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type KillFigures, killed } from '../faults/kills.ts';
import { newCluster } from '../fixture/cluster.ts';
import { newFolder } from './served.ts';

/** A few in the suite; KILLS=500 says how many by hand, and shows the figures that stand in docs/running.md. */
const asked = process.env.KILLS;
const kills = Number(asked ?? 4);
const patience_ms = 60_000 + kills * 10_000;

function holds(store: string, figures: KillFigures): void {
  if (asked) console.log(JSON.stringify({ store, ...figures }));
  expect(figures.acknowledged).toBeGreaterThan(2 * kills);
  expect(figures).toMatchObject({ kills, lost: 0, halves: 0 });
}

it(
  'killed at random moments under write load, SQLite has lost no acknowledged entry and kept none by half',
  async () => holds('SQLite', await killed(kills, join(await newFolder(), 'workshop.db'))),
  patience_ms,
);

it(
  'nor has PostgreSQL, writers and the database itself killed by turns',
  async () => {
    const cluster = await newCluster();
    try {
      const figures = await killed(kills, await cluster.database(), cluster);
      expect(figures.server_kills).toBe(Math.floor(kills / 2));
      holds('PostgreSQL', figures);
    } finally {
      await cluster.stop();
    }
  },
  patience_ms,
);
