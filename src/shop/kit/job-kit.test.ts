import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parsedJson } from '../../contract/refusal.ts';
import { templateInput } from '../../contract/template.ts';
import type { Instrument, Kit, Reference } from '../../core/kit/kit.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import { buildPlan, surfaceKey } from '../../core/ledger/template.ts';
import { jobKit } from './job-kit.ts';

/** A job of a machine's template with the dimensions that stand there already. */
function planOf(machine: string): JobPlan {
  const template = templateInput(parsedJson(readFileSync(`machines/${machine}.json`, 'utf8')));
  const answers = Object.fromEntries(
    template.dimensions.flatMap((one) => (one.value === undefined ? [] : [[one.key, one.value]])),
  );
  const built = buildPlan(template, { ...answers, [surfaceKey]: template.surface.value }, 'a job');
  if (!built.ok) throw new Error(built.refusals.map((one) => `${one.key}: ${one.expected}`).join('; '));
  return built.plan;
}
const dial: Instrument = { kind: 'indicator', name: 'dial', graduation_um: 10, repeatability_um: 3 };
const lever: Instrument = { kind: 'indicator', name: 'lever', graduation_um: 1, repeatability_um: 0.3 };
const level: Instrument = {
  kind: 'level',
  name: 'level',
  graduation_urad: 20,
  repeatability_urad: 4,
  base_mm: 200,
};
const square: Reference = {
  kind: 'square',
  name: 'square',
  length_mm: 300,
  known: { by: 'certificate', doubt_um: 1 },
};
const bar: Reference = {
  kind: 'test bar',
  name: 'bar',
  length_mm: 400,
  known: { by: 'certificate', doubt_um: 1 },
};
const kit = (...things: (Instrument | Reference)[]): Kit => ({
  instruments: things.filter((one) => !('known' in one)) as Instrument[],
  references: things.filter((one) => 'known' in one) as Reference[],
});
const saddle = planOf('lathe-saddle');

describe('a job’s targets against the kit', () => {
  it('every target of every machine is told, or told why not', () => {
    for (const machine of ['lathe-saddle', 'double-v', 'dovetail-two-flats', 'four-pad-base']) {
      const plan = planOf(machine);
      for (const things of [kit(), kit(dial, level, square, bar)]) {
        const told = jobKit(plan, things, 'metric');
        expect(told.map((one) => one.feature)).toEqual(plan.targets.map((one) => one.feature));
        for (const one of told)
          if (one.can === 'not told')
            expect(one.why).toMatch(/^(To measure it|Cannot be told|No set-up).*\.$/);
          else expect(one.proof.doubt).toBeGreaterThan(0);
      }
    }
  });
  it('a height is held against gauge blocks: place less stack, the stack, how it stands, its warmth', () => {
    const blocks: Reference = {
      kind: 'gauge blocks',
      name: 'blocks',
      length_mm: 300,
      known: { by: 'grade', standard: 'ISO 3650', grade: '1' },
      reseat_um: 0.2,
    };
    const base = planOf('four-pad-base');
    const told = (...things: (Instrument | Reference)[]) =>
      jobKit(base, kit(...things), 'metric').find((one) => one.feature === 'spindle height')!;
    expect(told(dial, level)).toMatchObject({
      can: 'not told',
      why: expect.stringMatching(
        /^To measure it you need an indicator and gauge blocks that stack up to \d+\smm\.$/,
      ),
    });
    expect(told(lever, { ...blocks, length_mm: 20 }).can).toBe('not told');
    const found = told(dial, lever, blocks);
    if (found.can === 'not told') throw new Error(found.why);
    expect(found.by).toEqual(['lever', 'blocks']);
    const card = base.setups.find((one) => one.kind === 'height')!;
    if (card.kind !== 'height') throw new Error('no height');
    const high = Math.abs(card.at_mm[2]);
    // ISO 3650 grade 1, from memory: one block is within 0.20 µm + 4·10⁻⁶ of its length; three of a third each.
    const stack = Math.sqrt(3) * ((0.2 + 0.004 * (high / 3)) / Math.sqrt(3));
    // Gauge steel, JCGM 100:2008 H.1: 11.5·10⁻⁶ a K; half a K apart, one sd.
    const warm = 0.0115 * high * 0.5;
    const sd = Math.hypot(Math.SQRT2 * Math.hypot(1 / Math.sqrt(12), 0.3), stack, 0.2, warm);
    expect(found.proof.doubt).toBeCloseTo(2 * sd, 6);
    expect(found.proof.limited_by).toBe('warmth');
  });
  it('of two indicators the one of less doubt is told, whichever stands first', () => {
    for (const things of [kit(dial, lever, square), kit(lever, dial, square)]) {
      const [facing] = jobKit(saddle, things, 'metric');
      expect(facing).toMatchObject({ feature: 'facing', by: ['lever', 'square'] });
    }
  });
  it('room is half the band, and the ratio is room over doubt', () => {
    const [facing] = jobKit(saddle, kit(lever, square), 'metric');
    if (facing?.can === 'not told' || !facing) throw new Error('not told');
    const target = saddle.targets.find((one) => one.feature === 'facing')!;
    expect(facing.proof.room).toBeCloseTo((target.high - target.low) / 2, 9);
    expect(facing.proof.ratio).toBeCloseTo(facing.proof.room / facing.proof.doubt, 9);
  });
  it('a sweep along a test bar wants a bar, and a level is no indicator', () => {
    const base = planOf('four-pad-base');
    const swept = base.setups.find((one) => one.kind === 'sweep')!.tells[0]!;
    const of = (things: Kit) => jobKit(base, things, 'metric').find((one) => one.feature === swept);
    expect(of(kit(lever, square))).toMatchObject({
      can: 'not told',
      why: expect.stringContaining('test bar'),
    });
    expect(of(kit(lever, bar))).toMatchObject({ by: ['lever', 'bar'] });
  });
});
