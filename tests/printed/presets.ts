import type { Exclusion } from '../../src/core/print/exclusion.ts';
import type { SceneRecipe } from './camera.ts';
import type { SurfaceRecipe } from './painted.ts';

export type Difficulty = 'easy' | 'medium' | 'hard';

export interface Preset {
  readonly difficulty: Difficulty;
  readonly surface: SurfaceRecipe;
  readonly scene: SceneRecipe;
}

const surface: SurfaceRecipe = {
  size: { length_mm: 150, width_mm: 75 },
  scraping: { length_mm: 5, breadth_mm: 2, coverage: 1.35, contrast: 0.11 },
  contact: { form: 'between strokes', share: 0.28, clustering: 0.2, trend: 0, rubbed: 0.15 },
  material: 'iron',
  pigment: { strength: 0.95, variation: 0.25, edge: 1.15, bead: 0.18, haze: 0, smear: 0, rub_rad: 0.15 },
  exclusions: [],
  residue: 0,
};

const scene: SceneRecipe = {
  light: { along: 0.12, across: -0.1, falloff: 0.1, mottle: 0.08, cast: [1, 1, 1], glare: [] },
  surroundings: { bench: 'wood', rim: 'grey paint', rim_mm: 9 },
  camera: {
    width_px: 1632,
    height_px: 1224,
    pose: { tilt_deg: 18, lean_deg: 12, turn_deg: 3, distance: 2.2, fill: 0.88 },
    blur_px: 0.7,
    noise: 0.008,
    exposure: 0.75,
    sharpening: 0.3,
  },
};

/** A frame of this many megapixels, four wide to three high. */
export function frame(megapixels: number): { width_px: number; height_px: number } {
  const width_px = 4 * Math.round(Math.sqrt((megapixels * 1e6) / 12));
  return { width_px, height_px: (3 * width_px) / 4 };
}

const zigzag: Exclusion[] = [
  {
    type: 'polyline',
    width: 5,
    points: [14, 52, 90, 128, 166].map((x, k) => ({ x, y: k % 2 === 0 ? 66 : 14 })),
  },
  { type: 'circle', x: 20, y: 22, r: 6.5 },
];

const cross: Exclusion[] = [
  {
    type: 'polyline',
    width: 4,
    points: [
      { x: 15, y: 41 },
      { x: 165, y: 38 },
    ],
  },
  {
    type: 'polyline',
    width: 4,
    points: [
      { x: 62, y: 14 },
      { x: 61, y: 67 },
    ],
  },
  { type: 'circle', x: 128, y: 21, r: 5 },
];

