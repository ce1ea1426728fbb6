import type { Spot } from '../line.ts';
import type { Shape } from '../shape.ts';
import {
  bentLine,
  block,
  body,
  box,
  dimension,
  edge,
  guide,
  letter,
  move,
  roll,
  support,
  word,
} from './pen.ts';

/** A bar bent to a line, its depth in px. */
const bentBar = (top: readonly Spot[], depth: number): Shape =>
  body([...top, ...[...top].reverse().map(([x, y]): Spot => [x, y + depth])]);

/** How a bar on its ends hangs, 1 at its middle. */
const hang = (t: number): number => 3.2 * (t - 2 * t ** 3 + t ** 4);

export function barOnTwo(): Shape[] {
  const top = bentLine([20, 66], [320, 66], (t) => 9 * hang(t) - 3 * Math.cos(2 * Math.PI * t));
  return [
    guide([20, 66], [320, 66]),
    bentBar(top, 40),
    support([86, 114]),
    support([254, 114]),
    ...dimension([20, 146], [86, 146], 's', 13),
    ...dimension([20, 32], [320, 32], 'L', -13),
    ...dimension([306, 68], [306, 106], 'h', 12),
    letter([170, 96], 'm'),
    letter([34, 84], 'e'),
    word([210, 160], 'bent far more than it is', 'middle'),
  ];
}

export function supportPoints(): Shape[] {
  const at = [20 + 300 * 0.2113, 20 + 300 * 0.2203, 20 + 300 * 0.2231] as const;
  return [
    block(20, 50, 300, 40),
    support([at[0], 91]),
    support([340 - at[0], 91]),
    ...dimension([20, 34], [320, 34], 'L', -13),
    ...dimension([20, 122], [at[0], 122], 's₁', 13),
    ...dimension([20, 160], [at[2], 160], 's₂, s₃', 13),
    letter([170, 71], 'r₁, r₂, r₃'),
    ...dimension([304, 50], [304, 90], 'h', 13),
  ];
}

export function testBarHeld(): Shape[] {
  const top = bentLine([70, 60], [284, 60], (t) => (26 * (t * t * (6 - 4 * t + t * t))) / 3);
  return [
    block(10, 34, 60, 92),
    guide([70, 75], [326, 75]),
    bentBar(top, 30),
    ...dimension([70, 24], [284, 24], 'L', 13),
    ...dimension([302, 75], [302, 101], 'y', -13),
    ...dimension([96, 60], [96, 90], 'D', -13),
    word([210, 150], 'bent far more than it is'),
  ];
}

export function testBarBetween(): Shape[] {
  const top = bentLine([40, 62], [300, 62], (t) => 24 * hang(t));
  return [
    body([
      [10, 62],
      [40, 77],
      [10, 92],
    ]),
    body([
      [330, 62],
      [300, 77],
      [330, 92],
    ]),
    guide([40, 77], [300, 77]),
    bentBar(top, 30),
    ...dimension([40, 30], [300, 30], 'L', 13),
    ...dimension([170, 77], [170, 101], 'y', -13),
    letter([84, 84], 'D'),
    word([170, 150], 'bent far more than it is'),
  ];
}

export function indicatorArm(): Shape[] {
  const top = bentLine([50, 50], [260, 50], (t) => (28 * (t * t * (3 - t))) / 2);
  return [
    block(20, 24, 30, 130),
    guide([50, 54], [300, 54]),
    bentBar(top, 8),
    roll([272, 84], 18),
    edge([272, 102], [272, 124], 2.6),
    letter([272, 84], 'M'),
    ...dimension([50, 26], [260, 26], 'L', -12),
    ...dimension([296, 54], [296, 84], 'y₁, y₂', -23),
    letter([110, 76], 'D'),
  ];
}

export function bow(): Shape[] {
  const top = bentLine([24, 84], [316, 84], (t) => -34 * 4 * t * (1 - t));
  return [
    guide([24, 84], [316, 84]),
    bentBar(top, 46),
    ...dimension([170, 84], [170, 51], 'd', 13),
    ...dimension([24, 154], [316, 154], 'L', 13),
    letter([40, 104], 'h'),
    word([60, 40], 'warmer: ΔT'),
    word([286, 144], 'cooler'),
  ];
}

export function growth(): Shape[] {
  return [
    block(24, 40, 262, 30),
    block(286, 40, 26, 30, 'var(--blue-wash, #d9e4f1)'),
    block(24, 90, 262, 24, 'var(--sheet, #fcfdfa)'),
    block(286, 90, 12, 24, 'var(--blue-wash, #d9e4f1)'),
    letter([155, 55], 'α'),
    letter([155, 102], 'β'),
    ...dimension([24, 140], [286, 140], 'L', 13),
    ...move([286, 28], [312, 28], 'g'),
    ...dimension([298, 128], [312, 128], 'a', 13),
  ];
}

export function facing(): Shape[] {
  const rim = 36;
  return [
    block(10, 60, 40, 60),
    body([
      [50, 20],
      [230, 20],
      [230, 24],
      [214, 90],
      [230, 156],
      [230, 160],
      [50, 160],
    ]),
    guide([10, 90], [box.width - 10, 90]),
    guide([230, 10], [230, 172]),
    ...dimension([80, 20], [80, 160], 'D', -14),
    ...dimension([214, 90], [230, 90], '', 13),
    letter([246, 104], 'f'),
    body([
      [238, rim - 6],
      [270, rim - 14],
      [270, rim + 14],
    ]),
    ...move([290, 40], [272, 86], 'ε'),
    word([286, 140], 'far too deep'),
  ];
}

export function headstockTaper(): Shape[] {
  return [
    block(10, 40, 50, 110),
    body([
      [60, 62],
      [300, 86],
      [300, 122],
      [60, 130],
    ]),
    guide([60, 96], [326, 96]),
    edge([60, 96], [320, 106], 1.6),
    ...dimension([90, 24], [280, 24], 'l', 13),
    letter([326, 112], 'φ'),
    ...move([300, 168], [300, 144], ''),
    word([238, 166], 'tool'),
    letter([76, 142], 'd'),
  ];
}

export function tailstockTaper(): Shape[] {
  return [
    body([
      [10, 80],
      [40, 95],
      [10, 110],
    ]),
    body([
      [332, 92],
      [300, 107],
      [332, 122],
    ]),
    body([
      [40, 74],
      [300, 90],
      [300, 118],
      [40, 116],
    ]),
    guide([40, 95], [332, 95]),
    ...dimension([40, 26], [300, 26], 'L', -12),
    ...dimension([80, 50], [250, 50], 'l', -12),
    ...move([318, 66], [318, 92], ''),
    letter([332, 74], 't'),
    letter([60, 136], 'D₁'),
    letter([270, 136], 'D₂'),
    word([170, 166], 'tool side'),
  ];
}
