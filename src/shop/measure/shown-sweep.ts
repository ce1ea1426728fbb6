import { minus, plain } from '../../core/quantity/show.ts';
import { clean, type DeviationUnit, size_um, systemOf, unitSign } from '../../core/quantity/unit.ts';
import type { SweepLook } from './look-at-sweep.ts';

/** A sweep in the units it is shown in, for drawing: places along it in mm or inches, readings in the column's unit. */
export interface ShownSweep {
  readonly points: readonly { readonly at: number; readonly value: number; readonly left_out?: string }[];
  readonly fit: readonly { readonly at: number; readonly value: number; readonly doubt: number }[];
  readonly x_name: string;
  readonly y_name: string;
  /** How many mm one of each axis is. */
  readonly x_unit_mm: number;
  readonly y_unit_mm: number;
}

/**
 * @param values_um  one a stop, µm, with the signs of the sum; undefined where nothing was read
 */
export function shownSweep(
  distances_mm: readonly number[],
  values_um: readonly (number | undefined)[],
  look: SweepLook,
  unit: DeviationUnit,
): ShownSweep {
  const metric = systemOf(unit) === 'metric';
  const x_unit_mm = metric ? 1 : size_um.in / size_um.mm;
  const y_unit_um = size_um[unit];
  const along = (mm: number) => clean(mm / x_unit_mm);
  const off = new Set(look.off.map((one) => one.point));
  const read = values_um.flatMap((value, i) =>
    value === undefined ? [] : [{ value, at: along(distances_mm[i]!) }],
  );
  return {
    points: read.map(({ value, at }, k) => ({
      at,
      value: clean(value / y_unit_um),
      ...(off.has(k) ? { left_out: `${plain(at, 4)} ${metric ? 'mm' : 'in'} left out` } : {}),
    })),
    fit: look.line.map(({ at_mm, value_um, doubt_um }) => ({
      at: along(at_mm),
      value: clean(value_um / y_unit_um),
      doubt: clean(doubt_um / y_unit_um),
    })),
    x_name: metric ? 'mm along the sweep' : 'in along the sweep',
    y_name: `${unitSign[unit]}, + is plunger in`,
    x_unit_mm,
    y_unit_mm: y_unit_um / size_um.mm,
  };
}

/** A figure of an axis with its sign: "+5", "−10", "0". */
export const axisFigure = (value: number): string => {
  const text = plain(value, 4);
  return value > 0 && !text.startsWith(minus) ? `+${text}` : text;
};
