import type { PrintAsk } from '../../contract/print.ts';
import { findCorners } from '../../core/print/find-corners.ts';
import type { Corners, SurfaceSize } from '../../core/print/picture.ts';
import type { DecodePhoto, PhotoHead } from './photo.ts';
import type { CornersFound, ShownReading } from './photo-reading.ts';
import type { PhotoStore } from './photo-store.ts';
import { lookAtPhoto } from './read-photo.ts';

/** A photo that is kept: what it is called by, and how large it is when turned as EXIF says. */
export interface KeptPhoto extends PhotoHead {
  readonly hash: string;
  readonly again: boolean;
}

export type CornersAnswer = ({ readonly corners: Corners } & CornersFound) | { readonly why: string };

/** What is asked about photos, as data, so that it can be asked of another thread; undefined: no such photo is kept. */
export interface PhotoQuestions {
  readonly keep: { readonly ask: { readonly bytes: Uint8Array }; readonly answer: KeptPhoto };
  readonly read: {
    readonly ask: { readonly hash: string; readonly asked: PrintAsk };
    readonly answer: ShownReading | undefined;
  };
  readonly corners: {
    readonly ask: { readonly hash: string; readonly size: SurfaceSize };
    readonly answer: CornersAnswer | undefined;
  };
}

/**
 * Answers questions about photos somewhere that does not hold up whoever asks.
 * Throws BadInput for what is wrong with a photo or a question, Fault for what the disk did, Unanswered when there was no time.
 * @param stop  whoever asked wants it no longer; not for `keep`, which changes what is kept
 */
export type AskPhotos = <K extends keyof PhotoQuestions>(
  kind: K,
  ask: PhotoQuestions[K]['ask'],
  stop?: AbortSignal,
) => Promise<PhotoQuestions[K]['answer']>;

/** A photo was not looked at: too many wait, or it took too long. Nothing is wrong with the question. */
export class Unanswered extends Error {
  readonly code: 'many photos' | 'too slow';
  constructor(code: Unanswered['code'], message: string) {
    super(message);
    this.name = 'Unanswered';
    this.code = code;
  }
}

/** Levels 0 to 255, row by row, as a grey PNG. */
export type GreyPng = (width: number, height: number, levels: Uint8Array) => Promise<Uint8Array>;

/** Answers them here and now. */
export function photoDesk(photos: PhotoStore, decode: DecodePhoto, greyPng: GreyPng): AskPhotos {
  const answers: {
    [K in keyof PhotoQuestions]: (ask: PhotoQuestions[K]['ask']) => Promise<PhotoQuestions[K]['answer']>;
  } = {
    keep: async ({ bytes }) => {
      // Taken apart before it is kept, so that what could never be read is refused while it can be taken again.
      const { format, width_px, height_px } = await decode(bytes);
      return { ...(await photos.keep({ bytes, format })), format, width_px, height_px };
    },
    read: async ({ hash, asked }) => {
      const photo = await photos.open(hash);
      if (!photo) return undefined;
      const { reading, contact } = await lookAtPhoto(photo.bytes, asked, decode);
      const { width, height, px_per_mm, is } = contact;
      const png = Buffer.from(await greyPng(width, height, is)).toString('base64');
      return { ...reading, contact_map: { width, height, px_per_mm, png: `data:image/png;base64,${png}` } };
    },
    corners: async ({ hash, size }) => {
      const photo = await photos.open(hash);
      return photo && findCorners((await decode(photo.bytes)).picture, size);
    },
  };
  return async (kind, ask) => (await answers[kind](ask as never)) as never;
}
