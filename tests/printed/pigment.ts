import type { Contact } from './contact.ts';
import { type Field, perMm, smoothed } from './field.ts';
import { drawnOut, latticeNoise } from './lattice.ts';

/** The film of spotting blue. Film strengths are optical depths: 1 takes about 98 % of the red light. */
export interface PigmentRecipe {
  readonly strength: number;
  /** How much the strength varies from spot to spot, 0 to 1. */
  readonly variation: number;
  /** Film at a spot's edge over that in its middle: below 1 thin edges, above 1 a dark rim of pushed-out blue. */
  readonly edge: number;
  /** Blue squeezed out past a spot's edge, over the film on it; it ends within about 0.2 mm. */
  readonly bead: number;
  /** Film everywhere, also where nothing touches. */
  readonly haze: number;
  /** Film drawn out along the rub from spots onto bare surface, bridging them. */
  readonly smear: number;
  readonly rub_rad: number;
}

export interface Film {
  /** Where it touches. */
  readonly on: Field;
  /** Beside. */
  readonly beside: Field;
}

export function filmOf(
  contact: Contact,
  width: number,
  height: number,
  recipe: PigmentRecipe,
  seed: number,
): Film {
  const indicator: Field = { width, height, at: Float32Array.from(contact.is) };
  const near = smoothed(indicator, 0.25);
  const about = smoothed(indicator, 1.2);
  const spots = latticeNoise(seed + 61);
  const fine = drawnOut(latticeNoise(seed + 62), recipe.rub_rad, 3, 0.3);
  const streak = drawnOut(latticeNoise(seed + 63), recipe.rub_rad, 14, 0.42);
  const wide = drawnOut(latticeNoise(seed + 64), recipe.rub_rad, 30, 6);
  const on = new Float32Array(width * height);
  const beside = new Float32Array(width * height);
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const at = row * width + col;
      const x = col / perMm;
      const y = row / perMm;
      // 0 on the edge of a spot, 1 well inside.
      const inside = Math.min(1, Math.max(0, 2.2 * (near.at[at]! - 0.5)));
      const varied = 1 + recipe.variation * (1.1 * spots(x / 4, y / 4) + 0.5 * fine(x, y));
      const film = recipe.strength * Math.max(0.3, varied) * (recipe.edge + (1 - recipe.edge) * inside);
      on[at] = film * (1 - 0.93 * contact.rubbed[at]!);
      let out = recipe.haze * (0.6 + 0.6 * spots(x / 9 + 100, y / 9) + 1.4 * about.at[at]!);
      if (recipe.smear > 0) {
        const drawn = streak(x, y) + 0.5 * wide(x, y);
        if (drawn > 0) out += recipe.smear * Math.min(1, 2.2 * drawn) * Math.min(1, 1.8 * about.at[at]!);
      }
      out += recipe.bead * recipe.strength * Math.min(1, 2 * near.at[at]!) ** 3;
      beside[at] = Math.max(0, out);
    }
  return { on: { width, height, at: on }, beside: { width, height, at: beside } };
}

/** Light taken by a film of strength 1 on the way in and out, red, green and blue, and the colour of the pigment itself. */
const takes = [4.2, 2.8, 1.3] as const;
const body = [0.02, 0.036, 0.105] as const;
const steps = 1024;
const thickest = 4;
const through = takes.map((one) =>
  Float32Array.from({ length: steps + 1 }, (_, k) => Math.exp((-one * k * thickest) / steps)),
);

/** What a surface that reflects `bare` of one colour of light reflects through a film. */
export function throughFilm(bare: number, film: number, channel: 0 | 1 | 2): number {
  const t = through[channel]![Math.min(steps, Math.round((film * steps) / thickest))]!;
  return bare * t + body[channel] * (1 - t);
}
