import type { Exclusion } from '../../src/core/print/exclusion.ts';
import type { SurfaceSize } from '../../src/core/print/picture.ts';
import { type BaseMaterial, baseOf, type Rgb } from './base.ts';
import { type ContactRecipe, contactOf } from './contact.ts';
import { cutOut } from './cut-out.ts';
import { perMm } from './field.ts';
import { latticeNoise } from './lattice.ts';
import { filmOf, type PigmentRecipe, throughFilm } from './pigment.ts';
import { type ScrapingRecipe, scraped } from './scraping.ts';
import { type Truth, truthOf } from './truth.ts';

/** A printed surface, before light and camera. */
export interface SurfaceRecipe {
  readonly size: SurfaceSize;
  readonly scraping: ScrapingRecipe;
  readonly contact: ContactRecipe;
  readonly material: BaseMaterial;
  readonly pigment: PigmentRecipe;
  readonly exclusions: readonly Exclusion[];
  /** Film left lying in grooves. */
  readonly residue: number;
}

/** What the surface sends back of the light that falls on it, at `perMm`. */
export interface PaintedSurface {
  readonly size: SurfaceSize;
  readonly width: number;
  readonly height: number;
  /** Red, green and blue share of each element. */
  readonly reflects: Float32Array;
  /** Strength of its mirror facets, about 1 on bare iron. */
  readonly mirror: Float32Array;
  /** 1 where it touches, and nowhere in a groove or hole. */
  readonly contact: Uint8Array;
  readonly truth: Truth;
}

const grooveColour: Rgb = [0.115, 0.105, 0.09];

/** Scrapes the surface, prints it and looks through the film. The seed settles all of it. */
export function paintedSurface(recipe: SurfaceRecipe, seed: number): PaintedSurface {
  const { size } = recipe;
  const width = Math.round(size.length_mm * perMm);
  const height = Math.round(size.width_mm * perMm);
  const strokes = scraped(size, recipe.scraping, seed);
  const contact = contactOf(strokes, recipe.contact, seed);
  const out = cutOut(recipe.exclusions, size);
  for (let at = 0; at < out.length; at++) if (out[at] === 1) contact.is[at] = 0;
  const base = baseOf(recipe.material, strokes, size, seed);
  const film = filmOf(contact, width, height, recipe.pigment, seed);
  const softened = softEdge(contact.is, width, height);
  const dirt = latticeNoise(seed + 91);
  const shine = recipe.material === 'iron' ? 1 : 0.45;
  const reflects = new Float32Array(3 * width * height);
  const mirror = new Float32Array(width * height);
  for (let at = 0; at < out.length; at++) {
    const col = at % width;
    const row = (at - col) / width;
    if (out[at] === 1) {
      const deep = isHole(recipe.exclusions, (col + 0.5) / perMm, (row + 0.5) / perMm);
      const shade = (deep ? 0.3 : 1) * (1 + 0.25 * dirt(col / 20, row / 20));
      const left = deep ? 0 : recipe.residue * Math.max(0, 0.4 + 1.2 * dirt(col / 220, row / 220));
      for (const k of [0, 1, 2] as const)
        reflects[3 * at + k] = throughFilm(grooveColour[k]! * shade, left, k);
      mirror[at] = 0.05;
      continue;
    }
    const touching = softened[at]!;
    const fleck = base.flecks?.at[at] ?? 0;
    const bright = base.tone.at[at]! * (1 + 0.2 * contact.rubbed[at]!);
    for (const k of [0, 1, 2] as const) {
      const bare = Math.max(0.02, base.colour[k]! * bright + fleck * (k === 2 ? 0.02 : 0.12));
      let sent = 0;
      if (touching > 0) sent += touching * throughFilm(bare, film.on.at[at]!, k);
      if (touching < 1) sent += (1 - touching) * throughFilm(bare, film.beside.at[at]!, k);
      reflects[3 * at + k] = sent;
    }
    // Film covers the facets.
    mirror[at] = shine * strokes.mirror.at[at]! * (1 - 0.6 * touching);
  }
  return {
    size,
    width,
    height,
    reflects,
    mirror,
    contact: contact.is,
    truth: truthOf(contact.is, out, size),
  };
}

function isHole(exclusions: readonly Exclusion[], x: number, y: number): boolean {
  return exclusions.some((one) => one.type === 'circle' && (x - one.x) ** 2 + (y - one.y) ** 2 <= one.r ** 2);
}

/** Share of contact about each element, weights 1 2 1 both ways: an edge within one element is as wide as the raster allows. */
function softEdge(is: Uint8Array, width: number, height: number): Float32Array {
  const soft = new Float32Array(is.length);
  for (let row = 0; row < height; row++) {
    const up = Math.max(0, row - 1) * width;
    const here = row * width;
    const down = Math.min(height - 1, row + 1) * width;
    for (let col = 0; col < width; col++) {
      const l = Math.max(0, col - 1);
      const r = Math.min(width - 1, col + 1);
      soft[here + col] =
        (is[up + l]! +
          is[up + r]! +
          is[down + l]! +
          is[down + r]! +
          2 * (is[up + col]! + is[down + col]! + is[here + l]! + is[here + r]!) +
          4 * is[here + col]!) /
        16;
    }
  }
  return soft;
}
