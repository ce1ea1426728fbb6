import type { PhotoTrust, PrintWarning } from './reading.ts';

/** What warnings are made of. */
export interface Looks {
  readonly trust: Omit<PhotoTrust, 'confidence'>;
  readonly overBlued: boolean;
  readonly bearing_pct: number;
  readonly largest_share: number;
  /** Largest share of any square, %, that glare clipped. */
  readonly worst_glare_pct: number;
  /** Share of the surface that lies outside the photo, %. */
  readonly cut_off_pct: number;
}

/** Limits of what can be read well; from rendered pictures with known truth, see docs/method.md. */
export const readable = {
  px_per_mm: 5,
  blur_mm: 0.3,
  glare_pct: 1.2,
  square_glare_pct: 15,
  separation: 5,
  bearing_pct: 40,
  largest_share: 0.15,
  cut_off_pct: 0.5,
};

const figure = (value: number, digits = 0): string => value.toFixed(digits);

/** What is wrong with a photo or a print, and what to do about it; empty for a sound one. */
export function printWarnings(looks: Looks): PrintWarning[] {
  const { trust } = looks;
  const warnings: PrintWarning[] = [];
  const warn = (when: boolean, code: PrintWarning['code'], text: string) => {
    if (when) warnings.push({ code, text });
  };
  warn(
    trust.px_per_mm < readable.px_per_mm,
    'low resolution',
    `${figure(trust.px_per_mm, 1)} pixels a mm: spots run together below 5. Go nearer, or take the surface in two photos; 9 are good.`,
  );
  warn(
    trust.blur_mm > readable.blur_mm,
    'blurred',
    `edges are ${figure(trust.blur_mm, 2)} mm soft: spots run together. Hold still, tap to focus, take it again.`,
  );
  warn(
    trust.glare_pct > readable.glare_pct || looks.worst_glare_pct > readable.square_glare_pct,
    'glare',
    `glare clips ${figure(trust.glare_pct, 1)} % of the surface, ${figure(looks.worst_glare_pct)} % of the worst square. Step aside until no lamp mirrors in the metal, or hold paper over the lamp.`,
  );
  warn(
    looks.cut_off_pct > readable.cut_off_pct,
    'clipped',
    `${figure(looks.cut_off_pct)} % of the surface lies outside the photo. Set the corners again, or take it from further away.`,
  );
  warn(
    trust.separation < readable.separation,
    'faint blue',
    'blue hardly differs from the bare surface: what is read may be noise. Use more light, or blue again.',
  );
  warn(
    looks.bearing_pct === 0 && trust.glare_pct + looks.cut_off_pct < 100,
    'nearly bare',
    'no blue was found. Does the surface in the photo carry a print? If it does, use more light, or blue again.',
  );
  warn(
    looks.overBlued,
    'over-blued',
    'blue is dragged along the rub: the film is too thick. The count is not reliable. Wipe, blue thinner, print again.',
  );
  warn(
    !looks.overBlued && looks.bearing_pct > readable.bearing_pct,
    'much bearing',
    `${figure(looks.bearing_pct)} % bears: above 40 % spots run together and the count is not reliable. A thinner film shows more.`,
  );
  warn(
    looks.largest_share > readable.largest_share,
    'merged contact',
    `one region holds ${figure(100 * looks.largest_share)} % of all contact: it bears hard there, and the count is not reliable.`,
  );
  return warnings;
}

/** 0 to 1: each part is 1 where nothing is lost, a half where it is just not enough, and the least of them counts. */
export function confidenceOf(trust: Omit<PhotoTrust, 'confidence'>, cut_off_pct: number): number {
  const parts = [
    trust.px_per_mm / (2 * readable.px_per_mm),
    trust.blur_mm > 0 ? readable.blur_mm / (2 * trust.blur_mm) : 1,
    1 - trust.glare_pct / 10,
    1 - cut_off_pct / 100,
    trust.separation / (2 * readable.separation),
  ];
  return Math.max(0, Math.min(1, ...parts));
}
