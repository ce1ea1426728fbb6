import { type Judged, verdict } from '../prove/verdict.ts';
import { cos, sin } from '../sums/sum.ts';
import { gibMove } from '../sums/taper.ts';

/** How the play was felt: square to the gib, pushed and pulled across the way, or lifted. */
export type PlayHow = 'square' | 'across' | 'lift';

/** Play of a slide on its gib, read at both of the gib's ends. */
export interface PlayRead {
  readonly how: PlayHow;
  readonly thick_end_um: number;
  readonly thin_end_um: number;
  /** One sd of a reading. */
  readonly reading_sd_um: number;
  /** Dovetail angle from the flats; 90 for a square way. */
  readonly angle_deg: number;
  /** Thickness over length. */
  readonly taper: number;
  /** Metal still to come off gib and flanks, square to the gib. */
  readonly scrape_um: number;
  /** Wanted play, square to the gib. */
  readonly low_um: number;
  readonly high_um: number;
  readonly aim_um: number;
  /** The two ends may differ by so much. */
  readonly alike_um: number;
  /** How far the gib may still go in, and come out; left out: not known. */
  readonly in_left_mm?: number;
  readonly out_left_mm?: number;
  /** Lead of its adjusting screw. */
  readonly screw_mm?: number;
}

export type GibDeed =
  | 'leave'
  | 'measure again'
  | 'set'
  | 'scrape, then set'
  | 'shim'
  | 'line or make new'
  | 'scrape thinner'
  | 'cut again';

/** Play, and what is to be done. */
export interface PlayFound {
  /** Square to the gib. */
  readonly thick_um: number;
  readonly thin_um: number;
  readonly sd_um: number;
  readonly judged: { readonly thick: Judged; readonly thin: Judged; readonly alike: Judged };
  /** Looser at the thick end by so much, square to the gib. */
  readonly differ_um: number;
  /** The end that is tighter, from whose face `differ_um` comes off, nothing at the other. */
  readonly tight: 'thick end' | 'thin end';
  /** The gib goes in by so much, mm, once it and its flanks are scraped; minus: comes out. */
  readonly in_mm: number;
  readonly in_sd_mm: number;
  /** Turns of its screw for that. */
  readonly turns?: number;
  /** Play that one mm takes up, and one turn, square to the gib. */
  readonly per_mm_um: number;
  readonly per_turn_um?: number;
  readonly deed: GibDeed;
  /** What is wanting on its back (shim, liner), or too much on it, square to the gib, when its travel does not reach. */
  readonly thickness_um: number;
}

/** Thickest shim behind a gib, and most that is scraped rather than cut, µm; common practice. */
const mostShim_um = 500;
const mostScraped_um = 100;

/** From play as it was felt to play square to the gib. */
export function squarePlay(how: PlayHow, um: number, angle_deg: number): number {
  return { square: um, across: um * sin(angle_deg), lift: um * cos(angle_deg) }[how];
}

/**
 * What a gib is to do:
 *
 *     play square to it = across · sin(angle) = lift · cos(angle)
 *     in = (loose end's play + still to scrape − aim) / taper,    at the tight end its face comes off by the difference first
 *
 * Where its travel does not reach, `thickness = what is missing · taper` goes on its back or comes off it.
 * Source: geometry of a wedge, core/sums/taper.ts; bands and thicknesses are common practice; checks/gib.check.ts.
 */
export function playFound(read: PlayRead): PlayFound {
  const { how, angle_deg, taper, low_um, high_um, aim_um, scrape_um, screw_mm } = read;
  const thick_um = squarePlay(how, read.thick_end_um, angle_deg);
  const thin_um = squarePlay(how, read.thin_end_um, angle_deg);
  const sd_um = Math.abs(squarePlay(how, read.reading_sd_um, angle_deg));
  const differ_um = thick_um - thin_um;
  const judged = {
    thick: verdict(thick_um, sd_um, low_um, high_um),
    thin: verdict(thin_um, sd_um, low_um, high_um),
    alike: verdict(differ_um, Math.SQRT2 * sd_um, -read.alike_um, read.alike_um),
  };
  const loose_um = Math.max(thick_um, thin_um);
  const scrapes = scrape_um > 0 || judged.alike.verdict === 'outside';
  // Unequal ends that stay as they are are set by the tight one, so that nothing binds.
  const rules_um = scrapes ? loose_um + scrape_um : Math.min(thick_um, thin_um);
  const { move: in_mm } = gibMove.of({ clearance: rules_um - aim_um, taper }) as { move: number };
  const reach = reachOf(in_mm, read);
  const deed = deedOf(judged, scrapes, reach * taper * 1000);
  return {
    thick_um,
    thin_um,
    sd_um,
    judged,
    differ_um,
    tight: differ_um > 0 ? 'thin end' : 'thick end',
    in_mm: deed === 'leave' || deed === 'measure again' ? 0 : in_mm,
    in_sd_mm: sd_um / 1000 / taper,
    ...(screw_mm === undefined ? {} : { turns: in_mm / screw_mm, per_turn_um: 1000 * screw_mm * taper }),
    per_mm_um: 1000 * taper,
    deed,
    thickness_um: Math.abs(reach) * taper * 1000,
  };
}

/** By how much its travel falls short, mm; plus: it would have to go in further; minus: come out further. */
function reachOf(in_mm: number, { in_left_mm = Infinity, out_left_mm = Infinity }: PlayRead): number {
  return Math.max(0, in_mm - in_left_mm) - Math.max(0, -in_mm - out_left_mm);
}

function deedOf(judged: PlayFound['judged'], scrapes: boolean, short_um: number): GibDeed {
  if (short_um > mostShim_um) return 'line or make new';
  if (short_um > 0) return 'shim';
  if (short_um < -mostScraped_um) return 'cut again';
  if (short_um < 0) return 'scrape thinner';
  if (scrapes) return 'scrape, then set';
  const all = [judged.thick.verdict, judged.thin.verdict, judged.alike.verdict];
  if (all.every((one) => one === 'within')) return 'leave';
  return judged.thick.verdict === 'outside' || judged.thin.verdict === 'outside' ? 'set' : 'measure again';
}
