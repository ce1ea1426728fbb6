import type { PoseNumbers } from '../body/displacement.ts';
import { type Feature, featureRow } from '../body/feature.ts';
import { zoneRows } from '../body/settle.ts';
import { type Slide, type Zone, zonesOf } from '../body/slide.ts';
import { dot, subtract } from '../body/vector.ts';
import type { PassSize, SteerInput } from '../observe/round.ts';
import { faceOf } from '../observe/sweep.ts';
import { faceSd } from './pose.ts';

/** Thickness of the blue when nothing is said, µm: middle of what is usual for a finishing print (common practice: 2 to 4). */
export const usualFilm_um = 3;

/** Where each unknown stands in the state: zone heights first, then removals, the print's offset, the faces' errors. */
export interface Layout {
  readonly size: number;
  readonly zones: number;
  readonly materials: readonly string[];
  readonly faces: readonly string[];
  /** Removal of a whole pass, µm, of material k. */
  readonly whole: (material: number) => number;
  /** Removal of a spotting pass on what bears, µm, of material k. */
  readonly spot: (material: number) => number;
  /** What the print's gap is off by, µm: film, compression, roughness not quite as said. */
  readonly offset: number;
  /** Error of a touched face's slope, µrad. */
  readonly face: (face: number) => number;
}

/** All that stays the same from round to round: geometry, where unknowns stand, and what is believed before any reading. */
export interface SlideModel {
  readonly slide: Slide;
  readonly zones: readonly Zone[];
  /** One row a zone over the pose. */
  readonly rows: readonly PoseNumbers[];
  readonly features: readonly Feature[];
  readonly featureRows: readonly PoseNumbers[];
  readonly layout: Layout;
  /** Index into the layout's materials, one a zone. */
  readonly materialOf: readonly number[];
  readonly passes: readonly PassSize[];
  readonly film_um: number;
  readonly faceSd_urad: readonly number[];
  /** zones × zones: covariance of the zones' form, µm², apart from the pose. */
  readonly form: readonly (readonly number[])[];
  /** Height sd within each zone that comes of its form alone, µm: a long zone leans and bows more than a short one. */
  readonly lean_um: readonly number[];
}

/** Form of a worn pad: smooth over a third of its length, and a little of each zone's own. */
const formSd_um = { smooth: 6, own: 2.5 };
const formReach = 1 / 3;

export function slideModel(input: SteerInput): SlideModel {
  const { slide, features } = input;
  const zones = zonesOf(slide);
  const materials = [...new Set(slide.pads.map((pad) => pad.material))];
  const sweeps = input.rounds.flatMap((round) => round.sweeps);
  const faces = [...new Set(sweeps.map(faceOf))];
  const count = zones.length;
  const kinds = materials.length;
  return {
    slide,
    zones,
    rows: zoneRows(slide),
    features,
    featureRows: features.map(featureRow),
    layout: {
      size: count + 2 * kinds + 1 + faces.length,
      zones: count,
      materials,
      faces,
      whole: (k) => count + k,
      spot: (k) => count + kinds + k,
      offset: count + 2 * kinds,
      face: (k) => count + 2 * kinds + 1 + k,
    },
    materialOf: zones.map((zone) => materials.indexOf(zone.pad.material)),
    passes: materials.map((material) => input.passes[material]!),
    film_um: input.film_um ?? usualFilm_um,
    faceSd_urad: faces.map((face) => faceSd(sweeps, face)),
    form: formCovariance(zones),
    // Heights of a form smooth over `formReach` differ within a length l of it by a variance of (l / reach)² / 12 of its own.
    lean_um: zones.map((zone) => formSd_um.smooth / (formReach * zone.pad.zones) / Math.sqrt(12)),
  };
}

/** Zones of a pad resemble their neighbours; pads know nothing of each other. */
function formCovariance(zones: readonly Zone[]): number[][] {
  return zones.map((a, i) =>
    zones.map((b, j) => {
      if (a.padIndex !== b.padIndex) return 0;
      const apart = subtract(a.centre_mm, b.centre_mm);
      const reach2 = (a.pad.length_mm * formReach) ** 2;
      const smooth = formSd_um.smooth ** 2 * Math.exp(-0.5 * (dot(apart, apart) / reach2));
      return smooth + (i === j ? formSd_um.own ** 2 : 0);
    }),
  );
}
