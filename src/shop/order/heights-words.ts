import type { HeightFound } from '../../core/heights/heights.ts';
import type { LinerFound } from '../../core/heights/liner.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { size_um, type UnitSystem } from '../../core/quantity/unit.ts';

/** Heights in the machine's units: three places of a mm, or four of an inch, which are a tenth. */
export function heightWords(system: UnitSystem) {
  const metric = system === 'metric';
  const size = metric ? 1 : size_um.in / size_um.mm;
  const unit = metric ? 'mm' : 'in';
  /** Figures alone, for a column; nothing has no sign. @param places  decimals in mm; inches get one more, four at most */
  const figures = (value: number, places = 3): string => {
    const text = (value / size).toFixed(metric ? places : Math.min(4, places + 1));
    return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
  };
  const mm = (value: number, places = 3): string => `${figures(value, places)}\u00a0${unit}`;
  /** What may still come off, to the µm or the tenth of a thou. */
  const whole = (um: number): string =>
    sayDeviation(um, system, {
      signed: false,
      unit: metric ? 'um' : 'thou',
      decimals: metric ? 0 : 1,
    }).text;
  const signed = (um: number): string => `${um > 0 ? '+' : ''}${mm(um / 1000)}`;
  return { mm, figures, signed, unit, small: { whole } };
}

/** Every link of a height, so that its sum can be followed: the drawing, what was found, what is planned. */
export function linkWords(height: HeightFound, system: UnitSystem): string[] {
  const { mm, signed } = heightWords(system);
  const { parts, changes, closure, drawn_mm, um, sd_um, backlash_um } = height;
  return [
    ...parts.map((part) => `${part.body}, by the drawing: ${mm(part.mm)}`),
    `By the drawing together: ${mm(drawn_mm)}`,
    ...changes.map(
      (one) => `${one.change} (${one.when}): ${signed(one.um)} ±\u00a0${mm((2 * one.sd_um) / 1000)}`,
    ),
    ...(closure
      ? [
          `Measured less what was found adds up to: ${signed(closure.um)} ±\u00a0${mm((2 * closure.sd_um) / 1000)}`,
        ]
      : []),
    `Together off the drawing: ${signed(um)} ±\u00a0${mm((2 * sd_um) / 1000)}, 19 times in 20`,
    ...(backlash_um === undefined ? [] : [`The rack gains in backlash: ${signed(backlash_um)}`]),
  ];
}

/** A liner as it is made: sheet, what to mill, what is left. */
export function linerWords(liner: LinerFound, system: UnitSystem): string[] {
  const { mm } = heightWords(system);
  return [
    `Sheet ${mm(liner.sheet_mm, 2)}, bond line ${mm(liner.bond_mm, 2)}; ${mm(liner.left_mm, 2)} left when it is finished, at least ${mm(liner.least_mm, 2)}.`,
    ...liner.pads.map(
      (pad) =>
        `${pad.pad}: mill ${mm(pad.mill_mm)} off first, square to the face${pad.wall_left_mm === undefined ? '' : `; ${mm(pad.wall_left_mm, 1)} of wall left`}. It comes up ${mm(pad.raise_mm)}.`,
    ),
    `The planner may take ${mm(liner.stock_um / 1000)} off each lined face.`,
    'Epoxies and solvents: read their safety sheets, gloves, ventilate; follow your local rules.',
  ];
}
