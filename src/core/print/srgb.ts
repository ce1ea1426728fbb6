/** Linear light, 0 to 1, of an sRGB value of 0 to 255. Source: IEC 61966-2-1. */
export function srgbLight(value: number): number {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}
