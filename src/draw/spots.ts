import { fullCover } from '../core/print/cover.ts';
import type { Box } from './map-layout.ts';

const round = (value: number): number => Math.round(value * 10) / 10 + 0;

/** A number from a text, the same each time (FNV-1a). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const c of text) hash = Math.imul(hash ^ c.codePointAt(0)!, 0x01000193);
  return hash >>> 0;
}

/** Numbers 0 to 1 from a seed, the same each time (mulberry32). */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A bearing spot: an ellipse, px and degrees. */
export interface BearingSpot {
  readonly x: number;
  readonly y: number;
  readonly long: number;
  readonly short: number;
  readonly turn_deg: number;
}

/**
 * Spots thrown at random into a box until they cover `fullCover` × share of it; fixed by the seed, so that they do not crawl from
 * one drawing to the next. More bearing adds spots and moves none.
 *
 * @param share  bearing share 0 to 1
 * @param size   middle size of a spot (its longer half), px
 */
export function bearingSpots(box: Box, share: number, size: number, seed: number): BearingSpot[] {
  const random = numbersFrom(seed);
  const goal = Math.min(Math.max(share, 0), 1) * fullCover * box.width * box.height;
  const spots: BearingSpot[] = [];
  let covered = 0;
  let left = 6000;
  while (covered < goal && left-- > 0) {
    const long = size * (0.75 + 0.5 * random());
    const short = long * (0.55 + 0.2 * random());
    const spot = {
      x: box.x + long + random() * (box.width - 2 * long),
      y: box.y + long + random() * (box.height - 2 * long),
      long,
      short,
      turn_deg: -60 + 120 * random(),
    };
    const reach = Math.sqrt(long * short);
    const isFree = spots.every(
      (other) =>
        Math.hypot(other.x - spot.x, other.y - spot.y) > 0.95 * (reach + Math.sqrt(other.long * other.short)),
    );
    if (!isFree) continue;
    spots.push(spot);
    covered += Math.PI * long * short;
  }
  return spots;
}

/** Path data of all spots. */
export const spotsPath = (spots: readonly BearingSpot[]): string =>
  spots
    .map(({ x, y, long, short, turn_deg }) => {
      const turn = (turn_deg * Math.PI) / 180;
      const dx = long * Math.cos(turn);
      const dy = long * Math.sin(turn);
      const arc = `a${round(long)} ${round(short)} ${round(turn_deg)} 1 0 `;
      return `M${round(x - dx)} ${round(y - dy)}${arc}${round(2 * dx)} ${round(2 * dy)}${arc}${round(-2 * dx)} ${round(-2 * dy)}z`;
    })
    .join('');
