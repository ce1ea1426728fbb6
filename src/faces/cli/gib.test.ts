import { describe, expect, it } from 'vitest';
import { sheetRunner } from '../../../tests/fixture/run-sheet.ts';
import { registerGib } from './gib.ts';

const said = sheetRunner('gib', registerGib);

const file = () => ({
  angle_deg: 60 as number,
  rolls: {
    kind: 'male',
    roll_mm: 10,
    stations_mm: [0, 150, 300],
    read_mm: [67.3205, 67.3285, 67.3365],
  } as Record<string, unknown>,
  play: { how: 'across', thick_end_um: 12, thin_end_um: 46, in_left_mm: 6, screw_mm: 1.5 } as Record<
    string,
    unknown
  >,
  taper_one_in: 60 as number | undefined,
  keepers: [{ name: 'front keeper', stations_mm: [0, 500], clearance_um: [55, 50] }] as Record<
    string,
    unknown
  >[],
  scrape: { machine: 'engine-lathe', step: 'cross-gib' } as Record<string, unknown>,
});

describe('waywright gib', () => {
  it('says how parallel, what comes off, how far in, and where the gib’s own face is scraped: at its tight end, flats never', async () => {
    const { code, out } = await said(file());
    expect(code).toBe(0);
    expect(out).toContain('the far end wider by 16 ± 6 µm over 300 mm: outside. Take 13.9 µm');
    expect(out).toContain('First take 29.4 µm off its face at the thick end');
    expect(out).toContain('then push the gib in by 1.49 ± 0.10 mm, 0.99 turns of its screw');
    expect(out).toContain('Close it by 30 µm');
    const { steer } = JSON.parse((await said(file(), '--json')).out);
    const zones = steer.plan.zones as { pad: string; zone: number; passes: number; depth_um: number }[];
    const face = zones.filter((one) => one.pad === 'gib face');
    expect(zones.filter((one) => one.pad !== 'gib face').every((one) => one.passes === 0)).toBe(true);
    expect(face.at(-1)!.passes).toBeGreaterThan(face[0]!.passes);
    // 34 µm across over 330 mm is 29.4 square to the face; from the middle of the first zone to that of the last, 7/8 of it.
    expect(face.at(-1)!.depth_um - face[0]!.depth_um).toBeCloseTo((7 / 8) * 34 * Math.sin(Math.PI / 3), 3);
  });

  it('what may come off is what the travel makes good: too little of it, and the planner names the limit', async () => {
    const short = file();
    short.play.in_left_mm = 0.3;
    const { code, err } = await said(short);
    expect(code).toBe(3);
    expect(err).toContain('stock of pad "gib face" is short by');
  });

  it('shows every number’s formula when asked', async () => {
    const { out } = await said(file(), '--working');
    expect(out).toContain('67.3205 − 10 × (1 + cot 30°) = 67.3205 − 27.320508 = 39.999992 mm');
    expect(out).toContain('16 × sin 60° = 13.856406 µm');
    expect(out).toContain('thick end 12 × sin 60° = 10.392305 µm');
    expect(out).toContain('(39.837169 + 0 − 15) µm × 60 = 1.4902301 mm');
    expect(JSON.parse((await said(file(), '--json')).out).working.length).toBeGreaterThan(6);
    expect((await said(file())).out).not.toContain('Working');
  });

  it('names what cannot be taken, and leaves with 2', async () => {
    const wrong = async (change: (it: ReturnType<typeof file>) => void) => {
      const asked = file();
      change(asked);
      const { code, out, err } = await said(asked);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    expect(await wrong((f) => (f.rolls.read_mm = [67]))).toContain('rolls.read_mm');
    expect(await wrong((f) => (f.rolls.stations_mm = [0, 300, 150]))).toContain(
      'rolls.stations_mm[2]: 150; expected more than 300',
    );
    expect(await wrong((f) => (f.angle_deg = 90))).toContain('angle_deg: 90; expected a flank that leans');
    expect(await wrong((f) => (f.taper_one_in = undefined))).toContain(
      'taper_one_in: nothing; expected the taper, 60 for 1:60',
    );
    expect(await wrong((f) => (f.play.high_um = 5))).toContain('play.high_um: 5; expected more than 8');
    expect(await wrong((f) => (f.play.how = 'twist'))).toContain('play.how: "twist"');
    expect(await wrong((f) => (f.keepers[0]!.clearance_um = [55]))).toContain('keepers[0].clearance_um');
    expect(await wrong((f) => (f.scrape.step = 'cross-guide'))).toContain(
      'scrape.step: "cross-guide"; expected one of cross-gib',
    );
    expect(await wrong((f) => (f.scrape.machine = 'surface-grinder'))).toContain(
      'scrape.machine: "surface-grinder"; expected one of engine-lathe, vertical-knee-mill',
    );
    expect((await said({ angle_deg: 60 })).err).toContain('nothing to work on');
  });
});
