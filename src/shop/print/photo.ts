import type { Picture } from '../../core/print/picture.ts';

/** Kinds of picture that are taken, told by their content and never by a file's name. */
export const photoFormats = ['jpeg', 'png', 'webp', 'tiff', 'heif'] as const;
export type PhotoFormat = (typeof photoFormats)[number];

/** The type each format is served with. */
export const photoType: Readonly<Record<PhotoFormat, string>> = {
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  tiff: 'image/tiff',
  heif: 'image/heif',
};

/** What may be sent and what is decoded: more is refused before it is unpacked. */
export const photoLimits = {
  bytes: 40_000_000,
  /** What the server takes in one request. */
  sent_bytes: 25_000_000,
  pixels: 60_000_000,
  /** Shorter sides show no surface. */
  least_side_px: 64,
} as const;

/** What is known of a photo. Sides as shown: turned the way EXIF says. */
export interface PhotoHead {
  readonly format: PhotoFormat;
  readonly width_px: number;
  readonly height_px: number;
}

/** A photo as pixels, turned upright. */
export interface DecodedPhoto extends PhotoHead {
  readonly picture: Picture;
  /** The file's data is faulty in places; what could be unpacked is there. */
  readonly damaged: boolean;
}

/**
 * Takes a photo apart.
 * @throws BadInput  naming `photo`: not a picture, a kind that is not taken, too large, moving, without colour, cut off
 */
export type DecodePhoto = (bytes: Uint8Array) => Promise<DecodedPhoto>;
