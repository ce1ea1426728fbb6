import { expect, it } from 'vitest';
import { type WorkshopTold, workshopCares, workshopRows } from './workshop-words.ts';

const told: WorkshopTold = {
  version: '0.1.0',
  store: { kind: 'SQLite', schema: 3, bytes: 1_240_000, jobs: 3, entries: 812, kit_entries: 1 },
  photos: { count: 2, bytes: 9_300_000 },
  backups: {
    on: true,
    every_h: 24,
    keep: 14,
    last: { number: 12, at: '2031-11-25T14:32:00Z', bytes: 9, entries: 800, photos: 2, damaged_photos: 0 },
  },
};
const rows = (one: WorkshopTold) =>
  workshopRows(one, (iso) => iso).map(({ label, words }) => `${label}: ${words}`);

it('the page says version, store, size, entries and the last backup', () => {
  expect(rows(told)).toEqual([
    'Waywright: version 0.1.0',
    'Kept in: one SQLite file, 1.2\u00a0MB',
    'Holds: 3 jobs, 812 entries of their ledgers, 1 of the kit',
    'Photos: 2, 9.3\u00a0MB',
    'Last backup: number 12, 2031-11-25T14:32:00Z: 800 entries and 2 photos, read back and counted',
    'Backups: every 24 hours; the newest 14 stay',
  ]);
  expect(workshopCares(told, (iso) => iso)).toEqual([]);
});

it('says what is to be seen to: a backup that failed, damaged photos, nobody who makes any', () => {
  const { last: _last, ...none } = told.backups!;
  const failed = { at: '2031-11-26T14:32:00Z', why: 'the disk is full' };
  expect(workshopCares({ ...told, backups: { ...none, failed } }, (iso) => iso)[0]).toContain(
    'the disk is full',
  );
  const hurt = { ...told.backups!, last: { ...told.backups!.last!, damaged_photos: 1 } };
  expect(workshopCares({ ...told, backups: hurt }, (iso) => iso)[0]).toContain('1 photo could not');
  expect(workshopCares({ ...told, backups: { ...none, on: false } }, (iso) => iso)[0]).toContain('Nobody');
});
