import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Deed, JobPlan } from '../core/ledger/entry.ts';
import { foldJob, type Job } from '../core/ledger/job.ts';
import { sentEntry } from './entry.ts';
import { entryFits } from './entry-fits.ts';
import { jobFile } from './job-file.ts';
import { BadInput } from './refusal.ts';

const at = '2031-11-25T14:32:00+01:00';
const demo = foldJob(jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8'))).entries);
const { plan } = demo;

/** What is refused of a deed, path by path. */
function refused(job: Job, deed: Deed): string[] {
  try {
    entryFits(job, { ...deed, id: 'next', at });
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map((issue) => issue.path);
    throw failure;
  }
  return [];
}
const withDeed = (job: Job, deed: Deed, id: string): Job =>
  foldJob([{ ...deed, id, at, seq: job.seq + 1 }], job);

const zones = (change: (pad: JobPlan['slide']['pads'][number]) => object): Deed => ({
  kind: 'plan amended',
  change: { slide: { ...plan.slide, pads: plan.slide.pads.map((pad) => ({ ...pad, ...change(pad) })) } },
});

describe('an entry is held to its job', () => {
  it('a round that has not begun cannot be written about; an earlier one can still be put right', () => {
    expect(refused(demo, { kind: 'note', round: demo.round, text: 'oil' })).toEqual([]);
    expect(refused(demo, { kind: 'part turned over', round: 1, how: 'front to back' })).toEqual([]);
    expect(refused(demo, { kind: 'round closed', round: demo.round + 1 })).toEqual(['round']);
    const closed = withDeed(demo, { kind: 'round closed', round: demo.round }, 'closed');
    expect(refused(closed, { kind: 'round closed', round: demo.round + 1 })).toEqual([]);
  });

  it('the plan may be amended, unless what was read would no longer fit it', () => {
    expect(refused(demo, { kind: 'plan amended', change: { film_um: 4 } })).toEqual([]);
    expect(
      refused(
        demo,
        zones(({ width_mm }) => ({ width_mm: width_mm + 1.5 })),
      ),
    ).toEqual([]);
    expect(
      refused(
        demo,
        zones(({ zones: count }) => ({ zones: count + 1 })),
      ),
    ).toEqual(['change']);
    expect(
      refused(
        demo,
        zones(({ name }) => ({ name: `${name} of it` })),
      ),
    ).toEqual(['change']);
    expect(refused(demo, { kind: 'plan amended', change: { setups: [] } })).toEqual(['change']);
    const fresh = foldJob(demo.entries.slice(0, 1));
    expect(
      refused(
        fresh,
        zones(({ zones: count }) => ({ zones: count + 1 })),
      ),
    ).toEqual([]);
  });

  it('nor may an amendment be undone that later readings rest on', () => {
    const fresh = foldJob(demo.entries.slice(0, 1));
    const finer = withDeed(
      fresh,
      zones(({ zones: count }) => ({ zones: count + 1 })),
      'finer',
    );
    expect(refused(finer, { kind: 'undone', entry: 'finer' })).toEqual([]);
    const pad = finer.plan.slide.pads[0]!;
    const share = { [pad.name]: Array.from({ length: pad.zones }, () => 0.45) };
    const printed = withDeed(finer, { kind: 'print read', round: 1, share }, 'print');
    expect(refused(printed, { kind: 'undone', entry: 'finer' })).toEqual(['entry']);
    const taken = withDeed(printed, { kind: 'undone', entry: 'print' }, 'back');
    expect(refused(taken, { kind: 'undone', entry: 'finer' })).toEqual([]);
    const coarse = withDeed(taken, { kind: 'undone', entry: 'finer' }, 'coarse');
    expect(refused(coarse, { kind: 'undone', entry: 'back' })).toEqual(['entry']);
  });

  it('a photo’s shares are one a zone of a pad that is there', () => {
    const pad = plan.slide.pads[0]!;
    const photo = {
      kind: 'print photographed' as const,
      round: 1,
      pad: pad.name,
      photo: 'ab'.repeat(32),
      corners: [
        { x: 10, y: 10 },
        { x: 900, y: 12 },
        { x: 905, y: 400 },
        { x: 8, y: 395 },
      ] as const,
      size: { length_mm: 390, width_mm: 42 },
      shares: Array.from({ length: pad.zones }, (_, zone) => (zone === 1 ? null : 0.25)),
      density_per_25mm: 17.5,
      bearing_pct: 24.5,
      confidence: 0.85,
      warnings: [],
    };
    expect(refused(demo, photo)).toEqual([]);
    expect(refused(demo, { ...photo, pad: 'top' })).toEqual(['pad']);
    expect(refused(demo, { ...photo, shares: [0.5] })).toEqual(['shares']);
    expect(refused(demo, { ...photo, round: 99 })).toEqual(['round']);
    const sent = { ...photo, id: 'p1', at: '2031-11-25T14:32:00Z' };
    expect(sentEntry(sent)).toEqual(sent);
    const spoiled = (part: object) => () => sentEntry({ ...sent, ...part });
    expect(spoiled({ photo: 'AB'.repeat(32) })).toThrow(/photo: .*SHA-256/);
    expect(spoiled({ shares: [1.2] })).toThrow(/shares\[0\]: 1.2; expected at most 1/);
    expect(spoiled({ corners: [0, 2, 1, 3].map((k) => photo.corners[k]) })).toThrow(/corners: .*cross over/);
  });

  it('a plan’s parts must agree with each other', () => {
    const change = (part: Partial<JobPlan>) => refused(demo, { kind: 'plan amended', change: part });
    const [target] = plan.targets;
    expect(change({ targets: [...plan.targets, target!] })).toEqual(['change.targets']);
    expect(change({ targets: [{ ...target!, feature: 'colour' }] })).toEqual(['change.targets[0].feature']);
    expect(change({ setups: [plan.setups[0]!, ...plan.setups] })).toEqual(['change.setups']);
    const sweep = plan.setups.findIndex((setup) => setup.kind === 'sweep');
    const spoiled = (part: object) =>
      plan.setups.map((setup, k) => (k === sweep ? { ...setup, ...part } : setup));
    const { from_mm, rides } = plan.setups[sweep] as never as { from_mm: number[]; rides: string };
    expect(change({ setups: spoiled({ to_mm: from_mm }) as never })).toEqual([
      `change.setups[${sweep}].to_mm`,
    ]);
    expect(change({ setups: spoiled({ touches: rides }) as never })).toEqual([
      `change.setups[${sweep}].touches`,
    ]);
    expect(change({ passes: {} })[0]).toBe('change.slide.pads[0].material');
  });
});
