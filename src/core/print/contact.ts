import { type Bits, bitsAbove, countIn, noBits, setRun, without } from './bits.ts';
import type { Film } from './film.ts';
import { growOnce } from './growth.ts';
import { filled } from './holes.ts';
import { majority } from './majority.ts';
import { rasterPxPerMm } from './rectified.ts';
import { runsOf } from './regions.ts';

/** Where the surface bears, region by region: sums over the elements of each, those of the first in [1]; 0 in all that were dropped. */
export interface Contact {
  readonly bears: Bits;
  /** Where a closed ring of blue holds bright metal: contact so hard that it rubbed the blue off. */
  readonly burnished: Bits;
  readonly area: Float64Array;
  /** Sums of the elements' columns and rows. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Burnished elements. */
  readonly bright: Float64Array;
}

/** Film from this share of full film up is contact; more where blue was dragged along; never within two sigma of bare. */
const cut = { usual: 0.36, overBlued: 0.53, sigmas: 2 };
/** A region needs an element as strong as this, and this area, mm². */
const core = { strength: 0.7, area_mm2: 0.06 };
/**
 * Regions are found where they part and then grow, without joining, by two elements to where film ends: two cuts do what
 * one cannot. The hazier the edges, the nearer that end lies to full film.
 */
const grow = { from: 0.273, most: 0.29, haze: 0.17, by: 0.56, turns: 2 };

const mm2 = rasterPxPerMm * rasterPxPerMm;

/**
 * Takes the film's gleam over: its memory holds other things afterwards.
 *
 * @param strength  of the film; streaks taken out where over-blued
 * @param nothing   where nothing counts
 */
export function contactOf(film: Film, strength: Float32Array, overBlued: boolean, nothing: Bits): Contact {
  const { width, height } = nothing;
  const from = Math.max(overBlued ? cut.overBlued : cut.usual, cut.sigmas * film.noise);
  const mask = majority(without(bitsAbove(strength, from, width, height), nothing));
  const burnished = filled(mask, film.gleam, nothing);
  const { gleam } = film;
  const label = new Int32Array(gleam.buffer, gleam.byteOffset, gleam.length).fill(0);
  const contact = strongRegions(mask, burnished, strength, label);
  if (!overBlued) {
    const end = grow.from + grow.by * (film.haze - grow.haze);
    const to = Math.max(grow.from, Math.min(grow.most, end));
    for (let turn = 0; turn < grow.turns; turn++) growOnce(contact, label, strength, to, nothing);
  }
  return contact;
}

/** Regions that are strong and large enough, also written into `label`. */
function strongRegions(mask: Bits, burnished: Bits, strength: Float32Array, label: Int32Array): Contact {
  const { width, height } = mask;
  const runs = runsOf(mask, 1, true);
  const { starts, ends } = runs;
  const area = new Float64Array(runs.count + 1);
  const strongest = new Float32Array(runs.count + 1);
  for (let run = 0; run < starts.length; run++) {
    const l = runs.label[run]!;
    if (strongest[l]! <= core.strength)
      strongest[l] = greatest(strength, starts[run]!, ends[run]!, strongest[l]!);
    area[l]! += ends[run]! - starts[run]!;
  }
  for (let l = 1; l < area.length; l++)
    if (!(strongest[l]! > core.strength && area[l]! >= core.area_mm2 * mm2)) area[l] = 0;
  const bears = noBits(width, height);
  const x = new Float64Array(area.length);
  const y = new Float64Array(area.length);
  const bright = new Float64Array(area.length);
  for (let run = 0; run < starts.length; run++) {
    const l = runs.label[run]!;
    if (area[l] === 0) continue;
    const start = starts[run]!;
    const end = ends[run]!;
    for (let o = start; o < end; o++) label[o] = l;
    setRun(bears, start, end);
    const j = Math.floor(start / width);
    const i = start - j * width;
    const many = end - start;
    x[l]! += many * (i + (many - 1) / 2);
    y[l]! += many * j;
    bright[l]! += countIn(burnished, j, i, i + many);
  }
  return { bears, burnished, area, x, y, bright };
}

function greatest(values: Float32Array, from: number, to: number, least: number): number {
  let most = least;
  for (let o = from; o < to; o++) if (values[o]! > most) most = values[o]!;
  return most;
}
