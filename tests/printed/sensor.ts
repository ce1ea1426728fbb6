import type { Random } from '../../src/core/math/random.ts';

export interface SensorRecipe {
  readonly blur_px: number;
  readonly noise: number;
  readonly sharpening: number;
  readonly random: Random;
}

/** sRGB's curve (IEC 61966-2-1) at 4096 steps, 0 to 255. */
const curve = Float32Array.from({ length: 4097 }, (_, k) => {
  const v = k / 4096;
  return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
});

/** Blurs, adds noise, clips, applies the tone curve, sharpens and rounds. Changes `linear`. */
export function develop(
  linear: Float32Array,
  width: number,
  height: number,
  recipe: SensorRecipe,
): Uint8Array {
  blur(linear, width, height, kernelOf(recipe.blur_px));
  const { normal, even } = recipe.random;
  const chance = Float32Array.from({ length: 1 << 15 }, () => normal());
  // Shot noise grows with the root of the light; it is the recipe's at mid-grey.
  const sds = Float32Array.from(
    { length: 4097 },
    (_, k) => recipe.noise * Math.sqrt(0.0375 + (0.85 * k) / 4096),
  );
  for (let row = 0; row < height; row++) {
    let next = Math.floor(chance.length * even());
    for (let at = 3 * row * width; at < 3 * (row + 1) * width; at++) {
      const got = linear[at]!;
      const sd = sds[(4096 * Math.min(1, Math.max(0, got)) + 0.5) | 0]!;
      const noisy = Math.min(1, Math.max(0, got + sd * chance[next & 0x7fff]!));
      next++;
      linear[at] = curve[(4096 * noisy + 0.5) | 0]!;
    }
  }
  const rgb = new Uint8Array(linear.length);
  if (recipe.sharpening === 0) {
    for (let at = 0; at < rgb.length; at++) rgb[at] = linear[at]! + 0.5;
    return rgb;
  }
  const soft = Float32Array.from(linear);
  blur(soft, width, height, kernelOf(1));
  for (let at = 0; at < rgb.length; at++) {
    const sharp = linear[at]! + recipe.sharpening * (linear[at]! - soft[at]!);
    rgb[at] = Math.min(255, Math.max(0, sharp + 0.5));
  }
  return rgb;
}

function kernelOf(sd_px: number): Float32Array {
  const reach = Math.max(1, Math.ceil(2.6 * sd_px));
  const kernel = Float32Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * Math.max(0.2, sd_px) ** 2)),
  );
  const sum = kernel.reduce((all, one) => all + one, 0);
  return kernel.map((one) => one / sum);
}

/** Along the rows in place, then down the columns through a ring of rows; the rim is continued outward. */
function blur(rgb: Float32Array, width: number, height: number, kernel: Float32Array): void {
  const reach = (kernel.length - 1) / 2;
  // A row with its rim continued on either side.
  const line = new Float32Array(3 * (width + 2 * reach));
  for (let row = 0; row < height; row++) {
    const start = 3 * row * width;
    line.set(rgb.subarray(start, start + 3 * width), 3 * reach);
    for (let k = 0; k < 3 * reach; k++) {
      line[k] = rgb[start + (k % 3)]!;
      line[line.length - 1 - k] = rgb[start + 3 * width - 1 - (k % 3)]!;
    }
    const target = rgb.subarray(start, start + 3 * width);
    target.fill(0);
    kernel.forEach((weight, k) => {
      const from = 3 * k;
      for (let i = 0; i < target.length; i++) target[i] = target[i]! + weight * line[from + i]!;
    });
  }
  const row3 = 3 * width;
  const kept = Array.from({ length: kernel.length }, (_, k) => {
    const from = row3 * Math.min(height - 1, Math.max(0, k - reach));
    return rgb.slice(from, from + row3);
  });
  for (let row = 0; row < height; row++) {
    const start = row * row3;
    const target = rgb.subarray(start, start + row3);
    target.fill(0);
    kept.forEach((from, k) => {
      const weight = kernel[k]!;
      for (let i = 0; i < row3; i++) target[i] = target[i]! + weight * from[i]!;
    });
    const old = kept.shift()!;
    const comes = row3 * Math.min(height - 1, row + reach + 1);
    // Past the last row the last one, unblurred, stands in again.
    if (row + reach + 1 < height) old.set(rgb.subarray(comes, comes + row3));
    else old.set(kept.at(-1)!);
    kept.push(old);
  }
}
