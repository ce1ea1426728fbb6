import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeDemo } from '../../demo/make-demo.ts';
import { latheRebuild, millRebuild } from '../../demo/make-rebuilds.ts';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { jobFile, jobFileText } from '../../src/contract/job-file.ts';
import { foldJob } from '../../src/core/ledger/job.ts';
import { benchesOf, machineOf, resultsOf, stepRecords } from '../../src/core/ledger/rebuild-record.ts';
import { steerInput } from '../../src/core/ledger/steer-input.ts';
import { order } from '../../src/shop/order/order.ts';
import { jobHeights } from '../../src/shop/order/rebuild.ts';
import { steer } from '../../src/shop/steer.ts';

const text = readFileSync('demo/saddle.job.json', 'utf8');

const file = jobFile(JSON.parse(text));
const job = foldJob(file.entries);

describe('the demo job', () => {
  it('says that it is invented, and that no metal was measured', () => {
    expect(job.plan.demo).toContain('Invented');
    expect(
      file.entries.some((entry) => entry.kind === 'note' && entry.text.includes('Nothing here was measured')),
    ).toBe(true);
  });

  it('stands in its fourth round, measured and printed, with a plan waiting', async () => {
    expect(job.round).toBe(4);
    const input = steerInput(job);
    expect(input.rounds).toHaveLength(4);
    for (const round of input.rounds.slice(0, 3)) expect(round.scraped).toBeDefined();
    for (const round of input.rounds) {
      expect(round.sweeps.length).toBeGreaterThan(0);
      expect(round.print).toBeDefined();
    }
    const answer = await steer(input, solveWithHighs);
    if (!answer.ok) throw new Error(answer.text);
    expect(answer.plan.action).not.toBe('stop');
    expect(answer.plan.zones.reduce((sum, zone) => sum + zone.passes_now, 0)).toBeGreaterThan(0);
  });

  it('is typed as a person types, and what was taken back stays in the ledger', () => {
    const typed = file.entries.flatMap((entry) => (entry.kind === 'sweep taken' ? entry.readings : []));
    expect(typed.every((reading) => /^(0|[+-]\d+(\.5)?)$/.test(reading.typed))).toBe(true);
    expect(file.entries.some((entry) => entry.kind === 'undone')).toBe(true);
  });

  it('its first round comes out the same when it is made again; later rounds follow the planner (node demo/write.mjs)', async () => {
    const { file: again } = await makeDemo((input) => steer(input, solveWithHighs));
    const untilLifted = (entries: typeof file.entries) =>
      entries.slice(
        0,
        entries.findIndex((entry) => entry.kind === 'part turned over'),
      );
    expect(untilLifted(again.entries)).toEqual(untilLifted(file.entries));
    expect(untilLifted(file.entries).length).toBeGreaterThan(4);
    expect(text).toBe(jobFileText(file));
  });
});

describe('the rebuilds that are half done', () => {
  const fileOf = (name: string) => readFileSync(`demo/${name}.job.json`, 'utf8');
  const opened = (name: string) => foldJob(jobFile(JSON.parse(fileOf(name))).entries);
  const stands = (name: string) => {
    const { live } = opened(name);
    return order(machineOf(live)!, stepRecords(live));
  };

  it('say that they are invented, and come out the same when they are made again; after a change of machine or template, node demo/write.mjs', async () => {
    for (const name of ['lathe', 'mill']) expect(opened(name).plan.demo).toContain('Invented');
    expect(jobFileText(latheRebuild())).toBe(fileOf('lathe'));
    const mill = await millRebuild((input) => steer(input, solveWithHighs));
    expect(mill.entries.slice(0, 20)).toEqual(jobFile(JSON.parse(fileOf('mill'))).entries.slice(0, 20));
  });

  it('the lathe has steps done, ready and waiting; its saddle’s bench is the demo saddle, in mid-rounds', () => {
    const { steps, ready } = stands('lathe');
    const count = (status: string) => steps.filter((one) => one.status === status).length;
    expect([count('done'), count('waits')]).toEqual([10, 16]);
    expect(ready).toEqual(['saddle-bottom']);
    expect(benchesOf(opened('lathe').live).get('saddle-bottom')).toBe('demo-saddle');
    const saddle = machineOf(opened('lathe').live)!.dimensions.find((one) => one.key === 'saddle_length')!;
    expect(job.plan.slide.pads.map((pad) => pad.length_mm)).toContain(saddle.value);
  });

  it('its heights are worked out, and its chart is half filled', () => {
    const answer = jobHeights(opened('lathe'), readTemplates())!;
    if (!answer.ok) throw new Error(answer.text);
    expect(answer.liners).toHaveLength(1);
    const nut = answer.heights.find((one) => one.name === 'half nut over lead screw')!;
    expect(Math.abs(nut.um - nut.aim_um)).toBeLessThan(0.1);
    const kept = resultsOf(opened('lathe').live);
    const first = kept.filter((one) => one.when === 'first').length;
    const final = kept.filter((one) => one.when === 'final').length;
    expect(first).toBeGreaterThan(5);
    expect(final).toBeGreaterThan(5);
    expect(final).toBeLessThan(15);
  });

  it('the mill’s saddle stands in its second round, measured, with a plan waiting', async () => {
    const { steps } = stands('mill');
    expect(steps.find((one) => one.id === 'saddle-bottom')).toMatchObject({ status: 'ready', begun: true });
    const input = steerInput(opened('mill'));
    expect(input.rounds.map((round) => round.print !== undefined)).toEqual([true, true]);
    const answer = await steer(input, solveWithHighs);
    expect(answer.ok && answer.plan.action).toBe('scrape');
  });
});
