import type { SurfaceSize } from '../../src/core/print/picture.ts';
import { latticeNoise } from './lattice.ts';

/** A lamp or window mirrored in the metal: a broad bright patch. Places as shares of the surface's length and width. */
export interface GlarePatch {
  readonly along: number;
  readonly across: number;
  readonly radius_mm: number;
  /** Mirrored light in its middle, over what white paper would send. */
  readonly strength: number;
}

export interface LightRecipe {
  /** Change of brightness from one end to the other, about 1, and from edge to edge. */
  readonly along: number;
  readonly across: number;
  /** Loss towards the corners, 0 to 1. */
  readonly falloff: number;
  /** Depth of soft shadows and reflections of the room, 0 to 1. */
  readonly mottle: number;
  /** The lamp's red, green and blue, about 1. */
  readonly cast: readonly [number, number, number];
  readonly glare: readonly GlarePatch[];
}

export interface Light {
  /** Light that falls there, about 1; places in mm on the surface and about it. */
  readonly falls: (x_mm: number, y_mm: number) => number;
  /** Light mirrored there by a surface with facets of strength 1. */
  readonly mirrored: (x_mm: number, y_mm: number) => number;
}

export function lightOf(recipe: LightRecipe, { length_mm, width_mm }: SurfaceSize, seed: number): Light {
  const room = latticeNoise(seed + 71);
  const reach = Math.hypot(length_mm, width_mm) / 2;
  const patches = recipe.glare.map(({ along, across, radius_mm, strength }) => ({
    x: along * length_mm,
    y: across * width_mm,
    radius_mm,
    strength,
  }));
  return {
    falls: (x, y) => {
      const u = x / length_mm - 0.5;
      const v = y / width_mm - 0.5;
      const out = Math.hypot(x - length_mm / 2, y - width_mm / 2) / reach;
      const even = 1 + recipe.along * u + recipe.across * v - recipe.falloff * out * out;
      return Math.max(0.12, even * (1 + recipe.mottle * room(x / 55, y / 55)));
    },
    mirrored: (x, y) => {
      let sum = 0;
      for (const patch of patches) {
        const far = ((x - patch.x) ** 2 + (y - patch.y) ** 2) / patch.radius_mm ** 2;
        if (far < 9) sum += patch.strength * Math.exp(-far);
      }
      return sum;
    },
  };
}
