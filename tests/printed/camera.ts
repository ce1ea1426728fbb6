import { seededRandom } from '../../src/core/math/random.ts';
import type { Corners, Picture } from '../../src/core/print/picture.ts';
import { perMm } from './field.ts';
import { type LightRecipe, lightOf } from './light.ts';
import type { PaintedSurface } from './painted.ts';
import { type PoseRecipe, poseOf } from './pose.ts';
import { develop } from './sensor.ts';
import { type SurroundingsRecipe, surroundingsOf } from './surroundings.ts';

export interface CameraRecipe {
  readonly width_px: number;
  readonly height_px: number;
  readonly pose: PoseRecipe;
  /** Blur of lens and hand, sd in px. */
  readonly blur_px: number;
  /** Noise of a mid-grey pixel, share of white. */
  readonly noise: number;
  /** Linear gain: 0.75 puts bare iron at about 155 of 255. */
  readonly exposure: number;
  /** Strength of the phone's own sharpening, 0 to about 1. */
  readonly sharpening: number;
}

export interface SceneRecipe {
  readonly light: LightRecipe;
  readonly surroundings: SurroundingsRecipe;
  readonly camera: CameraRecipe;
}

export interface Photo {
  readonly picture: Picture;
  readonly corners: Corners;
  /** Share of the surface's pixels that are white in all three colours, %. */
  readonly clipped_pct: number;
}

/** Lights the painted surface, looks at it through a pinhole and develops what the sensor got. */
export function photographed(surface: PaintedSurface, scene: SceneRecipe, seed: number): Photo {
  const { width_px, height_px, pose: held, blur_px, noise, exposure, sharpening } = scene.camera;
  const pose = poseOf(held, surface.size, width_px, height_px);
  const lit = litSurface(surface, scene.light, seed, exposure);
  const light = lightOf(scene.light, surface.size, seed);
  const outside = surroundingsOf(scene.surroundings, surface.size, seed);
  const { length_mm, width_mm } = surface.size;
  const middle = pose.toPhoto({ x: length_mm / 2, y: width_mm / 2 });
  const beside = pose.toPhoto({ x: length_mm / 2, y: width_mm / 2 + 1 });
  // Coarse pixels are averaged over several places, or they would alias.
  const across = Math.min(3, Math.ceil((0.8 * perMm) / Math.hypot(beside.x - middle.x, beside.y - middle.y)));
  const linear = new Float32Array(3 * width_px * height_px);
  const one = new Float32Array(3);
  let inside = 0;
  let clipped = 0;
  for (let row = 0; row < height_px; row++)
    for (let col = 0; col < width_px; col++) {
      const at = 3 * (row * width_px + col);
      const centre = pose.toSurface({ x: col, y: row });
      const within = centre.x > 0 && centre.y > 0 && centre.x < length_mm && centre.y < width_mm;
      if (!within) {
        outside(centre.x, centre.y, one);
        const falls = exposure * light.falls(centre.x, centre.y);
        for (let k = 0; k < 3; k++) linear[at + k] = one[k]! * falls * scene.light.cast[k]!;
        continue;
      }
      let [r, g, b] = [0, 0, 0];
      for (let i = 0; i < across; i++)
        for (let j = 0; j < across; j++) {
          const place =
            across === 1
              ? centre
              : pose.toSurface({ x: col + (i + 0.5) / across - 0.5, y: row + (j + 0.5) / across - 0.5 });
          between(lit, surface.width, surface.height, place.x * perMm - 0.5, place.y * perMm - 0.5, one);
          r += one[0]!;
          g += one[1]!;
          b += one[2]!;
        }
      const share = 1 / (across * across);
      linear[at] = r * share;
      linear[at + 1] = g * share;
      linear[at + 2] = b * share;
      inside++;
      if (Math.min(r, g, b) * share >= 1) clipped++;
    }
  const rgb = develop(linear, width_px, height_px, {
    blur_px,
    noise,
    sharpening,
    random: seededRandom(seed + 101),
  });
  return {
    picture: { width_px, height_px, rgb },
    corners: pose.corners,
    clipped_pct: (100 * clipped) / inside,
  };
}

/** Light sent towards the camera by each element: through the film, and mirrored, white as the lamp. */
function litSurface(
  surface: PaintedSurface,
  recipe: LightRecipe,
  seed: number,
  exposure: number,
): Float32Array {
  const { width, height, reflects, mirror } = surface;
  const light = lightOf(recipe, surface.size, seed);
  const lit = new Float32Array(reflects.length);
  // Light changes slowly: worked out every half millimetre along a row.
  const step = perMm / 2;
  let [falls, mirrored] = [0, 0];
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const at = row * width + col;
      if (col % step === 0) {
        falls = exposure * light.falls(col / perMm, row / perMm);
        mirrored = exposure * light.mirrored(col / perMm, row / perMm);
      }
      for (let k = 0; k < 3; k++)
        lit[3 * at + k] = (reflects[3 * at + k]! * falls + mirror[at]! * mirrored) * recipe.cast[k]!;
    }
  return lit;
}

function between(
  lit: Float32Array,
  width: number,
  height: number,
  x: number,
  y: number,
  into: Float32Array,
): void {
  const col = Math.min(width - 2, Math.max(0, Math.floor(x)));
  const row = Math.min(height - 2, Math.max(0, Math.floor(y)));
  const u = Math.min(1, Math.max(0, x - col));
  const v = Math.min(1, Math.max(0, y - row));
  const a = 3 * (row * width + col);
  const b = a + 3 * width;
  for (let k = 0; k < 3; k++)
    into[k] =
      (lit[a + k]! * (1 - u) + lit[a + 3 + k]! * u) * (1 - v) +
      (lit[b + k]! * (1 - u) + lit[b + 3 + k]! * u) * v;
}
