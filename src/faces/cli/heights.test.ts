import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import type { Doors } from './doors.ts';
import { registerHeights } from './heights.ts';
import { run } from './run.ts';

async function said(file: unknown, ...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    readText: async () => JSON.stringify(file),
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    templates: () => readTemplates(),
  } as unknown as Doors;
  const verbs = [registerHeights({ machines: () => readWholeMachines() })];
  const code = await run(['heights', 'saddle.json', ...words], doors, verbs, '0');
  return { code, out: out.join('\n').replaceAll('\u00a0', ' '), err: err.join('\n') };
}

const lathe = () => ({
  machine: 'engine-lathe',
  measured: { 'half nut over lead screw': { um: -470, sd_um: 8 } } as Record<string, object>,
  changes: [
    {
      name: 'wear',
      joint: 'saddle-on-bed',
      when: 'found',
      off_um: { 'front flank': 310, 'rear flank': 330, flat: 460 } as Record<string, number>,
      sd_um: 5,
    } as Record<string, unknown>,
  ],
  liners: [
    {
      joint: 'saddle-on-bed',
      pads: ['front flank', 'rear flank', 'flat'],
      brings: 'half nut over lead screw',
      sheet_mm: 1.6,
    } as Record<string, unknown>,
  ],
});

describe('waywright heights', () => {
  it('tells every height link by link, the milling, what is left, and what the planner may take', async () => {
    const { code, out } = await said(lathe());
    expect(code).toBe(0);
    expect(out).toContain('half nut over lead screw: “lead screw” to “half nut”');
    expect(out).toMatch(/drawn, on the bed\s+140\.0000/);
    expect(out).toMatch(/drawn, on the saddle\s+−140\.0000/);
    expect(out).toContain(
      '1.50 mm of liner is left; at least 0.80 mm must stay, so scraping may take 800 µm.',
    );
    // From 0.470 mm low to its aim, 0.030 mm high.
    expect(out).toContain('There it lifts the body by 0.500 mm.');
    expect(out).toMatch(/tailstock over spindle axis .*not measured/);
    const json = JSON.parse((await said(lathe(), '--json')).out);
    const nut = json.heights.find((one: { name: string }) => one.name === 'half nut over lead screw');
    expect(Math.abs(nut.um - 30)).toBeLessThan(0.1);
    expect(nut.found_um).toBe(-470);
    const limit = json.limits.find((one: { joint: string }) => one.joint === 'saddle-on-bed');
    expect(limit.stock_um).toEqual({ 'front flank': 800, 'rear flank': 800, flat: 800 });
    expect(limit.sink[0].most_um).toBeGreaterThan(0);
    const tail = json.limits.find((one: { joint: string }) => one.joint === 'tail-on-bed');
    expect(tail.sink).toEqual([]);
  });

  it('warns where the measured height and the sum of what was found part', async () => {
    const far = lathe();
    far.measured = { 'half nut over lead screw': { um: -700, sd_um: 8 } };
    expect((await said(far)).out).toContain('! half nut over lead screw: measured, it lies 0.2');
    expect((await said(lathe())).out).not.toContain('measured, it lies');
  });

  it('a chain of one’s own, with its own pads or a template', async () => {
    const own = {
      places: [
        { name: 'screw', body: 'bed', at_mm: [0, -80, -100] },
        { name: 'nut', body: 'saddle', at_mm: [0, -80, -100] },
      ],
      joints: [
        {
          name: 'j',
          moves: 'saddle',
          on: 'bed',
          template: 'lathe-saddle',
          origin_mm: [0, 0, 0],
          travel: 'x',
        },
      ],
      heights: [{ name: 'nut', from: 'screw', to: 'nut', low_um: -20, high_um: 20, aim_um: 0 }],
      changes: [{ name: 'shim', joint: 'j', when: 'planned', on_um: { flat: 40 } }],
    };
    const { code, out } = await said(own, '--json');
    expect(code).toBe(0);
    // The V stays: 40 µm under the flat roll the saddle, and in front of the V the nut goes down.
    expect(JSON.parse(out).heights[0].um).toBeLessThan(-5);
    const ring = {
      ...own,
      joints: [...own.joints, { ...own.joints[0], name: 'k', moves: 'bed', on: 'saddle' }],
    };
    expect((await said(ring)).err).toContain(
      'joints: "saddle on bed on saddle"; expected bodies that do not carry',
    );
  });

  it('names what cannot be taken, and leaves with 2', async () => {
    const wrong = async (change: (file: ReturnType<typeof lathe>) => void) => {
      const file = lathe();
      change(file);
      const { code, out, err } = await said(file);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    expect(await wrong((f) => (f.machine = 'lathe'))).toContain(
      'machine: "lathe"; expected one of engine-lathe',
    );
    expect(await wrong((f) => (f.measured = { nut: { um: 1, sd_um: 1 } }))).toContain('measured.nut');
    expect(await wrong((f) => (f.changes[0]!.joint = 'x'))).toContain(
      'changes[0].joint: "x"; expected one of saddle-on-bed',
    );
    expect(await wrong((f) => (f.changes[0]!.off_um = { V: 3 }))).toContain(
      'changes[0].off_um.V: "V"; expected one of front flank, rear flank, flat',
    );
    expect(await wrong((f) => (f.changes[0]!.on_um = { flat: 3 }))).toContain(
      'changes[0]: an object; expected either `off_um`',
    );
    expect(await wrong((f) => (f.liners[0]!.pads = ['front']))).toContain('liners[0].pads[0]');
    expect(await wrong((f) => (f.liners[0]!.brings = 'x'))).toContain('liners[0].brings');
    expect(await wrong((f) => (f.liners[0]!.sheet_mm = 'thick'))).toContain(
      'liners[0].sheet_mm: "thick"; expected a finite number',
    );
    expect(await wrong((f) => Object.assign(f, { dimensions: { across: 5 } }))).toContain(
      'dimensions.across: 5; expected V to flat',
    );
    expect(await wrong((f) => Object.assign(f, { extra: 1 }))).toContain(
      'extra: a key that is not known here',
    );
  });

  it('a liner that cannot be leaves with 3 and says what binds', async () => {
    const thin = lathe();
    thin.liners[0]!.sheet_mm = 0.55;
    const { code, out, err } = await said(thin);
    expect([code, out]).toEqual([3, '']);
    expect(err).toContain(
      'no answer: liner on "saddle-on-bed": of a sheet of 0.55 mm, 0.45 mm would be left',
    );
  });
});
