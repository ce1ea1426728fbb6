import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { machineInput } from '../../contract/machine.ts';
import { templateInput } from '../../contract/template.ts';
import { machineChain } from '../../shop/order/machine-chain.ts';
import { seededRandom } from '../math/random.ts';
import type { Chain, Change } from './chain.ts';
import { heightFound, heightsFound } from './heights.ts';
import { linerFor } from './liner.ts';
import { sinkRooms } from './sink.ts';

const json = (file: string) => JSON.parse(readFileSync(file, 'utf8'));
const templates = readdirSync('machines')
  .filter((name) => name.endsWith('.json'))
  .map((name) => templateInput(json(`machines/${name}`)));
const lathe = machineInput(json('machines/whole/engine-lathe.json'), templates);
const drawn = machineChain(lathe, templates)!;

/** Wear and cuts of random size on every face of every joint. */
function spoiled(seed: number): Chain {
  const { even } = seededRandom(seed);
  const changes: Change[] = drawn.joints.map((joint, k) => ({
    name: `wear ${k}`,
    joint: joint.name,
    when: even() < 0.5 ? 'found' : 'planned',
    thickness_um: Object.fromEntries(joint.slide.pads.map((pad) => [pad.name, 300 * (even() - 0.7)])),
    sd_um: 10 * even(),
  }));
  return { ...drawn, changes };
}
const seeds = Array.from({ length: 25 }, (_, k) => k + 1);
const bridged = (chain: Chain, from: string, to: string) =>
  heightFound(chain, { name: 'x', from, to, low_um: -1, high_um: 1, aim_um: 0 });

describe('the chain of heights', () => {
  it('every drawn length and every change adds up to the height, to a tenth of a micrometre', () => {
    for (const seed of seeds)
      for (const one of heightsFound(spoiled(seed))) {
        const parts_mm = one.parts.reduce((sum, part) => sum + part.mm, 0);
        expect(Math.abs(parts_mm - one.drawn_mm), `${one.name}, seed ${seed}`).toBeLessThan(1e-4);
        const links_um = one.changes.reduce((sum, link) => sum + link.um, 0);
        expect(Math.abs(links_um - one.um), `${one.name}, seed ${seed}`).toBeLessThan(0.1);
      }
  });

  it('round any ring of places the heights add up to nothing, to a tenth of a micrometre', () => {
    const names = drawn.places.map((place) => place.name);
    for (const seed of seeds) {
      const chain = spoiled(seed);
      const { even } = seededRandom(seed + 1000);
      const ring = Array.from({ length: 5 }, () => names[Math.floor(even() * names.length)]!);
      const links = ring.map((from, k) => bridged(chain, from, ring[(k + 1) % ring.length]!));
      expect(Math.abs(links.reduce((sum, one) => sum + one.um, 0)), `seed ${seed}`).toBeLessThan(0.1);
      expect(Math.abs(links.reduce((sum, one) => sum + one.drawn_mm, 0))).toBeLessThan(1e-4);
    }
  });

  it('a height turned round has the other sign and the same doubt', () => {
    const chain = spoiled(7);
    const there = bridged(chain, 'lead screw', 'half nut');
    const back = bridged(chain, 'half nut', 'lead screw');
    expect(back.um).toBeCloseTo(-there.um, 9);
    expect(back.sd_um).toBeCloseTo(there.sd_um, 9);
  });

  it('a liner brings its height to its aim whatever was worn, to a tenth of a micrometre, and the saddle level again', () => {
    for (const seed of seeds) {
      const chain = spoiled(seed);
      const found = linerFor(chain, {
        joint: 'saddle-on-bed',
        pads: ['front flank', 'rear flank', 'flat'],
        brings: 'half nut over lead screw',
        bond_mm: 0.1,
        bond_sd_mm: 0.03,
        machining_mm: 0.05,
        scraping_mm: 0.1,
      });
      if (!found.ok) throw new Error(`seed ${seed}: ${found.text}`);
      const after: Chain = { ...chain, changes: [...chain.changes, found.finished] };
      const height = after.heights.find((one) => one.name === 'half nut over lead screw')!;
      expect(Math.abs(heightFound(after, height).um - height.aim_um), `seed ${seed}`).toBeLessThan(0.1);
      const front = bridged(after, 'lead screw', 'half nut').um;
      const nearer = bridged(after, 'lead screw', 'rack pinion').um;
      expect(Math.abs(front - nearer), `seed ${seed}`).toBeLessThan(0.1);
    }
  });

  it('a height as measured takes the place of what was found, and says how far the sum is off', () => {
    const chain: Chain = {
      ...drawn,
      heights: drawn.heights.map((one) => ({ ...one, measured: { um: -431, sd_um: 6 } })),
      changes: [
        {
          name: 'wear',
          joint: 'saddle-on-bed',
          when: 'found',
          thickness_um: { 'front flank': -280, 'rear flank': -280, flat: -390 },
          sd_um: 4,
        },
      ],
    };
    for (const one of heightsFound(chain)) {
      const links_um = one.changes.reduce((sum, link) => sum + link.um, 0);
      expect(links_um + one.closure!.um).toBeCloseTo(one.um, 9);
    }
    const found = heightsFound(chain)[0]!;
    expect([found.found_um, found.um]).toEqual([-431, -431]);
    expect(found.closure!.um).toBeCloseTo(-431 - found.changes[0]!.um, 9);
    expect(found.closure!.um).toBeLessThan(-20);
  });

  it('sinking room shrinks by what is sunk, for a place that comes lower and one that comes higher', () => {
    const before = sinkRooms(drawn, 'saddle-on-bed');
    const cut: Change = {
      name: 'cut',
      joint: 'saddle-on-bed',
      when: 'planned',
      thickness_um: { 'front flank': -12 * Math.SQRT1_2, 'rear flank': -12 * Math.SQRT1_2, flat: -12 },
      sd_um: 0,
    };
    const after = sinkRooms({ ...drawn, changes: [cut] }, 'saddle-on-bed');
    expect(before.map((room) => room.name)).toEqual([
      'half nut over lead screw',
      'pinion over rack',
      'tool over spindle axis',
    ]);
    before.forEach((room, k) => {
      expect(after[k]!.room_um).toBeCloseTo(room.room_um - 12, 6);
    });
    const head = sinkRooms(drawn, 'head-on-bed').find((one) => one.name === 'tailstock over spindle axis')!;
    expect([head.room_um, head.at_mm]).toEqual([40, [190, 0, 170]]);
  });
});

