import type { Slide } from '../../core/body/slide.ts';
import type { SurveyCardName } from '../../core/ledger/survey-card.ts';
import type { Shape } from '../shape.ts';
import { offOffsets, underEdge } from './along-edge.ts';
import type { CardFigure } from './stage.ts';
import { levelSteps, mirrorSteps } from './stepped.ts';
import { eightLineWalk, gridOfHeights, levelGrid } from './surface.ts';
import { barHalfTurn, hingeTest, rockTest, squareTurned } from './turning.ts';
import { bridgeLevel, wayToWay } from './two-ways.ts';

/** The drawings of a survey's set-ups, by name. */
const drawings: Readonly<Record<SurveyCardName, (figure: CardFigure, slide: Slide) => Shape>> = {
  'level steps': levelSteps,
  'mirror steps, up and down': (figure) => mirrorSteps(figure, 'vertical'),
  'mirror steps, sideways': (figure) => mirrorSteps(figure, 'horizontal'),
  'under a straightedge': (figure) => underEdge(figure, 'vertical', false),
  'beside a straightedge': (figure) => underEdge(figure, 'horizontal', false),
  'straightedge turned, up and down': (figure) => underEdge(figure, 'vertical', true),
  'straightedge turned, sideways': (figure) => underEdge(figure, 'horizontal', true),
  'offsets, up and down': (figure) => offOffsets(figure, 'vertical'),
  'offsets, sideways': (figure) => offOffsets(figure, 'horizontal'),
  'level on a bridge': bridgeLevel,
  'way to way': wayToWay,
  'grid of heights': gridOfHeights,
  'level along a grid': levelGrid,
  'eight lines': eightLineWalk,
  'square turned over': squareTurned,
  'bar turned half round': barHalfTurn,
  'pivot test': hingeTest,
  'rock test': rockTest,
};

/** The drawing of a survey's set-up: what stands where, which way it moves, which way is plus. */
export const surveyCardDrawing = (name: SurveyCardName, figure: CardFigure, slide: Slide): Shape =>
  drawings[name](figure, slide);
