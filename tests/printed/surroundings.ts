import type { SurfaceSize } from '../../src/core/print/picture.ts';
import type { Rgb } from './base.ts';
import { drawnOut, latticeNoise } from './lattice.ts';

/** What lies about the printed surface. */
export interface SurroundingsRecipe {
  readonly bench: 'wood' | 'concrete' | 'steel';
  /** Painted or bare rim of the casting about the surface. */
  readonly rim: 'green paint' | 'grey paint' | 'bare';
  readonly rim_mm: number;
}

const benches: Record<SurroundingsRecipe['bench'], Rgb> = {
  wood: [0.25, 0.16, 0.09],
  concrete: [0.24, 0.25, 0.26],
  steel: [0.12, 0.125, 0.13],
};
const rims: Record<SurroundingsRecipe['rim'], Rgb> = {
  'green paint': [0.07, 0.19, 0.15],
  'grey paint': [0.2, 0.22, 0.24],
  bare: [0.3, 0.29, 0.27],
};

/** Reflected share of light at a place outside the surface, written to `into`: bevel, rim, its shadow on the bench, bench. */
export function surroundingsOf(recipe: SurroundingsRecipe, size: SurfaceSize, seed: number) {
  const cloud = latticeNoise(seed + 81);
  const grain =
    recipe.bench === 'wood'
      ? drawnOut(latticeNoise(seed + 82), 0.1, 120, 2.2)
      : drawnOut(latticeNoise(seed + 82), 0.4, 9, 7);
  const bench = benches[recipe.bench];
  const rim = rims[recipe.rim];
  return (x: number, y: number, into: Float32Array): void => {
    const outX = Math.max(-x, x - size.length_mm, 0);
    const outY = Math.max(-y, y - size.width_mm, 0);
    const far = Math.max(outX, outY);
    if (far < 0.5) {
      // A broken edge, bright.
      for (let k = 0; k < 3; k++) into[k] = 0.42;
      return;
    }
    if (far < recipe.rim_mm) {
      const shade = 1 + 0.18 * cloud(x / 6, y / 6) + 0.1 * cloud(x, y);
      for (let k = 0; k < 3; k++) into[k] = rim[k]! * shade;
      return;
    }
    const past = Math.hypot(
      Math.max(outX - recipe.rim_mm, 0),
      Math.max(y - size.width_mm - recipe.rim_mm, -y - recipe.rim_mm, 0) - (y > 0 ? 4 : 0),
    );
    const shadow = 1 - 0.75 * Math.exp(-((past / 7) ** 2));
    const shade = Math.max(
      0.1,
      (1 + 0.3 * grain(x, y) + 0.15 * cloud(x / 3, y / 3) + 0.25 * cloud(x / 40, y / 40)) * shadow,
    );
    for (let k = 0; k < 3; k++) into[k] = bench[k]! * shade;
  };
}
