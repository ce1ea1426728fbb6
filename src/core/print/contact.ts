import type { Film } from './film.ts';
import { rasterPxPerMm } from './rectified.ts';
import { type Regions, regionsOf } from './regions.ts';

/** Where the surface bears, region by region. */
export interface Contact extends Regions {
  /** 1 where a closed ring of blue holds bright metal: contact so hard that it rubbed the blue off. */
  readonly burnished: Uint8Array;
}

/** Film from this share of full film up is contact; more where blue was dragged along; never within two sigma of bare. */
const cut = { usual: 0.36, overBlued: 0.5, sigmas: 2 };
/** A region needs an element as strong as this, and this area, mm². */
const core = { strength: 0.7, area_mm2: 0.06 };
/** A hole no larger than this may be burnished; one smaller than the second is a speck, mm². */
const hole = { most_mm2: 9, speck_mm2: 0.06 };
/**
 * Regions are found where they part and then grow, without joining, by two elements to where film ends: two cuts do what
 * one cannot. The hazier the edges, the nearer that end lies to full film.
 */
const grow = { from: 0.235, most: 0.33, haze: 0.18, by: 0.5, turns: 2 };

const mm2 = rasterPxPerMm * rasterPxPerMm;

/**
 * @param strength  of the film; streaks taken out where over-blued
 * @param out       1 where nothing counts
 */
export function contactOf(
  film: Film,
  strength: Float32Array,
  overBlued: boolean,
  out: Uint8Array,
  width: number,
  height: number,
): Contact {
  const from = Math.max(overBlued ? cut.overBlued : cut.usual, cut.sigmas * film.noise);
  const raw = new Uint8Array(width * height);
  for (let o = 0; o < raw.length; o++) raw[o] = strength[o]! > from && !out[o] ? 1 : 0;
  const mask = majority(raw, width, height);
  const labels = new Int32Array(width * height);
  const burnished = filled(mask, film.gleam, out, width, height, labels);
  const found = regionsOf(mask, 1, width, height, true, labels);
  const strongest = new Float32Array(found.count + 1);
  const area = new Float64Array(found.count + 1);
  for (let o = 0; o < mask.length; o++) {
    const l = found.label[o]!;
    if (l === 0) continue;
    area[l]!++;
    if (strength[o]! > strongest[l]!) strongest[l] = strength[o]!;
  }
  const keeps = area.map((many, l) =>
    l > 0 && strongest[l]! > core.strength && many >= core.area_mm2 * mm2 ? 1 : 0,
  );
  for (let o = 0; o < mask.length; o++) if (keeps[found.label[o]!] === 0) found.label[o] = 0;
  if (!overBlued) {
    const end = grow.from + grow.by * (film.haze - grow.haze);
    growInto(found.label, strength, Math.max(grow.from, Math.min(grow.most, end)), out, width, height);
  }
  return { ...found, burnished };
}

/** Each element as most of its nine are: closes cracks and takes off hairs. The outermost stay as they are. */
function majority(mask: Uint8Array, width: number, height: number): Uint8Array {
  const result = mask.slice();
  const sums = new Uint8Array(width);
  for (let j = 1; j < height - 1; j++) {
    const o = j * width;
    for (let i = 0; i < width; i++) sums[i] = mask[o + i - width]! + mask[o + i]! + mask[o + i + width]!;
    for (let i = 1; i < width - 1; i++) result[o + i] = sums[i - 1]! + sums[i]! + sums[i + 1]! > 4 ? 1 : 0;
  }
  return result;
}

/** Fills burnished holes and specks in the mask; returns where it was burnished. */
function filled(
  mask: Uint8Array,
  gleam: Float32Array,
  out: Uint8Array,
  width: number,
  height: number,
  labels: Int32Array,
): Uint8Array {
  const { count, label } = regionsOf(mask, 0, width, height, false, labels);
  const area = new Float64Array(count + 1);
  const bright = new Float64Array(count + 1);
  const inner = new Float64Array(count + 1);
  const open = new Uint8Array(count + 1);
  for (let o = 0; o < mask.length; o++) {
    const l = label[o]!;
    if (l === 0) continue;
    area[l]!++;
    if (out[o]) open[l] = 1;
  }
  for (let i = 0; i < width; i++) {
    open[label[i]!] = 1;
    open[label[(height - 1) * width + i]!] = 1;
  }
  for (let j = 0; j < height; j++) {
    open[label[j * width]!] = 1;
    open[label[j * width + width - 1]!] = 1;
  }
  const most = hole.most_mm2 * mm2;
  for (let j = 2; j < height - 2; j++)
    for (let i = 2, o = j * width + 2; i < width - 2; i++, o++) {
      const l = label[o]!;
      if (l === 0 || open[l] || area[l]! > most) continue;
      // The rim is a mixture of both: only what has no contact within two elements tells.
      if (
        mask[o - 1]! | mask[o + 1]! | mask[o - 2]! | mask[o + 2]! ||
        mask[o - width]! | mask[o + width]! | mask[o - 2 * width]! | mask[o + 2 * width]!
      )
        continue;
      inner[l]!++;
      bright[l]! += gleam[o]!;
    }
  const burnished = new Uint8Array(mask.length);
  const fills = new Uint8Array(count + 1);
  for (let l = 1; l <= count; l++) {
    if (open[l] || area[l]! > most) continue;
    if (inner[l]! > 0 && bright[l]! > 0) fills[l] = 2;
    else if (area[l]! < hole.speck_mm2 * mm2) fills[l] = 1;
  }
  for (let o = 0; o < mask.length; o++) {
    const how = fills[label[o]!]!;
    if (how === 0) continue;
    mask[o] = 1;
    if (how === 2) burnished[o] = 1;
  }
  return burnished;
}

function growInto(
  label: Int32Array,
  strength: Float32Array,
  end: number,
  out: Uint8Array,
  width: number,
  height: number,
): void {
  // What is grown in one turn is written down first and labelled after, so that the order of the sweep does not matter.
  const places = new Int32Array(label.length >> 2);
  for (let turn = 0; turn < grow.turns; turn++) {
    let many = 0;
    for (let j = 1; j < height - 1; j++)
      for (let i = 1, o = j * width + 1; i < width - 1; i++, o++) {
        if (label[o] !== 0 || strength[o]! <= end || out[o]) continue;
        const l = Math.max(label[o - 1]!, label[o + 1]!, label[o - width]!, label[o + width]!);
        if (l <= 0 || many === places.length) continue;
        places[many++] = o;
        label[o] = -l;
      }
    for (let k = 0; k < many; k++) label[places[k]!] = -label[places[k]!]!;
  }
}
