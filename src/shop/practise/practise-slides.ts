import type { Solve } from '../../core/plan/program.ts';
import { type SlipKind, slipKinds } from '../../core/practice/record.ts';
import { practiceSlides } from '../../core/practice/slides.ts';
import { type PractiseAsk, type PractiseReport, practise } from './practise.ts';

/** One slide's figures: nothing entered wrongly, and with each mistake made on purpose when that was asked. */
export interface SlidePractised {
  readonly clean: PractiseReport;
  readonly slips: readonly PractiseReport[];
}

/** A mistake made in one of the first three rounds is flagged by the fifth or not at all. */
const roundsForSlips = 6;

/**
 * Practises on every practice slide.
 * @param slips  machines a slide for each kind of mistake, 0 for none
 */
export async function practiseSlides(
  ask: Omit<PractiseAsk, 'slide' | 'fault'>,
  slips: number,
  solve: Solve,
  each: (done: SlidePractised) => void = () => undefined,
): Promise<SlidePractised[]> {
  const all: SlidePractised[] = [];
  for (const slide of Object.keys(practiceSlides)) {
    const clean = await practise({ ...ask, slide }, solve);
    const made: PractiseReport[] = [];
    for (const fault of slips > 0 ? slipKinds : ([] as readonly SlipKind[]))
      made.push(
        await practise(
          { ...ask, slide, fault, machines: slips, most_rounds: Math.min(ask.most_rounds, roundsForSlips) },
          solve,
        ),
      );
    const done = { clean, slips: made };
    all.push(done);
    each(done);
  }
  return all;
}
