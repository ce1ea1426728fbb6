import { describe, expect, it } from 'vitest';
import { blockMade, type MadeBlock, type SlideTurned } from './made-block.ts';

/** An invented mill: knee up and down, saddle toward the column (the slide that is scraped), table along y on it. */
const mill: MadeBlock = {
  carriages: [
    { name: 'knee', along: 'z', carries: 'work' },
    { name: 'saddle', along: 'x', carries: 'work', is_slide: true },
    { name: 'table', along: 'y', carries: 'work' },
  ],
  size_mm: [120, 150, 60],
  middle_mm: [7, -9, 190],
  faces: [
    { face: '+z', name: 'top' },
    { face: '+x', name: 'side toward the column' },
    { face: '+y', name: 'end' },
  ],
  lengths: { x: 'toward the column', y: 'along the table', z: 'high' },
  plus: { x: 'the column', y: 'the end', z: 'the top' },
};
const sure = [0, 0, 0] as const;
const made = (more: Partial<SlideTurned>) =>
  blockMade(mill, mill.size_mm, { turn_urad: sure, sd_urad: sure, ...more });
const corner = (out: ReturnType<typeof made>, a: string, b: string) =>
  out.corners.find(({ faces }) => faces[0] === a && faces[1] === b)!.square_urad;

describe('a block as the machine’s own data makes it', () => {
  it('is true on a machine whose slide stands true', () => {
    const out = made({});
    for (const face of out.faces) expect(face.parallel_um).toEqual({ value: 0, sd: 0 });
    for (const { square_urad } of out.corners) expect(square_urad.value).toBeCloseTo(0, 12);
  });

  it('a saddle whose operator’s end is 30 µrad high leaves the top 3.6 µm thicker at the column over 120 mm', () => {
    // Turned by + about y its minus end stands high: more is cut off there.
    const [top] = made({ turn_urad: [0, 30, 0] }).faces;
    expect(top!.tilt_urad[0].value).toBeCloseTo(30, 9);
    expect(top!.tilt_urad[1].value).toBeCloseTo(0, 9);
    expect(top!.parallel_um.value).toBeCloseTo(3.6, 9);
    expect(top!.flatness_um.value).toBeCloseTo(0, 9);
  });

  it('table ways 40 µrad out of square to the saddle’s travel make that corner 40 µrad out, and no other', () => {
    const out = made({ turn_urad: [0, 0, 40], sd_urad: [1, 2, 6] });
    const side = corner(out, '+x', '+y');
    expect(Math.abs(side.value)).toBeCloseTo(40, 9);
    expect(side.sd).toBeCloseTo(6, 9);
    expect(corner(out, '+z', '+x').value).toBeCloseTo(0, 9);
    expect(corner(out, '+z', '+y').value).toBeCloseTo(0, 9);
    expect(corner(made({ turn_urad: [0, 0, -40] }), '+x', '+y').value).toBeCloseTo(-side.value, 9);
  });

  it('a saddle that rolls the table takes the corner of top and end with it: 20 µrad', () => {
    const out = made({ turn_urad: [20, 0, 0] });
    expect(Math.abs(corner(out, '+z', '+y').value)).toBeCloseTo(20, 9);
    expect(out.faces[0]!.parallel_um.value).toBeCloseTo(0, 9);
  });

  it('ways that rise by 4 µm in the middle of the cut leave a top hollow by 4 µm, tilt added to it as a plane', () => {
    const travel = {
      name: 'saddle',
      along: 'x' as const,
      stations_mm: [-60, 0, 60],
      poses: [0, 4, 0].map((z) => [0, 0, z, 0, 0, 0] as const),
    };
    const [level] = made({ travel }).faces;
    expect(level!.flatness_um.value).toBeCloseTo(4, 9);
    // Less is left in the middle, against which every place is told.
    expect(level!.out_um[0]![0]).toBeCloseTo(4, 9);
    const [leans] = made({ travel, turn_urad: [0, 30, 0] }).faces;
    expect(leans!.tilt_urad[0].value).toBeCloseTo(30, 9);
    expect(leans!.flatness_um.value).toBeCloseTo(4, 9);
  });

  it('a block longer than the ways were followed is refused', () => {
    const travel = {
      name: 'saddle',
      along: 'x' as const,
      stations_mm: [-40, 40],
      poses: [
        [0, 0, 0, 0, 0, 0],
        [0, 0, 0, 0, 0, 0],
      ] as const,
    };
    expect(() => made({ travel })).toThrow('beyond the stations');
  });
});
