import { existsSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { cutOut } from './cut-out.ts';
import { perMm } from './field.ts';
import { poseOf } from './pose.ts';
import { presets } from './presets.ts';
import { printedPicture, surfaceOf } from './printed-picture.ts';
import { sharedFolder, sharedPrint, sharedPrintNames } from './shared-print.ts';
import { truthOf } from './truth.ts';

describe('a made-up print', () => {
  const one = printedPicture('medium iron with groove', 5);
  const { width_px, height_px, rgb } = one.picture;

  it('is the same for the same seed, and another for another', () => {
    const again = printedPicture('medium iron with groove', 5);
    expect(Buffer.compare(again.contact!, one.contact!)).toBe(0);
    expect(Buffer.compare(Buffer.from(again.picture.rgb), Buffer.from(rgb))).toBe(0);
    expect(Buffer.compare(surfaceOf('medium iron with groove', 6).contact, one.contact!)).not.toBe(0);
  });

  it('touches as much as its recipe says, but for what grooves take, and nowhere in them', () => {
    const out = cutOut(one.exclusions, one.size);
    expect(one.truth.bearing_pct).toBeGreaterThan(24);
    expect(one.truth.bearing_pct).toBeLessThan(26.5);
    expect(one.contact!.some((touches, at) => touches === 1 && out[at] === 1)).toBe(false);
  });

  it('fills its frame, the surface inside', () => {
    expect(rgb.length).toBe(3 * width_px * height_px);
    for (const { x, y } of one.corners) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(width_px - 1);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(height_px - 1);
    }
  });

  it('shows blue where it touches and grey where not, in the photo at the place that the pose says', () => {
    const pose = poseOf(presets['medium iron with groove'].scene.camera.pose, one.size, width_px, height_px);
    const out = cutOut(one.exclusions, one.size);
    const cols = one.size.length_mm * perMm;
    const mean = { on: [0, 0, 0], beside: [0, 0, 0] };
    const n = { on: 0, beside: 0 };
    for (let at = 0; at < one.contact!.length; at += 97) {
      if (out[at] === 1) continue;
      const place = { x: ((at % cols) + 0.5) / perMm, y: (Math.floor(at / cols) + 0.5) / perMm };
      const { x, y } = pose.toPhoto(place);
      const back = pose.toSurface({ x, y });
      expect(Math.hypot(back.x - place.x, back.y - place.y)).toBeLessThan(1e-9);
      const which = one.contact![at] === 1 ? 'on' : 'beside';
      n[which]++;
      for (let k = 0; k < 3; k++) mean[which][k]! += rgb[3 * (Math.round(y) * width_px + Math.round(x)) + k]!;
    }
    expect(mean.on[2]! / mean.on[0]!).toBeGreaterThan(1.5);
    expect(mean.beside[2]! / mean.beside[0]!).toBeLessThan(1.1);
    expect(mean.on[0]! / n.on).toBeLessThan((0.6 * mean.beside[0]!) / n.beside);
  });
});

describe('its truth', () => {
  it('joins elements that touch by a corner, leaves small regions out of the count and in the bearing', () => {
    // Rows of 30 × 20 mm: two squares of 0.6 mm that meet at a corner, one bar of 0.5 mm², one of 0.49 mm².
    const is = new Uint8Array(300 * 200);
    const fill = (left: number, top: number, wide: number, high: number) => {
      for (let row = top; row < top + high; row++) is.fill(1, 300 * row + left, 300 * row + left + wide);
    };
    fill(10, 10, 6, 6);
    fill(16, 16, 6, 6);
    fill(100, 50, 10, 5);
    fill(200, 50, 7, 7);
    fill(260, 100, 20, 10);
    const truth = truthOf(is, new Uint8Array(is.length), { length_mm: 30, width_mm: 20 });
    expect(truth.spots.map(({ area_mm2 }) => area_mm2)).toEqual([0.72, 0.5, 2]);
    expect(truth.spots[0]!.x_mm).toBeCloseTo(1.6, 12);
    expect(truth.cells.map(({ count }) => count)).toEqual([2, 1]);
    expect(truth.bearing_pct).toBeCloseTo((100 * 3.71) / 600, 10);
    expect(truth.cells.every(({ partial }) => partial)).toBe(true);
  });

  it(`is that of the shared pictures on their own masks (${sharedPrintNames().length} there)`, async () => {
    // Outside truth: counts, areas and shares that came with the tuning pictures. Without them, a made-up mask.
    for (const name of sharedPrintNames()) {
      const file = join(sharedFolder()!, `${name}_mask.png`);
      if (!existsSync(file)) continue;
      const mask = await sharp(file).toColourspace('b-w').raw().toBuffer();
      const { truth, size, exclusions } = await sharedPrint(name);
      const mine = truthOf(
        Uint8Array.from(mask, (v) => (v > 127 ? 1 : 0)),
        cutOut(exclusions, size),
        size,
      );
      expect(mine.spots.length, name).toBe(truth.spots.length);
      // Rims of grooves may lie one element otherwise on their raster.
      expect(Math.abs(mine.bearing_pct - truth.bearing_pct), name).toBeLessThan(0.1);
      expect(
        mine.cells.filter(({ partial }) => !partial).map(({ count }) => count),
        name,
      ).toEqual(truth.cells.filter(({ partial }) => !partial).map(({ count }) => count));
    }
    const made = surfaceOf('bare', 3);
    const area = made.truth.spots.reduce((sum, { area_mm2 }) => sum + area_mm2, 0);
    expect(area).toBeLessThanOrEqual((made.truth.bearing_pct * made.truth.net_mm2) / 100 + 1e-9);
    expect(area).toBeGreaterThan((0.7 * made.truth.bearing_pct * made.truth.net_mm2) / 100);
  });
});
