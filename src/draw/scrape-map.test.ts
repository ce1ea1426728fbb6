import { describe, expect, it } from 'vitest';
import type { Slide } from '../core/body/slide.ts';
import type { TurnedOver } from '../core/ledger/entry.ts';
import type { PlaceWords } from '../core/ledger/setup.ts';
import { onBench } from './bench-side.ts';
import { mapRows } from './map-rows.ts';
import { type MapShow, scrapeMap } from './scrape-map.ts';
import { nodesOf, type Shape } from './shape.ts';

const q = Math.SQRT1_2;
/** A saddle on a V and a flat; its zones hold 18 different numbers, so that no swap goes unseen. */
const saddle: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [
    {
      name: 'front flank',
      centre_mm: [4, -9.9, 0],
      normal: [0, -q, q],
      length_mm: 480,
      width_mm: 28,
      zones: 6,
      material: 'liner',
    },
    {
      name: 'rear flank',
      centre_mm: [4, 9.9, 0],
      normal: [0, q, q],
      length_mm: 480,
      width_mm: 28,
      zones: 6,
      material: 'liner',
    },
    {
      name: 'flat',
      centre_mm: [4, 300, 3],
      normal: [0, 0, 1],
      length_mm: 480,
      width_mm: 60,
      zones: 6,
      material: 'liner',
    },
  ],
};
const places: PlaceWords = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: 'operator’s side',
  plus_side: 'back of the machine',
  travel: 'x',
};
const passes = {
  'front flank': [11, 12, 13, 14, 15, 16],
  'rear flank': [21, 22, 23, 24, 25, 26],
  flat: [31, 32, 33, 34, 35, 36],
};

interface Seen {
  readonly pad: string;
  readonly zone: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly words: string[];
}

/** What stands where on a map: read off the drawing, zone by zone. */
function seenOn(map: Shape): Seen[] {
  return nodesOf(map)
    .filter((node) => node.attributes['data-zone'] !== undefined)
    .map((node) => {
      const touch = nodesOf(node).find((part) => part.attributes['pointer-events'] === 'all')!.attributes;
      return {
        pad: String(node.attributes['data-pad']),
        zone: Number(node.attributes['data-zone']),
        x: Number(touch.x),
        y: Number(touch.y),
        width: Number(touch.width),
        height: Number(touch.height),
        words: nodesOf(node)
          .filter((part) => part.tag === 'text')
          .map((part) => String(part.children[0])),
      };
    });
}

const mapOf = (
  turnedOver: TurnedOver,
  show: MapShow = { kind: 'passes', passes },
  width = 358,
  slide = saddle,
) => scrapeMap({ title: 'Passes by zone', slide, places, turnedOver, width, show });

/** The figures as a person reads them, row by row from the far side, each from left to right. */
const readRows = (map: Shape): string[][] => {
  const seen = seenOn(map);
  const levels = [...new Set(seen.map((zone) => zone.y))].sort((a, b) => a - b);
  return levels.map((y) =>
    seen
      .filter((zone) => zone.y === y)
      .sort((a, b) => a.x - b.x)
      .map((zone) => zone.words[0]!),
  );
};

