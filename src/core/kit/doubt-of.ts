import { rise, slope } from '../body/displacement.ts';
import { sdWithin } from '../prove/distribution.ts';
import { limpness, overhangSag, sagOnTwo, supportPoints } from './beam.ts';
import { gradeLimit, levelGrades } from './grade.ts';
import type {
  BarReading,
  BlockHeight,
  Indicator,
  Kit,
  LevelTilt,
  LevelWalk,
  Reference,
  SetUp,
  SquareSweep,
  StraightedgeSweep,
  TiltReader,
} from './kit.ts';
import { materials } from './material.ts';
import { thermalBow } from './temperature.ts';

/** One part of a set-up's doubt. */
export interface Part {
  readonly what: 'reading' | 'instrument' | 'zero' | 'reference' | 'seating' | 'sag' | 'warmth' | 'film';
  /** One sd, in µrad or µm as the set-up measures. */
  readonly sd: number;
  /** For sag and warmth: the bend that is worked out, µm; down or up as it is. */
  readonly bend_um?: number;
}

/** One sd of a single reading: half its graduation to either side, and what it does not repeat. */
export const readingSd = (graduation: number, repeatability: number): number =>
  Math.hypot(sdWithin(graduation / 2), repeatability);

/** One sd of a reference's own error over its length, µm. */
export function referenceSd_um(reference: Reference): number {
  const { known } = reference;
  if (known.by === 'certificate') return known.doubt_um / 2;
  if (known.by === 'limit') return sdWithin(known.limit_um);
  return sdWithin(
    gradeLimit(known.standard, known.grade, reference.length_mm, reference.width_mm ?? 0).limit_um,
  );
}

/** Setting a reference down again, one sd, when nothing is said: common practice. */
const usualReseat_um = 1;

/** A doubt that is corrected for leaves the correction's own doubt; one that is left in counts as a bound. */
const left = (size_um: number, share: number, takenOut: boolean): number =>
  takenOut ? Math.abs(size_um) * share : sdWithin(Math.abs(size_um));

function squareSweep(setup: SquareSweep, instrument: Indicator, square: Reference): Part[] {
  const sides = setup.turned_over ? 2 : 1;
  const n = setup.points;
  // Slope of a line through n places evenly apart: u²(slope) = 12 u² (n − 1) / (L² n (n + 1)).
  const line = Math.sqrt((12 * (n - 1)) / (n * (n + 1)));
  const reading = readingSd(instrument.graduation_um, instrument.repeatability_um) * line;
  return [
    { what: 'reading', sd: slope(reading, setup.length_mm) / Math.sqrt(sides * setup.sweeps) },
    { what: 'reference', sd: setup.turned_over ? 0 : slope(referenceSd_um(square), square.length_mm) },
    {
      what: 'seating',
      sd: slope(square.reseat_um ?? usualReseat_um, square.length_mm) / Math.sqrt(sides * setup.seats),
    },
  ];
}

/** How far a spirit level of a class may be out, one sd, µrad. */
const classSd_urad = (level: TiltReader): number =>
  level.class ? sdWithin(levelGrades.within_divisions[level.class] * level.graduation_urad) : 0;

function levelTilt(setup: LevelTilt, level: TiltReader): Part[] {
  const ways = setup.turned ? 2 : 1;
  return [
    {
      what: 'reading',
      sd: readingSd(level.graduation_urad, level.repeatability_urad) / Math.sqrt(ways * setup.readings),
    },
    { what: 'instrument', sd: classSd_urad(level) },
    { what: 'zero', sd: setup.turned ? 0 : (level.zero_urad ?? level.graduation_urad) },
  ];
}

function levelWalk(setup: LevelWalk, level: TiltReader): Part[] {
  const steps = Math.max(2, setup.length_mm / level.base_mm);
  // Middle of a profile of n steps against its ends: u(h) = p u √n / 2.
  const middle = (urad: number): number => (rise(urad, level.base_mm) * Math.sqrt(steps)) / 2;
  return [
    {
      what: 'reading',
      sd: middle(readingSd(level.graduation_urad, level.repeatability_urad)) / Math.sqrt(setup.runs),
    },
    // The same places of the scale come back on the way back: more runs do not better it.
    { what: 'instrument', sd: middle(classSd_urad(level)) },
  ];
}

