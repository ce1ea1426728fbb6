import { describe, it } from 'vitest';
import type { Slide } from '../src/core/body/slide.ts';
import type { Vector } from '../src/core/body/vector.ts';
import type { Chain, Change } from '../src/core/heights/chain.ts';
import { heightFound } from '../src/core/heights/heights.ts';
import { type LinerAsk, type LinerFound, linerFor } from '../src/core/heights/liner.ts';
import { sinkRooms } from '../src/core/heights/sink.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Worked by hand from trade arithmetic (common practice) and from the geometry of a V; no line below uses the program's
 * formulae. Wear of a V's flanks and a flat, sinking and rolling a carriage: derived, with the numbers of a worked example
 *
 *     flanks 45° and 45°, 0.03 and 0.05 mm off: the V sinks 0.0566 mm (0.08 / √2);
 *     flat 0.02 mm off, 200 mm away:            cross level (−0.0566 + 0.02)/200 = −0.183 mm/m.
 *
 * Liner: sheet 1.60, bond 0.10, left on 0.10, to rise 0.50 mm: mill 1.10 on a flat; on a flank of 45° the rise square to the
 * face is 0.50 cos 45° = 0.3536, mill 1.2464 mm.
 */
const root = Math.SQRT1_2;
const pad = (name: string, y_mm: number, normal: Vector) => ({
  name,
  centre_mm: [0, y_mm, 0] as const,
  normal,
  length_mm: 400,
  width_mm: 24,
  zones: 4,
  material: 'liner',
});
/** A ridge V at y 0, its front flank toward the operator (−y), and a flat 200 mm behind it. */
const slide: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [
    pad('front', -8.5, [0, -root, root]),
    pad('rear', 8.5, [0, root, root]),
    pad('flat', 200, [0, 0, 1]),
  ],
};
const worn: Change = {
  name: 'wear',
  joint: 'saddle on bed',
  when: 'found',
  thickness_um: { front: -30, rear: -50, flat: -20 },
  sd_um: 0,
};
const chain = (changes: readonly Change[]): Chain => ({
  places: [
    { name: 'screw', body: 'bed', at_mm: [0, -95, -140] },
    { name: 'nut', body: 'saddle', at_mm: [0, -95, -140] },
    { name: 'over the V', body: 'saddle', at_mm: [0, 0, 0] },
    { name: 'over the flat', body: 'saddle', at_mm: [0, 200, 0] },
    { name: 'V', body: 'bed', at_mm: [0, 0, -3] },
  ],
  joints: [{ name: 'saddle on bed', moves: 'saddle', on: 'bed', slide, origin_mm: [0, 0, 0], travel: 'x' }],
  heights: [
    { name: 'nut over screw', from: 'screw', to: 'nut', low_um: -50, high_um: 80, aim_um: 30 },
    { name: 'V', from: 'V', to: 'over the V', low_um: -50, high_um: 50, aim_um: 0 },
    { name: 'flat', from: 'V', to: 'over the flat', low_um: -50, high_um: 50, aim_um: 0 },
  ],
  changes,
});
const um = (one: Chain, name: string): number =>
  heightFound(one, one.heights.find((height) => height.name === name)!).um;

describe('wear of a V and a flat, worked by hand', () => {
  const found = chain([worn]);
  it('over the V it has sunk 0.0566 mm, over the flat 0.0200 mm', () => {
    // Over the apex: 8.5 mm inward of each flank's middle changes nothing, a roll about x leaves y 0 at z 0 alone.
    expectPrinted(um(found, 'V') / 1000, '-0.0566');
    expectPrinted(um(found, 'flat') / 1000, '-0.0200');
  });
  it('the half nut, 95 mm in front of the V, has sunk 0.05657 + 95 × 0.00018284 = 0.0739 mm', () => {
    expectPrinted(um(found, 'nut over screw') / 1000, '-0.0739');
  });
});

const ask: LinerAsk = {
  joint: 'saddle on bed',
  pads: ['front', 'rear', 'flat'],
  brings: 'nut over screw',
  sheet_mm: 1.6,
  bond_mm: 0.1,
  bond_sd_mm: 0.025,
  machining_mm: 0,
  scraping_mm: 0.1,
};
const lined = (one: Chain, more: Partial<LinerAsk> = {}): LinerFound => {
  const found = linerFor(one, { ...ask, ...more });
  if (!found.ok) throw new Error(found.text);
  return found;
};
const mill = (found: LinerFound, name: string): number => found.pads.find((one) => one.pad === name)!.mill_mm;

describe('liner, worked by hand', () => {
  it('to rise 0.50 mm: mill 1.10 mm under the flat, 1.2464 mm under a flank of 45°', () => {
    // Sunk evenly by 0.47 mm, to be left 0.03 mm high: 0.50 mm to rise.
    const even: Change = { ...worn, thickness_um: { front: -470 * root, rear: -470 * root, flat: -470 } };
    const found = lined(chain([even]));
    expectPrinted(mill(found, 'flat'), '1.1000');
    expectPrinted(mill(found, 'front'), '1.2464');
    expectPrinted(mill(found, 'rear'), '1.2464');
    expectPrinted(found.left_mm, '1.50');
    // 0.5 mm, or half the sheet if that is more: 0.8 must stay, so scraping may take 0.8.
    expectSame([found.least_mm, found.stock_um], [0.8, 800]);
  });

  it('worn unevenly, each face gets its own: 0.03 mm rise plus what it has lost', () => {
    // Level again and 0.03 high: square to a flank 0.03 cos 45° = 0.0212, to the flat 0.03; plus the wear.
    const found = lined(chain([worn]));
    expectPrinted(mill(found, 'front'), (1.6 - 0.0212 - 0.03).toFixed(4));
    expectPrinted(mill(found, 'rear'), (1.6 - 0.0212 - 0.05).toFixed(4));
    expectPrinted(mill(found, 'flat'), (1.6 - 0.03 - 0.02).toFixed(4));
  });

  it('the chain closes: with the liner in, every height is where it is wanted to a tenth of a micrometre', () => {
    const found = lined(chain([worn]));
    const after = chain([worn, found.finished]);
    expectWithin(um(after, 'nut over screw'), 30, 0.1);
    expectWithin(um(after, 'V'), 30, 0.1);
    expectWithin(um(after, 'flat'), 30, 0.1);
  });

  it('before scraping the nut stands the allowance higher, and may sink that and its band, less two sd', () => {
    // 0.1 mm square to each face: 0.1414 mm over the V, 0.1 over the flat; at the nut, 95 mm in front,
    // 0.1414 + 95/200 × 0.0414 = 0.1611. Room to −0.05: 0.03 + 0.1611 + 0.05 = 0.2411 mm.
    const found = lined(chain([worn]));
    const room = sinkRooms(chain([worn, found.unscraped]), 'saddle on bed').find(
      (one) => one.name === 'nut over screw',
    )!;
    expectPrinted(room.room_um / 1000, '0.2411');
    // Doubt of the bond, 0.025 mm on each face by itself: over the V (flanks alike) 0.025, lever 1 + 95/200; flat 95/200.
    const sd = 0.025 * Math.hypot(1.475, 0.475);
    expectPrinted(room.sd_um / 1000, sd.toFixed(4));
    expectWithin(room.most_um, room.room_um - 2 * room.sd_um, 5e-10);
  });
});
