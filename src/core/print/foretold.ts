import { type Slide, zonesOf } from '../body/slide.ts';
import { chiSquareBeyond } from '../math/chi-square.ts';
import { normalBelow } from '../math/normal.ts';

/** A slide at rest, and the blue on its ways. */
export interface ForetoldAsk {
  readonly slide: Slide;
  /** Mean gap of each zone at rest, µm, pad by pad; minus: pressed. */
  readonly gap_um: ArrayLike<number>;
  /** Sd of each zone's gap, µm; left out: known surely. */
  readonly gap_sd_um?: ArrayLike<number>;
  /** Sd of the surface's height within a zone about its form, above 0. */
  readonly roughness_um: number;
  readonly film_um: number;
  /** Left out: known surely. */
  readonly film_sd_um?: number;
}

/** The print to expect of a zone. */
export interface ForetoldZone {
  /** 0 to 1. */
  readonly share: number;
  /** One sd: gap, film and the chance of where the high spots fall. */
  readonly sd: number;
}

/** Places looked at along a zone. */
const along = 8;
/** Heights of a zone hang together over patches; so many of them are as good as independent. Practice machines have as many cells. */
const patches = 12;
/** Steps of the sum over what is not known surely, from −4 sd to 4 sd. */
const steps = 33;

/**
 * The print to expect of any form, pose and film, with its doubt.
 *
 *     share = mean over the zone of Φ((film − gap(x)) / roughness)                                            (1)
 *
 * gap(x) bends through the zones' means along each pad, so that a zone that leans or bows prints in part. With the gap or
 * the film unsure the mean over what they may be is told, and its sd; chance adds √(share (1 − share) / patches).
 * @returns  one a zone, pad by pad
 */
export function foretellPrint(ask: ForetoldAsk): ForetoldZone[] {
  const { slide, roughness_um, film_um, film_sd_um = 0 } = ask;
  let start = 0;
  return slide.pads.flatMap((pad) => {
    const first = start;
    start += pad.zones;
    return Array.from({ length: pad.zones }, (_, k): ForetoldZone => {
      const gaps = profile(ask.gap_um, first, pad.zones, k);
      const sd = Math.hypot(ask.gap_sd_um?.[first + k] ?? 0, film_sd_um);
      const shareAt = (off: number): number =>
        gaps.reduce((sum, gap) => sum + normalBelow((film_um - gap - off) / roughness_um), 0) / along;
      const { mean, variance } = sd > 0 ? spread(shareAt, sd) : { mean: shareAt(0), variance: 0 };
      return { share: mean, sd: Math.sqrt(variance + (mean * (1 - mean)) / patches) };
    });
  });
}

/** Gaps along a zone: a parabola that keeps its mean and leans as its neighbours say. */
function profile(gap_um: ArrayLike<number>, first: number, zones: number, k: number): number[] {
  const here = gap_um[first + k]!;
  const before = k > 0 ? gap_um[first + k - 1] : undefined;
  const after = k < zones - 1 ? gap_um[first + k + 1] : undefined;
  const isInside = before !== undefined && after !== undefined;
  const lean = isInside ? (after - before) / 2 : after !== undefined ? after - here : here - (before ?? here);
  const bend = isInside ? after - 2 * here + before : 0;
  return Array.from({ length: along }, (_, i) => {
    const at = (i + 0.5) / along - 0.5;
    return here + lean * at + (bend / 2) * (at * at - 1 / 12);
  });
}

/** Mean and variance of a share when what it hangs on is off by a normal amount. */
function spread(shareAt: (off: number) => number, sd: number): { mean: number; variance: number } {
  let weight = 0;
  let sum = 0;
  let square = 0;
  for (let i = 0; i < steps; i++) {
    const z = (8 * i) / (steps - 1) - 4;
    const w = Math.exp(-0.5 * z * z);
    const share = shareAt(z * sd);
    weight += w;
    sum += w * share;
    square += w * share * share;
  }
  const mean = sum / weight;
  return { mean, variance: Math.max(0, square / weight - mean * mean) };
}

/** A zone whose print is not the one that was foretold. */
export interface ZoneApart {
  readonly pad: string;
  /** 0 at the minus end of the travel. */
  readonly zone: number;
  readonly seen: number;
  readonly foretold: number;
  /** Seen less foretold, in sds of both together. */
  readonly sds: number;
}

/** How a seen print agrees with the one foretold. */
export interface ForetoldAgreement {
  /** 1 less the mean difference of shares, by area: 1 is the same print, 0 its opposite. */
  readonly score: number;
  /** Share of the area, 0 to 1, whose zones lie within two sd of both together. */
  readonly within_two_sd: number;
  /** Chance of a print at least so different when the forecast holds. */
  readonly chance: number;
  /** No zone beyond three sd but what chance allows, none beyond five, and a chance of more than 1 in 1000. */
  readonly agrees: boolean;
  /** Zones beyond three sd, the furthest first. */
  readonly apart: readonly ZoneApart[];
  /** Zones that were both foretold and seen. */
  readonly zones: number;
}

const apartFrom = 3;
const surelyApart = 5;
const leastChance = 0.001;

/**
 * Holds a seen print against the one foretold, zone by zone, the difference against both doubts.
 * @param seen     shares by pad; a pad that is left out was not printed
 * @param seen_sd  how well a share is read, one sd
 * @returns        undefined when nothing was printed
 */
export function foretoldAgreement(
  slide: Slide,
  foretold: readonly ForetoldZone[],
  seen: Readonly<Record<string, readonly number[]>>,
  seen_sd: number,
): ForetoldAgreement | undefined {
  const held = zonesOf(slide).flatMap((zone, z) => {
    const share = seen[zone.pad.name]?.[zone.index];
    const told = foretold[z];
    if (share === undefined || told === undefined) return [];
    const off = share - told.share;
    const sds = off / Math.max(Math.hypot(told.sd, seen_sd), 1e-9);
    return [{ zone, share, told, off, sds }];
  });
  if (held.length === 0) return undefined;
  const area = held.reduce((sum, { zone }) => sum + zone.area_mm2, 0);
  const byArea = (of: (one: (typeof held)[number]) => number) =>
    held.reduce((sum, one) => sum + one.zone.area_mm2 * of(one), 0) / area;
  const square = held.reduce((sum, { sds }) => sum + sds * sds, 0);
  const chance = chiSquareBeyond(square, held.length);
  const apart = held
    .filter(({ sds }) => Math.abs(sds) > apartFrom)
    .sort((a, b) => Math.abs(b.sds) - Math.abs(a.sds))
    .map(({ zone, share, told, sds }) => ({
      pad: zone.pad.name,
      zone: zone.index,
      seen: share,
      foretold: told.share,
      sds,
    }));
  // One zone in fifty, or one, may lie beyond three sd, since shares near 0 and 1 are not quite normal; none beyond five.
  const allowed = Math.ceil(held.length / 50);
  const furthest = Math.abs(apart[0]?.sds ?? 0);
  return {
    score: 1 - byArea(({ off }) => Math.abs(off)),
    within_two_sd: byArea(({ sds }) => (Math.abs(sds) <= 2 ? 1 : 0)),
    chance,
    agrees: apart.length <= allowed && furthest <= surelyApart && chance > leastChance,
    apart,
    zones: held.length,
  };
}
