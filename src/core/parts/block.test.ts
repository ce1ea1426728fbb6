import { describe, expect, it } from 'vitest';
import type { Vector } from '../body/vector.ts';
import { type BlockAsk, block, type Carriage } from './block.ts';
import type { Travel, TravelDoubt } from './travel.ts';

type Six = [number, number, number, number, number, number];
const travel = (along: 'x' | 'y' | 'z', of: (at: number) => Six, doubt?: TravelDoubt): Travel => {
  const stations_mm = Array.from({ length: 13 }, (_, k) => 50 * (k - 6));
  return {
    name: `travel ${along}`,
    along,
    stations_mm,
    poses: stations_mm.map(of),
    ...(doubt ? { doubt } : {}),
  };
};
const still = (): Six => [0, 0, 0, 0, 0, 0];
const reference_mm: Vector = [0, 0, -80];
/** A knee mill: the knee bears the saddle, the saddle the table. */
const knee = (
  x: (at: number) => Six = still,
  y: (at: number) => Six = still,
  z: (at: number) => Six = still,
): Carriage[] =>
  [travel('z', z), travel('y', y), travel('x', x)].map((one) => ({
    travel: one,
    carries: 'work' as const,
    reference_mm,
  }));
const ask = (carriages: readonly Carriage[], more: Partial<BlockAsk> = {}): BlockAsk => ({
  carriages,
  tool_mm: [0, 0, 40],
  middle_mm: [0, 0, 40],
  size_mm: [200, 120, 80],
  faces: ['+x', '+y', '+z'],
  ...more,
});

describe('a block milled all over', () => {
  it('on a true machine comes out true', () => {
    const out = block(ask(knee()));
    for (const face of out.faces) expect([face.flatness_um.value, face.parallel_um.value]).toEqual([0, 0]);
    for (const corner of out.corners) expect(Math.abs(corner.square_urad.value)).toBe(0);
  });

  it('a table that rises as it goes along leaves the top that much out of parallel, more metal where the table was low', () => {
    // With the table at +X its −x half is under the tool and stands high, so less is left of it.
    const out = block(
      ask(
        knee((at) => [0, 0, at / 10, 0, 0, 0]),
        { faces: ['+z'] },
      ),
    );
    const top = out.faces[0]!;
    expect(top.tilt_urad[0].value).toBeCloseTo(100, 6);
    expect(top.parallel_um.value).toBeCloseTo(20, 6);
    expect(top.flatness_um.value).toBeCloseTo(0, 9);
  });

  it('x out of square to y turns one side against the other by as much, and the top stays flat', () => {
    // The saddle’s path leans: as it goes +y it carries the work toward +x.
    const out = block(ask(knee(still, (at) => [at / 20, 0, 0, 0, 0, 0])));
    const corner = (faces: string) =>
      out.corners.find((one) => one.faces.join() === faces)!.square_urad.value;
    expect(Math.abs(corner('+x,+y'))).toBeCloseTo(50, 6);
    expect(corner('+y,+z')).toBeCloseTo(0, 9);
    expect(corner('+x,+z')).toBeCloseTo(0, 9);
  });

  it('opposite corners of one side go opposite ways', () => {
    const leaning = knee(still, (at) => [at / 20, 0, 0, 0, 0, 0]);
    const out = block(ask(leaning, { faces: ['+x', '-x', '+y'] }));
    const [a, b] = ['+x,+y', '-x,+y'].map(
      (faces) => out.corners.find((one) => one.faces.join() === faces)!.square_urad.value,
    );
    expect(a).toBeCloseTo(-b!, 9);
    expect(out.corners).toHaveLength(2);
  });

  it('a table that pitches as it travels hollows or crowns the top by arm and travel', () => {
    // Pitch grows by 1 µrad a mm; at X the point under the tool is w = −X from the table’s middle.
    const out = block(
      ask(
        knee((at) => [0, 0, 0, 0, at, 0]),
        { faces: ['+z'] },
      ),
    );
    // u_z of the work there is −ω_y · w = X²/1000 µm: too high at both ends, by 100²/1000, so that much less is left.
    const top = out.faces[0]!;
    expect(top.out_um[0]![4]).toBeCloseTo(-10, 6);
    expect(top.out_um[8]![4]).toBeCloseTo(-10, 6);
    expect(top.flatness_um.value).toBeCloseTo(10, 6);
  });

  it('the lower carriage’s arm grows as the upper one travels: a roll of the saddle tilts the top along x', () => {
    // The saddle turns about y by 40 µrad at every y: as the table goes to X the cut stays put, and nothing changes but a height.
    const level = block(
      ask(
        knee(still, () => [0, 0, 0, 0, 40, 0]),
        { faces: ['+z'] },
      ),
    ).faces[0]!;
    expect(level.parallel_um.value).toBeCloseTo(0, 9);
    // The table itself turned by as much: the work is tilted, and so is its top.
    const tilted = block(
      ask(
        knee(() => [0, 0, 0, 0, 40, 0]),
        { faces: ['+z'] },
      ),
    ).faces[0]!;
    expect(Math.abs(tilted.tilt_urad[0].value)).toBeCloseTo(40, 6);
  });

  it('tool and work carriages along one axis are each other’s opposite', () => {
    const wave = (at: number): Six => [0, 0, 4 * Math.sin(at / 40), 0, 0, 0];
    const one: Carriage = { travel: travel('x', wave), carries: 'work', reference_mm };
    const other: Carriage = { travel: travel('x', wave), carries: 'tool', reference_mm };
    const [a, b] = [one, other].map((x) => block(ask([x], { faces: ['+z'] })).faces[0]!);
    for (const [i, line] of a!.out_um.entries())
      for (const [j, value] of line.entries()) expect(value).toBeCloseTo(-b!.out_um[8 - i]![j]!, 9);
  });

  it('carries doubt: an sd of 2 µrad of a table’s own tilt is an sd of 2 µrad of the top', () => {
    const common = Array.from({ length: 6 }, (_, i) =>
      Array.from({ length: 6 }, (_, j) => (i === 4 && j === 4 ? 4 : 0)),
    );
    const carriage: Carriage = {
      travel: travel('x', still, { common_covariance: common }),
      carries: 'work',
      reference_mm,
    };
    const top = block(ask([carriage], { faces: ['+z'] })).faces[0]!;
    expect(top.tilt_urad[0].sd).toBeCloseTo(2, 9);
    expect(top.tilt_urad[1].sd).toBeCloseTo(0, 9);
  });

  it('refuses a face that nothing sweeps, and two carriages along one axis', () => {
    const [, , x] = knee();
    expect(() => block(ask([x!], { faces: ['+x'] }))).toThrow('no carriage travels along y or z');
    expect(() => block(ask([x!, x!]))).toThrow('expected one for an axis');
  });
});
