import { describe, expect, it } from 'vitest';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { readHours } from './hours-typed.ts';
import { order } from './order.ts';
import {
  basisWords,
  forecastSentence,
  makesWords,
  proofWith,
  standsOnIt,
  statusWord,
  stepHours,
} from './order-words.ts';

const plainText = (text: string) => text.replace(/[\u00a0\u2009]/g, ' ');
const lathe = readWholeMachines().find((one) => one.id === 'engine-lathe')!;
const step = (answer: ReturnType<typeof order>, id: string) => answer.steps.find((one) => one.id === id)!;

describe('hours as typed', () => {
  it.each([
    ['2.5', 2.5],
    ['2,5 h', 2.5],
    ['2:30', 2.5],
    ['2 h 30 min', 2.5],
    ['45 min', 0.75],
    ['0', 0],
  ])('%s', (text, hours) => expect(readHours(text)).toMatchObject({ is: 'read', hours }));
  it.each(['two', '-3', '2:75', '20000'])('%s is refused', (text) => {
    const read = readHours(text);
    expect(read.is).toBe('wrong');
    if (read.is === 'wrong') expect(read.why).toMatch(/expected|Write/);
  });
  it('nothing is nothing', () => expect(readHours('  ')).toEqual({ is: 'empty' }));
});

describe('an order of work in words', () => {
  it('says what is spent and to go, and where the pace comes from', () => {
    const before = forecastSentence(order(lathe, []));
    expect(before).toContain('Usual hours; your own pace is learned from the hours you write.');
    const after = plainText(
      forecastSentence(
        order(lathe, [
          { step: 'survey', what: 'done', hours: 8 },
          { step: 'support', what: 'done', hours: 6 },
        ]),
      ),
    );
    expect(after).toMatch(
      /^14 h spent, \d+ h to go \(\d+ to \d+\)\. You take 1\.0 times the usual hours, learned from 2 steps\.$/,
    );
  });

  it('a step is ready, under way, stands, waits, or is to be re-proven', () => {
    const answer = order(lathe, [
      { step: 'survey', what: 'done' },
      { step: 'support', what: 'begun' },
    ]);
    expect(['survey', 'support', 'bed-datum'].map((id) => statusWord(step(answer, id)))).toEqual([
      'stands',
      'under way',
      'waits',
    ]);
    expect(plainText(stepHours(step(answer, 'support')))).toBe('6 h to go (2 to 19)');
    // 6 h, sd 6·hypot(0.4, 0.5) = 3.84: sqrt(ln(1 + 0.41)) = 0.586; 6·e^±1.172 is 1.86 and 19.4.
    const again = order(
      lathe,
      ['survey', 'support', 'bed-datum', 'support'].map((one) => ({ step: one, what: 'done' as const })),
    );
    expect(statusWord(step(again, 'bed-datum'))).toBe('to be re-proven');
  });

  it('says how a proof is measured without the command line’s words', () => {
    expect(proofWith('level across; verb line')).toBe('level across');
    expect(proofWith('push and pull with an indicator; sums gib, gib-play')).toBe(
      'push and pull with an indicator',
    );
    expect(proofWith('square swept on both sides')).toBe('square swept on both sides');
    const shown = lathe.steps.flatMap((one) => one.proofs.map((proof) => proofWith(proof.with)));
    expect(shown.filter((text) => /\b(verb|sums) /.test(text))).toEqual([]);
  });

  it('names the faces a step makes and is made from, and what stands on it', () => {
    expect(makesWords(lathe, 'bed-flat')).toEqual(['bed: carriage flat']);
    expect(basisWords(lathe, 'support')[1]).toEqual({
      from: 'bed: rack seat and bracket faces',
      why: expect.stringContaining('trusted as found: machined in one setting with the ways'),
    });
    expect(standsOnIt(lathe, 'bed-v')).toContain('Saddle underside to the bed');
    expect(standsOnIt(lathe, 'cutting')).toEqual([]);
  });
});
