import type { SurfaceSize } from '../../src/core/print/picture.ts';
import { emptyField, type Field, perMm } from './field.ts';
import { latticeNoise } from './lattice.ts';
import type { Scraped } from './scraping.ts';

/** Reflected share of red, green and blue light, 0 to 1. */
export type Rgb = readonly [number, number, number];

export type BaseMaterial = 'iron' | 'green liner' | 'brown liner' | 'black liner';

const colours: Record<BaseMaterial, Rgb> = {
  iron: [0.47, 0.465, 0.45],
  'green liner': [0.235, 0.36, 0.265],
  'brown liner': [0.3, 0.21, 0.13],
  'black liner': [0.105, 0.105, 0.108],
};

/** The bare surface. */
export interface Base {
  readonly colour: Rgb;
  /** Brightness under even light, about 1. */
  readonly tone: Field;
  /** Bronze specks in a liner's fill, 0 to 1; absent on iron. */
  readonly flecks?: Field;
}

/** Iron shows graphite and stroke facets; a liner shows weave and specks of its fill, and its strokes less. */
export function baseOf(material: BaseMaterial, surface: Scraped, size: SurfaceSize, seed: number): Base {
  const { width, height } = surface.tone;
  const grain = latticeNoise(seed + 51);
  const stain = latticeNoise(seed + 52);
  const liner = material !== 'iron';
  const tone = emptyField(width, height);
  const flecks = liner ? emptyField(width, height) : undefined;
  const turn = 0.5 * grain(size.length_mm, 0.5);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const at = row * width + col;
      const x = col / perMm;
      const y = row / perMm;
      const speck = grain(5 * x, 5 * y);
      const shade = 1 + 0.06 * stain(x / 15, y / 15);
      if (flecks === undefined) {
        // Graphite: small dark pits.
        tone.at[at] = shade * surface.tone.at[at]! * (1 + 0.03 * speck - (speck < -0.72 ? 0.12 : 0));
        continue;
      }
      const weave = Math.sin(5.2 * (c * x + s * y)) * Math.sin(5.2 * (c * y - s * x));
      tone.at[at] = shade * (1 + 0.5 * (surface.tone.at[at]! - 1)) * (1 + 0.04 * weave + 0.03 * speck);
      flecks.at[at] = speck > 0.74 ? 4 * (speck - 0.74) : 0;
    }
  return { colour: colours[material], tone, ...(flecks && { flecks }) };
}
