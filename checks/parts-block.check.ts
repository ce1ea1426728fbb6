import { describe, it } from 'vitest';
import type { Vector } from '../src/core/body/vector.ts';
import { block, type Carriage } from '../src/core/parts/block.ts';
import type { Travel } from '../src/core/parts/travel.ts';
import { expectNear, expectWithin } from './near.ts';

/*
 * Source: rigid-body error models of machine tools (each carriage's turns times its arm to the point of cut, added up along
 * the chain); the arms below are worked by hand from a drawing of the machine: derived. Directions in the style of
 * ISO 1701 and ISO 1986, from memory: a knee's front end may stand high, never low.
 */
type Six = [number, number, number, number, number, number];
const travel = (along: 'x' | 'y' | 'z', pose: Six): Travel => ({
  name: along,
  along,
  stations_mm: [-300, 300],
  poses: [pose, pose],
});
const carriage = (
  along: 'x' | 'y' | 'z',
  pose: Six,
  carries: 'work' | 'tool',
  reference_mm: Vector,
): Carriage => ({
  travel: travel(along, pose),
  carries,
  reference_mm,
});
const still: Six = [0, 0, 0, 0, 0, 0];
const block3 = {
  tool_mm: [0, 0, 60] as const,
  middle_mm: [0, 0, 30] as const,
  size_mm: [160, 100, 60] as const,
};

describe('a surface grinder: table along x on a saddle along y, wheel head along z', () => {
  const grind = (table: Six, saddle: Six, head: Six = still) =>
    block({
      ...block3,
      carriages: [
        carriage('y', saddle, 'work', [0, 0, -200]),
        carriage('x', table, 'work', [0, 0, -100]),
        carriage('z', head, 'tool', [0, 150, 300]),
      ],
      faces: ['+z'],
    }).faces[0]!;

  it('roll of the table lowers one side of the top: 30 µrad over 100 mm are 3 µm, to the table', () => {
    // The table carries work and datum alike: turned by ω_x = 30 its +y side is 1.5 µm high under the wheel, so 1.5 less is left.
    const top = grind([0, 0, 0, 30, 0, 0], still);
    expectNear(top.tilt_urad[1].value, -30, 1e-9);
    expectNear(top.parallel_um.value, 3, 1e-9);
  });
  it('a saddle that is rolled all along its straight path tilts the table under it as much', () => {
    // The arm from the saddle’s middle to the cut is −Y: 50 mm at each end of the cut, 1.5 µm up and down.
    const top = grind(still, [0, 0, 0, 30, 0, 0]);
    expectNear(top.parallel_um.value, 3, 1e-9);
  });
  it('errors of the head move the whole face, and leave it true', () => {
    expectWithin(grind(still, still, [2, -3, 7, 40, -20, 10]).parallel_um.value, 0, 5e-10);
  });
});

describe('a knee mill: knee, saddle and table carry the work', () => {
  const mill = (knee: Six, saddle: Six, table: Six) =>
    block({
      ...block3,
      carriages: [
        carriage('z', knee, 'work', [0, -200, -200]),
        carriage('y', saddle, 'work', [0, 0, -120]),
        carriage('x', table, 'work', [0, 0, -60]),
      ],
      faces: ['+x', '+y', '+z'],
    });
  const corner = (out: ReturnType<typeof mill>, faces: string) =>
    out.corners.find((one) => one.faces.join() === faces)!.square_urad.value;

  it('a table turned on its saddle is a block turned by as much: every corner stays square', () => {
    const out = mill(still, still, [0, 0, 0, 30, -20, 45]);
    for (const faces of ['+x,+y', '+x,+z', '+y,+z']) expectWithin(corner(out, faces), 0, 5e-10);
  });
  it('the saddle’s path 0.02 in 300 mm out of square to the table’s makes corners 66.7 µrad out', () => {
    const lean = travel('y', still);
    const poses: Travel['poses'] = [
      [-20, 0, 0, 0, 0, 0],
      [20, 0, 0, 0, 0, 0],
    ];
    const out = block({
      ...block3,
      carriages: [
        { travel: { ...lean, poses }, carries: 'work', reference_mm: [0, 0, -120] },
        carriage('x', still, 'work', [0, 0, -60]),
        carriage('z', still, 'tool', [0, 0, 300]),
      ],
      faces: ['+x', '+y'],
    });
    // At +Y the work has gone +x: its −y end is under the cutter and the +x side there is cut deeper, so the side leans out toward +y.
    expectNear(out.faces[0]!.tilt_urad[0].value, 200 / 3, 1e-9);
    expectNear(out.corners[0]!.square_urad.value, -200 / 3, 1e-9);
  });
  it('knee’s path that leans to the column as it rises (front high to the path): 0.025 in 300 mm', () => {
    // The path leans toward +y (the column) going up: against the table the side +y comes out of square by 83.3 µrad.
    const poses: Travel['poses'] = [
      [0, -25, 0, 0, 0, 0],
      [0, 25, 0, 0, 0, 0],
    ];
    const out = block({
      ...block3,
      carriages: [
        { travel: { ...travel('z', still), poses }, carries: 'work', reference_mm: [0, 0, -200] },
        carriage('y', still, 'work', [0, 0, -120]),
        carriage('x', still, 'work', [0, 0, -60]),
      ],
      faces: ['+y', '+z'],
    });
    // High on the block the knee is low and the work stands nearer: more is left there, and the edge is sharp.
    expectNear(out.corners[0]!.square_urad.value, -250 / 3, 1e-9);
  });
});
