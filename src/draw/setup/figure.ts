import type { Slide } from '../../core/body/slide.ts';
import { dot, length, subtract, type Vector } from '../../core/body/vector.ts';
import type { PlaceWords, Setup, SweepSetup } from '../../core/ledger/setup.ts';
import { leastText } from '../palette.ts';

/** Words beside a drawing, in the shown unit. */
export interface SetupWords {
  /** What it rides on and touches, in a word or two: "cross slide", "the square". */
  readonly rides?: string;
  readonly touches?: string;
  /** First and last place of a sweep: "0 mm", "200 mm"; and between: "stop each 20 mm". */
  readonly first?: string;
  readonly last?: string;
  readonly travel?: string;
}

/** What a set-up's drawing is made from. */
export interface SetupFigure<S extends Setup = Setup> {
  readonly setup: S;
  readonly slide: Slide;
  readonly places: PlaceWords;
  /** px; from 560 on it is drawn for arm's length, with more words. */
  readonly width: number;
  readonly words?: SetupWords;
}

/** How large a set-up is drawn: 1 on a phone. */
export interface SetupScale {
  readonly by: number;
  readonly text: number;
  readonly isWide: boolean;
}

export function setupScale(width: number): SetupScale {
  const isWide = width >= 560;
  return { by: Math.min(Math.max(width / 358, 0.9), 1.7), text: isWide ? 17 : leastText, isWide };
}

/** First and last place as told, or in mm. */
export function placeTexts(figure: SetupFigure<SweepSetup>): { first: string; last: string } {
  const run: Vector = subtract(figure.setup.to_mm, figure.setup.from_mm);
  return {
    first: figure.words?.first ?? '0 mm',
    last: figure.words?.last ?? `${Math.round(length(run) * 10) / 10} mm`,
  };
}

/** Along which way a vector mostly points, against another: +1 or −1. */
export const signAlong = (direction: Vector, axis: Vector): 1 | -1 => (dot(direction, axis) < 0 ? -1 : 1);