describe('the map lies as the part lies', () => {
  it('turned end over end: headstock end at the right, the operator’s side near', () => {
    expect(readRows(mapOf('end over end'))).toEqual([
      ['36', '35', '34', '33', '32', '31'],
      ['26', '25', '24', '23', '22', '21'],
      ['16', '15', '14', '13', '12', '11'],
    ]);
  });
  it('turned front to back: headstock end at the left, the operator’s side far', () => {
    expect(readRows(mapOf('front to back'))).toEqual([
      ['11', '12', '13', '14', '15', '16'],
      ['21', '22', '23', '24', '25', '26'],
      ['31', '32', '33', '34', '35', '36'],
    ]);
  });
  it('both pictures hold the same number in the same zone of the part, and are each other turned in their plane', () => {
    const [a, b] = (['end over end', 'front to back'] as const).map((how) => seenOn(mapOf(how)));
    const byZone = (seen: Seen[]) => seen.map(({ pad, zone, words }) => `${pad} ${zone} ${words[0]}`).sort();
    expect(byZone(a!)).toEqual(byZone(b!));
    expect(byZone(a!)).toHaveLength(18);
    expect(
      readRows(mapOf('end over end'))
        .reverse()
        .map((row) => [...row].reverse()),
    ).toEqual(readRows(mapOf('front to back')));
  });
  it('the ringed dot stands on the zone at the headstock end, operator’s side', () => {
    for (const how of ['end over end', 'front to back'] as const) {
      const map = mapOf(how);
      const dot = nodesOf(map).find((node) => node.tag === 'circle')!.attributes;
      const far = (zone: Seen): number =>
        Math.hypot(zone.x + zone.width / 2 - Number(dot.cx), zone.y + zone.height / 2 - Number(dot.cy));
      const nearest = seenOn(map).sort((a, b) => far(a) - far(b))[0]!;
      expect([nearest.pad, nearest.zone]).toEqual(['front flank', 0]);
    }
  });
});

describe('a thumb can hit every zone', () => {
  it.each([5, 6, 7, 8])('with %i zones a row on a phone', (zones) => {
    const slide = { ...saddle, pads: saddle.pads.map((pad) => ({ ...pad, zones })) };
    const map = mapOf('end over end', { kind: 'passes', passes: {} }, 358, slide);
    expect(Number(map.attributes.width)).toBeLessThanOrEqual(390);
    for (const zone of seenOn(map)) {
      expect(zone.width).toBeGreaterThanOrEqual(48 - 1e-9);
      expect(zone.height).toBeGreaterThanOrEqual(48);
    }
  });
});

describe('during a pass', () => {
  it('lights the zones with that many passes or more; the others are done or 0', () => {
    const plan = {
      'front flank': [0, 1, 2, 3, 4, 5],
      'rear flank': [2, 2, 2, 2, 2, 2],
      flat: [1, 1, 0, 0, 1, 1],
    };
    const seen = seenOn(mapOf('front to back', { kind: 'pass', pass: 2, passes: plan }));
    const words = (pad: string) =>
      seen
        .filter((zone) => zone.pad === pad)
        .sort((a, b) => a.zone - b.zone)
        .map((zone) => zone.words[0] ?? 'lit');
    expect(words('front flank')).toEqual(['0', 'done', 'lit', 'lit', 'lit', 'lit']);
    expect(words('rear flank')).toEqual(Array(6).fill('lit'));
    expect(words('flat')).toEqual(['done', 'done', '0', '0', 'done', 'done']);
  });
});

describe('rows follow the pads', () => {
  it('pads one behind the other along the travel share a row', () => {
    const base: Slide = {
      name: 'base',
      free: 'x',
      pads: [
        [-300, -104],
        [310, -100],
        [-300, 96],
        [310, 100],
      ].map(([x, y], i) => ({
        name: `pad ${i}`,
        centre_mm: [x!, y!, 0],
        normal: [0, 0, 1],
        length_mm: 120,
        width_mm: 60,
        zones: 3,
        material: 'iron',
      })),
    };
    const names = (how: TurnedOver) =>
      mapRows(base, onBench(base, how)).map((row) => row.pads.map((lying) => lying.pad.name));
    expect(names('end over end')).toEqual([
      ['pad 3', 'pad 2'],
      ['pad 1', 'pad 0'],
    ]);
    expect(names('front to back')).toEqual([
      ['pad 0', 'pad 1'],
      ['pad 2', 'pad 3'],
    ]);
  });
  it('only the flanks of one V meet in a root, and only a gap makes another bar', () => {
    const rows = mapRows(saddle, onBench(saddle, 'end over end'));
    expect(rows.map((row) => [row.pads[0]!.pad.name, row.joint, row.meetsBefore])).toEqual([
      ['flat', 'first', false],
      ['rear flank', 'new bar', false],
      ['front flank', 'same bar', true],
    ]);
  });
});
