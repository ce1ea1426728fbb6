import { cosineLine, lever } from './cosine.ts';
import {
  dovetailAngle,
  dovetailFemale,
  dovetailFemaleWidth,
  dovetailHeight,
  dovetailMale,
  dovetailMaleWidth,
} from './dovetail.ts';
import { liner, lostHeight, stack } from './heights.ts';
import { facing, headstockTaper, tailstockOut, tailstockTaper } from './lathe.ts';
import { angleHeight, heightAngle, levelHeight } from './level.ts';
import { barTurned, edgeTurned, levelTurned, parallels, squareTwoSides, threeSquares } from './reversals.ts';
import { barBetweenCentres, bestSupports, indicatorArm, straightedgeSag, testBarSag } from './sag.ts';
import { sineBar, sineBarAngle } from './sine-bar.ts';
import type { Sum } from './sum.ts';
import { gibMove, gibPlay, taperAngle } from './taper.ts';
import { vAngle, vDrop, vOverRoll } from './v-way.ts';
import { bow, grow } from './warmth.ts';

/** Every sum, in the order it is listed: command line, screen and contract read this one list. */
export const sums: readonly Sum[] = [
  dovetailMale,
  dovetailMaleWidth,
  dovetailFemale,
  dovetailFemaleWidth,
  dovetailAngle,
  dovetailHeight,
  vOverRoll,
  vAngle,
  vDrop,
  sineBar,
  sineBarAngle,
  taperAngle,
  gibMove,
  gibPlay,
  levelHeight,
  angleHeight,
  heightAngle,
  lever,
  cosineLine,
  straightedgeSag,
  bestSupports,
  testBarSag,
  barBetweenCentres,
  indicatorArm,
  bow,
  grow,
  facing,
  headstockTaper,
  tailstockTaper,
  tailstockOut,
  liner,
  lostHeight,
  stack,
  squareTwoSides,
  levelTurned,
  barTurned,
  edgeTurned,
  parallels,
  threeSquares,
];

const byName = new Map(sums.map((one) => [one.name, one]));

/** The sum of this name, if there is one. */
export const sumNamed = (name: string): Sum | undefined => byName.get(name);
