import type { Corners, SurfaceSize } from '../../core/print/picture.ts';
import type { PrintReading, PrintWarningCode } from '../../core/print/reading.ts';
import type { ReadingDoubt } from '../../core/print/reading-doubt.ts';
import type { PhotoHead } from './photo.ts';

/** What the photo's file and the corners add to a print's own warnings. */
export type PhotoWarningCode = PrintWarningCode | 'damaged file' | 'sides swapped' | 'corners doubtful';

export interface PhotoWarning {
  readonly code: PhotoWarningCode;
  /** What is wrong and what to do about it. */
  readonly text: string;
}

/** How corners were come by, where they were not given. */
export interface CornersFound {
  readonly how: 'card' | 'outline';
  /** Half-width of the doubt about the worst corner, px: two sd. */
  readonly doubt_px: number;
}

/** A print, read from a photo; what it was read with goes along, so that it can be read again. */
export interface PhotoReading extends Omit<PrintReading, 'warnings'> {
  readonly photo: PhotoHead;
  readonly corners: Corners;
  readonly corners_found?: CornersFound;
  readonly size: SurfaceSize;
  readonly cell_mm: number;
  /** One sd of the figures. */
  readonly doubt: ReadingDoubt;
  readonly warnings: readonly PhotoWarning[];
}

/** A reading with the map of contact, as it is sent to a screen. */
export interface ShownReading extends PhotoReading {
  readonly contact_map: {
    readonly width: number;
    readonly height: number;
    readonly px_per_mm: number;
    /** A grey PNG as a data address: 0 bare, 1 contact, 2 burnished contact, 3 excluded, 4 unreadable; row by row from (0,0). */
    readonly png: string;
  };
}
