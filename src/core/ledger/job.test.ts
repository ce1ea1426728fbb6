import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedPlan as plan, written } from '../../../tests/fixture/invented-job.ts';
import type { Deed } from './entry.ts';
import { foldJob, foldOn } from './job.ts';

describe('a job from its ledger', () => {
  it('undo takes back, and undoing the undo brings it back', () => {
    const deeds: Deed[] = [
      { kind: 'job made', plan },
      { kind: 'note', text: 'first' },
      { kind: 'note', text: 'second' },
    ];
    const texts = (more: Deed[]) =>
      foldJob(written([...deeds, ...more])).live.flatMap((e) => (e.kind === 'note' ? [e.text] : []));
    expect(texts([])).toEqual(['first', 'second']);
    expect(texts([{ kind: 'undone', entry: 'e2' }])).toEqual(['second']);
    expect(
      texts([
        { kind: 'undone', entry: 'e2' },
        { kind: 'undone', entry: 'e4' },
      ]),
    ).toEqual(['first', 'second']);
  });

  it('folding on from a fold is folding all, in whatever order entries arrive', () => {
    const deed = fc.oneof(
      fc.record({ kind: fc.constant('note' as const), text: fc.string() }),
      fc.record({ kind: fc.constant('round closed' as const), round: fc.integer({ min: 1, max: 6 }) }),
      fc.record({
        kind: fc.constant('undone' as const),
        entry: fc.integer({ min: 2, max: 12 }).map((n) => `e${n}`),
      }),
      fc.record({
        kind: fc.constant('plan amended' as const),
        change: fc.record({ film_um: fc.integer({ min: 1, max: 9 }) }),
      }),
    );
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 12 }), fc.nat(12), fc.boolean(), (deeds, cut, reversed) => {
        const all = written([{ kind: 'job made', plan }, ...deeds]);
        const at = Math.min(1 + cut, all.length);
        const whole = foldJob(all);
        expect(foldJob(all.slice(at), foldJob(all.slice(0, at)))).toEqual(whole);
        expect(foldOn(foldJob(all.slice(0, at)), all.slice(at))).toEqual(whole);
        expect(foldJob(reversed ? all.toReversed() : all)).toEqual(whole);
      }),
    );
  });

  it('a ledger that makes no job is refused', () => {
    expect(() => foldJob(written([{ kind: 'note', text: 'alone' }]))).toThrow(RangeError);
  });

  it('amending the plan changes what it names and keeps the rest', () => {
    const job = foldJob(
      written([
        { kind: 'job made', plan },
        { kind: 'plan amended', change: { film_um: 4.5 } },
      ]),
    );
    expect(job.plan.film_um).toBe(4.5);
    expect(job.plan.title).toBe(plan.title);
  });
});