function straightedgeSweep(setup: StraightedgeSweep, instrument: Indicator, edge: Reference): Part[] {
  const sides = setup.turned_over ? 2 : 1;
  // The middle against the line through two ends: 1 + ¼ + ¼ readings' variances.
  const middle = Math.sqrt(1.5) / Math.sqrt(sides);
  const reading = readingSd(instrument.graduation_um, instrument.repeatability_um);
  return [
    { what: 'reading', sd: (middle * reading) / Math.sqrt(setup.sweeps) },
    { what: 'reference', sd: setup.turned_over ? 0 : referenceSd_um(edge) },
    { what: 'seating', sd: (middle * (edge.reseat_um ?? usualReseat_um)) / Math.sqrt(setup.seats) },
    ...edgeBent(setup, edge),
  ];
}

/** Sag and bow of a straightedge whose depth and material are known. */
function edgeBent(setup: StraightedgeSweep, edge: Reference): Part[] {
  if (edge.depth_mm === undefined || edge.material === undefined) return [];
  const stuff = materials[edge.material];
  const parts: Part[] = [];
  if (setup.plane === 'vertical') {
    const from_end =
      setup.support_mm === undefined ? supportPoints.least_sag : setup.support_mm / edge.length_mm;
    const limp = limpness({ kind: 'rectangle', depth_mm: edge.depth_mm }, stuff);
    const { range_um } = sagOnTwo(limp, edge.length_mm, Math.min(0.5, from_end));
    parts.push({
      what: 'sag',
      bend_um: range_um,
      sd: left(range_um, stuff.modulus_sd_GPa / stuff.modulus_GPa, setup.sag_taken_out),
    });
  }
  if (setup.warmth) {
    const bow = (warmer_K: number): number =>
      thermalBow(stuff.expansion_um_mK, edge.length_mm, edge.depth_mm!, warmer_K);
    parts.push({
      what: 'warmth',
      bend_um: bow(setup.warmth.warmer_K),
      sd: Math.hypot(sdWithin(bow(setup.warmth.warmer_K)), bow(setup.warmth.sd_K)),
    });
  }
  return parts;
}

function testBar(setup: BarReading, instrument: Indicator, bar: Reference): Part[] {
  const sides = setup.turned_half ? 2 : 1;
  const reading = readingSd(instrument.graduation_um, instrument.repeatability_um) * Math.SQRT2;
  const parts: Part[] = [
    { what: 'reading', sd: slope(reading, setup.length_mm) / Math.sqrt(sides * setup.readings) },
    { what: 'reference', sd: setup.turned_half ? 0 : slope(referenceSd_um(bar), bar.length_mm) },
  ];
  if (setup.plane === 'horizontal' || bar.depth_mm === undefined || bar.material === undefined) return parts;
  const stuff = materials[bar.material];
  const limp = limpness({ kind: 'round', diameter_mm: bar.depth_mm, bore_mm: bar.bore_mm ?? 0 }, stuff);
  const { sag_um } = overhangSag(limp, setup.length_mm);
  const share = stuff.modulus_sd_GPa / stuff.modulus_GPa;
  return [
    ...parts,
    { what: 'sag', bend_um: sag_um, sd: slope(left(sag_um, share, setup.sag_taken_out), setup.length_mm) },
  ];
}

/** Warmer by 1 K steel, and cast iron nearly so, grows by this, µm a mm: handbook value of steel. */
const growth_um_mmK = materials.steel.expansion_um_mK / 1000;

/** One sd of a stack of blocks, µm: each is out by itself; a certificate or a word is for the stack. */
function stackSd_um(setup: BlockHeight, blocks: Reference): number {
  if (blocks.known.by !== 'grade') return referenceSd_um(blocks);
  const one = { ...blocks, length_mm: setup.height_mm / setup.blocks };
  return referenceSd_um(one) * Math.sqrt(setup.blocks);
}

/** The place less the stack: two readings, the stack's own length, how it stands, and its warmth against the machine's. */
function blockHeight(setup: BlockHeight, instrument: Indicator, blocks: Reference): Part[] {
  const reading = readingSd(instrument.graduation_um, instrument.repeatability_um) * Math.SQRT2;
  return [
    { what: 'reading', sd: reading / Math.sqrt(setup.readings) },
    { what: 'reference', sd: stackSd_um(setup, blocks) },
    { what: 'seating', sd: (blocks.reseat_um ?? usualReseat_um) / Math.sqrt(setup.seats) },
    { what: 'warmth', sd: growth_um_mmK * setup.height_mm * setup.apart_K },
  ];
}

/** One reading of a set-up's indicator, one sd, µm. */
function dialSd({ instrument }: { readonly instrument: string }, kit: Kit): number {
  const dial = instrumentOf(kit, instrument, 'indicator') as Indicator;
  return readingSd(dial.graduation_um, dial.repeatability_um);
}

