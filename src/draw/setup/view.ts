import type { Slide } from '../../core/body/slide.ts';
import { dot, type Vector } from '../../core/body/vector.ts';
import type { PlaceWords } from '../../core/ledger/setup.ts';
import { benchWords, onWays } from '../bench-side.ts';
import type { Spot } from '../line.ts';

/** From where a set-up is drawn: never in perspective. */
export type ViewName = 'above' | 'side' | 'end';

/** Directions of the slide's frame that point right and up on the sheet, and what stands at the sheet's edges. */
export interface View {
  readonly name: ViewName;
  readonly right: Vector;
  readonly up: Vector;
  readonly seen: string;
  readonly leftWords: string;
  readonly rightWords: string;
  readonly topWords: string;
  readonly bottomWords: string;
}

/**
 *     above:  right = travel, up = across            side (from the near side):  right = travel, up = out
 *     end (from the plus end of the travel):         right = across, up = out
 */
export function viewFrom(name: ViewName, slide: Slide, places: PlaceWords): View {
  const side = onWays(slide);
  const words = benchWords(side, places);
  switch (name) {
    case 'above':
      return {
        name,
        right: side.right,
        up: side.away,
        seen: 'seen from above',
        leftWords: words.left,
        rightWords: words.right,
        topWords: words.far,
        bottomWords: words.near,
      };
    case 'side':
      return {
        name,
        right: side.right,
        up: side.up,
        seen: `seen from the ${words.near}`,
        leftWords: words.left,
        rightWords: words.right,
        topWords: '',
        bottomWords: '',
      };
    case 'end':
      return {
        name,
        right: side.away,
        up: side.up,
        seen: `seen from the ${words.right}`,
        leftWords: words.near,
        rightWords: words.far,
        topWords: '',
        bottomWords: '',
      };
  }
}

/** A direction of the slide's frame as it lies on the sheet: right and down, not scaled. */
export const onSheet = (view: View, direction: Vector): Spot => [
  dot(view.right, direction),
  -dot(view.up, direction),
];

/** The view that shows both directions: the one whose line of sight they have least of. */
export function viewShowing(slide: Slide, ...directions: readonly Vector[]): ViewName {
  const side = onWays(slide);
  const hidden = (sight: Vector): number =>
    directions.reduce((sum, direction) => sum + Math.abs(dot(sight, direction)), 0);
  const views: readonly (readonly [ViewName, number])[] = [
    ['above', hidden(side.up)],
    ['end', hidden(side.right)],
    ['side', hidden(side.away)],
  ];
  return views.reduce((best, view) => (view[1] < best[1] - 1e-9 ? view : best))[0];
}

/** Length 1 on the sheet; a direction that does not show there stays 0. */
export function unitSpot(spot: Spot): Spot {
  const size = Math.hypot(spot[0], spot[1]);
  return size > 1e-9 ? [spot[0] / size, spot[1] / size] : [0, 0];
}
