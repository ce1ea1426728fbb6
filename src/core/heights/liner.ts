import { displacement } from '../body/displacement.ts';
import { add, dot, unit, type Vector } from '../body/vector.ts';
import { tableColumns } from '../quantity/table-column.ts';
import type { UnitSystem } from '../quantity/unit.ts';
import { liner as linerSum } from '../sums/heights.ts';
import { type Chain, type Change, effectOn, endsOf, type Joint, poseAfter } from './chain.ts';
import { heightFound } from './heights.ts';

/** A liner that is to be bonded to faces of a joint so that a height comes back. */
export interface LinerAsk {
  readonly joint: string;
  /** Faces that get it. */
  readonly pads: readonly string[];
  /** The height that it brings to its aim. */
  readonly brings: string;
  /** Thickness of the sheet; left out: the thinnest usual one that fits. */
  readonly sheet_mm?: number;
  readonly bond_mm: number;
  readonly bond_sd_mm: number;
  /** Taken off after bonding by machine, and by scraping. */
  readonly machining_mm: number;
  readonly scraping_mm: number;
  /** Least liner left; left out: 0.5 mm or half the sheet, whichever is more. */
  readonly least_mm?: number;
  /** Depth of oil grooves in it. */
  readonly groove_mm?: number;
  /** Thickness of the wall under the face, before milling. */
  readonly wall_mm?: number;
}

/** One lined face. */
export interface LinedPad {
  readonly pad: string;
  /** How far the face must come up, square to itself. */
  readonly raise_mm: number;
  /** To mill off the metal first, square to the face. */
  readonly mill_mm: number;
  /** Wall left under it, where the wall is known. */
  readonly wall_left_mm?: number;
}

/** A liner worked out. */
export interface LinerFound {
  readonly ok: true;
  readonly joint: string;
  readonly brings: string;
  readonly sheet_mm: number;
  readonly bond_mm: number;
  readonly machining_mm: number;
  readonly scraping_mm: number;
  /** How far the body rises at the place of that height, straight up, when it is finished. */
  readonly rise_um: number;
  readonly pads: readonly LinedPad[];
  /** Liner left when it is finished, and what must be left at least. */
  readonly left_mm: number;
  readonly least_mm: number;
  /** What the planner may take off each lined face: machined, less the least. */
  readonly stock_um: number;
  /** Faces of the joint that are not lined and would stand off, by so much. */
  readonly stands_off: readonly { readonly pad: string; readonly um: number }[];
  /** The finished liner as a change of the chain: finished, and as it is when scraping begins. */
  readonly finished: Change;
  readonly unscraped: Change;
}

/** No liner does it: which limit binds, and by how much. */
export interface NoLiner {
  readonly ok: false;
  readonly joint: string;
  readonly why: 'too little left' | 'sheet too thin' | 'wall too thin' | 'does not move it';
  readonly short_mm: number;
  readonly text: string;
}

/** Thicknesses that sheet is sold in, mm; common practice. */
export const usualSheets_mm: readonly number[] = [0.8, 1, 1.2, 1.6, 2, 2.4, 3.2];
/** Least liner: so much, or this share of the sheet, whichever is more; so much under a groove. Common practice. */
const leastLiner_mm = 0.5;
const leastShare = 0.5;
const underGroove_mm = 0.3;
/** Share of a wall that must stay under a milled face; common practice. */
const wallShare = 0.6;
/** A face that stands off by less than this bears after scraping. */
const standsOff_um = 1;

/** The least liner that may be left, mm. */
export const leastLeft_mm = (sheet_mm: number, ask: Pick<LinerAsk, 'least_mm' | 'groove_mm'>): number =>
  Math.max(
    ask.least_mm ?? Math.max(leastLiner_mm, leastShare * sheet_mm),
    ask.groove_mm === undefined ? 0 : ask.groove_mm + underGroove_mm,
  );

/** Twelve figures: what differences leave behind is not shown as if it were known. */
const clean = (value: number): number => Number(value.toPrecision(12));

/**
 * The liner that brings a height to its aim and the body back to how it lay by the drawing. Square to each face
 *
 *     raise = n · (what undoes the body's present lie + h · up),   mill = sheet + bond − machining − scraping − raise
 *
 * h lifts the body from where it is drawn to where the height is at its aim.
 * Source: trade arithmetic (core/sums/heights.ts); held to in checks/heights-liner.check.ts.
 * @param system  units of what is said where there is none
 * @throws RangeError  a joint, pad or height that the chain does not have
 */
export function linerFor(chain: Chain, ask: LinerAsk, system: UnitSystem = 'metric'): LinerFound | NoLiner {
  const need = needOf(chain, ask);
  if (!need)
    return refused(
      ask,
      'does not move it',
      0,
      `"${ask.joint}" does not carry one end of "${ask.brings}" alone`,
    );
  const sheets = ask.sheet_mm === undefined ? usualSheets_mm : [ask.sheet_mm];
  let last: LinerFound | NoLiner | undefined;
  for (const sheet_mm of sheets) {
    last = withSheet(need, ask, sheet_mm, system);
    if (last.ok || last.why === 'wall too thin') break;
  }
  return last!;
}

interface Need {
  readonly joint: Joint;
  /** At the place of the height, from how it lies now. */
  readonly rise_um: number;
  /** µm each face must come up, square to itself. */
  readonly raise_um: ReadonlyMap<string, number>;
}

