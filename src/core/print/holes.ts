import { type Bits, countIn, hasBit, noBits, setRun } from './bits.ts';
import { rasterPxPerMm } from './rectified.ts';
import { type Runs, runsOf } from './regions.ts';

/** A hole no larger than this may be burnished; one smaller than the second is a speck, mm². */
const hole = { most_mm2: 9, speck_mm2: 0.06 };
const mm2 = rasterPxPerMm * rasterPxPerMm;

/**
 * Fills burnished holes and specks in the mask; returns where it was burnished. What touches the edge of the surface or
 * something that does not count is no hole.
 *
 * @param gleam  log of how much brighter than bare surface
 * @param out    where nothing counts
 */
export function filled(mask: Bits, gleam: Float32Array, out: Bits): Bits {
  const { width, height } = mask;
  const runs = runsOf(mask, 0, false);
  const area = closedAreas(runs, out);
  const most = hole.most_mm2 * mm2;
  const inner = new Int32Array(area.length);
  const bright = new Float64Array(area.length);
  for (let run = 0; run < runs.starts.length; run++) {
    const l = runs.label[run]!;
    if (area[l]! > most) continue;
    const j = Math.floor(runs.starts[run]! / width);
    if (j < 2 || j >= height - 2) continue;
    // The rim is a mixture of both: only what has no contact within two elements tells.
    for (let o = runs.starts[run]! + 2; o < runs.ends[run]! - 2; o++) {
      const i = o - j * width;
      if (hasBit(mask, i, j - 1) || hasBit(mask, i, j + 1)) continue;
      if (hasBit(mask, i, j - 2) || hasBit(mask, i, j + 2)) continue;
      inner[l]!++;
      bright[l]! += gleam[o]!;
    }
  }
  const burnished = noBits(width, height);
  for (let run = 0; run < runs.starts.length; run++) {
    const l = runs.label[run]!;
    if (area[l]! > most) continue;
    const isBurnished = inner[l]! > 0 && bright[l]! > 0;
    if (!isBurnished && area[l]! >= hole.speck_mm2 * mm2) continue;
    setRun(mask, runs.starts[run]!, runs.ends[run]!);
    if (isBurnished) setRun(burnished, runs.starts[run]!, runs.ends[run]!);
  }
  return burnished;
}

/** Elements of each region; more than there are of one that is open. */
function closedAreas({ starts, ends, label, count }: Runs, out: Bits): Float64Array {
  const { width, height } = out;
  const area = new Float64Array(count + 1);
  for (let run = 0; run < starts.length; run++) {
    const l = label[run]!;
    if (area[l] === Number.POSITIVE_INFINITY) continue;
    const j = Math.floor(starts[run]! / width);
    const from = starts[run]! - j * width;
    const to = ends[run]! - j * width;
    const isOpen = j === 0 || j === height - 1 || from === 0 || to === width || countIn(out, j, from, to) > 0;
    area[l] = isOpen ? Number.POSITIVE_INFINITY : area[l]! + (to - from);
  }
  return area;
}
