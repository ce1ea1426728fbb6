import { seededRandom } from '../../src/core/math/random.ts';
import { emptyField, type Field, perMm, smoothed } from './field.ts';
import { latticeNoise } from './lattice.ts';
import type { Scraped } from './scraping.ts';

/** Where the surface touches the plate. */
export interface ContactRecipe {
  /** What stays between the strokes, or round spots laid on the surface. */
  readonly form: 'between strokes' | 'round spots';
  /** Contact over the whole surface, 0 to 1. */
  readonly share: number;
  /** How uneven it is over about 20 mm: 0 even, 1 clearly clustered. */
  readonly clustering: number;
  /** How much higher the end at x = L stands than the other, in strokes' depths; negative: the end at 0 carries. */
  readonly trend: number;
  /** Round spots only: their number per 625 mm². */
  readonly density?: number;
  /** Share of spots whose middle is rubbed bright, 0 to 1. */
  readonly rubbed: number;
}

export interface Contact {
  /** 1 where it touches. */
  readonly is: Uint8Array;
  /** Share of the blue that was rubbed off again: up to 1 in the middle of some spots. */
  readonly rubbed: Float32Array;
}

/** The highest part of the surface touches, as much of it as the recipe's share says. */
export function contactOf(surface: Scraped, recipe: ContactRecipe, seed: number): Contact {
  const { width, height } = surface.depth;
  const level =
    recipe.form === 'between strokes' ? leftStanding(surface, seed) : roundSpots(surface, recipe, seed);
  const wave = latticeNoise(seed + 11);
  const swell = latticeNoise(seed + 12);
  const tall = recipe.form === 'between strokes' ? 1 : 0.35;
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const x = col / perMm;
      const y = row / perMm;
      const at = row * width + col;
      level.at[at] =
        level.at[at]! +
        tall * recipe.clustering * (0.7 * wave(x / 18, y / 18) + 0.4 * swell(x / 7, y / 7)) +
        tall * recipe.trend * (col / width - 0.5);
    }
  const cut = quantile(level.at, 1 - recipe.share);
  const is = Uint8Array.from(level.at, (one) => (one > cut ? 1 : 0));
  return { is, rubbed: rubbedMiddles(is, width, height, recipe.rubbed, seed) };
}

/** What the strokes left, with a fine roughness so that no land is quite flat. */
function leftStanding(surface: Scraped, seed: number): Field {
  const { width, height } = surface.depth;
  const rough = latticeNoise(seed + 21);
  const level = smoothed(surface.depth, 0.2);
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const at = row * width + col;
      level.at[at] = 0.35 * rough((0.9 * col) / perMm, (0.9 * row) / perMm) - level.at[at]!;
    }
  return level;
}

/** Round spots with wavy rims and of many sizes, as far from each other as chance allows in a few tries. */
function roundSpots(surface: Scraped, recipe: ContactRecipe, seed: number): Field {
  const { width, height } = surface.depth;
  const { even, normal } = seededRandom(seed + 31);
  const level = emptyField(width, height);
  level.at.fill(-3);
  const spots = Math.round(((recipe.density ?? 15) * width * height) / (625 * perMm * perMm));
  // Mean area with this spread of radii; the share is set exactly by the cut.
  const radius = Math.sqrt(
    (1.4 * recipe.share * width * height) / (spots * Math.PI * Math.exp(2 * 0.4 ** 2)),
  );
  const places: { x: number; y: number }[] = [];
  for (let k = 0; k < spots; k++) {
    let best = { x: 0, y: 0, far: -1 };
    for (let tries = 0; tries < 6; tries++) {
      const x = width * even();
      const y = height * even();
      let far = Number.POSITIVE_INFINITY;
      for (const p of places) far = Math.min(far, (p.x - x) ** 2 + (p.y - y) ** 2);
      if (far > best.far) best = { x, y, far };
    }
    places.push(best);
    const r = radius * Math.exp(normal(0, 0.4));
    const angle = Math.PI * even();
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const flat = 1 + 0.6 * even();
    const waves = [2, 3, 5].map((n) => ({ n, by: normal(0, 0.2 / n), from: 2 * Math.PI * even() }));
    const span = Math.ceil(2.2 * r);
    for (let row = Math.max(0, Math.ceil(best.y) - span); row < Math.min(height, best.y + span); row++)
      for (let col = Math.max(0, Math.ceil(best.x) - span); col < Math.min(width, best.x + span); col++) {
        const u = (c * (col - best.x) + s * (row - best.y)) / r;
        const v = (flat * (c * (row - best.y) - s * (col - best.x))) / r;
        const turn = Math.atan2(v, u);
        let rim = 1;
        for (const { n, by, from } of waves) rim += by * Math.sin(n * turn + from);
        const at = row * width + col;
        level.at[at] = Math.max(level.at[at]!, 1 - Math.hypot(u, v) / rim);
      }
  }
  return level;
}

/** Middles of some spots, where rubbing took the blue away again; it stays along their rims. */
function rubbedMiddles(
  is: Uint8Array,
  width: number,
  height: number,
  share: number,
  seed: number,
): Float32Array {
  const rubbed = new Float32Array(is.length);
  if (share === 0) return rubbed;
  const inner = smoothed({ width, height, at: Float32Array.from(is) }, 0.4);
  const chosen = latticeNoise(seed + 41);
  // The lattice lies above this value over about the stated share of the plane.
  const above = 0.75 - 1.5 * share;
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const at = row * width + col;
      if (inner.at[at]! < 0.82) continue;
      const here = Math.min(1, Math.max(0, 5 * (chosen(col / 26, row / 26) - above)));
      rubbed[at] = here * Math.min(1, (inner.at[at]! - 0.82) / 0.13);
    }
  return rubbed;
}

/** From a histogram of 4096 steps. */
function quantile(values: Float32Array, share: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const one of values) {
    if (one < low) low = one;
    if (one > high) high = one;
  }
  const steps = new Uint32Array(4096);
  for (const one of values) {
    const step = Math.min(4095, Math.floor((4096 * (one - low)) / (high - low)));
    steps[step] = steps[step]! + 1;
  }
  let seen = 0;
  for (let step = 0; step < 4096; step++) {
    seen += steps[step]!;
    if (seen >= share * values.length) return low + ((step + 1) / 4096) * (high - low);
  }
  return high;
}
