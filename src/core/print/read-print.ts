import { type Bits, bitsOf, countAll, countIn, either, without } from './bits.ts';
import { type Contact, contactOf } from './contact.ts';
import { evennessOf } from './evenness.ts';
import { excluded } from './excluded.ts';
import { filmOf } from './film.ts';
import { confidenceOf, printWarnings } from './print-warnings.ts';
import { quantile } from './quantile.ts';
import type { ContactMap, PrintInput, PrintReading, Spot } from './reading.ts';
import { rasterPxPerMm, rectified } from './rectified.ts';
import { isOverBlued, smearOf, withoutStreaks } from './smear.ts';
import { squaresOf } from './squares.ts';
import { keptWorkspace } from './workspace.ts';

/** A region smaller than this is not a spot, mm². Edges that grow to the end of the film add about the difference to 0.5. */
const leastSpot_mm2 = 0.53;
/** Spots in the figures are per this square, mm². */
const square_mm2 = 625;
const mm2 = rasterPxPerMm * rasterPxPerMm;

/**
 * Reads a printed surface from a photo: where it bears, how many spots a square, what share, how evenly.
 *
 * The surface is brought to a raster in mm; light and base are taken out; film is told from bare surface by blueness (log
 * blue − log red) and darkness; connected film is contact, with burnished centres. Accuracy on rendered pictures with known
 * truth is in docs/method.md; none against people is claimed.
 *
 * @throws RangeError  three corners on a line
 */
export function readPrint(input: PrintInput): PrintReading & { readonly contact: ContactMap } {
  const { cell_mm = 25, exclusions = [] } = input;
  const rect = rectified(input.picture, input.corners, input.size, keptWorkspace);
  const { width, height, unread } = rect;
  const masked = excluded(exclusions, width, height);
  const apart = bitsOf(masked, width, height);
  const clipped = without(bitsOf(unread, width, height, 1), apart);
  const outside = without(bitsOf(unread, width, height, 2), apart);
  const blind = either(clipped, outside);
  // Where glare clipped the photo nothing is learned of light or film either.
  const out = exclusions.length ? eitherOf(masked, unread, width) : unread;
  const film = filmOf(rect, out);
  const smear = smearOf(film.strength, width, height, out);
  const overBlued = isOverBlued(smear);
  const strength = overBlued ? withoutStreaks(film.strength, width, height, smear.across_rad) : film.strength;
  const contact = contactOf(film, strength, overBlued, either(apart, blind));
  const { bears, area } = contact;
  const glare = countAll(clipped);
  const cutOff = countAll(outside);
  const net = width * height - countAll(apart) - glare - cutOff;
  const held = area.reduce((sum, many) => sum + many, 0);
  const largest = area.reduce((most, many) => Math.max(most, many), 0);
  const spots = spotsOf(contact);
  const cells = squaresOf(bears, spots, apart, blind, cell_mm);
  const zones = zoneShares(bears, either(apart, blind), input.zones ?? 0);
  const bearing_pct = net > 0 ? (100 * held) / net : 0;
  const largest_share = held > 0 ? largest / held : 0;
  const asked = Math.max(1, net + glare + cutOff);
  const cut_off_pct = (100 * cutOff) / asked;
  const trust = {
    px_per_mm: rect.px_per_mm,
    blur_mm: film.blur_mm,
    glare_pct: (100 * glare) / asked,
    separation: 1 / Math.max(1e-6, film.noise),
  };
  const areas = Float32Array.from(spots, (spot) => spot.area_mm2);
  return {
    cells,
    spots,
    density_per_25mm: net > 0 ? (spots.length * square_mm2) / (net / mm2) : 0,
    bearing_pct,
    net_area_mm2: net / mm2,
    evenness: evennessOf(cells, bears, apart),
    area_percentiles_mm2: spots.length ? [0.1, 0.25, 0.5, 0.75, 0.9].map((q) => quantile(areas, q)) : [],
    largest_share,
    ...(zones ? { zone_shares: zones } : {}),
    trust: { ...trust, confidence: confidenceOf(trust, cut_off_pct) },
    warnings: printWarnings({
      trust,
      overBlued,
      bearing_pct,
      largest_share,
      // A square that the photo cuts off is told of as such.
      worst_glare_pct: cutOff > 0 ? 0 : Math.max(0, ...cells.map((cell) => cell.unreadable_pct)),
      cut_off_pct,
    }),
    contact: {
      width,
      height,
      px_per_mm: rasterPxPerMm,
      is: contactMap(contact, apart, blind),
    },
  };
}

/** 1 where either is set. Row by row: a short loop is soon compiled, and a photo may be the only one that is read. */
function eitherOf(one: Uint8Array, other: Uint8Array, width: number): Uint8Array {
  const result = one.slice();
  for (let from = 0; from < result.length; from += width) setWhere(result, other, from, from + width);
  return result;
}

function setWhere(result: Uint8Array, other: Uint8Array, from: number, to: number): void {
  for (let o = from; o < to; o++) if (other[o] !== 0) result[o] = 1;
}

/** Regions that are large enough, in the order of their first elements. */
function spotsOf({ area, x, y, bright }: Contact): Spot[] {
  const spots: Spot[] = [];
  for (let l = 1; l < area.length; l++) {
    const many = area[l]!;
    if (many < leastSpot_mm2 * mm2) continue;
    spots.push({
      x_mm: (x[l]! / many + 0.5) / rasterPxPerMm,
      y_mm: (y[l]! / many + 0.5) / rasterPxPerMm,
      area_mm2: many / mm2,
      burnished: bright[l]! / many,
    });
  }
  return spots;
}

/** Bearing share of each zone along the length; undefined where nothing of it can be read, or when none are asked for. */
function zoneShares(bears: Bits, out: Bits, zones: number): (number | undefined)[] | undefined {
  if (zones === 0) return undefined;
  const { width, height } = bears;
  const holds = without(bears, out);
  return Array.from({ length: zones }, (_, z) => {
    const from = Math.ceil((z * width) / zones);
    const to = Math.ceil(((z + 1) * width) / zones);
    let net = 0;
    let held = 0;
    for (let j = 0; j < height; j++) {
      net += to - from - countIn(out, j, from, to);
      held += countIn(holds, j, from, to);
    }
    return net > 0 ? held / net : undefined;
  });
}

function contactMap({ bears, burnished }: Contact, apart: Bits, blind: Bits): Uint8Array {
  const { width, height, across } = bears;
  const is = new Uint8Array(width * height);
  for (let j = 0; j < height; j++)
    for (let k = 0, w = j * across; k < across; k++, w++) {
      const contact = bears.words[w]!;
      const bright = burnished.words[w]!;
      const out = apart.words[w]!;
      const glare = blind.words[w]!;
      let any = contact | out | glare;
      while (any !== 0) {
        const bit = any & -any;
        any ^= bit;
        const o = j * width + 32 * k + 31 - Math.clz32(bit);
        is[o] = out & bit ? 3 : glare & bit ? 4 : bright & bit ? 2 : 1;
      }
    }
  return is;
}
