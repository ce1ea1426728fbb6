import type { Random } from '../math/random.ts';

/** How an input is spread about its value. Every `sd` is one standard deviation, every `half` the reach to either side. */
export type Distribution =
  | { readonly kind: 'normal'; readonly value: number; readonly sd: number }
  | { readonly kind: 'rectangular'; readonly value: number; readonly half: number }
  | { readonly kind: 'triangular'; readonly value: number; readonly half: number }
  | { readonly kind: 'arcsine'; readonly value: number; readonly half: number }
  /** A rectangle whose own edges are not sure: each end moves by ± `edge`. */
  | { readonly kind: 'trapezoid'; readonly value: number; readonly half: number; readonly edge: number }
  /** Student's t, stretched by `scale`, with whole degrees of freedom. */
  | { readonly kind: 't'; readonly value: number; readonly scale: number; readonly freedom: number };

/** One standard deviation of a spread; Infinity for a t of two degrees of freedom or fewer. Source: JCGM 100:2008, 4.3. */
export function sdOf(spread: Distribution): number {
  switch (spread.kind) {
    case 'normal':
      return spread.sd;
    case 'rectangular':
      return spread.half / Math.sqrt(3);
    case 'triangular':
      return spread.half / Math.sqrt(6);
    case 'arcsine':
      return spread.half / Math.SQRT2;
    case 'trapezoid':
      // A rectangle of half width `half` whose ends are moved together by an even error of ± edge.
      return Math.sqrt(spread.half ** 2 / 3 + spread.edge ** 2 / 9);
    case 't':
      return spread.freedom > 2 ? spread.scale * Math.sqrt(spread.freedom / (spread.freedom - 2)) : Infinity;
  }
}

/** The sd of what is only known to lie within ± half: a grade's limit, a graduation read to its half. */
export const sdWithin = (half: number): number => half / Math.sqrt(3);

/** One value drawn from a spread. */
export function drawn(spread: Distribution, random: Random): number {
  switch (spread.kind) {
    case 'normal':
      return random.normal(spread.value, spread.sd);
    case 'rectangular':
      return spread.value + spread.half * (2 * random.even() - 1);
    case 'triangular':
      return spread.value + spread.half * (random.even() + random.even() - 1);
    case 'arcsine':
      return spread.value + spread.half * Math.sin(2 * Math.PI * random.even());
    case 'trapezoid': {
      // JCGM 101:2008, 6.4.3: first the half width, even between half − edge and half + edge, then a place within it.
      const half = spread.half + spread.edge * (2 * random.even() - 1);
      return spread.value + half * (2 * random.even() - 1);
    }
    case 't': {
      let squares = 0;
      for (let k = 0; k < spread.freedom; k++) squares += random.normal() ** 2;
      return spread.value + (spread.scale * random.normal()) / Math.sqrt(squares / spread.freedom);
    }
  }
}
