import type { Pad } from '../body/pad.ts';
import type { Vector } from '../body/vector.ts';
import type { Measure } from './measure.ts';

interface Bearing {
  readonly length_mm: Measure;
  readonly zones: number;
  /** Middle along the travel; 0 when left out. */
  readonly x_mm?: Measure;
  readonly y_mm: Measure;
  /** 0 when left out. */
  readonly z_mm?: Measure;
  /** What may still come off; a dimension that was not given means no limit. */
  readonly stock_um?: Measure;
  /** Left out: the surface the user chose. */
  readonly material?: string;
}

/** Two flanks on a fixed ridge (an inverted V) or in a fixed groove. `y_mm` is the apex, `z_mm` the middle height of the flanks. */
interface VeeWay extends Bearing {
  readonly kind: 'vee';
  readonly shape: 'ridge' | 'groove';
  readonly minus_name: string;
  readonly plus_name: string;
  /** Slope of the flank on the minus side, from level. */
  readonly minus_deg: Measure;
  readonly plus_deg: Measure;
  readonly minus_width_mm: Measure;
  readonly plus_width_mm: Measure;
}

/** A level way that carries from below. */
interface FlatWay extends Bearing {
  readonly kind: 'flat';
  readonly name: string;
  readonly width_mm: Measure;
}

/** A guiding flank. `faces` says where the fixed flank looks: away from the part's middle (y 0) or toward it. */
interface FlankWay extends Bearing {
  readonly kind: 'flank';
  readonly name: string;
  readonly width_mm: Measure;
  /** Angle between flank and flats: 90 for a square guide, 55 or 60 for a dovetail (which overhangs). */
  readonly angle_deg: Measure;
  readonly faces: 'out' | 'in';
}

/** Any other bearing face, with its normal from the fixed way into the part. */
interface PadWay extends Bearing {
  readonly kind: 'pad';
  readonly name: string;
  readonly width_mm: Measure;
  readonly normal: readonly [Measure, Measure, Measure];
}

export type Way = VeeWay | FlatWay | FlankWay | PadWay;

/** Reads a measure that must be there; and one that may be left out. */
export interface Ruler {
  readonly of: (measure: Measure) => number;
  readonly maybe: (measure: Measure) => number | undefined;
}

const sine = (deg: number): number => Math.sin((deg * Math.PI) / 180);
const cosine = (deg: number): number => Math.cos((deg * Math.PI) / 180);

/** The pads that a way makes; normals point from the fixed way into the part. Travel is along x. */
export function padsOf(way: Way, ruler: Ruler, surface: string): Pad[] {
  const at = (y_off: number): Vector => [
    ruler.of(way.x_mm ?? 0),
    ruler.of(way.y_mm) + y_off,
    ruler.of(way.z_mm ?? 0),
  ];
  const stock_um = way.stock_um === undefined ? undefined : ruler.maybe(way.stock_um);
  const pad = (name: string, centre_mm: Vector, normal: Vector, width_mm: Measure): Pad => ({
    name,
    centre_mm,
    normal,
    length_mm: ruler.of(way.length_mm),
    width_mm: ruler.of(width_mm),
    zones: way.zones,
    material: way.material ?? surface,
    ...(stock_um === undefined ? {} : { stock_um }),
  });
  switch (way.kind) {
    case 'vee': {
      // A ridge's flanks look outward, a groove's toward each other; both look up.
      const out = way.shape === 'ridge' ? 1 : -1;
      const flank = (name: string, side: 1 | -1, slope: Measure, width: Measure): Pad => {
        const deg = ruler.of(slope);
        const centre = at((side * ruler.of(width) * cosine(deg)) / 2);
        return pad(name, centre, [0, side * out * sine(deg), cosine(deg)], width);
      };
      return [
        flank(way.minus_name, -1, way.minus_deg, way.minus_width_mm),
        flank(way.plus_name, 1, way.plus_deg, way.plus_width_mm),
      ];
    }
    case 'flat':
      return [pad(way.name, at(0), [0, 0, 1], way.width_mm)];
    case 'flank': {
      const deg = ruler.of(way.angle_deg);
      const outward = Math.sign(ruler.of(way.y_mm)) || 1;
      const looks = way.faces === 'out' ? outward : -outward;
      // Below 90° the fixed flank overhangs, so it looks down as well.
      return [pad(way.name, at(0), [0, looks * sine(deg), -cosine(deg)], way.width_mm)];
    }
    case 'pad':
      return [
        pad(way.name, at(0), way.normal.map((part) => ruler.of(part)) as unknown as Vector, way.width_mm),
      ];
  }
}
