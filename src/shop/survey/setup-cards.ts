import type { SurveyCardName } from '../../core/ledger/survey-card.ts';
import type { SurveyHow } from '../../core/ledger/survey-record.ts';
import type { Subject } from './subjects.ts';

/** A survey's set-up in words: what stands where, which way it moves, what plus is, and how to be sure of the sign. */
export interface SurveyCard {
  readonly drawing: SurveyCardName;
  readonly question: string;
  /** What is put where, and what it is moved along; the numbers are those of the drawing. */
  readonly put: string;
  readonly move: string;
  readonly plus: string;
  /** What a climbing and a falling number say of the way. */
  readonly climbs: string;
  readonly falls: string;
  /** A look that shows the sign before a reading counts on it. */
  readonly check: string;
  readonly caution?: string;
}

const paperUnderEnd =
  'Slip a strip of paper under the end ahead: the number must climb. If it falls, turn every sign.';

const stepped = (
  drawing: SurveyCardName,
  instrument: string,
  ahead: string,
): Omit<SurveyCard, 'question'> => ({
  drawing,
  put: `${instrument} A step is from the middle of one foot to the middle of the other.`,
  move: 'Step it foot to foot from the headstock end: each foot goes where the other stood.',
  plus: ahead,
  climbs: 'the way rises ahead',
  falls: 'the way falls ahead',
  check: paperUnderEnd,
});

const edge = (
  direction: 'vertical' | 'horizontal',
  drawing: SurveyCardName,
): Omit<SurveyCard, 'question'> => {
  const isUp = direction === 'vertical';
  return {
    drawing,
    put: isUp
      ? 'The indicator stands on the way, its plunger up on the straightedge. Blocks carry the straightedge 2/9 of its length from its ends, where it sags least.'
      : 'The indicator is guided by the way, its plunger to the back on the straightedge, which stands on edge and stays put.',
    move: 'Carry the indicator along, stop by stop from the headstock end. Set the straightedge so that both ends read the same.',
    plus: `The plunger goes in: the way stands ${isUp ? 'proud' : 'toward the back'}.`,
    climbs: isUp ? 'the way rises' : 'the way goes to the back',
    falls: isUp ? 'the way falls' : 'the way comes to you',
    check: 'Push the plunger with a finger: the number must climb. If it falls, turn every sign.',
    ...(isUp
      ? {
          caution:
            'Sag bends it toward you both ways up: turning over does not take it out. The sum “support points” says how much.',
        }
      : {}),
  };
};

const lineCards: Readonly<
  Record<
    'level' | 'autocollimator' | 'straightedge' | 'offsets',
    (direction: 'vertical' | 'horizontal') => Omit<SurveyCard, 'question'>
  >
> = {
  level: () =>
    stepped(
      'level steps',
      'The level stands on two feet along the way.',
      'The end ahead, toward the tailstock, is high.',
    ),
  autocollimator: (direction) => ({
    ...stepped(
      direction === 'vertical' ? 'mirror steps, up and down' : 'mirror steps, sideways',
      'The autocollimator stands still at the headstock end; its mirror stands on a foot on the way.',
      direction === 'vertical'
        ? 'The end ahead, toward the tailstock, is high.'
        : 'The end ahead, toward the tailstock, lies to the back.',
    ),
    ...(direction === 'horizontal'
      ? {
          climbs: 'the way goes to the back ahead',
          falls: 'the way comes to you ahead',
          check:
            'Turn the end ahead a hair to the back by hand: the number must climb. If it falls, turn every sign.',
        }
      : {}),
  }),
  straightedge: (direction) =>
    edge(direction, direction === 'vertical' ? 'under a straightedge' : 'beside a straightedge'),
  offsets: (direction) => ({
    drawing: direction === 'vertical' ? 'offsets, up and down' : 'offsets, sideways',
    put:
      direction === 'vertical'
        ? 'A scale or a target is carried on the way; the beam is set to read the same at both ends.'
        : 'A scale or a microscope is carried on the way; the wire or beam is set to read the same at both ends.',
    move: 'Carry it along, stop by stop from the headstock end; the wire or beam is not touched.',
    plus:
      direction === 'vertical'
        ? 'The way stands proud: what is carried has risen against the beam.'
        : 'The way lies to the back: what is carried has gone to the back of the wire.',
    climbs: direction === 'vertical' ? 'the way rises' : 'the way goes to the back',
    falls: direction === 'vertical' ? 'the way falls' : 'the way comes to you',
    check:
      direction === 'vertical'
        ? 'Slip a strip of paper under the target: the number must climb. If it falls, turn every sign.'
        : 'Push what is carried a hair to the back: the number must climb. If it falls, turn every sign.',
    ...(direction === 'vertical'
      ? { caution: 'A wire sags in the middle: for up and down use a beam, or take the sag of the wire out.' }
      : { caution: 'A taut wire whips when it parts: anchor it well and keep your face out of its line.' }),
  }),
};

const others: Readonly<
  Record<'bridge level' | 'parallel' | 'heights' | 'level grid' | 'eight lines', SurveyCard>
