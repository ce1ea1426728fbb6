/** Standard gravity, m/s² (exact by definition). */
export const gravity_m_s2 = 9.80665;

/** A bar's cross-section: a rectangle of some depth, or a round bar with or without a bore. */
export type Section =
  | { readonly kind: 'rectangle'; readonly depth_mm: number }
  | { readonly kind: 'round'; readonly diameter_mm: number; readonly bore_mm: number };

/** What a bar is made of, as far as its sag goes. */
export interface Stiff {
  readonly density_kg_m3: number;
  readonly modulus_GPa: number;
}

/**
 * Weight of a bar over its stiffness, q/EI, 1/m³: the one number of section and material that its sag depends on.
 *
 *     rectangle 12 ρ g / E h² (its width cancels),   round 16 ρ g / E (D² + d²)
 */
export function limpness(section: Section, stiff: Stiff): number {
  const weight = stiff.density_kg_m3 * gravity_m_s2;
  const E = stiff.modulus_GPa * 1e9;
  if (section.kind === 'rectangle') return (12 * weight) / (E * (section.depth_mm / 1000) ** 2);
  const squares = (section.diameter_mm ** 2 + section.bore_mm ** 2) / 1e6;
  return (16 * weight) / (E * squares);
}

/** What a bar on two supports does, µm; heights plus up, against the points over the supports. */
export interface Sag {
  readonly middle_um: number;
  readonly end_um: number;
  /** From its lowest to its highest place. */
  readonly range_um: number;
}

/** Deflection of a bar of length 1 and q/EI 1 on supports at ± c from its middle, at x from the middle; plus up. */
function shapeAt(x: number, c: number): number {
  const a = 0.5;
  const b = a - c;
  const bow = a * c - (a * a) / 2;
  const inside = (t: number): number => (bow * t * t) / 2 - t ** 4 / 24;
  if (x <= c) return inside(x) - inside(c);
  const slope = c * (bow - (c * c) / 6);
  const left = a - x;
  return slope * (x - c) - (b ** 3 * (x - c) - (b ** 4 - left ** 4) / 4) / 6;
}

/** Places, from the middle, where the bar may be highest or lowest: middle, end, supports, and where its slope is nothing. */
function turningPlaces(c: number): number[] {
  const a = 0.5;
  const places = c <= a ? [0, a, Math.max(0, c)] : [0, a];
  const square = 6 * a * c - 3 * a * a;
  if (square > 0 && square < c * c) places.push(Math.sqrt(square));
  const cube = (a - c) ** 3 - 6 * c * (a * c - (a * a) / 2 - (c * c) / 6);
  const x = a - Math.cbrt(cube);
  if (x > c && x < a) places.push(x);
  return places;
}

/**
 * The sag of a uniform bar that lies on two supports the same distance from its ends.
 *
 *     y″ = (R (c − x) − q (L/2 − x)²/2) / EI between the supports,   −q (L/2 − x)²/2EI beyond them
 *
 * @param limp     q/EI, 1/m³, from {@link limpness}
 * @param from_end  from each end to its support, as a share of the length: 0 at the ends, ½ both in the middle
 * Source: beam theory (Euler and Bernoulli); the end-supported and cantilever limits are those of every beam table; held to
 * in checks/sums-sag.check.ts.
 */
export function sagOnTwo(limp: number, length_mm: number, from_end: number): Sag {
  // A hundredth past the end is let through, so that slopes can be taken at the ends themselves.
  if (!(from_end >= -0.01 && from_end <= 0.51))
    throw new RangeError(`support ${from_end} of the length from the end; expected 0 to 0.5`);
  const size_um = limp * (length_mm / 1000) ** 4 * 1e6;
  const c = 0.5 - from_end;
  const heights = turningPlaces(c).map((x) => shapeAt(x, c));
  return {
    middle_um: size_um * shapeAt(0, c),
    end_um: size_um * shapeAt(0.5, c),
    range_um: size_um * (Math.max(...heights) - Math.min(...heights)),
  };
}

