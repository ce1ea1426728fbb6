import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { taskInput } from '../../core/practice/loop.ts';
import { practiceMachine } from '../../core/practice/machine.ts';
import { type PracticeRecord, practiceTask } from '../../core/practice/record.ts';
import { practiceTruth } from '../../core/practice/replay.ts';
import { steer } from '../steer.ts';
import { practicePlan } from './practice-plan.ts';
import { slipSentence, toldAndTrue } from './truth-words.ts';

const record: PracticeRecord = { slide: 'V and flat', material: 'iron', level: 'usual', seed: 5, slips: [] };
const plan = practicePlan(record, 'Practice');
const machine = practiceMachine(practiceTask(record), record.seed);
const told = await steer(
  taskInput(practiceTask(record), [{ ...machine.measure(), print: machine.print() }]),
  solveWithHighs,
);
if (!told.ok) throw new Error(told.text);
const truth = { ...practiceTruth(record, []).rounds[0]!, round: 1 };

/** All kinds of space made one. */
const plain = (text: string | undefined): string => (text ?? '').replace(/\s/g, ' ');

describe('told and true', () => {
  it('has each feature in the unit the shop says it in, then the blue, then what a pass takes', () => {
    const rows = toldAndTrue(plan, told, truth, 'metric');
    expect(rows.map((row) => [row.name, plain(row.unit)])).toEqual([
      ['facing', 'µm in 300 mm'],
      ['level across', 'µm in 300 mm'],
      ['level along', 'µm in 300 mm'],
      ['bears on', '% of the pads'],
      ['a pass takes, iron', 'µm'],
    ]);
    // 1 µrad is 0.3 µm over 300 mm.
    const facing = Number(rows[0]!.true.replace('−', '-'));
    expect(Math.abs(facing - truth.features.facing! * 0.3)).toBeLessThan(0.051);
    expect(Number(rows[4]!.true)).toBeCloseTo(truth.pass_um.iron!, 1);
  });
  it('says how far outside its doubt something was told', () => {
    const { value, sd } = told.estimate.features[0]!;
    const far = { ...truth, features: { ...truth.features, facing: value + 2 * sd + 10 } };
    expect(plain(toldAndTrue(plan, told, far, 'metric')[0]!.holds)).toBe(
      '3.0 µm in 300 mm outside the doubt',
    );
    const near = { ...truth, features: { ...truth.features, facing: value + 1.9 * sd } };
    expect(toldAndTrue(plan, told, near, 'metric')[0]!.holds).toBe('inside the doubt');
  });
  it('speaks inches to who works in inches', () => {
    const rows = toldAndTrue(plan, told, truth, 'inch');
    expect(rows[0]!.unit).toContain('12');
    expect(rows[4]!.unit).toBe('thou');
    expect(Number(rows[4]!.true)).toBeCloseTo(truth.pass_um.iron! / 25.4, 1);
  });
});

describe('what went wrong on purpose', () => {
  const said = (slip: Parameters<typeof slipSentence>[0]) => plain(slipSentence(slip, plan, 'metric'));
  it('is said by round and by what stands there', () => {
    expect(said({ kind: 'sweep reversed', round: 2 })).toBe(
      'In round 2 the sweep was read with every sign turned.',
    );
    expect(said({ kind: 'reference moved', round: 1, by_urad: -40 })).toBe(
      'After round 1 the square moved by −12 µm in 300 mm.',
    );
    expect(said({ kind: 'zone missed', round: 3, pad: 'flat', zone: 4 })).toBe(
      'In round 3 zone 5 of the flat, counted from the headstock end, was left out.',
    );
    expect(said({ kind: 'pass too many', round: 1, pad: 'rear flank' })).toBe(
      'In round 1 the rear flank got a pass more than was ticked off.',
    );
  });
});
