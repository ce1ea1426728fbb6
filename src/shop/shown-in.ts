import { plain } from '../core/quantity/show.ts';
import { slopeSign, slopeSize, spokenSlope } from '../core/quantity/slope.ts';
import { clean, size_um, type UnitSystem, unitSign } from '../core/quantity/unit.ts';

/** Numbers of a working in one system's units. Constants of materials, forces and angles in degrees keep their own. */
export interface ShownIn {
  /** A length given in mm: in mm or inches, no unit behind it. */
  readonly mm: (mm: number) => string;
  /** A size given in µm: in µm or thou. */
  readonly um: (um: number) => string;
  /** A slope given in µrad: in µrad or thou in 12 in. */
  readonly urad: (urad: number) => string;
  /** The number itself, of a size given in µm. */
  readonly asSmall: (um: number) => number;
  /** The same of a slope given in µrad. */
  readonly asSlope: (urad: number) => number;
  /** The signs of the three units. */
  readonly long: string;
  readonly small: string;
  readonly slope: string;
  /** A slope times a length over this is a size: 1000 (µrad × mm), or 12 (thou in 12 in × in). */
  readonly per: number;
}

/** What is left of rounding is nothing. */
const least = 1e-9;

/** @param digits  figures of a number */
export function shownIn(system: UnitSystem, digits = 6): ShownIn {
  const metric = system === 'metric';
  const [long, small] = metric ? (['mm', 'um'] as const) : (['in', 'thou'] as const);
  const slope = metric ? 'urad' : spokenSlope(system);
  const as =
    (size: number) =>
    (value: number): string =>
      plain(Math.abs(value) < least ? 0 : clean(value / size), digits);
  return {
    mm: as(size_um[long] / size_um.mm),
    um: as(size_um[small]),
    urad: as(slopeSize(slope)),
    asSmall: (um) => um / size_um[small],
    asSlope: (urad) => urad / slopeSize(slope),
    long: unitSign[long],
    small: unitSign[small],
    slope: slopeSign(slope),
    per: metric ? 1000 : 12,
  };
}

/** A term of a sum: a minus within brackets. */
export const bracketed = (text: string): string => (text.startsWith('−') ? `(${text})` : text);
