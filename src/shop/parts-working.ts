import type { FacedWish } from '../contract/parts.ts';
import type { Block } from '../core/parts/block.ts';
import type { Turned } from '../core/parts/turned.ts';
import { plain } from '../core/quantity/show.ts';
import type { FacedPart, PartsAnswer, WearPart } from './parts.ts';
import type { Worked } from './worked.ts';

const n = (value: number): string => plain(value, 5);
const term = (value: number): string => (value < 0 ? `(${n(value)})` : n(value));

/** How what comes off comes about, part by part. mm, µm, µrad. */
export const partsWorking = (answer: PartsAnswer): Worked[] => [
  ...answer.turned.flatMap((one) => turnedWorked(one.name, one)),
  ...answer.faced.flatMap((one) => facedWorked(one.name, one)),
  ...answer.blocks.flatMap((one) => blockWorked(one.name, one)),
  ...answer.wear.flatMap(wearWorked),
];

/** A turned length. */
export function turnedWorked(name: string, part: Turned): Worked[] {
  const { places_mm, diameter_um, taper_um, bow_um, cylindricity_um, from_height_um } = part;
  const high = diameter_um.indexOf(Math.max(...diameter_um));
  const low = diameter_um.indexOf(Math.min(...diameter_um));
  const at = (i: number): string => `${n(diameter_um[i]!)} at ${n(places_mm[i]!)} mm`;
  return [
    {
      what: `${name}: diameter against the one at ${n(places_mm[0]!)} mm`,
      formula: '2 × how far the tool goes from the axis, and (2hε + ε²)/R of its height over it',
      worked: `largest ${at(high)}, smallest ${at(low)}, µm; ${n(from_height_um)} µm of it from height`,
      source: 'geometry',
    },
    {
      what: `${name}: taper`,
      formula: 'rise of the least-squares line through the diameters over the length',
      worked: `${places_mm.length} places: ${n(taper_um.value)} µm, one sd ${n(taper_um.sd)} µm`,
    },
    {
      what: `${name}: bow`,
      formula: 'middle − ends of the least-squares parabola; plus: barrel',
      worked: `${n(bow_um.value)} µm, one sd ${n(bow_um.sd)} µm`,
    },
    {
      what: `${name}: cylindricity`,
      formula: '(largest − smallest diameter)/2',
      worked: `(${n(diameter_um[high]!)} − ${term(diameter_um[low]!)})/2 = ${n(cylindricity_um.value)} µm, one sd ${n(cylindricity_um.sd)} µm`,
    },
  ];
}

/** A face or shoulder. */
export function facedWorked(
  name: string,
  part: Omit<FacedPart, 'name' | 'text' | keyof FacedWish>,
): Worked[] {
  const { radius_mm, concave_um, square_urad, form_um, flatness_um, corner_urad } = part;
  const reach = radius_mm[0]! - radius_mm.at(-1)!;
  return [
    {
      what: `${name}: hollow at the inner edge`,
      formula:
        '(yaw of the saddle + out of square − slope of the axis) × (rim − inner) − the cross slide’s own movement',
      worked: `from ${n(radius_mm[0]!)} to ${n(radius_mm.at(-1)!)} mm: ${n(concave_um.value)} µm, one sd ${n(concave_um.sd)} µm`,
      source: 'geometry',
    },
    {
      what: `${name}: as a slope`,
      formula: 'hollow / (rim − inner)',
      worked: `${n(concave_um.value)} µm / ${n(reach)} mm × 1000 = ${n(square_urad.value)} µrad, one sd ${n(square_urad.sd)} µrad`,
    },
    {
      what: `${name}: flatness`,
      formula: 'between two planes square to the axis; form is what a straight cone leaves',
      worked: `${n(flatness_um.value)} µm, form ${n(form_um)} µm`,
    },
    ...(corner_urad
      ? [
          {
            what: `${name}: corner with the diameter beside it`,
            formula: '−(slope of the face’s hollow + slope of the radius); plus: more open than square',
            worked: `${n(corner_urad.value)} µrad, one sd ${n(corner_urad.sd)} µrad`,
          },
        ]
      : []),
  ];
}

const doubted = ({ value, sd }: { readonly value: number; readonly sd: number }): string =>
  `${n(value)}, one sd ${n(sd)}`;

/** A block. */
export const blockWorked = (name: string, { faces, corners }: Block): Worked[] => [
  ...faces.map(
    ({ face, axes, tilt_urad, flatness_um, parallel_um }): Worked => ({
      what: `${name}: face ${face}`,
      formula:
        'metal left on = Σ of the tool’s carriages − Σ of the work’s, each shift + turn × arm; its least-squares plane',
      worked: `slope along ${axes[0]} ${doubted(tilt_urad[0])}, along ${axes[1]} ${doubted(tilt_urad[1])} µrad; flatness ${doubted(flatness_um)}, parallel ${doubted(parallel_um)} µm`,
      source: 'geometry of rigid carriages',
    }),
  ),
  ...corners.map(
    ({ faces: [a, b], square_urad }): Worked => ({
      what: `${name}: corner of ${a} and ${b}`,
      formula: '−(slope of either face toward the other); plus: more than square',
      worked: `${doubted(square_urad)} µrad`,
    }),
  ),
];

const wearWorked = (feature: WearPart): Worked[] => [
  {
    what: `${feature.name}: how long it lasts`,
    formula: '(limit − value) / rate; ends where the limit lies 2 √(sd² + (rate sd × time)²) away',
    worked: `value ${n(feature.value)}, sd ${n(feature.sd)}, rate ${n(feature.rate)}, its sd ${n(feature.rate_sd)}, band ${n(feature.low)} to ${n(feature.high)}: ${feature.text}`,
    source: 'interval of a ratio, Fieller 1954, from memory',
  },
];
