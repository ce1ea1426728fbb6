import type { PoseNumbers } from '../core/body/displacement.ts';
import type { AxisName, Vector } from '../core/body/vector.ts';
import type { BlockFaceName, Carriage } from '../core/parts/block.ts';
import { type Doubted, type Spindle, type ToolSide, trueSpindle } from '../core/parts/spindle.ts';
import type { Travel, TravelDoubt } from '../core/parts/travel.ts';
import { partsFits } from './parts-fits.ts';
import { partsSchema, type WrittenParts, type WrittenPoses } from './parts-schema.ts';
import { checked } from './refusal.ts';
import type { SiteAsk } from './site.ts';

/** The schema, and that its parts fit each other. */
const fittingParts = partsSchema.superRefine((input, context) => {
  partsFits(input, (path, found, expected) => {
    context.addIssue({ code: 'custom', path: [...path], input: found, message: expected });
  });
});

/** A turned length as asked. */
export interface TurnedWish {
  readonly name: string;
  readonly radius_mm: number;
  readonly from_mm: number;
  readonly to_mm: number;
  readonly tool_high_mm: number;
}

/** A face or shoulder as asked; `beside`: the turned length it stands at the end of. */
export interface FacedWish {
  readonly name: string;
  readonly at_mm: number;
  readonly rim_mm: number;
  readonly inner_mm: number;
  readonly beside?: string;
}

/** What `parts` is asked, with what was left out filled in. */
export interface PartsAsk {
  readonly lathe?: {
    /** Poses as given, or a slide on a surveyed bed to find them from. */
    readonly travel:
      | Travel
      | { readonly site: SiteAsk; readonly printed_mm: number; readonly height_sd_um: number };
    readonly tool_mm: Vector;
    readonly side: ToolSide;
    readonly spindle: Spindle;
    readonly cross?: Travel;
    readonly square_urad: Doubted;
    readonly turned: readonly TurnedWish[];
    readonly faced: readonly FacedWish[];
  };
  readonly mill?: {
    readonly carriages: readonly Carriage[];
    readonly tool_mm: Vector;
    readonly blocks: readonly {
      readonly name: string;
      readonly middle_mm: Vector;
      readonly size_mm: Vector;
      readonly faces: readonly BlockFaceName[];
    }[];
  };
  readonly wear?: {
    readonly per: '1000 h' | 'year';
    readonly features: readonly WearWish[];
  };
}

export interface WearWish {
  readonly name: string;
  readonly unit: 'um' | 'urad';
  readonly value: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
  readonly rate: number;
  readonly rate_sd: number;
  /** Sd with which an aim is hit. */
  readonly hit_sd: number;
}

/**
 * `parts`’ input as it came; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export function partsInput(value: unknown): PartsAsk {
  const written = checked(fittingParts, value) as WrittenParts;
  const { lathe, mill, wear } = written;
  return {
    ...(lathe ? { lathe: latheAsk(lathe) } : {}),
    ...(mill
      ? {
          mill: {
            tool_mm: mill.tool_mm,
            blocks: mill.blocks,
            carriages: mill.carriages.map(({ name, along, carries, reference_mm, ...poses }) => ({
              travel: travelOf(name, along, poses),
              carries,
              reference_mm,
            })),
          },
        }
      : {}),
    ...(wear
      ? {
          wear: {
            per: wear.per,
            features: wear.features.map(({ rate_sd = 0, hit_sd, ...feature }) => ({
              ...feature,
              rate_sd,
              hit_sd: hit_sd ?? feature.sd,
            })),
          },
        }
      : {}),
  };
}

type WrittenLathe = NonNullable<WrittenParts['lathe']>;

function latheAsk(lathe: WrittenLathe): NonNullable<PartsAsk['lathe']> {
  const { travel, on_bed, cross, spindle } = lathe;
  return {
    travel: travel
      ? travelOf('saddle', 'x', travel)
      : {
          site: on_bed!.site as SiteAsk,
          printed_mm: on_bed!.printed_mm,
          height_sd_um: on_bed!.height_sd_um ?? 0,
        },
    tool_mm: lathe.tool_mm ?? (on_bed!.site.tool_mm as Vector),
    side: lathe.side ?? 'front',
    spindle: {
      across_urad: (spindle?.across_urad as Doubted | undefined) ?? trueSpindle.across_urad,
      up_urad: (spindle?.up_urad as Doubted | undefined) ?? trueSpindle.up_urad,
    },
    ...(cross ? { cross: travelOf('cross slide', 'y', cross) } : {}),
    square_urad: (lathe.square_urad as Doubted | undefined) ?? { value: 0 },
    turned: (lathe.turned ?? []).map(({ tool_high_mm = 0, ...one }) => ({ ...one, tool_high_mm })),
    faced: (lathe.faced ?? []).map(({ inner_mm = 0, beside, ...one }) => ({
      ...one,
      inner_mm,
      ...(beside === undefined ? {} : { beside }),
    })),
  };
}

const zeros: readonly [number, number, number] = [0, 0, 0];

function travelOf(name: string, along: AxisName, written: WrittenPoses): Travel {
  const { stations_mm, shift_um, turn_urad, shift_sd_um, turn_sd_urad, common_covariance, covariance } =
    written;
  const six = (shift: typeof zeros = zeros, turn: typeof zeros = zeros): PoseNumbers => [...shift, ...turn];
  const doubt: TravelDoubt = {
    ...(shift_sd_um || turn_sd_urad
      ? { sds: stations_mm.map((_, i) => six(shift_sd_um?.[i], turn_sd_urad?.[i])) }
      : {}),
    ...(common_covariance ? { common_covariance } : {}),
    ...(covariance ? { covariance } : {}),
  };
  return {
    name,
    along,
    stations_mm,
    poses: stations_mm.map((_, i) => six(shift_um?.[i], turn_urad?.[i])),
    ...(Object.keys(doubt).length ? { doubt } : {}),
  };
}
