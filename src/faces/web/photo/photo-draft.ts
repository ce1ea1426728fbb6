import type { Corners } from '../../../core/print/picture.ts';
import { draftKey } from '../keep/draft.ts';

/** A photo that the shop keeps. */
export interface KeptHead {
  readonly hash: string;
  readonly width_px: number;
  readonly height_px: number;
}

/** A photo on its way into the round: what a reload must give back. */
export interface PhotoDraft {
  readonly photo?: KeptHead;
  readonly corners?: Corners;
  /** How the corners came to be where they are, in words. */
  readonly about?: string;
  /** The corners are settled: show the reading. */
  readonly settled?: boolean;
}

export const photoDraftKey = (job: string, round: number, pad: string): string =>
  draftKey(job, round, 'photo', pad);
