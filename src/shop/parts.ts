import type { FacedWish, PartsAsk, TurnedWish, WearWish } from '../contract/parts.ts';
import { type Block, block } from '../core/parts/block.ts';
import { corner } from '../core/parts/corner.ts';
import { type Faced, type FacedAsk, faced } from '../core/parts/faced.ts';
import { travelOnBed } from '../core/parts/on-bed.ts';
import type { Doubted } from '../core/parts/spindle.ts';
import { hasDoubt, type Travel } from '../core/parts/travel.ts';
import { type Turned, type TurnedAsk, turned } from '../core/parts/turned.ts';
import { betterAim, type Wear, wear } from '../core/parts/wear.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import { told } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { type LastsText, wearText } from './parts-wear-words.ts';
import { type BedWords, blockText, facedText, turnedText } from './parts-words.ts';

/** A turned length with its sentence. */
export type TurnedPart = { readonly name: string; readonly text: string } & TurnedWish & Turned;
/** A face or shoulder with its sentence; `corner_urad`: with the diameter beside it, plus: more open than square. */
export type FacedPart = { readonly name: string; readonly text: string } & FacedWish &
  Faced & { readonly corner_urad?: Required<Doubted> };
export type BlockPart = { readonly name: string; readonly text: string } & Block;
/** How long a feature lasts; times in hours or years as asked, null: it does not leave its band. */
export type WearPart = WearWish & LastsText;

/** What `parts` answers; see docs/contract.md. */
export interface PartsAnswer {
  readonly ok: true;
  /** Whether the poses came with a doubt; without one every sd here is of the rest alone. */
  readonly doubt_known: boolean;
  readonly turned: readonly TurnedPart[];
  readonly faced: readonly FacedPart[];
  readonly blocks: readonly BlockPart[];
  readonly wear: readonly WearPart[];
}

/**
 * What parts a machine will make, from how its carriages move, and how long its features stay in their bands.
 * @param system  units of the sentences
 */
export function parts(ask: PartsAsk, system: UnitSystem = 'metric'): PartsAnswer | NoAnswer {
  const lathe = ask.lathe ? latheParts(ask.lathe, system) : { turned: [], faced: [], hasDoubt: true };
  if ('ok' in lathe) return lathe;
  const { mill, wear: wears } = ask;
  const blocks = (mill?.blocks ?? []).map(({ name, ...one }): BlockPart => {
    const made = block({ ...one, carriages: mill!.carriages, tool_mm: mill!.tool_mm });
    return { name, text: blockText(name, made, one.size_mm, system), ...made };
  });
  return {
    ok: true,
    doubt_known: lathe.hasDoubt && (mill?.carriages.some((one) => hasDoubt(one.travel)) ?? true),
    turned: lathe.turned,
    faced: lathe.faced,
    blocks,
    wear: (wears?.features ?? []).map((feature) => wearPart(feature, wears!.per, system)),
  };
}

type LatheAsk = NonNullable<PartsAsk['lathe']>;
interface LatheParts {
  readonly turned: readonly TurnedPart[];
  readonly faced: readonly FacedPart[];
  readonly hasDoubt: boolean;
}

function latheParts(lathe: LatheAsk, system: UnitSystem): LatheParts | NoAnswer {
  const travel = travelOf(lathe, system);
  if ('ok' in travel) return travel;
  const { tool_mm, side, spindle } = lathe;
  const bed: BedWords = { from_mm: travel.stations_mm[0]!, to_mm: travel.stations_mm.at(-1)! };
  const turnedAsk = (one: TurnedWish): TurnedAsk => ({ travel, spindle, tool_mm, side, ...one });
  const facedAsk = ({ at_mm, rim_mm, inner_mm }: FacedWish): FacedAsk => ({
    saddle: travel,
    ...(lathe.cross ? { cross: lathe.cross } : {}),
    square_urad: lathe.square_urad,
    spindle,
    tool_mm,
    side,
    at_mm,
    rim_mm,
    inner_mm,
  });
  return {
    hasDoubt: hasDoubt(travel),
    turned: lathe.turned.map((one) => {
      const made = turned(turnedAsk(one));
      return { ...one, text: turnedText(one, made, bed, system), ...made };
    }),
    faced: lathe.faced.map((one) => {
      const made = faced(facedAsk(one));
      const other = lathe.turned.find((each) => each.name === one.beside);
      const corner_urad = other && corner(facedAsk(one), turnedAsk(other));
      return {
        ...one,
        text: facedText(one, made, corner_urad, system),
        ...made,
        ...(corner_urad ? { corner_urad } : {}),
      };
    }),
  };
}

function travelOf({ travel }: LatheAsk, system: UnitSystem): Travel | NoAnswer {
  if ('poses' in travel) return travel;
  const { site, printed_mm, height_sd_um } = travel;
  const found = travelOnBed({ ...site, printed_mm, height_sd_um });
  if (!('ok' in found)) return found;
  const { place } = told(system);
  return {
    ok: false,
    why: 'not held',
    limits: [],
    text: `printed at ${place(found.printed_mm)}, the slide does not rest at ${place(found.at_mm)}: the load lifts or tips it off its pads`,
  };
}

function wearPart(feature: WearWish, per: '1000 h' | 'year', system: UnitSystem): WearPart {
  const { hit_sd, ...ask } = feature;
  const found: Wear = wear(ask);
  return { ...feature, ...wearText(feature, found, betterAim(ask, hit_sd), per, system) };
}
