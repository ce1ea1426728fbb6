import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../adapters/solver/highs.ts';
import { plannedJob, templateInput } from '../contract/template.ts';
import { featureRow } from '../core/body/feature.ts';
import { settledPose, settling } from '../core/body/settle.ts';
import type { Deed, Entry, JobPlan } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import type { Setup } from '../core/ledger/setup.ts';
import { steerInput, sweepStops } from '../core/ledger/steer-input.ts';
import { seededRandom } from '../core/math/random.ts';
import { heightRow } from '../core/observe/height.ts';
import { levelRow } from '../core/observe/level.ts';
import { sweepRows } from '../core/observe/sweep.ts';
import { steer } from './steer.ts';

const templates = readdirSync('machines')
  .filter((file) => file.endsWith('.json'))
  .map((file) => templateInput(JSON.parse(readFileSync(join('machines', file), 'utf8'))));

const along = (row: ArrayLike<number>, pose: readonly number[]): number =>
  pose.reduce((sum, part, i) => sum + part * row[i]!, 0);

/** Far out of every band: turns at twice the band's width beyond it, shifts well above it (metal only comes off). */
function wornPose(plan: JobPlan): number[] {
  const pose = [0, 0, 0, 0, 0, 0];
  const out = (name: string): number => {
    const target = plan.targets.find((one) => one.feature === name)!;
    return target.high + 2 * (target.high - target.low);
  };
  for (const feature of plan.features)
    if (feature.kind === 'turn') pose[3 + 'xyz'.indexOf(feature.axis)] = -out(feature.name);
  for (const feature of plan.features)
    if (feature.kind === 'shift') pose[2] = 4 * out(feature.name) - along(featureRow(feature), pose);
  return pose;
}

function deedOf(setup: Setup, pose: readonly number[], noise: () => number): Deed {
  const taken = { round: 1, setup: setup.id, record: { push: 'climbed' } } as const;
  const typed = (value: number) => ({ typed: value.toFixed(1), value: Number(value.toFixed(1)) });
  if (setup.kind === 'sweep') {
    const rows = sweepRows({ ...setup, points_mm: sweepStops(setup), readings_um: [] });
    const readings = rows.map((row) => typed(along(row, pose) + 14 + 0.5 * noise()));
    return { kind: 'sweep taken', ...taken, readings };
  }
  if (setup.kind === 'level')
    return { kind: 'level read', ...taken, reading: typed(along(levelRow(setup), pose)) };
  return { kind: 'height read', ...taken, reading: typed(along(heightRow(setup), pose)) };
}

describe.each(templates)('$title', (template) => {
  it('made from the template and measured far out, gets passes that settle it into every band', async () => {
    const plan = plannedJob(template, {}, 'worn');
    const pose = wornPose(plan);
    const random = seededRandom(20);
    const deeds: Deed[] = [
      { kind: 'job made', plan },
      ...plan.setups.map((setup) => deedOf(setup, pose, () => random.normal())),
    ];
    const entries = deeds.map(
      (deed, k): Entry => ({ ...deed, id: `e${k}`, seq: k + 1, at: '2026-01-05T08:00:00Z' }),
    );
    const input = steerInput(foldJob(entries));
    const answer = await steer(input, solveWithHighs);
    if (!answer.ok) throw new Error(answer.text);
    expect(answer.plan.action).toBe('scrape');
    const settled = settling(plan.slide);
    const depths = answer.plan.zones.map((zone) => {
      const pad = plan.slide.pads.find((one) => one.name === zone.pad)!;
      return zone.passes * plan.passes[pad.material]!.um;
    });
    const moved = settledPose(settled, depths);
    for (const target of plan.targets) {
      const row = featureRow(plan.features.find((feature) => feature.name === target.feature)!);
      const before = answer.estimate.features.find((feature) => feature.name === target.feature)!.value;
      // What the set-ups were made to see is what is estimated, within the readings' noise and rounding.
      expect(Math.abs(before - along(row, pose)), target.feature).toBeLessThan(10);
      const after = before + along(row, moved);
      expect(after, target.feature).toBeGreaterThanOrEqual(target.low - 1e-6);
      expect(after, target.feature).toBeLessThanOrEqual(target.high + 1e-6);
    }
    for (const zone of answer.plan.zones) expect(zone.depth_um).toBeGreaterThanOrEqual(0);
  });
});
