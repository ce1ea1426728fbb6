import { boxMean, type Plane, type Shrunk } from './find-planes.ts';

/** Logarithm of brightness, and of blue over red: shading that falls over both alike adds to the first and leaves the second. */
export interface Tones {
  readonly light: Plane;
  readonly hue: Plane;
}

/** Added to bytes before the logarithm, so that noise in the dark does not look like texture. */
const dark = 12;

export function lightTone(r: number, g: number, b: number): number {
  return Math.log(r + g + b + 3 * dark);
}

export function hueTone(r: number, b: number): number {
  return Math.log((b + dark) / (r + dark));
}

export function tonesOf({ width, height, red, green, blue }: Shrunk): Tones {
  return {
    light: { width, height, at: red.map((r, i) => lightTone(r, green[i]!, blue[i]!)) },
    hue: { width, height, at: red.map((r, i) => hueTone(r, blue[i]!)) },
  };
}

/**
 * How much it is textured in every direction: logarithm of the root of the lesser eigenvalue of the gradients' second
 * moments (structure tensor) over a square of 2 · radius + 1. A straight edge or a grain that runs one way counts little,
 * spots of blue and scraping marks much. One step in tone counts for 0.3 at most.
 */
export function texture({ light, hue }: Tones, radius: number): Plane {
  const { width, height } = light;
  const xx = new Float32Array(width * height);
  const xy = new Float32Array(width * height);
  const yy = new Float32Array(width * height);
  for (const { at } of [light, hue])
    for (let y = 1; y < height - 1; y++)
      for (let x = 1, p = y * width + 1; x < width - 1; x++, p++) {
        let gx = at[p + 1]! - at[p - 1]!;
        let gy = at[p + width]! - at[p - width]!;
        const size = gx * gx + gy * gy;
        if (size > 0.09) {
          const less = 0.3 / Math.sqrt(size);
          gx *= less;
          gy *= less;
        }
        xx[p]! += gx * gx;
        xy[p]! += gx * gy;
        yy[p]! += gy * gy;
      }
  const a = boxMean({ width, height, at: xx }, radius).at;
  const b = boxMean({ width, height, at: xy }, radius).at;
  const c = boxMean({ width, height, at: yy }, radius).at;
  const at = a.map((one, i) => {
    const less = (one + c[i]! - Math.hypot(one - c[i]!, 2 * b[i]!)) / 2;
    return Math.log(Math.max(less, 0) + 1e-6) / 2;
  });
  return { width, height, at };
}
