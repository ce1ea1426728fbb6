import { expect, it } from 'vitest';
import { gibInput } from '../../contract/gib.ts';
import { gib } from '../gib.ts';
import { gibBlanks, nextStation, placesOf, readsOf, stationsOf } from './gib-typed.ts';

it('every part of a blank sheet is answered by itself, and all together', () => {
  const { rolls, gib: wedge, play, keeper } = gibBlanks;
  for (const sheet of [{ rolls }, { gib: wedge }, { play, taper_one_in: 60 }, { keepers: [keeper] }])
    expect(gib(gibInput(sheet), [], []).ok).toBe(true);
  const all = gib(gibInput({ rolls, gib: wedge, play, keepers: [keeper] }), [], []);
  // 13 − 8 over 300 mm is 1 in 60.
  expect(all.gib!.one_in).toBeCloseTo(60, 6);
  expect(all.rolls!.sentence.length).toBeGreaterThan(10);
});

it('stations go to two lists and back, and the next one follows at the same distance', () => {
  const stations = stationsOf([0, 150], [100.02, 100.03]);
  expect(nextStation(stations)).toEqual({ at_mm: 300, read: 100.03 });
  expect([placesOf(stations), readsOf(stations)]).toEqual([
    [0, 150],
    [100.02, 100.03],
  ]);
  expect(nextStation([])).toEqual({ at_mm: 0, read: 0 });
});
