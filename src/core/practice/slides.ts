import type { Feature, Target } from '../body/feature.ts';
import type { Pad } from '../body/pad.ts';
import type { Slide } from '../body/slide.ts';
import type { Vector } from '../body/vector.ts';
import type { PracticeSlide } from './machine.ts';
import type { Weight } from './seat.ts';

/** A practice slide with what is asked of it and what a pass is first believed to take. */
export interface PracticeTask extends PracticeSlide {
  readonly targets: readonly Target[];
  readonly passes: Readonly<Record<string, { readonly um: number; readonly sd_um: number }>>;
}

const degrees = Math.PI / 180;
/** Normal of a flank that rises at `angle_deg` from level, leaning to the operator (−1) or away (+1). */
const flank = (side: -1 | 1, angle_deg: number): Vector => [
  0,
  side * Math.sin(angle_deg * degrees),
  Math.cos(angle_deg * degrees),
];

interface Strip {
  readonly name: string;
  readonly at_mm: Vector;
  readonly normal: Vector;
  readonly length_mm: number;
  readonly width_mm: number;
  readonly zones: number;
}

const padOf = (strip: Strip, material: string): Pad => ({
  name: strip.name,
  centre_mm: strip.at_mm,
  normal: strip.normal,
  length_mm: strip.length_mm,
  width_mm: strip.width_mm,
  zones: strip.zones,
  material,
});

const line = (from: Vector, to: Vector, points: number): Vector[] =>
  Array.from({ length: points }, (_, i) => {
    const share = i / (points - 1);
    return [0, 1, 2].map((k) => from[k]! + share * (to[k]! - from[k]!)) as unknown as Vector;
  });

const turns: Feature[] = [
  { name: 'facing', kind: 'turn', axis: 'z' },
  { name: 'level across', kind: 'turn', axis: 'x' },
  { name: 'level along', kind: 'turn', axis: 'y' },
];

/** Facing concave by 20 to 66 µrad and level within 20: common practice on a mid-size lathe (6 to 20 µm over 300 mm). */
const lathe: Target[] = [
  { feature: 'facing', low: 20, high: 66, aim: 40, guard: 0.5 },
  { feature: 'level across', low: -20, high: 20, aim: 0, guard: 0.5 },
  { feature: 'level along', low: -20, high: 20, aim: 0, guard: 0.5 },
];

/** Hidden hands, as medians over scrapers; and what is first believed of them, on purpose not the same. */
const materials = {
  liner: { hidden: { median_um: 8.3, log_sd: 0.25 }, believed: { um: 10, sd_um: 3 } },
  iron: { hidden: { median_um: 3.6, log_sd: 0.28 }, believed: { um: 4, sd_um: 1.3 } },
};
export type PracticeMaterial = keyof typeof materials;
export const practiceMaterials = Object.keys(materials) as readonly PracticeMaterial[];

function task(
  name: string,
  strips: readonly Strip[],
  material: PracticeMaterial,
  push: Pick<Weight, 'force_N' | 'at_mm' | 'direction'>,
): PracticeTask {
  const pads = strips.map((strip) => padOf(strip, material));
  const slide: Slide = { name, free: 'x', pads };
  const points_mm = line([-18, 0, 92], [-18, 210, 92], 15);
  const { hidden, believed } = materials[material];
  return {
    slide,
    features: turns,
    targets: lathe,
    sweeps: [
      {
        name: 'cross ways against square',
        rides: 'slide',
        touches: 'reference',
        plunger: [-1, 0, 0],
        points_mm,
        readings_um: points_mm.map(() => 0),
        reading_sd_um: 1.5,
        face_slope_urad: 0,
        face_slope_sd_urad: 3.5,
        face: 'square',
      },
    ],
    levels: [
      { name: 'level across', along: [0, 1, 0], reading_urad: 0, sd_urad: 5 },
      { name: 'level along', along: [1, 0, 0], reading_urad: 0, sd_urad: 5 },
    ],
    weight: { ...push, stiffness_N_per_mm3: 100 },
    removal: { [material]: hidden },
    film_um: 3,
    passes: { [material]: believed },
  };
}

const strip = (
  name: string,
  at_mm: Vector,
  normal: Vector,
  length_mm: number,
  width_mm: number,
  zones: number,
): Strip => ({ name, at_mm, normal, length_mm, width_mm, zones });

/** The practice slides by name, each made of the material asked for. */
export const practiceSlides: Readonly<Record<string, (material: PracticeMaterial) => PracticeTask>> = {
  'V and flat': (material) =>
    task(
      'saddle on V and flat',
      [
        strip('front flank', [0, -10.6, 0], flank(-1, 45), 450, 30, 8),
        strip('rear flank', [0, 10.6, 0], flank(1, 45), 450, 30, 8),
        strip('flat', [0, 270, 0], [0, 0, 1], 450, 60, 8),
      ],
      material,
      { force_N: 1500, at_mm: [-12, 118, 120], direction: [0, 0, -1] },
    ),
  'double V': (material) =>
    task(
      'table on two Vs',
      [
        strip('front V, outer flank', [0, -11.3, 0], flank(-1, 45), 520, 32, 6),
        strip('front V, inner flank', [0, 11.3, 0], flank(1, 45), 520, 32, 6),
        strip('rear V, inner flank', [0, 288.7, 0], flank(-1, 45), 520, 32, 6),
        strip('rear V, outer flank', [0, 311.3, 0], flank(1, 45), 520, 32, 6),
      ],
      material,
      { force_N: 1800, at_mm: [-12, 175, 120], direction: [0, 0, -1] },
    ),
  'two flats and a dovetail flank': (material) =>
    task(
      'slide on two flats and one dovetail flank',
      [
        strip('front flat', [0, 0, 0], [0, 0, 1], 420, 44, 7),
        strip('rear flat', [0, 210, 0], [0, 0, 1], 420, 44, 7),
        strip('dovetail flank', [0, 243, 14], [0, 0.819152044289, 0.573576436351], 420, 26, 7),
      ],
      material,
      // The gib on the far side pushes the slide onto its flank.
      { force_N: 1456, at_mm: [-12, 132, 14], direction: [0, -400, -1400] },
    ),
  'four-pad base': (material) =>
    task(
      'base on four pads and a guide',
      [
        strip('front, headstock end', [-230, 0, 0], [0, 0, 1], 110, 55, 3),
        strip('front, tailstock end', [230, 0, 0], [0, 0, 1], 110, 55, 3),
        strip('back, headstock end', [-230, 240, 0], [0, 0, 1], 110, 55, 3),
        strip('back, tailstock end', [230, 240, 0], [0, 0, 1], 110, 55, 3),
        strip('guide', [0, -32, 15], [0, Math.SQRT1_2, Math.SQRT1_2], 480, 24, 6),
      ],
      material,
      // A spring pushes the base onto its guide.
      { force_N: 1422, at_mm: [-12, 93, 15], direction: [0, -250, -1400] },
    ),
};
