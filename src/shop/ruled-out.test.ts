import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jobFile } from '../contract/job-file.ts';
import { estimateSlide } from '../core/estimate/estimate-slide.ts';
import type { Entry } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import { repeatName, steerInput } from '../core/ledger/steer-input.ts';
import { alarmState } from './bench/alarm-state.ts';

const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
// In round 3 somebody writes the square's sweep with every sign turned.
const swept = demo.entries.findLast((entry) => entry.kind === 'sweep taken' && entry.round === 3)!;
const until = demo.entries.findIndex((entry) => entry.kind === 'round closed' && entry.round === 3);
const reversed = demo.entries
  .slice(0, until)
  .map(
    (entry): Entry =>
      entry.id === swept.id && entry.kind === 'sweep taken'
        ? { ...entry, readings: entry.readings.map((one) => ({ ...one, value: -one.value })) }
        : entry,
  );
const settled = (cause: string, answer: 'no' | 'cannot tell'): Entry => ({
  id: `answer-${cause}`,
  seq: until + 1,
  at: '2026-01-01T00:00:00.000Z',
  kind: 'cause settled',
  round: 3,
  cause,
  answer,
});
const alarmOf = (entries: readonly Entry[]) => estimateSlide(steerInput(foldJob(entries))).alarm;

describe('a cause that was looked for at the metal', () => {
  const alarm = alarmOf(reversed)!;
  const ask = alarmState(alarm, []).ask!;
  const first = `${ask.cause.kind}: ${ask.cause.kind === 'sweep reversed' ? ask.cause.sweep : ''}, round 3`;

  it('is asked about when the signs of a sweep were turned', () => {
    expect(first).toBe(`sweep reversed: ${sweepName()}, round 3`);
  });

  it('and was not so is weighed no more, and the estimate goes on without it', () => {
    const denied = [...reversed, settled(first, 'no')];
    const input = steerInput(foldJob(denied));
    expect(input.rounds.at(-1)!.ruled_out).toEqual([first]);
    const after = estimateSlide(input);
    expect(after.alarm!.causes.map((found) => found.cause)).not.toContainEqual(ask.cause);
    const before = estimateSlide(steerInput(foldJob(reversed)));
    const facing = (one: typeof after) => one.features.find((feature) => feature.name === alarm.feature)!;
    expect(facing(after)).not.toEqual(facing(before));
  });

  it('and could not be told stays in the running', () => {
    const unsure = [...reversed, settled(first, 'cannot tell')];
    expect(alarmOf(unsure)).toEqual(alarm);
  });
});

function sweepName(): string {
  const made = demo.entries.find((entry) => entry.kind === 'job made')!;
  if (made.kind !== 'job made' || swept.kind !== 'sweep taken') throw new Error('not the demo');
  return repeatName(made.plan.setups.find((setup) => setup.id === swept.setup)!.name, swept.repeat ?? 0);
}
