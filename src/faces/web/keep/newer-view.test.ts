import { expect, it } from 'vitest';
import { type JobView, newerView } from './newer-view.ts';

const view = (seq: number): JobView => ({ id: 'saddle', seq, entries: [] });

it('an entry that came in while the ledger was under way stays', () => {
  expect(newerView(view(9), view(10), view(9)).seq).toBe(10);
  expect(newerView(view(9), view(10), view(11)).seq).toBe(11);
});

it('what arrives stands when nothing came in meanwhile, shorter than before or not', () => {
  expect(newerView(undefined, undefined, view(3)).seq).toBe(3);
  expect(newerView(view(9), view(9), view(12)).seq).toBe(12);
  expect(newerView(view(9), view(9), view(4)).seq).toBe(4);
});
