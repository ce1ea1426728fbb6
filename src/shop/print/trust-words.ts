import type { PhotoTrust } from '../../core/print/reading.ts';
import type { PhotoReading, PhotoWarning } from './photo-reading.ts';

/** Below this the photo is to be taken again. */
export const leastConfidence = 0.5;

export interface TrustWords {
  /** Whether the photo is good enough to steer by. */
  readonly good: boolean;
  readonly words: string;
  /** What else is to be said of the photo or the print. */
  readonly rest: readonly PhotoWarning[];
}

/** What in a photo is worst comes first among reasons to take it again. */
const photoCodes = new Set(['low resolution', 'blurred', 'glare', 'faint blue', 'damaged file']);

/** How far the photo can be trusted, in words; "Take it again: …" and why, where it cannot. */
export function trustWords({ trust, warnings }: Pick<PhotoReading, 'trust' | 'warnings'>): TrustWords {
  const good = trust.confidence >= leastConfidence;
  if (good) {
    const words = warnings.some(({ code }) => photoCodes.has(code))
      ? 'The photo can be read, with care.'
      : 'The photo is sound.';
    return { good, words, rest: warnings };
  }
  const reasons = warnings.filter(({ code }) => photoCodes.has(code));
  const [first] = reasons;
  return {
    good,
    words: `Take it again: ${first ? lower(first.text) : 'too little of the blue can be told from the metal.'}`,
    rest: warnings.filter((one) => one !== first),
  };
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** The figures behind the trust, each with its unit. */
export const trustFigures = (trust: PhotoTrust): readonly (readonly [string, string])[] => [
  ['Trust in the photo', `${Math.round(100 * trust.confidence)} of 100; below 50, take it again`],
  ['Pixels a mm', `${trust.px_per_mm.toFixed(1)}; 9 are good, below 5 spots run together`],
  ['Softness of its edges', `${trust.blur_mm.toFixed(2)} mm, one sd`],
  ['Clipped by glare', `${trust.glare_pct.toFixed(1)} %`],
  [
    'Blue against bare metal',
    `${trust.separation.toFixed(1)} times the noise of the metal; below 5 is faint`,
  ],
];
