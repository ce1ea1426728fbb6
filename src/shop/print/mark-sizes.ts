import type { Exclusion } from '../../core/print/exclusion.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';

/** What a press changes a size or a place by: half a millimetre, or 1/32 in as drills and cutters go. */
export const markStep_mm = (units: UnitSystem): number => (units === 'metric' ? 0.5 : 25.4 / 32);

/** A size to begin with: a common screw's hole, a common oil groove. Common practice, no source. */
export const firstSize_mm = (kind: 'hole' | 'groove', units: UnitSystem): number =>
  kind === 'hole' ? (units === 'metric' ? 10 : 25.4 * (3 / 8)) : units === 'metric' ? 5 : 25.4 * (3 / 16);

/** A hole's diameter or a groove's width, mm; a patch has none. */
export function sizeOf(mark: Exclusion): number | undefined {
  if (mark.type === 'circle') return 2 * mark.r;
  return mark.type === 'polyline' ? mark.width : undefined;
}

export function withSize(mark: Exclusion, mm: number): Exclusion {
  if (mark.type === 'circle') return { ...mark, r: mm / 2 };
  return mark.type === 'polyline' ? { ...mark, width: mm } : mark;
}

/** So many steps up or down, on the next whole step that way: an odd size becomes a round one. */
export function steppedSize(mm: number, steps: number, units: UnitSystem): number {
  const step = markStep_mm(units);
  const at = mm / step;
  const from = steps > 0 ? Math.floor(at + 1e-3) : Math.ceil(at - 1e-3);
  return Math.round((from + steps) * step * 1e4) / 1e4;
}

/** "6.5 mm"; in inches "3/16 in" on a thirty-second, else "0.157 in". */
export function sizeWords(mm: number, units: UnitSystem): string {
  if (units === 'metric') return `${Number(mm.toFixed(2))}\u00a0mm`;
  const parts = (mm / 25.4) * 32;
  const whole = Math.round(parts);
  if (whole === 0 || Math.abs(parts - whole) > 0.01) return `${(mm / 25.4).toFixed(3)}\u00a0in`;
  const inches = Math.floor(whole / 32);
  let [top, bottom] = [whole % 32, 32];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const share = top === 0 ? '' : `${top}/${bottom}`;
  return `${[inches === 0 ? '' : String(inches), share].filter(Boolean).join(' ')}\u00a0in`;
}
