import { palette } from '../palette.ts';
import type { Shape } from '../shape.ts';
import { block, body, dimension, edge, guide, letter, word } from './pen.ts';

export function liner(): Shape[] {
  return [
    block(20, 24, 220, 62),
    word([130, 52], 'slide, milled by m'),
    block(20, 86, 220, 8, palette.ink2),
    block(20, 94, 220, 34, palette.blueWash),
    block(20, 128, 220, 10, palette.sheet),
    edge([10, 142], [250, 142], 4),
    letter([256, 88], 'g', 'start'),
    ...dimension([276, 94], [276, 138], 't', -14),
    ...dimension([310, 94], [310, 128], 'f', -13),
    letter([256, 133], 'a', 'start'),
    word([130, 162], 'way'),
    guide([20, 70], [326, 70]),
    ...dimension([318, 86], [318, 70], 'm', 13),
  ];
}

export function lostHeight(): Shape[] {
  return [
    body([
      [40, 20],
      [300, 20],
      [300, 64],
      [40, 64],
    ]),
    word([170, 40], 'saddle'),
    guide([40, 84], [330, 84]),
    ...dimension([306, 84], [306, 64], 'w, c', 20),
    block(40, 112, 260, 34),
    word([170, 130], 'bed'),
    guide([40, 98], [330, 98]),
    ...dimension([24, 112], [24, 98], 'b', -12),
    ...dimension([60, 112], [60, 64], 'T', 13),
    word([170, 168], 'p: backlash at the rack'),
  ];
}

export function stack(): Shape[] {
  return [
    block(60, 16, 200, 30),
    block(60, 46, 200, 12, palette.sheet),
    block(60, 58, 200, 22),
    block(60, 80, 200, 18),
    block(60, 98, 200, 6, palette.ink2),
    block(60, 104, 200, 32, palette.blueWash),
    edge([40, 140], [280, 140], 4),
    letter([272, 52], 'x', 'start'),
    letter([272, 69], 's₂', 'start'),
    letter([272, 89], 's₁', 'start'),
    letter([300, 101], 'g', 'start'),
    letter([272, 120], 'f', 'start'),
    ...dimension([36, 46], [36, 138], 'T', 13),
    word([160, 164], 'a: still to be scraped off'),
  ];
}
