import type { Exclusion } from '../../src/core/print/exclusion.ts';
import type { Corners, Picture, SurfaceSize } from '../../src/core/print/picture.ts';
import { type CameraRecipe, photographed } from './camera.ts';
import { type PaintedSurface, paintedSurface } from './painted.ts';
import { type Preset, type PresetName, presets } from './presets.ts';
import type { Truth } from './truth.ts';

/** A picture of a printed surface, and what it shows. */
export interface PrintedPicture {
  readonly picture: Picture;
  readonly corners: Corners;
  readonly size: SurfaceSize;
  readonly exclusions: readonly Exclusion[];
  readonly truth: Truth;
  /** 1 where it touches, 10 elements per mm, row by row from (0,0); absent where a loaded picture has no mask. */
  readonly contact?: Uint8Array;
  /** Share of the surface that is white in all three colours, %. */
  readonly clipped_pct: number;
}

/** The surface of a preset, to be photographed more than once. */
export function surfaceOf(name: PresetName, seed: number): PaintedSurface {
  return paintedSurface(presets[name].surface, seed);
}

/** A photo of it by the preset's camera, with what is named here changed. */
export function photoOf(
  name: PresetName,
  surface: PaintedSurface,
  seed: number,
  changed: Partial<CameraRecipe> = {},
): PrintedPicture {
  const preset: Preset = presets[name];
  const scene = { ...preset.scene, camera: { ...preset.scene.camera, ...changed } };
  const photo = photographed(surface, scene, seed);
  return {
    ...photo,
    size: surface.size,
    exclusions: preset.surface.exclusions,
    truth: surface.truth,
    contact: surface.contact,
  };
}

/** Surface and photo at once: the same name and seed give the same bytes. */
export function printedPicture(name: PresetName, seed: number): PrintedPicture {
  return photoOf(name, surfaceOf(name, seed), seed);
}
