import type { Corners } from '../../../core/print/picture.ts';
import type { Marking } from '../../../shop/print/marking.ts';
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
  /** Grooves, holes and patches, once any was touched; before that the pad's last stand. */
  readonly marking?: Marking;
  /** They are being marked. */
  readonly atMarks?: boolean;
}

/** What stays of a draft when the photo is taken again: marks belong to the pad. */
export const withoutPhoto = ({ marking }: PhotoDraft): PhotoDraft =>
  marking ? { marking: { marks: marking.marks } } : {};

export const photoDraftKey = (job: string, round: number, pad: string): string =>
  draftKey(job, round, 'photo', pad);
