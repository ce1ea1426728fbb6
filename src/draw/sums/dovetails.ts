import type { Spot } from '../line.ts';
import type { Shape } from '../shape.ts';
import { angle, body, box, dimension, guide, letter, move, roll } from './pen.ts';

/** Half of the sharpest corner that is drawn: 60° flanks. */
const flank = Math.tan(Math.PI / 3);
const middle = box.width / 2;

/** A male dovetail, its narrow root at the flat, with what is drawn beside it. */
function male(root: number, height: number, base: number): { corners: Spot[]; lean: number } {
  const lean = height / flank;
  const [l, r] = [middle - root / 2, middle + root / 2];
  return {
    lean,
    corners: [
      [12, base],
      [l, base],
      [l - lean, base - height],
      [r + lean, base - height],
      [r, base],
      [box.width - 12, base],
      [box.width - 12, base + 34],
      [12, base + 34],
    ],
  };
}

/** Where a roll of this radius stands in the sharp corner at x; `side` 1: to its right. */
const seat = (x: number, side: 1 | -1, radius: number, base: number): Spot => [
  x + (side * radius) / Math.tan(Math.PI / 6),
  base - radius,
];

export function dovetailMale(): Shape[] {
  const base = 130;
  const radius = 20;
  const root = 96;
  const { corners } = male(root, 62, base);
  const left = seat(middle - root / 2, -1, radius, base);
  const right = seat(middle + root / 2, 1, radius, base);
  return [
    body(corners),
    roll(left, radius),
    roll(right, radius),
    ...dimension([middle - root / 2, base + 8], [middle + root / 2, base + 8], 'a', 13),
    guide([left[0] - radius, left[1]], [left[0] - radius, 34]),
    guide([right[0] + radius, right[1]], [right[0] + radius, 34]),
    ...dimension([left[0] - radius, 38], [right[0] + radius, 38], 'x', -13),
    letter(left, 'D'),
    ...angle([middle + root / 2, base], 84, 0, 60, 'A'),
  ];
}

export function dovetailTwoRolls(): Shape[] {
  const base = 140;
  const root = 96;
  const { corners } = male(root, 70, base);
  const small = 14;
  const large = 26;
  const out = (radius: number): [number, number] => {
    const left = seat(middle - root / 2, -1, radius, base)[0] - radius;
    return [left, 2 * middle - left];
  };
  const [small_left, small_right] = out(small);
  const [large_left, large_right] = out(large);
  return [
    body(corners),
    roll(seat(middle - root / 2, -1, large, base), large),
    roll(seat(middle + root / 2, 1, large, base), large),
    roll(seat(middle - root / 2, -1, small, base), small),
    roll(seat(middle + root / 2, 1, small, base), small),
    guide([small_left, base - small], [small_left, 52]),
    guide([small_right, base - small], [small_right, 52]),
    guide([large_left, base - large], [large_left, 22]),
    guide([large_right, base - large], [large_right, 22]),
    ...dimension([small_left, 56], [small_right, 56], 'x₁', -12),
    ...dimension([large_left, 26], [large_right, 26], 'x₂', -12),
    letter([small_left - 32, base + 18], 'D₁  D₂', 'start'),
    ...dimension([middle - root / 2, base + 8], [middle + root / 2, base + 8], 'a', 13),
  ];
}

export function dovetailFemale(): Shape[] {
  const base = 132;
  const radius = 19;
  const floor = 236;
  const height = 64;
  const [l, r] = [middle - floor / 2, middle + floor / 2];
  const lean = height / flank;
  const left: Spot = [l + radius * Math.sqrt(3), base - radius];
  const right: Spot = [r - radius * Math.sqrt(3), base - radius];
  return [
    body([
      [8, base - height],
      [l + lean, base - height],
      [l, base],
      [r, base],
      [r - lean, base - height],
      [box.width - 8, base - height],
      [box.width - 8, base + 44],
      [8, base + 44],
    ]),
    roll(left, radius),
    roll(right, radius),
    letter(left, 'D'),
    ...dimension([left[0] + radius, base - radius], [right[0] - radius, base - radius], 'y', -13),
    ...dimension([l, base + 14], [r, base + 14], 'b', 13),
    ...angle([r, base], 62, 120, 180, 'A'),
  ];
}