/** The same bar's height at a place, mm from its first end, µm against the points over the supports; plus up. */
export const sagAt = (limp: number, length_mm: number, from_end: number, at_mm: number): number =>
  limp * (length_mm / 1000) ** 4 * 1e6 * shapeAt(Math.abs(at_mm / length_mm - 0.5), 0.5 - from_end);

/** Sag, µm, and slope, µrad, at the free end of a bar held at the other: qL⁴/8EI and qL³/6EI; plus down. */
export function overhangSag(limp: number, length_mm: number): { sag_um: number; slope_urad: number } {
  const m = length_mm / 1000;
  return { sag_um: ((limp * m ** 4) / 8) * 1e6, slope_urad: ((limp * m ** 3) / 6) * 1e6 };
}

/** Sag at the tip of a held bar from a mass there, µm, plus down: m g L³ / 3EI. */
export function tipLoadSag(
  length_mm: number,
  mass_kg: number,
  section: Section & { kind: 'round' },
  modulus_GPa: number,
): number {
  const second_m4 = (Math.PI * (section.diameter_mm ** 4 - section.bore_mm ** 4)) / 64 / 1e12;
  return ((mass_kg * gravity_m_s2 * (length_mm / 1000) ** 3) / (3 * modulus_GPa * 1e9 * second_m4)) * 1e6;
}

/** Halves an interval until the sign change of `f` is pinned. */
function root(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  const rises = f(b) > 0;
  for (let k = 0; k < 100; k++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === rises) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

/** ∫ (y′)² dx: twice what the neutral axis is drawn in by; three-point sums are not enough for sixth powers, four are. */
function drawnIn(c: number): number {
  const a = 0.5;
  const slope = (x: number): number => {
    const atSupport = c * (a * c - (a * a) / 2 - (c * c) / 6);
    if (x <= c) return x * (a * c - (a * a) / 2 - (x * x) / 6);
    return atSupport - ((a - c) ** 3 - (a - x) ** 3) / 6;
  };
  const gauss = [
    [0.3399810435848563, 0.6521451548625461],
    [0.8611363115940526, 0.3478548451374538],
  ] as const;
  const over = (from: number, to: number): number => {
    const half = (to - from) / 2;
    const middle = (to + from) / 2;
    return gauss.reduce(
      (sum, [x, w]) => sum + w * half * (slope(middle - half * x) ** 2 + slope(middle + half * x) ** 2),
      0,
    );
  };
  return over(0, c) + over(c, a);
}

/** Where the free bar stands still as it rings: cos β cosh β = 1, and the first zero of that mode's shape. */
function nodeShare(): number {
  const beta = root((x) => Math.cos(x) * Math.cosh(x) - 1, 4.5, 5);
  const sigma = (Math.cosh(beta) - Math.cos(beta)) / (Math.sinh(beta) - Math.sin(beta));
  const mode = (x: number): number =>
    Math.cosh(beta * x) + Math.cos(beta * x) - sigma * (Math.sinh(beta * x) + Math.sin(beta * x));
  return root(mode, 0.1, 0.4);
}

const step = 1e-5;

/**
 * Where to support a uniform bar, as a share of its length from each end.
 *
 * - Airy: the end faces stay parallel (the slope at the ends is nothing), separation 1/√3.
 * - Bessel: the neutral axis keeps its length best. Not the points of least sag.
 * - least sag: the ends stand level with the middle.
 * - nodes: where the ringing bar stands still.
 */
export const supportPoints = {
  airy: 0.5 - 0.5 / Math.sqrt(3),
  bessel: root((from_end) => drawnIn(0.5 - from_end - step) - drawnIn(0.5 - from_end + step), 0.2, 0.24),
  least_sag: root((from_end) => shapeAt(0.5, 0.5 - from_end) - shapeAt(0, 0.5 - from_end), 0.2, 0.24),
  nodes: nodeShare(),
} as const;
