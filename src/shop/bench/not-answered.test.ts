import { expect, it } from 'vitest';
import type { Entry } from '../../core/ledger/entry.ts';
import type { Job } from '../../core/ledger/job.ts';
import { notAnswered } from './not-answered.ts';

const job = (...kinds: Entry['kind'][]) =>
  ({ entries: kinds.map((kind, i) => ({ kind, seq: i + 1 })) }) as unknown as Job;

it('a print that came after the answer is not in it; a pass and a note change nothing yet', () => {
  expect(notAnswered(job('job made', 'sweep taken', 'print read'), 2)).toBe(true);
  expect(notAnswered(job('job made', 'sweep taken', 'print read'), 3)).toBe(false);
  expect(notAnswered(job('job made', 'sweep taken', 'pass made', 'note'), 2)).toBe(false);
  expect(notAnswered(job('job made', 'sweep taken', 'pass made', 'undone'), 3)).toBe(true);
});
