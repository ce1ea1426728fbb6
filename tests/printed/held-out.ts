import { type Random, seededRandom } from '../../src/core/math/random.ts';
import type { Exclusion } from '../../src/core/print/exclusion.ts';
import type { SurfaceSize } from '../../src/core/print/picture.ts';
import type { BaseMaterial } from './base.ts';
import { photographed } from './camera.ts';
import type { GlarePatch } from './light.ts';
import { paintedSurface } from './painted.ts';
import { type Difficulty, frame, type Preset } from './presets.ts';
import type { PrintedPicture } from './printed-picture.ts';

export const heldOutBases: readonly BaseMaterial[] = ['iron', 'green liner', 'brown liner', 'black liner'];
export const heldOutDifficulties: readonly Difficulty[] = ['easy', 'medium', 'hard'];

/** What makes each kind hard, as ranges that a scene's numbers are drawn from. */
interface Ranges {
  readonly megapixels: readonly [number, number];
  readonly variation: readonly [number, number];
  readonly haze: readonly [number, number];
  readonly smear: readonly [number, number];
  readonly clustering: readonly [number, number];
  readonly along: readonly [number, number];
  readonly tilt_deg: readonly [number, number];
  readonly blur_px: readonly [number, number];
  readonly noise: readonly [number, number];
  /** Mirrored light in the middle of a broad patch, over white; on half of the pictures. */
  readonly glare: readonly [number, number];
}

const ranges: Record<Difficulty, Ranges> = {
  easy: {
    megapixels: [2, 4],
    variation: [0.1, 0.3],
    haze: [0, 0.01],
    smear: [0, 0.02],
    clustering: [0.1, 0.3],
    along: [0, 0.2],
    tilt_deg: [5, 20],
    blur_px: [0.6, 0.8],
    noise: [0.005, 0.009],
    glare: [0, 0],
  },
  medium: {
    megapixels: [3, 5],
    variation: [0.3, 0.6],
    haze: [0.005, 0.02],
    smear: [0.03, 0.08],
    clustering: [0.2, 0.6],
    along: [0.2, 0.4],
    tilt_deg: [20, 33],
    blur_px: [0.7, 1],
    noise: [0.009, 0.013],
    glare: [0.06, 0.25],
  },
  hard: {
    megapixels: [1.6, 3],
    variation: [0.4, 0.7],
    haze: [0.015, 0.035],
    smear: [0.05, 0.12],
    clustering: [0.2, 0.6],
    along: [0.25, 0.4],
    tilt_deg: [28, 37],
    blur_px: [0.9, 1.2],
    noise: [0.012, 0.022],
    glare: [0.3, 0.9],
  },
};

const sizes: Record<Difficulty, SurfaceSize> = {
  easy: { length_mm: 150, width_mm: 75 },
  medium: { length_mm: 175, width_mm: 75 },
  hard: { length_mm: 200, width_mm: 75 },
};

/** Phones brighten what is dark: each base is exposed to about the middle of the scale. */
const exposures: Record<BaseMaterial, number> = {
  iron: 0.75,
  'green liner': 0.95,
  'brown liner': 1.2,
  'black liner': 1.8,
};

const between = ({ even }: Random, [low, high]: readonly [number, number]): number =>
  low + (high - low) * even();

/**
 * A scene of one difficulty on one base, every number of it drawn by the seed: no constant of the reader was set on these.
 * Every second one of the medium and hard has glare, every second one a groove.
 */
export function heldOutPreset(difficulty: Difficulty, material: BaseMaterial, seed: number): Preset {
  const random = seededRandom(7919 * seed + 13 * heldOutBases.indexOf(material) + 1);
  const draw = (range: readonly [number, number]): number => between(random, range);
  const r = ranges[difficulty];
  const size = sizes[difficulty];
  const even = seed % 2 === 0;
  const glare: GlarePatch[] =
    r.glare[1] > 0 && even
      ? [
          {
            along: draw([0.25, 0.75]),
            across: draw([0.25, 0.75]),
            radius_mm: draw([12, 20]),
            strength: draw(r.glare),
          },
        ]
      : [];
  const middle = size.width_mm / 2;
  const exclusions: Exclusion[] =
    difficulty !== 'easy' && !even
      ? [
          {
            type: 'polyline',
            width: 4,
            points: [
              { x: 15, y: middle + draw([-3, 3]) },
              { x: size.length_mm - 15, y: middle + draw([-3, 3]) },
            ],
          },
        ]
      : [];
  return {
    difficulty,
    surface: {
      size,
      scraping: {
        length_mm: draw([4, 6]),
        breadth_mm: draw([1.6, 2.3]),
        coverage: draw([1.2, 1.5]),
        contrast: draw([0.08, 0.13]),
      },
      contact: {
        form: 'between strokes',
        share: draw([0.18, 0.33]),
        clustering: draw(r.clustering),
        trend: draw([-0.4, 0.4]),
        rubbed: material === 'iron' ? draw([0, 0.3]) : 0,
      },
      material,
      pigment: {
        strength: draw([0.75, 1.1]),
        variation: draw(r.variation),
        edge: draw([0.95, 1.3]),
        bead: draw([0.08, 0.2]),
        haze: draw(r.haze),
        smear: draw(r.smear),
        rub_rad: draw([-0.5, 0.5]),
      },
      exclusions,
      residue: draw([0, 0.8]),
    },
    scene: {
      light: {
        along: draw(r.along) * (random.even() < 0.5 ? -1 : 1),
        across: draw(r.along) * (random.even() < 0.5 ? -1 : 1),
        falloff: draw([0.1, 0.3]),
        mottle: draw([0.05, 0.15]),
        cast: [draw([0.95, 1.05]), 1, draw([0.93, 1.05])],
        glare,
      },
      surroundings: { bench: 'wood', rim: 'grey paint', rim_mm: 9 },
      camera: {
        ...frame(draw(r.megapixels)),
        pose: {
          tilt_deg: draw(r.tilt_deg),
          lean_deg: draw([-20, 20]),
          turn_deg: draw([-8, 8]),
          distance: draw([1.6, 2.2]),
          fill: draw([0.8, 0.9]),
        },
        blur_px: draw(r.blur_px),
        noise: draw(r.noise),
        exposure: exposures[material],
        sharpening: draw([0.2, 0.6]),
      },
    },
  };
}

/** Its picture and what it shows. */
export function heldOutPicture(difficulty: Difficulty, material: BaseMaterial, seed: number): PrintedPicture {
  const { surface: recipe, scene } = heldOutPreset(difficulty, material, seed);
  const surface = paintedSurface(recipe, seed);
  return {
    ...photographed(surface, scene, seed),
    size: surface.size,
    exclusions: recipe.exclusions,
    truth: surface.truth,
    contact: surface.contact,
  };
}
