import { useCallback, useEffect, useRef, useState } from 'react';
import type { SumQuestion } from '../../../contract/sums.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { AlongInput } from '../../../core/survey/along.ts';
import type { LineInput } from '../../../core/survey/line-input.ts';
import type { PlateInput } from '../../../core/survey/plate-input.ts';
import type { SumAnswer } from '../../../shop/sums/sum-answer.ts';
import type { AlongAnswer } from '../../../shop/survey/along.ts';
import type { LineAnswer } from '../../../shop/survey/line.ts';
import type { PlateAnswer } from '../../../shop/survey/plate.ts';
// Built as a plain script: phones of 2021 know no thread that is a module.
import DrawsThread from './worker.ts?worker';

/** What is to be drawn anew on a thread of its own. */
export type DrawAsk =
  | { readonly what: 'line'; readonly input: LineInput }
  | { readonly what: 'along'; readonly input: AlongInput }
  | { readonly what: 'plate'; readonly input: PlateInput }
  | { readonly what: 'sum'; readonly question: SumQuestion; readonly system: UnitSystem };

export type DrawTold =
  | { readonly ok: true; readonly answer: unknown }
  | { readonly ok: false; readonly why: string };

interface Answers {
  readonly line: LineAnswer;
  readonly along: AlongAnswer;
  readonly plate: PlateAnswer;
  readonly sum: SumAnswer;
}

/** How far it is; what was drawn holds for the ask it was drawn for, and for no other. */
export type DrawState<T> =
  | { readonly is: 'not asked' | 'drawing' }
  | { readonly is: 'drawn'; readonly answer: T }
  | { readonly is: 'failed'; readonly why: string };

/**
 * Draws on a thread of its own; the page never waits for it.
 * @param key  says the ask: when it changes, what was drawn is dropped and a thread still at it is ended
 */
export function useDraws<W extends DrawAsk['what']>(
  key: string,
): readonly [DrawState<Answers[W]>, (ask: DrawAsk & { readonly what: W }) => void, () => void] {
  const [held, hold] = useState<{ readonly key: string; readonly state: DrawState<Answers[W]> }>();
  const thread = useRef<Worker>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another ask ends the thread of the one before
  useEffect(() => () => thread.current?.terminate(), [key]);
  const ask = useCallback(
    (what: DrawAsk & { readonly what: W }) => {
      thread.current?.terminate();
      const worker = new DrawsThread();
      thread.current = worker;
      const told = (state: DrawState<Answers[W]>) => {
        hold({ key, state });
        worker.terminate();
      };
      worker.onmessage = ({ data }: MessageEvent<DrawTold>) =>
        told(data.ok ? { is: 'drawn', answer: data.answer as Answers[W] } : { is: 'failed', why: data.why });
      worker.onerror = () =>
        told({
          is: 'failed',
          why: 'the thread that draws could not be started; the shop may be out of reach',
        });
      hold({ key, state: { is: 'drawing' } });
      worker.postMessage(what);
    },
    [key],
  );
  const stop = useCallback(() => {
    thread.current?.terminate();
    hold(undefined);
  }, []);
  return [held?.key === key ? held.state : { is: 'not asked' }, ask, stop];
}
