import { slope } from '../body/displacement.ts';
import { say } from '../quantity/say.ts';

/** Four corners in ring order as the part was tapped: how far each corner moved under the indicator, µm. */
export interface RockTest {
  /** Movement at the corners as the part is tipped from one pair of opposite corners to the other. */
  readonly moved_um: readonly [number, number, number, number];
  /** One sd of one reading, µm. */
  readonly sd_um: number;
  /** Along the part and across it, between the corners that bear, mm. */
  readonly length_mm: number;
  readonly width_mm: number;
}

/** What a rock says of twist. */
export interface RockReading {
  /** The odd corner's gap when three corners bear, µm: |z₁ + z₃ − z₂ − z₄|. */
  readonly gap_um: number;
  /** One sd. */
  readonly sd_um: number;
  /** Turn of one end against the other about the length, µrad. */
  readonly twist_urad: number;
  readonly twist_sd_urad: number;
  /** The same for each metre of length, µrad/m. */
  readonly twist_urad_per_m: number;
  /** Which pair of opposite corners it rocks on; absent when no rock is proven. */
  readonly high?: 'first and third' | 'second and fourth';
  readonly text: string;
  readonly limits: string;
}

/**
 * Gap at the odd corner of a four-cornered part on a plane, from the heights of its corners' underside in ring order, µm:
 * signed, plus: the first and third corners stand proud.
 *
 *     g = z₁ + z₃ − z₂ − z₄,   z the metal standing below the common plane
 *
 * A plane through any three corners misses the fourth by it (derived).
 */
export const rockGap = (proud_um: readonly [number, number, number, number]): number =>
  proud_um[0] + proud_um[2] - proud_um[1] - proud_um[3];

/**
 * What a rock test says. Tapped over the pair it rocks on, the other two corners move and the pair does not; the gap is the
 * mean movement of the pair that moves, less that of the pair that stands.
 */
export function readRock(test: RockTest): RockReading {
  const [a, b, c, d] = test.moved_um.map(Math.abs) as [number, number, number, number];
  const moved = [(a + c) / 2, (b + d) / 2] as const;
  const gap_um = Math.abs(moved[0] - moved[1]);
  const sd_um = test.sd_um;
  const isProven = gap_um > 2 * sd_um;
  const high = moved[0] < moved[1] ? 'first and third' : 'second and fourth';
  // Twist raises one corner of the far end by gap/2 and lowers the other: gap over the width turns end against end.
  const twist_urad = slope(gap_um, test.width_mm);
  const figures = say(gap_um, 'µm', { signed: false, sd: sd_um }).text;
  const half = say(gap_um / 2, 'µm', { signed: false, sd: sd_um / 2 });
  return {
    gap_um,
    sd_um,
    twist_urad,
    twist_sd_urad: slope(sd_um, test.width_mm),
    twist_urad_per_m: twist_urad / (test.length_mm / 1000),
    ...(isProven ? { high } : {}),
    text: isProven
      ? `It rocks ${figures} on its ${high} corners: take half of that, ${half.number}\u00a0µm, off each of the two, and print before counting points.`
      : `No rock is proven: ${figures}.`,
    limits:
      'It tells only what the four corners do: a part crowned both ways rocks without being twisted, and a hollow one stands firm on an edge. Dirt or a burr under one corner reads the same.',
  };
}