export function dovetailHeight(): Shape[] {
  const base = 136;
  const root = 110;
  const height = 82;
  const { corners, lean } = male(root, height, base);
  const [l, r] = [middle - root / 2, middle + root / 2];
  return [
    body(corners),
    ...dimension([l, base + 10], [r, base + 10], 'a', 13),
    ...dimension([l - lean, 40], [r + lean, 40], 'w', -13),
    guide([r, base], [r, 54]),
    ...dimension([r, 68], [r + lean, 68], 'c', 13),
    guide([l - lean, base - height], [l - lean - 40, base - height]),
    ...dimension([l - lean - 32, base], [l - lean - 32, base - height], 'h', -13),
    ...angle([r, base], 40, 0, 60, 'A'),
  ];
}

/** A V opening upwards with its corner at `at`. */
const vBlock = (at: Spot, half_deg: number, height: number): Shape => {
  const half = height * Math.tan((half_deg * Math.PI) / 180);
  return body([
    [at[0] - half - 40, at[1] - height],
    [at[0] - half, at[1] - height],
    at,
    [at[0] + half, at[1] - height],
    [at[0] + half + 40, at[1] - height],
    [at[0] + half + 40, at[1] + 28],
    [at[0] - half - 40, at[1] + 28],
  ]);
};

export function vOverRoll(): Shape[] {
  const at: Spot = [130, 150];
  const radius = 42;
  const centre: Spot = [at[0], at[1] - radius * Math.SQRT2];
  return [
    vBlock(at, 45, 84),
    roll(centre, radius),
    letter([centre[0] - 14, centre[1] - 12], 'D'),
    guide(centre, [286, centre[1]]),
    guide([at[0], centre[1] - radius], [320, centre[1] - radius]),
    guide(at, [320, at[1]]),
    ...dimension([276, at[1]], [276, centre[1]], 'm', 13),
    ...dimension([312, at[1]], [312, centre[1] - radius], 't', 12),
    ...angle(at, 34, 45, 135, 'V'),
  ];
}

export function vTwoRolls(): Shape[] {
  const at: Spot = [116, 160];
  const [small, large] = [24, 44];
  const top = (radius: number): number => at[1] - radius * Math.SQRT2 - radius;
  return [
    vBlock(at, 45, 96),
    roll([at[0], at[1] - large * Math.SQRT2], large),
    roll([at[0], at[1] - small * Math.SQRT2], small),
    letter([at[0], at[1] - small * Math.SQRT2], 'D₁'),
    letter([at[0], top(large) + 16], 'D₂'),
    guide([at[0], top(small)], [288, top(small)]),
    guide([at[0], top(large)], [318, top(large)]),
    ...dimension([272, 186], [272, top(small)], 'H₁', 16),
    ...dimension([310, 186], [310, top(large)], 'H₂', 16),
    letter([at[0], at[1] + 14], 'V'),
  ];
}

export function vFlanks(): Shape[] {
  const at: Spot = [170, 46];
  const left: Spot = [92, 140];
  const right: Spot = [268, 140];
  return [
    body([at, right, [box.width - 20, 140], [box.width - 20, 178], [20, 178], [20, 140], left]),
    ...angle(left, 30, 0, 50, 'θ₁'),
    ...angle(right, 30, 136, 180, 'θ₂'),
    ...move([92, 66], [116, 84], ''),
    letter([82, 58], 'n₁'),
    ...move([254, 62], [232, 82], ''),
    letter([264, 54], 'n₂'),
    ...move([170, 4], [170, 34], ''),
    letter([184, 14], 'd'),
    ...move([214, 24], [250, 24], 's'),
  ];
}