> = {
  'bridge level': {
    drawing: 'level on a bridge',
    question: 'Do the ways twist against each other?',
    put: 'A bridge stands on both ways, the level across it. Always the same feet on the same ways.',
    move: 'Move the bridge along, stop by stop from the headstock end. The level stays on the bridge and is never turned.',
    plus: 'The back is high.',
    climbs: 'the back rises along the way',
    falls: 'the back falls along the way',
    check:
      'Slip a strip of paper under the bridge at the back: the number must climb. If it falls, turn every sign.',
  },
  parallel: {
    drawing: 'way to way',
    question: 'Does one way run parallel to the other?',
    put: 'The indicator rides on the way that guides; its plunger touches the other way.',
    move: 'Carry it along, stop by stop from the headstock end.',
    plus: 'The plunger goes in: the touched way comes nearer.',
    climbs: 'the ways close on each other',
    falls: 'the ways part',
    check: 'Push the plunger with a finger: the number must climb. If it falls, turn every sign.',
  },
  heights: {
    drawing: 'grid of heights',
    question: 'Is the face flat?',
    put: 'A gauge reads the height at each crossing of the grid, from one surface that is not moved.',
    move: 'Row by row, the row nearest you first, each from the left as you stand.',
    plus: 'The face stands proud.',
    climbs: 'the face rises',
    falls: 'the face falls',
    check: 'Slip a strip of paper under the tip: the number must climb. If it falls, turn every sign.',
  },
  'level grid': {
    drawing: 'level along a grid',
    question: 'Is the face flat?',
    put: 'The level stands on two feet; a step is from the middle of one to the middle of the other.',
    move: 'Along every row from the left as you stand, then along every column away from you, foot to foot.',
    plus: 'The end ahead is high.',
    climbs: 'the face rises ahead',
    falls: 'the face falls ahead',
    check: paperUnderEnd,
  },
  'eight lines': {
    drawing: 'eight lines',
    question: 'Is the face flat?',
    put: 'Level or mirror on two feet. Mark the lines on the face first; both middle lines and both diagonals must meet in the middle.',
    move: 'Walk the lines in the order of their numbers, foot to foot, each the way its arrow points.',
    plus: 'The end ahead is high.',
    climbs: 'the face rises ahead',
    falls: 'the face falls ahead',
    check: paperUnderEnd,
  },
};

/** The card of a survey as it is taken. */
export function surveyCard(how: SurveyHow, kind: Subject['kind']): SurveyCard {
  if (how in others) return others[how as keyof typeof others];
  const direction = kind === 'horizontal' ? 'horizontal' : 'vertical';
  return {
    ...lineCards[how as keyof typeof lineCards](direction),
    question:
      direction === 'vertical' ? 'Is the way straight, up and down?' : 'Is the way straight, sideways?',
  };
}

/** The card of a straightedge's second run: what changes, and which sign the same way has then. */
export const edgeTurnedCard = (kind: Subject['kind']): SurveyCard => {
  const isUp = kind !== 'horizontal';
  return {
    drawing: isUp ? 'straightedge turned, up and down' : 'straightedge turned, sideways',
    question: 'What is the straightedge’s own share?',
    put: 'Turn the straightedge over about its length; its ends stay where they are. Its face now looks away from the way; a bracket brings the indicator round to it.',
    move: 'The same stops in the same order. The supports stay where they are.',
    plus: `The plunger comes out: the way stands ${isUp ? 'proud' : 'toward the back'}. An indicator that counts in as plus has every sign turned in this run.`,
    climbs: isUp ? 'the way rises' : 'the way goes to the back',
    falls: isUp ? 'the way falls' : 'the way comes to you',
    check: 'Slip a strip of paper under the indicator’s foot: what you write down must climb.',
  };
};

/** Cards of what is turned or tipped rather than surveyed. */
export const testCards: Readonly<Record<'square' | 'bar' | 'pivot' | 'rock', SurveyCard>> = {
  square: {
    drawing: 'square turned over',
    question: 'How much is the square, and how much the machine?',
    put: 'The square is set true by its foot. Sweep the blade, then turn the square over about its blade and set it true again.',
    move: 'Sweep the same stretch the same way, both times. The plunger points the same way too: the second time it touches the other edge of the blade, which must be parallel to the first.',
    plus: 'Far less near, plunger in. The same in both sweeps.',
    climbs: 'the far end comes nearer',
    falls: 'the far end goes away',
    check:
      'Push the plunger with a finger, both times: the number must climb. If you must sweep from the other side, turn the second sign.',
  },
  bar: {
    drawing: 'bar turned half round',
    question: 'Where does the spindle point, and how far is the bar out?',
    put: 'The bar sits in the cleaned taper. The indicator touches it near the spindle, then near its free end.',
    move: 'Read near and far, turn the spindle half round by hand, read near and far again. The bar is not taken out between.',
    plus: 'Far less near, plus as the plunger goes in.',
    climbs: 'the axis comes nearer',
    falls: 'the axis goes away',
    check: 'Push the plunger with a finger: the number must climb.',
    caution: 'Power locked out: the spindle is turned by hand only.',
  },
  pivot: {
    drawing: 'pivot test',
    question: 'Where does the part turn on its master?',
    put: 'The part lies on the blued master. Push one end sideways with a finger, gently.',
    move: 'Look where it stands still, and tell how far that is from the pushed end, as a share of the length.',
    plus: 'No sign: a share from 0 to 100 %.',
    climbs: 'a larger share: the far end, or both ends, carry most',
    falls: 'a smaller share: the middle, or the pushed end, carries most',
    check: 'Push the other end too: a part that bears evenly turns at 71 % from either end.',
  },
  rock: {
    drawing: 'rock test',
    question: 'Does the part rock?',
    put: 'The part lies on the master. Number its corners going round; an indicator stands over each in turn.',
    move: 'Tip it from one pair of opposite corners to the other, and read how far each corner moves.',
    plus: 'Sizes, no signs.',
    climbs: 'the pair that moves less is high',
    falls: 'no movement: no twist is seen',
    check: 'A corner that moves without being tipped has a chip under it: wipe and try again.',
  },
};
