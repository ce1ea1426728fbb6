import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plannedJob, templateInput } from '../../contract/template.ts';
import { phraseText } from '../phrase.ts';
import { blockFrom, travelOfBlock, turnsTold } from './block-parts.ts';
import { blockLines, blockSentence } from './block-words.ts';

const planOf = (id: string) =>
  plannedJob(templateInput(JSON.parse(readFileSync(`machines/${id}.json`, 'utf8'))), {}, 'invented');
const plain = (text: string) => text.replace(/[\u00a0\u2009\u202f]/g, ' ');
const told = (name: string, value: number, sd: number) => ({ name, value, sd });

describe('a block in words, from the machine’s file alone', () => {
  const saddle = planOf('dovetail-two-flats');
  const makes = saddle.makes!;
  const say = (...features: ReturnType<typeof told>[]) =>
    plain(phraseText(blockSentence(makes, blockFrom(saddle, makes, makes.size_mm, features), 'metric')));

  it('a true mill saddle: parallel and square as far as can be told', () => {
    expect(say(told('table ways', 2, 3), told('level along', -1, 3))).toBe(
      'The top comes out parallel to the table as far as can be told. Its corners are square as far as can be told.',
    );
  });

  it('says how far, which way, and how sure, by hand: 30 µrad over 100 mm, 40 µrad as a fall in 300 mm', () => {
    const text = say(told('level along', 30, 5), told('table ways', 40, 5));
    expect(text).toContain('out of parallel to the table by 3.0 ± 1.0 µm, thicker toward the column.');
    expect(text).toMatch(
      /Between the side toward the column and the end on your left, facing the column the metal is 12 ± 3 µm in 300 mm more open than square\./,
    );
    expect(say(told('level along', -30, 5), told('table ways', -40, 5))).toMatch(/thinner toward.*tighter/);
  });

  it('tells every figure with its sign, and in thou for whoever reads thou', () => {
    const out = blockFrom(saddle, makes, makes.size_mm, [told('table ways', 40, 5)]);
    const lines = blockLines(makes, out, 'metric').map(({ said }) => plain(said));
    // The other corners and all flatness do not hang on how its ways are turned about z.
    expect(lines).toEqual(['0 µm', '+12 ± 3 µm in 300 mm']);
    for (const { said } of blockLines(makes, out, 'inch')) expect(said).not.toContain('µm');
  });

  it('reads the axes of its features from the plan, not from names', () => {
    const knee = planOf('knee-on-column');
    expect(turnsTold(knee.features, [told('front to back', 11, 2), told('left to right', -7, 3)])).toEqual({
      turn_urad: [0, 11, -7],
      sd_urad: [0, 2, 3],
    });
    const top = blockFrom(knee, knee.makes!, knee.makes!.size_mm, [told('front to back', 20, 1)]);
    // The knee's travel out of square to its own top: the top stays parallel, the side toward the column leans.
    expect(top.faces[0]!.parallel_um.value).toBeCloseTo(0, 9);
    const corner = top.corners.find(({ faces }) => faces.join() === '+x,-z')!;
    expect(Math.abs(corner.square_urad.value)).toBeCloseTo(20, 9);
  });

  it('every machine that says what it makes names a top that its table carries', () => {
    for (const id of ['double-v', 'dovetail-two-flats', 'knee-on-column'])
      expect(planOf(id).makes!.faces[0]!.name, id).toBe('top');
    expect(planOf('lathe-saddle').makes).toBeUndefined();
  });

  it('surveyed ways come in where they are long enough for the block', () => {
    const { pads } = saddle.slide;
    const bed = (length: number) => ({
      stations_mm: [0, length / 2, length],
      ways: pads.map((pad) => ({ pad: pad.name, height_um: [0, pad.normal[1] === 0 ? 9 : 0, 0] })),
    });
    const long = Math.max(...pads.map((pad) => pad.length_mm));
    expect(travelOfBlock(saddle, bed(long + 40), 100, undefined)).toBeUndefined();
    const travel = travelOfBlock(saddle, bed(2.5 * long), 100, 0.5)!;
    expect(travel.stations_mm[0]).toBeCloseTo(-50, 9);
    const out = blockFrom(saddle, makes, makes.size_mm, [], travel);
    // Printed on the crown itself it falls away to both sides, alike.
    expect(out.faces[0]!.flatness_um.value).toBeGreaterThan(0.1);
    expect(out.faces[0]!.flatness_um.sd).toBeGreaterThan(0);
    expect(Math.abs(out.faces[0]!.tilt_urad[0].value)).toBeLessThan(1e-3);
  });
});
