import { describe, expect, it } from 'vitest';
import type { ZoneAnswer } from '../../core/plan/answer.ts';
import { nextDeed, type RoundPlan, type RoundSoFar } from './next-deed.ts';
import { passesOf, zonesByPad } from './pass.ts';

// The plan of round 3 of the look's invented job: front flank 0 1 2 2 3 4, rear 4 4 2 1 1 0, flat 4 4 3 4 4 4.
const rows: Record<string, number[]> = {
  'front flank': [0, 1, 2, 2, 3, 4],
  'rear flank': [4, 4, 2, 1, 1, 0],
  flat: [4, 4, 3, 4, 4, 4],
};
const zones: ZoneAnswer[] = Object.entries(rows).flatMap(([pad, row]) =>
  row.map((passes, zone) => ({
    pad,
    zone,
    centre_mm: [zone * 80, 7, 3] as const,
    depth_um: passes * 6.2,
    passes,
    passes_now: passes,
  })),
);
const scrape: RoundPlan = { kind: 'plan', action: 'scrape', zones, alarm: false };
const measured: RoundSoFar = {
  round: 3,
  setups: [
    { id: 'square', kind: 'sweep', taken: true },
    { id: 'across', kind: 'level', taken: true },
  ],
  printed: true,
  lifted: false,
  passes_made: 0,
  signed: false,
  settled: false,
};

describe('passes of a plan', () => {
  it('pass k goes over the zones that take k or more: 16, 13, 10 and 8 of them', () => {
    expect(passesOf(zones).map((pass) => pass.zones)).toEqual([16, 13, 10, 8]);
    expect(passesOf(zones)[3]!.byPad['rear flank']).toEqual([1, 1, 0, 0, 0, 0]);
    expect(zonesByPad(zones, 'passes')).toEqual(rows);
  });
});

describe('the next deed', () => {
  it('goes from measuring to printing to scraping to setting back', () => {
    const fresh = {
      ...measured,
      printed: false,
      setups: measured.setups.map((s) => ({ ...s, taken: false })),
    };
    expect(nextDeed(fresh, undefined)).toMatchObject({
      kind: 'measure',
      words: 'Set up the sweep',
      setup: 'square',
    });
    const swept = { ...fresh, setups: [measured.setups[0]!, { ...measured.setups[1]!, taken: false }] };
    expect(nextDeed(swept, scrape)).toMatchObject({ words: 'Read the level', setup: 'across' });
    expect(nextDeed({ ...measured, printed: false }, scrape).words).toBe('Enter the print');
    expect(nextDeed(measured, scrape)).toMatchObject({ words: 'Start pass 1 of 4', end: '16 zones' });
    expect(nextDeed({ ...measured, lifted: true, passes_made: 2 }, scrape)).toMatchObject({
      words: 'Start pass 3 of 4',
      end: '10 zones',
    });
    expect(nextDeed({ ...measured, lifted: true, passes_made: 4 }, scrape).words).toBe(
      'Set it back: start round 4',
    );
  });
  it('a lifted part is not asked for readings it cannot give', () => {
    const bare = measured.setups.map((setup) => ({ ...setup, taken: false }));
    const lifted = { ...measured, setups: bare, printed: false, lifted: true };
    expect(nextDeed(lifted, scrape).kind).toBe('print');
    expect(nextDeed({ ...lifted, passes_made: 1 }, scrape).kind).toBe('pass');
  });
  it('an alarm comes before the scraper, until it is settled', () => {
    const alarmed: RoundPlan = { ...scrape, alarm: true };
    expect(nextDeed(measured, alarmed).kind).toBe('settle');
    expect(nextDeed({ ...measured, settled: true }, alarmed).kind).toBe('pass');
  });
  it('stop is signed, and then there is nothing left to do', () => {
    const stop: RoundPlan = { kind: 'plan', action: 'stop', zones: [], alarm: false };
    expect(nextDeed(measured, stop).words).toBe('Sign the lines');
    expect(nextDeed({ ...measured, signed: true }, stop).kind).toBe('signed');
  });
  it('spotting says how often over', () => {
    const once = zones.map((zone) => ({ ...zone, passes_now: Math.min(1, zone.passes_now) }));
    expect(nextDeed(measured, { kind: 'plan', action: 'spot', zones: once, alarm: false }).words).toBe(
      'Spot the blue, once over',
    );
  });
});
