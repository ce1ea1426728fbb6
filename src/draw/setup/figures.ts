import type { Setup } from '../../core/ledger/setup.ts';
import type { Shape } from '../shape.ts';
import type { SetupFigure } from './figure.ts';
import { genericSetup } from './generic.ts';
import { squareCrossSweep } from './square-cross-sweep.ts';

/** A figure for a set-up; one whose kind it does not draw is left to the generic one. */
type Drawn = (figure: SetupFigure<Setup>) => Shape;

/** The set-ups' figures by the name a set-up's `drawing` gives. A level's and a height's own data tell all that differs. */
export const setupFigures: Readonly<Record<string, Drawn>> = {
  'square-cross-sweep': (figure) =>
    figure.setup.kind === 'sweep'
      ? squareCrossSweep({ ...figure, setup: figure.setup })
      : genericSetup(figure),
  'level-across': genericSetup,
  'level-along': genericSetup,
  'height-gauge': genericSetup,
  generic: genericSetup,
};

/** The drawing of a set-up: what rides, what is touched, which way is plus, where it travels. */
export const setupDrawing = (figure: SetupFigure<Setup>): Shape =>
  (Object.hasOwn(setupFigures, figure.setup.drawing) ? setupFigures[figure.setup.drawing]! : genericSetup)(
    figure,
  );
