import type { DecodePhoto } from '../../shop/print/photo.ts';

/** What verbs about photos need of the world; tests hand them their own. */
export interface PictureDoors {
  readonly readBytes: (file: string) => Promise<Uint8Array>;
  /** Writes a file whole or not at all. */
  readonly writeBytes: (file: string, bytes: Uint8Array) => Promise<void>;
  readonly decode: DecodePhoto;
  /** A drawing laid over a photo, as PNG: SVG as large as the photo. */
  readonly laidOver: (photo: Uint8Array, svg: string) => Promise<Uint8Array>;
  /** A photo turned upright, as JPEG. */
  readonly upright: (photo: Uint8Array) => Promise<Uint8Array>;
}
