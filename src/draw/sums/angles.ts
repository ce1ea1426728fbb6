import type { Spot } from '../line.ts';
import type { Shape } from '../shape.ts';
import { angle, block, body, box, dial, dimension, edge, guide, letter, move, roll, word } from './pen.ts';

export function sineBar(): Shape[] {
  const low: Spot = [58, 138];
  const high: Spot = [262, 64];
  return [
    edge([14, 152], [box.width - 14, 152], 4),
    block(248, 78, 28, 74),
    body([
      [low[0] - 22, low[1] - 22],
      [high[0] + 8, high[1] - 32],
      [high[0] + 14, high[1] - 15],
      [low[0] - 16, low[1] - 5],
    ]),
    roll(low, 14),
    roll(high, 14),
    guide([low[0], 138], [190, 138]),
    ...angle(low, 96, 0, 20, 'A'),
    ...dimension([low[0] - 14, low[1] - 36], [high[0] - 14, high[1] - 36], 'L', -13),
    ...dimension([296, 152], [296, 78], 'h', 13),
  ];
}

export function taper(): Shape[] {
  return [
    body([
      [30, 46],
      [300, 72],
      [300, 108],
      [30, 134],
    ]),
    guide([30, 90], [320, 90]),
    word([165, 168], 'k: thickness over length'),
    ...angle([330, 75], 200, 174.5, 185, 'A'),
    guide([30, 134], [300, 134]),
    letter([248, 126], 'B'),
  ];
}

export function gib(): Shape[] {
  return [
    body([
      [20, 30],
      [320, 30],
      [320, 58],
      [20, 82],
    ]),
    body([
      [60, 82],
      [320, 61],
      [320, 96],
      [60, 96],
    ]),
    body([
      [20, 104],
      [320, 104],
      [320, 140],
      [20, 140],
    ]),
    letter([165, 44], 'slide'),
    letter([200, 86], 'k'),
    letter([38, 92], 'n, c'),
    letter([165, 122], 'way'),
    ...move([322, 168], [250, 168], 'm'),
    word([150, 168], 'the gib goes in'),
  ];
}

export function level(): Shape[] {
  const left: Spot = [50, 140];
  const right: Spot = [290, 112];
  const up = (at: Spot, by: number): Spot => [at[0] - by * 0.115, at[1] - by];
  return [
    edge([14, 146], [326, 108], 3),
    body([up(left, 16), up(right, 16), up(right, 60), up(left, 60)]),
    body([left, [left[0] + 24, left[1] - 3], up([left[0] + 24, left[1] - 3], 15), up(left, 16)]),
    body([[right[0] - 24, right[1] + 3], right, up(right, 16), up([right[0] - 24, right[1] + 3], 15)]),
    body(
      [
        [128, 84],
        [206, 75],
        [208, 93],
        [130, 102],
      ],
      'var(--sheet, #fcfdfa)',
    ),
    roll([174, 88], 7),
    letter([112, 92], 'n'),
    ...dimension([left[0], 172], [right[0], 172], 'L', 12),
    guide([left[0], 146], [326, 146]),
    ...dimension([316, 146], [316, 112], 'h', -13),
    ...angle([left[0], 146], 200, 0, 7, 'A'),
  ];
}

export function lever(): Shape[] {
  return [
    block(20, 140, 300, 30),
    roll([230, 52], 24),
    edge([230, 52], [238, 36], 2),
    edge([214, 70], [110, 134], 3),
    roll([110, 134], 5),
    guide([110, 140], [230, 140]),
    ...angle([110, 139], 70, 0, 31, 'A'),
    ...dimension([60, 140], [60, 96], 't', -12),
    letter([268, 52], 'r', 'start'),
  ];
}

export function cosineLine(): Shape[] {
  return [
    edge([30, 140], [310, 140], 4),
    word([170, 160], 'way of travel'),
    edge([30, 130], [310, 66], 3),
    word([150, 76], 'scale'),
    ...angle([30, 134], 150, 0, 12, 'A'),
    ...dimension([30, 176], [310, 176], 'L', 11),
    ...dimension([310, 140], [310, 66], 'e', 13),
  ];
}

export function squareTwoSides(): Shape[] {
  const square = (x: number, side: 1 | -1): Shape =>
    body([
      [x, 30],
      [x + side * 14, 30],
      [x + side * 14, 122],
      [x + side * 80, 122],
      [x + side * 80, 138],
      [x, 138],
    ]);
  return [
    edge([10, 140], [330, 140], 4),
    square(60, 1),
    ...dial([60, 56], [-1, 0]),
    letter([24, 92], 'r₁'),
    square(300, -1),
    ...dial([300, 56], [1, 0]),
    letter([318, 92], 'r₂'),
    ...dimension([170, 122], [170, 34], 'L', 13),
    word([100, 164], 'as it stands'),
    word([252, 164], 'turned over'),
  ];
}

export function levelTurned(): Shape[] {
  const one = (y: number, mark: number, symbol: string): Shape[] => [
    edge([24, y + 34], [316, y + 26], 3),
    body([
      [70, y],
      [270, y - 6],
      [271, y + 27],
      [71, y + 33],
    ]),
    roll([mark > 170 ? 92 : 250, y + 12], 5),
    roll([mark, y + 11], 8),
    letter([mark, y - 14], symbol),
  ];
  return [
    ...one(38, 192, 'a'),
    ...one(122, 160, 'b'),
    word([300, 176], 'turned end for end', 'end'),
    letter([326, 44], 'M'),
  ];
}

export function edgeTurned(): Shape[] {
  const one = (y: number, symbol: string, bulge: number): Shape[] => [
    body([
      [30, y + 22],
      [30, y],
      [100, y - bulge],
      [170, y - 1.5 * bulge],
      [240, y - bulge],
      [310, y],
      [310, y + 22],
    ]),
    ...dial([200, y - 1.3 * bulge], [0, -1]),
    letter([228, y - 34], symbol),
  ];
  return [...one(60, 'r₁', 6), ...one(154, 'r₂', -6), word([44, 104], 'S turns over, M stays', 'start')];
}

export function parallels(): Shape[] {
  return [
    edge([14, 158], [326, 148], 4),
    block(60, 88, 34, 66),
    block(240, 82, 34, 68),
    ...dial([77, 87], [0, -1]),
    ...dial([257, 81], [0, -1]),
    letter([104, 62], 'r₁', 'start'),
    ...dimension([77, 178], [257, 178], 'L', -11),
    word([167, 118], 'change over'),
  ];
}

export function threeSquares(): Shape[] {
  const blade = (x: number, top: number): Shape =>
    body([
      [x, 30],
      [x + 24, 30],
      [x + 24 - top, 150],
      [x - top, 150],
    ]);
  return [
    blade(40, 4),
    blade(72, -3),
    blade(150, -3),
    blade(182, 2),
    blade(258, 4),
    blade(290, 2),
    letter([68, 170], 'p'),
    letter([178, 170], 'q'),
    letter([286, 170], 'r'),
    word([68, 16], 'A B'),
    word([178, 16], 'B C'),
    word([286, 16], 'A C'),
  ];
}

export function barTurned(): Shape[] {
  return [
    block(10, 50, 60, 80),
    body([
      [70, 74],
      [300, 66],
      [300, 92],
      [70, 106],
    ]),
    ...dial([110, 72], [0, -1]),
    ...dial([280, 66], [0, -1]),
    guide([70, 90], [330, 90]),
    letter([200, 46], 'r₁, r₂'),
    ...dimension([110, 152], [280, 152], 'L', 12),
    word([40, 146], 'turn half'),
  ];
}
