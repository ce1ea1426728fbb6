import { describe, expect, it } from 'vitest';
import type { Pad } from '../body/pad.ts';
import type { Slide } from '../body/slide.ts';
import { wedgeOff } from './wedge-off.ts';

const pad = (name: string, x: number, y: number): Pad => ({
  name,
  centre_mm: [x, y, 0],
  normal: [0, 0, 1],
  length_mm: 100,
  width_mm: 50,
  zones: 2,
  material: 'iron',
});
const base: Slide = {
  name: 'base',
  free: 'x',
  pads: [pad('front, gear end', -200, -120), pad('back, nose end', 200, 120)],
};

describe('a wedge off the pads of a base', () => {
  it('worked by hand: 10 µrad about y takes the nose end down: 10 µm in a metre, from the first zone’s middle on', () => {
    // Zones lie at −225, −175, 175 and 225 mm: 0, 0.5, 4 and 4.5 µm beyond the first.
    const off = wedgeOff(base, 'y', 10);
    expect(off['front, gear end']!.map((um) => um.toFixed(3))).toEqual(['0.000', '0.500']);
    expect(off['back, nose end']!.map((um) => um.toFixed(3))).toEqual(['4.000', '4.500']);
  });
  it('the other way round the other end comes down', () => {
    const off = wedgeOff(base, 'y', -10);
    expect(off['front, gear end']!.map((um) => um.toFixed(3))).toEqual(['4.500', '4.000']);
    expect(off['back, nose end']!.map((um) => um.toFixed(3))).toEqual(['0.500', '0.000']);
  });
  it('about x: right-handed the back rises, so the operator’s pads come down, 240 mm from the back ones', () => {
    const off = wedgeOff(base, 'x', 50);
    expect(off['front, gear end']!.map((um) => um.toFixed(3))).toEqual(['12.000', '12.000']);
    expect(off['back, nose end']!.map((um) => um.toFixed(3))).toEqual(['0.000', '0.000']);
  });
  it('nothing to turn takes nothing; a face that looks away from the others is refused', () => {
    expect(wedgeOff(base, 'y', 0)['back, nose end']).toEqual([0, 0]);
    const away: Pad = { ...pad('under', 0, 0), normal: [0, 0, -1] };
    const three = { ...base, pads: [...base.pads, away] };
    expect(() => wedgeOff(three, 'y', 1)).toThrow('"under" looks away');
  });
});
