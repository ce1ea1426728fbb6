import type { FacedWish } from '../contract/parts.ts';
import type { Block } from '../core/parts/block.ts';
import type { Doubted } from '../core/parts/spindle.ts';
import type { Turned } from '../core/parts/turned.ts';
import { plain } from '../core/quantity/show.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import type { FacedPart, PartsAnswer, WearPart } from './parts.ts';
import { bracketed, shownIn } from './shown-in.ts';
import type { Worked } from './worked.ts';

const n = (value: number): string => plain(value, 5);

/** How what comes off comes about, part by part. */
export const partsWorking = (answer: PartsAnswer, system: UnitSystem = 'metric'): Worked[] => [
  ...answer.turned.flatMap((one) => turnedWorked(one.name, one, system)),
  ...answer.faced.flatMap((one) => facedWorked(one.name, one, system)),
  ...answer.blocks.flatMap((one) => blockWorked(one.name, one, system)),
  ...answer.wear.flatMap(wearWorked),
];

/** A turned length. */
export function turnedWorked(name: string, part: Turned, system: UnitSystem = 'metric'): Worked[] {
  const { mm, um, long, small } = shownIn(system, 5);
  const { places_mm, diameter_um, taper_um, bow_um, cylindricity_um, from_height_um } = part;
  const high = diameter_um.indexOf(Math.max(...diameter_um));
  const low = diameter_um.indexOf(Math.min(...diameter_um));
  const at = (i: number): string => `${um(diameter_um[i]!)} at ${mm(places_mm[i]!)} ${long}`;
  return [
    {
      what: `${name}: diameter against the one at ${mm(places_mm[0]!)} ${long}`,
      formula: '2 × how far the tool goes from the axis, and (2hε + ε²)/R of its height over it',
      worked: `largest ${at(high)}, smallest ${at(low)}, ${small}; ${um(from_height_um)} ${small} of it from height`,
      source: 'geometry',
    },
    {
      what: `${name}: taper`,
      formula: 'rise of the least-squares line through the diameters over the length',
      worked: `${places_mm.length} places: ${um(taper_um.value)} ${small}, one sd ${um(taper_um.sd)} ${small}`,
    },
    {
      what: `${name}: bow`,
      formula: 'middle − ends of the least-squares parabola; plus: barrel',
      worked: `${um(bow_um.value)} ${small}, one sd ${um(bow_um.sd)} ${small}`,
    },
    {
      what: `${name}: cylindricity`,
      formula: '(largest − smallest diameter)/2',
      worked: `(${um(diameter_um[high]!)} − ${bracketed(um(diameter_um[low]!))})/2 = ${um(cylindricity_um.value)} ${small}, one sd ${um(cylindricity_um.sd)} ${small}`,
    },
  ];
}

/** A face or shoulder. */
export function facedWorked(
  name: string,
  part: Omit<FacedPart, 'name' | 'text' | keyof FacedWish>,
  system: UnitSystem = 'metric',
): Worked[] {
  const { mm, um, urad, long, small, slope, per } = shownIn(system, 5);
  const { radius_mm, concave_um, square_urad, form_um, flatness_um, corner_urad } = part;
  const reach = radius_mm[0]! - radius_mm.at(-1)!;
  return [
    {
      what: `${name}: hollow at the inner edge`,
      formula:
        '(yaw of the saddle + out of square − slope of the axis) × (rim − inner) − the cross slide’s own movement',
      worked: `from ${mm(radius_mm[0]!)} to ${mm(radius_mm.at(-1)!)} ${long}: ${um(concave_um.value)} ${small}, one sd ${um(concave_um.sd)} ${small}`,
      source: 'geometry',
    },
    {
      what: `${name}: as a slope`,
      formula: `${per} × hollow/(rim − inner)`,
      worked: `${per} × ${bracketed(um(concave_um.value))}/${mm(reach)} = ${urad(square_urad.value)} ${slope}, one sd ${urad(square_urad.sd)} ${slope}`,
    },
    {
      what: `${name}: flatness`,
      formula: 'between two planes square to the axis; form is what a straight cone leaves',
      worked: `${um(flatness_um.value)} ${small}, form ${um(form_um)} ${small}`,
    },
    ...(corner_urad
      ? [
          {
            what: `${name}: corner with the diameter beside it`,
            formula: '−(slope of the face’s hollow + slope of the radius); plus: more open than square',
            worked: `${urad(corner_urad.value)} ${slope}, one sd ${urad(corner_urad.sd)} ${slope}`,
          },
        ]
      : []),
  ];
}

/** A block. */
export function blockWorked(
  name: string,
  { faces, corners }: Block,
  system: UnitSystem = 'metric',
): Worked[] {
  const { um, urad, small, slope } = shownIn(system, 5);
  const size = ({ value, sd }: Required<Doubted>): string =>
    `${um(value)} ${small}, one sd ${um(sd)} ${small}`;
  const angle = ({ value, sd }: Required<Doubted>): string =>
    `${urad(value)} ${slope}, one sd ${urad(sd)} ${slope}`;
  return [
    ...faces.map(
      ({ face, axes, tilt_urad, flatness_um, parallel_um }): Worked => ({
        what: `${name}: face ${face}`,
        formula:
          'metal left on = Σ of the tool’s carriages − Σ of the work’s, each shift + turn × arm; its least-squares plane',
        worked: `slope along ${axes[0]} ${angle(tilt_urad[0])}; along ${axes[1]} ${angle(tilt_urad[1])}; flatness ${size(flatness_um)}; parallel ${size(parallel_um)}`,
        source: 'geometry of rigid carriages',
      }),
    ),
    ...corners.map(
      ({ faces: [a, b], square_urad }): Worked => ({
        what: `${name}: corner of ${a} and ${b}`,
        formula: '−(slope of either face toward the other); plus: more than square',
        worked: angle(square_urad),
      }),
    ),
  ];
}

const wearWorked = (feature: WearPart): Worked[] => [
  {
    what: `${feature.name}: how long it lasts`,
    formula: '(limit − value) / rate; ends where the limit lies 2 √(sd² + (rate sd × time)²) away',
    worked: `value ${n(feature.value)}, sd ${n(feature.sd)}, rate ${n(feature.rate)}, its sd ${n(feature.rate_sd)}, band ${n(feature.low)} to ${n(feature.high)}: ${feature.text}`,
    source: 'interval of a ratio, Fieller 1954, from memory',
  },
];