/** Printed surfaces from sound to hard, like those a rebuilder photographs; invented. */
export const presets = {
  'easy iron': { difficulty: 'easy', surface, scene },
  'easy round spots': {
    difficulty: 'easy',
    surface: {
      ...surface,
      contact: { form: 'round spots', share: 0.22, density: 14, clustering: 0.5, trend: 0.2, rubbed: 0.1 },
      pigment: { ...surface.pigment, edge: 0.75 },
    },
    scene,
  },
  'easy liner': {
    difficulty: 'easy',
    surface: {
      ...surface,
      size: { length_mm: 140, width_mm: 75 },
      scraping: { ...surface.scraping, length_mm: 4.5 },
      contact: { ...surface.contact, share: 0.24, rubbed: 0 },
      material: 'green liner',
    },
    scene: { ...scene, surroundings: { bench: 'concrete', rim: 'bare', rim_mm: 8 } },
  },
  'medium iron with groove': {
    difficulty: 'medium',
    surface: {
      ...surface,
      size: { length_mm: 180, width_mm: 80 },
      contact: { ...surface.contact, share: 0.25, clustering: 0.4, trend: 0.35, rubbed: 0.3 },
      pigment: {
        strength: 0.8,
        variation: 0.6,
        edge: 1.3,
        bead: 0.18,
        haze: 0.015,
        smear: 0.08,
        rub_rad: 0.1,
      },
      exclusions: zigzag,
    },
    scene: {
      ...scene,
      light: { along: 0.35, across: -0.3, falloff: 0.25, mottle: 0.15, cast: [1.04, 1, 0.93], glare: [] },
      surroundings: { bench: 'wood', rim: 'green paint', rim_mm: 9 },
      camera: {
        ...scene.camera,
        ...frame(3),
        pose: { tilt_deg: 32, lean_deg: -15, turn_deg: -4, distance: 1.7, fill: 0.86 },
        blur_px: 0.9,
        noise: 0.012,
        sharpening: 0.5,
      },
    },
  },
  'medium liner with groove': {
    difficulty: 'medium',
    surface: {
      ...surface,
      size: { length_mm: 180, width_mm: 80 },
      scraping: { length_mm: 4.6, breadth_mm: 1.8, coverage: 1.3, contrast: 0.1 },
      contact: { ...surface.contact, share: 0.29, clustering: 0.4, rubbed: 0 },
      material: 'green liner',
      pigment: {
        strength: 0.85,
        variation: 0.5,
        edge: 1.15,
        bead: 0.18,
        haze: 0.015,
        smear: 0.06,
        rub_rad: 0.3,
      },
      exclusions: cross,
      residue: 0.7,
    },
    scene: {
      ...scene,
      light: {
        along: 0.3,
        across: 0.25,
        falloff: 0.3,
        mottle: 0.12,
        cast: [0.97, 1, 1.04],
        glare: [{ along: 0.6, across: 0.3, radius_mm: 16, strength: 0.13 }],
      },
      surroundings: { bench: 'concrete', rim: 'bare', rim_mm: 8 },
      camera: {
        ...scene.camera,
        ...frame(3),
        pose: { tilt_deg: 30, lean_deg: 20, turn_deg: 4, distance: 1.8, fill: 0.88 },
        blur_px: 0.9,
        noise: 0.012,
      },
    },
  },
  'medium brown liner': {
    difficulty: 'medium',
    surface: {
      ...surface,
      contact: { ...surface.contact, share: 0.2, clustering: 0.6, rubbed: 0 },
      material: 'brown liner',
      pigment: { ...surface.pigment, variation: 0.4, haze: 0.01 },
    },
    scene: {
      ...scene,
      light: { ...scene.light, along: 0.35, falloff: 0.25 },
      camera: { ...scene.camera, noise: 0.01, blur_px: 0.8 },
    },
  },
  'black liner': {
    difficulty: 'hard',
    surface: {
      ...surface,
      contact: { ...surface.contact, share: 0.22, rubbed: 0 },
      material: 'black liner',
      pigment: { ...surface.pigment, strength: 1, variation: 0.3 },
    },
    scene: { ...scene, camera: { ...scene.camera, exposure: 1.8 } },
  },
  bare: {
    difficulty: 'medium',
    surface: {
      ...surface,
      scraping: { ...surface.scraping, coverage: 4 },
      contact: { ...surface.contact, share: 0.008, rubbed: 0 },
      pigment: { ...surface.pigment, strength: 0.85, variation: 0.4, edge: 1 },
    },
    scene: { ...scene, light: { ...scene.light, along: 0.35, across: 0.25, falloff: 0.25, mottle: 0.15 } },
  },
  'over-blued': {
    difficulty: 'hard',
    surface: {
      ...surface,
      scraping: { length_mm: 5.5, breadth_mm: 2.4, coverage: 1, contrast: 0.1 },
      contact: { ...surface.contact, share: 0.42, clustering: 0.15, rubbed: 0.04 },
      pigment: {
        strength: 1.3,
        variation: 0.3,
        edge: 1.2,
        bead: 0.18,
        haze: 0.05,
        smear: 0.45,
        rub_rad: 0.12,
      },
    },
    scene: {
      ...scene,
      camera: { ...scene.camera, ...frame(3), noise: 0.01, blur_px: 0.8 },
    },
  },
  'hard end': {
    difficulty: 'hard',
    surface: {
      ...surface,
      size: { length_mm: 200, width_mm: 75 },
      contact: { ...surface.contact, share: 0.25, clustering: 0.35, trend: -1.8, rubbed: 0.35 },
      pigment: { strength: 0.9, variation: 0.4, edge: 1.2, bead: 0.18, haze: 0.015, smear: 0.05, rub_rad: 0 },
      exclusions: [{ type: 'circle', x: 100, y: 37, r: 6 }],
    },
    scene: {
      ...scene,
      light: { ...scene.light, along: -0.35, falloff: 0.3, mottle: 0.15 },
      camera: { ...scene.camera, ...frame(3), noise: 0.012, blur_px: 0.9, sharpening: 0.5 },
    },
  },
  'fine under glare': {
    difficulty: 'hard',
    surface: {
      ...surface,
      size: { length_mm: 160, width_mm: 80 },
      scraping: { length_mm: 3.6, breadth_mm: 1.4, coverage: 1.25, contrast: 0.13 },
      contact: { ...surface.contact, share: 0.31, clustering: 0.25, rubbed: 0.3 },
      pigment: {
        strength: 0.8,
        variation: 0.55,
        edge: 1.25,
        bead: 0.18,
        haze: 0.02,
        smear: 0.06,
        rub_rad: 0.4,
      },
    },
    scene: {
      ...scene,
      light: {
        along: 0.3,
        across: 0.3,
        falloff: 0.35,
        mottle: 0.2,
        cast: [1.03, 1, 0.95],
        glare: [
          { along: 0.27, across: 0.33, radius_mm: 19, strength: 0.85 },
          { along: 0.78, across: 0.68, radius_mm: 17, strength: 0.8 },
        ],
      },
      camera: {
        ...scene.camera,
        ...frame(3),
        pose: { tilt_deg: 33, lean_deg: -20, turn_deg: 9, distance: 1.7, fill: 0.88 },
        noise: 0.014,
        blur_px: 0.9,
      },
    },
  },
  'low resolution': {
    difficulty: 'hard',
    surface: {
      ...surface,
      size: { length_mm: 260, width_mm: 90 },
      contact: { ...surface.contact, share: 0.33, clustering: 0.4, rubbed: 0.2 },
      pigment: {
        strength: 0.8,
        variation: 0.5,
        edge: 1.2,
        bead: 0.18,
        haze: 0.03,
        smear: 0.06,
        rub_rad: 0.2,
      },
    },
    scene: {
      ...scene,
      light: {
        ...scene.light,
        along: 0.35,
        falloff: 0.3,
        glare: [{ along: 0.7, across: 0.4, radius_mm: 15, strength: 0.47 }],
      },
      camera: {
        ...scene.camera,
        pose: { tilt_deg: 36, lean_deg: 10, turn_deg: -5, distance: 1.6, fill: 0.75 },
        noise: 0.022,
        blur_px: 1.1,
        sharpening: 0.6,
      },
    },
  },
} as const satisfies Record<string, Preset>;

export type PresetName = keyof typeof presets;
