import { pxPerMm, surfaceToPhoto } from './homography.ts';
import type { Corners, Picture, SurfaceSize } from './picture.ts';

/**
 * Raster of the surface, pixels a millimetre. Ten are no better on counts and bearing than eight, and cost half as much
 * again; six lose bearing.
 */
export const rasterPxPerMm = 8;
/** Clipped: all three channels at or above this are light, not surface. */
const clippedAt = 247;
/** Below this the logarithm of a dark pixel's light is held, so that noise in black does not look like blue. */
const darkest = 0.002;
/** Samples between whole pixel values: sixteen steps. */
const steps = 16;

/** A photo brought to the surface, row by row from (0,0); element centres at (i + 0.5) / rasterPxPerMm mm. */
export interface Rectified {
  readonly width: number;
  readonly height: number;
  /** log blue − log red light: rises where blue film eats red. */
  readonly blueness: Float32Array;
  /** Mean log of red and green light. */
  readonly shade: Float32Array;
  /** 1 where glare clipped the photo, 2 where the surface runs out of it, else 0. */
  readonly unread: Uint8Array;
  /** Pixels of the photo along a mm in the surface's middle. */
  readonly px_per_mm: number;
}

/** log of linear light of an sRGB value in sixteenths; IEC 61966-2-1. */
const logLight = Float32Array.from({ length: 256 * steps }, (_, k) => {
  const v = k / steps / 255;
  return Math.log((v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4) + darkest);
});

/** One resampling step from the photo to the surface: between four pixels, or the mean of several where the photo is finer. */
export function rectified(picture: Picture, corners: Corners, size: SurfaceSize): Rectified {
  const toPhoto = surfaceToPhoto(corners, size);
  const width = Math.max(1, Math.round(size.length_mm * rasterPxPerMm));
  const height = Math.max(1, Math.round(size.width_mm * rasterPxPerMm));
  const px_per_mm = pxPerMm(toPhoto, { x: size.length_mm / 2, y: size.width_mm / 2 });
  const each = Math.min(6, Math.max(1, Math.round(px_per_mm / rasterPxPerMm)));
  const blueness = new Float32Array(width * height);
  const shade = new Float32Array(width * height);
  const unread = new Uint8Array(width * height);
  const { rgb, width_px, height_px } = picture;
  const [h0, h1, h2, h3, h4, h5, h6, h7] = toPhoto;
  const right = width_px - 1;
  const bottom = height_px - 1;
  const line = 3 * width_px;
  const clippedSum = clippedAt * steps;
  const lastX = right - 1e-4;
  const lastY = bottom - 1e-4;
  for (let j = 0; j < height; j++) {
    for (let i = 0, at = j * width; i < width; i++, at++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      let outside = false;
      if (each === 1) {
        const x = (i + 0.5) / rasterPxPerMm;
        const y = (j + 0.5) / rasterPxPerMm;
        const w = 1 / (h6 * x + h7 * y + 1);
        let u = (h0 * x + h1 * y + h2) * w;
        let v = (h3 * x + h4 * y + h5) * w;
        outside = u < -1 || v < -1 || u > right + 1 || v > bottom + 1;
        u = u < 0 ? 0 : u > lastX ? lastX : u;
        v = v < 0 ? 0 : v > lastY ? lastY : v;
        const left = u | 0;
        const top = v | 0;
        // Weights in 256ths of sixteenths, in whole numbers.
        const fx = ((u - left) * 64) | 0;
        const fy = ((v - top) * 64) | 0;
        const w11 = fx * fy;
        const w10 = fx * 64 - w11;
        const w01 = fy * 64 - w11;
        const w00 = 4096 - w11 - w10 - w01;
        const k = top * line + 3 * left;
        const m = k + line;
        red = (rgb[k]! * w00 + rgb[k + 3]! * w10 + rgb[m]! * w01 + rgb[m + 3]! * w11) >> 8;
        green = (rgb[k + 1]! * w00 + rgb[k + 4]! * w10 + rgb[m + 1]! * w01 + rgb[m + 4]! * w11) >> 8;
        blue = (rgb[k + 2]! * w00 + rgb[k + 5]! * w10 + rgb[m + 2]! * w01 + rgb[m + 5]! * w11) >> 8;
      } else {
        for (let b = 0; b < each; b++) {
          const y = (j + (b + 0.5) / each) / rasterPxPerMm;
          for (let a = 0; a < each; a++) {
            const x = (i + (a + 0.5) / each) / rasterPxPerMm;
            const w = 1 / (h6 * x + h7 * y + 1);
            let u = ((h0 * x + h1 * y + h2) * w + 0.5) | 0;
            let v = ((h3 * x + h4 * y + h5) * w + 0.5) | 0;
            if (u < 0 || v < 0 || u > right || v > bottom) {
              outside = outside || u < -1 || v < -1 || u > right + 1 || v > bottom + 1;
              u = u < 0 ? 0 : u > right ? right : u;
              v = v < 0 ? 0 : v > bottom ? bottom : v;
            }
            const k = v * line + 3 * u;
            red += rgb[k]!;
            green += rgb[k + 1]!;
            blue += rgb[k + 2]!;
          }
        }
        const share = steps / (each * each);
        red = (red * share) | 0;
        green = (green * share) | 0;
        blue = (blue * share) | 0;
      }
      const logRed = logLight[red]!;
      blueness[at] = logLight[blue]! - logRed;
      shade[at] = 0.5 * (logRed + logLight[green]!);
      if (outside) unread[at] = 2;
      else if (red >= clippedSum && green >= clippedSum && blue >= clippedSum) unread[at] = 1;
    }
  }
  return { width, height, blueness, shade, unread, px_per_mm };
}