function needOf(chain: Chain, ask: LinerAsk): Need | undefined {
  const joint = chain.joints.find((one) => one.name === ask.joint);
  const height = chain.heights.find((one) => one.name === ask.brings);
  if (!joint) throw new RangeError(`"${ask.joint}" is not a joint of the chain`);
  if (!height) throw new RangeError(`"${ask.brings}" is not a height of the chain`);
  const unknown = ask.pads.find((pad) => !joint.slide.pads.some((one) => one.name === pad));
  if (unknown !== undefined) throw new RangeError(`"${unknown}" is not a pad of "${joint.name}"`);
  const ends = endsOf(chain, height);
  const up = ends.to.joints.includes(joint) ? 1 : 0;
  const down = ends.from.joints.includes(joint) ? 1 : 0;
  if (up === down) return undefined;

  const lies = poseAfter(joint.slide, changed(chain.changes, joint));
  // The height as it would be with this joint back as drawn; what was measured keeps its say.
  const now_um = heightFound(chain, height).um;
  const rest_um = now_um - effectOn(ends, joint, lies);
  const above_um = (up - down) * (height.aim_um - rest_um);
  const raise_um = new Map(
    joint.slide.pads.map((pad) => {
      const now = displacement(lies, pad.centre_mm);
      const back: Vector = add([-now[0], -now[1], -now[2]], [0, 0, above_um]);
      return [pad.name, clean(dot(unit(pad.normal), back))] as const;
    }),
  );
  return { joint, rise_um: (up - down) * (height.aim_um - now_um), raise_um };
}

/** All that changed at a joint so far, µm by pad. */
function changed(changes: readonly Change[], joint: Joint): Record<string, number> {
  const sum: Record<string, number> = {};
  for (const change of changes)
    if (change.joint === joint.name)
      for (const [pad, um] of Object.entries(change.thickness_um)) sum[pad] = (sum[pad] ?? 0) + um;
  return sum;
}

function withSheet(need: Need, ask: LinerAsk, sheet_mm: number, system: UnitSystem): LinerFound | NoLiner {
  const { length } = tableColumns(system);
  const said = (mm: number): string => `${length.figures(mm)} ${length.unit}`;
  const { joint, raise_um, rise_um } = need;
  const { bond_mm, machining_mm, scraping_mm } = ask;
  const least_mm = leastLeft_mm(sheet_mm, ask);
  const left_mm = clean(sheet_mm - machining_mm - scraping_mm);
  if (left_mm < least_mm)
    return refused(
      ask,
      'too little left',
      least_mm - left_mm,
      `of a sheet of ${said(sheet_mm)}, ${said(left_mm)} would be left after machining and scraping; at least ${said(least_mm)} must stay`,
    );
  const pads = ask.pads.map((pad): LinedPad => {
    const raise_mm = raise_um.get(pad)! / 1000;
    const { mill } = linerSum.of({
      raise: raise_mm,
      sheet: sheet_mm,
      bond: bond_mm,
      allowance: machining_mm + scraping_mm,
      lean: 0,
    }) as { mill: number };
    const mill_mm = clean(mill);
    return {
      pad,
      raise_mm,
      mill_mm,
      ...(ask.wall_mm === undefined ? {} : { wall_left_mm: clean(ask.wall_mm - mill_mm) }),
    };
  });
  const thin = pads.find((pad) => pad.mill_mm < 0);
  if (thin)
    return refused(
      ask,
      'sheet too thin',
      -thin.mill_mm,
      `"${thin.pad}" must come up ${said(thin.raise_mm)}: a sheet of ${said(sheet_mm)} is ${said(-thin.mill_mm)} too thin; pack with metal, or a thicker sheet`,
    );
  const weak = pads.find((pad) => ask.wall_mm !== undefined && pad.wall_left_mm! < wallShare * ask.wall_mm);
  if (weak)
    return refused(
      ask,
      'wall too thin',
      wallShare * ask.wall_mm! - weak.wall_left_mm!,
      `milling ${said(weak.mill_mm)} off under "${weak.pad}" would leave ${said(weak.wall_left_mm!)} of a wall of ${said(ask.wall_mm!)}; at least ${said(wallShare * ask.wall_mm!)} should stay`,
    );
  const change = (name: string, more_um: number): Change => ({
    name,
    joint: joint.name,
    when: 'planned',
    thickness_um: Object.fromEntries(
      pads.map((pad) => [
        pad.pad,
        1000 * (sheet_mm + bond_mm - machining_mm - scraping_mm - pad.mill_mm) + more_um,
      ]),
    ),
    sd_um: 1000 * ask.bond_sd_mm,
  });
  return {
    ok: true,
    joint: joint.name,
    brings: ask.brings,
    sheet_mm,
    bond_mm,
    machining_mm,
    scraping_mm,
    rise_um,
    pads,
    left_mm,
    least_mm,
    stock_um: clean(1000 * (sheet_mm - machining_mm - least_mm)),
    stands_off: joint.slide.pads.flatMap(({ name }) => {
      const um = raise_um.get(name)!;
      return ask.pads.includes(name) || Math.abs(um) < standsOff_um ? [] : [{ pad: name, um }];
    }),
    finished: change(`liner, ${joint.name}`, 0),
    unscraped: change(`liner before scraping, ${joint.name}`, 1000 * scraping_mm),
  };
}

const refused = (ask: LinerAsk, why: NoLiner['why'], short_mm: number, text: string): NoLiner => ({
  ok: false,
  joint: ask.joint,
  why,
  short_mm: clean(short_mm),
  text: `liner on "${ask.joint}": ${text}`,
});
