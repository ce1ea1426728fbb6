import { seededRandom } from '../../src/core/math/random.ts';
import type { SurfaceSize } from '../../src/core/print/picture.ts';
import { emptyField, type Field, perMm } from './field.ts';

/** How the surface was scraped: strokes in crossing layers. */
export interface ScrapingRecipe {
  readonly length_mm: number;
  readonly breadth_mm: number;
  /** Strokes' area over the surface's area. */
  readonly coverage: number;
  /** Sd of a stroke's brightness about 1: facets face different ways. */
  readonly contrast: number;
}

/** The scraped surface. */
export interface Scraped {
  /** How much was taken off, in strokes' depths. */
  readonly depth: Field;
  /** Brightness of the bare surface under even light, about 1. */
  readonly tone: Field;
  /** How strongly the last stroke there mirrors a lamp, about 1, seldom far more. */
  readonly mirror: Field;
}

/** Lays strokes as rounded hollows in layers whose directions cross; each later one hides the texture of those below. */
export function scraped(size: SurfaceSize, recipe: ScrapingRecipe, seed: number): Scraped {
  const { even, normal } = seededRandom(seed);
  const width = Math.round(size.length_mm * perMm);
  const height = Math.round(size.width_mm * perMm);
  const depth = emptyField(width, height);
  const tone = emptyField(width, height);
  const mirror = emptyField(width, height);
  tone.at.fill(1);
  mirror.at.fill(0.5);
  const strokes = Math.round(
    (recipe.coverage * size.length_mm * size.width_mm) / (0.9 * recipe.length_mm * recipe.breadth_mm),
  );
  const layers = Math.max(2, Math.round(recipe.coverage));
  const first_rad = Math.PI * even();
  const lines = new Float32Array(64);
  for (let k = 0; k < strokes; k++) {
    const layer = Math.floor((k * layers) / strokes);
    const angle = first_rad + layer * 1.35 + normal(0, 0.22);
    const long = (recipe.length_mm * perMm * Math.exp(normal(0, 0.25))) / 2;
    const radius = (recipe.breadth_mm * perMm * Math.exp(normal(0, 0.22))) / 2;
    const reach = Math.max(0, long - radius);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const x = width * even();
    const y = height * even();
    const bow = normal(0, 0.02) / perMm;
    const digs = Math.exp(normal(0, 0.3));
    const bright = Math.max(0.5, 1 + normal(0, recipe.contrast));
    const slant = normal(0, recipe.contrast);
    const glints = Math.exp(normal(-0.3, 0.8));
    for (let i = 0; i < lines.length; i++) lines[i] = normal(0, 0.35 * recipe.contrast);
    const spanX = Math.abs(c) * reach + radius + 2;
    const spanY = Math.abs(s) * reach + radius + 2;
    const top = Math.max(0, Math.ceil(y - spanY));
    const bottom = Math.min(height - 1, Math.floor(y + spanY));
    const left = Math.max(0, Math.ceil(x - spanX));
    const right = Math.min(width - 1, Math.floor(x + spanX));
    for (let row = top; row <= bottom; row++)
      for (let col = left; col <= right; col++) {
        const along = c * (col - x) + s * (row - y);
        const across = c * (row - y) - s * (col - x) + bow * along * along;
        if (across > radius || across < -radius) continue;
        const over = Math.max(0, Math.abs(along) - reach);
        const hollow = 1 - (across * across + over * over) / (radius * radius);
        if (hollow <= 0) continue;
        const at = row * width + col;
        depth.at[at] = depth.at[at]! + digs * Math.sqrt(hollow);
        if (hollow < 0.08) continue;
        const side = across / radius;
        tone.at[at] = bright + slant * side + lines[Math.floor(31.9 * (side + 1))]!;
        mirror.at[at] = glints;
      }
  }
  return { depth, tone, mirror };
}