/** Instruments and references by their kind; the contract has seen to it that they are there. */
export function instrumentOf<K extends Kit['instruments'][number]['kind']>(
  kit: Kit,
  name: string,
  ...kinds: K[]
) {
  const found = kit.instruments.find((one) => one.name === name && kinds.includes(one.kind as K));
  if (!found) throw new RangeError(`no ${kinds.join(' or ')} "${name}" in the kit`);
  return found as Extract<Kit['instruments'][number], { kind: K }> & Kit['instruments'][number];
}

export function referenceOf(kit: Kit, name: string, kind: Reference['kind']): Reference {
  const found = kit.references.find((one) => one.name === name && one.kind === kind);
  if (!found) throw new RangeError(`no ${kind} "${name}" in the kit`);
  return found;
}

/** What each way of measuring is done with. */
export const needs = {
  'square sweep': { instruments: ['indicator'], reference: 'square' },
  level: { instruments: ['level', 'electronic level'], reference: undefined },
  'level walk': { instruments: ['level', 'electronic level', 'autocollimator'], reference: undefined },
  'straightedge sweep': { instruments: ['indicator'], reference: 'straightedge' },
  'test bar': { instruments: ['indicator'], reference: 'test bar' },
  'plate print': { instruments: [], reference: 'plate' },
  'height by blocks': { instruments: ['indicator'], reference: 'gauge blocks' },
  'level twist': { instruments: ['level', 'electronic level'], reference: undefined },
  'carried indicator': { instruments: ['indicator'], reference: undefined },
  'plate heights': { instruments: ['indicator'], reference: 'plate' },
} as const satisfies Record<
  SetUp['method'],
  { instruments: readonly string[]; reference: Reference['kind'] | undefined }
>;

const tilts = ['level', 'electronic level', 'autocollimator'] as const;

/**
 * Every part of a set-up's doubt, one sd each, in µrad where it measures a slope and µm where it measures a height.
 * @throws RangeError  an instrument or reference that the kit does not have
 */
export function partsOfDoubt(setup: SetUp, kit: Kit): readonly Part[] {
  switch (setup.method) {
    case 'square sweep':
      return squareSweep(
        setup,
        instrumentOf(kit, setup.instrument, 'indicator') as Indicator,
        referenceOf(kit, setup.reference, 'square'),
      );
    case 'level':
      return levelTilt(setup, instrumentOf(kit, setup.instrument, ...tilts) as TiltReader);
    case 'level walk':
      return levelWalk(setup, instrumentOf(kit, setup.instrument, ...tilts) as TiltReader);
    case 'straightedge sweep':
      return straightedgeSweep(
        setup,
        instrumentOf(kit, setup.instrument, 'indicator') as Indicator,
        referenceOf(kit, setup.reference, 'straightedge'),
      );
    case 'test bar':
      return testBar(
        setup,
        instrumentOf(kit, setup.instrument, 'indicator') as Indicator,
        referenceOf(kit, setup.reference, 'test bar'),
      );
    case 'height by blocks':
      return blockHeight(
        setup,
        instrumentOf(kit, setup.instrument, 'indicator') as Indicator,
        referenceOf(kit, setup.reference, 'gauge blocks'),
      );
    case 'level twist': {
      const level = instrumentOf(kit, setup.instrument, ...tilts) as TiltReader;
      // One tilt less another: the zero drops out, the scale's own error does not.
      return [
        {
          what: 'reading',
          sd:
            (readingSd(level.graduation_urad, level.repeatability_urad) * Math.SQRT2) /
            Math.sqrt(setup.readings),
        },
        { what: 'instrument', sd: classSd_urad(level) * Math.SQRT2 },
      ];
    }
    case 'carried indicator':
      return [{ what: 'reading', sd: dialSd(setup, kit) * Math.sqrt(2 / setup.sweeps) }];
    case 'plate heights':
      return [
        // A place in the middle against the plane through others about it: 1 + ¼ + ¼ readings' variances.
        { what: 'reading', sd: dialSd(setup, kit) * Math.sqrt(1.5 / setup.sweeps) },
        { what: 'reference', sd: referenceSd_um(referenceOf(kit, setup.reference, 'plate')) },
      ];
    case 'plate print':
      return [
        { what: 'reference', sd: referenceSd_um(referenceOf(kit, setup.reference, 'plate')) },
        // What shows blue lies somewhere within the film.
        { what: 'film', sd: sdWithin(setup.film_um / 2) / Math.sqrt(setup.prints) },
      ];
  }
}

/** The parts together, one sd. */
export const together = (parts: readonly Part[]): number => Math.hypot(...parts.map((part) => part.sd));