describe('a liner that cannot be', () => {
  const liner = (more: object) =>
    linerFor(
      {
        ...drawn,
        changes: [
          {
            name: 'wear',
            joint: 'saddle-on-bed',
            when: 'found',
            thickness_um: { 'front flank': -350, 'rear flank': -350, flat: -500 },
            sd_um: 0,
          },
        ],
      },
      {
        joint: 'saddle-on-bed',
        pads: ['front flank', 'rear flank', 'flat'],
        brings: 'half nut over lead screw',
        bond_mm: 0.1,
        bond_sd_mm: 0.03,
        machining_mm: 0,
        scraping_mm: 0.1,
        ...more,
      },
    );

  it('says which limit binds and by how much', () => {
    expect(liner({ sheet_mm: 0.5 })).toMatchObject({ ok: false, why: 'too little left', short_mm: 0.1 });
    expect(liner({ sheet_mm: 0.8, machining_mm: 0.35, least_mm: 0.3 })).toMatchObject({
      ok: false,
      why: 'sheet too thin',
    });
    expect(liner({ sheet_mm: 3.2, wall_mm: 5 })).toMatchObject({ ok: false, why: 'wall too thin' });
    expect(liner({ brings: 'tailstock over spindle axis' })).toMatchObject({
      ok: false,
      why: 'does not move it',
    });
    expect(liner({ groove_mm: 0.9, sheet_mm: 1.2 })).toMatchObject({
      ok: false,
      why: 'too little left',
      short_mm: 0.1,
    });
  });

  it('without a thickness the thinnest usual sheet that fits is taken', () => {
    const found = liner({});
    expect(found.ok && found.sheet_mm).toBe(0.8);
    const deeper = liner({ machining_mm: 0.3 });
    expect(deeper.ok && deeper.sheet_mm).toBe(1);
  });

  it('faces left out are told to stand off', () => {
    const found = liner({ pads: ['front flank', 'rear flank'] });
    expect(found.ok && found.stands_off.map((one) => one.pad)).toEqual(['flat']);
  });
});
