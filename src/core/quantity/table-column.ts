import { say } from './say.ts';
import { slopeSign, slopeSize, spokenSlope } from './slope.ts';
import { clean, size_um, type UnitSystem, unitSign } from './unit.ts';

/** Figures of one column of a table: its unit stands at its head, every row has as many places. */
export interface TableColumn {
  readonly unit: string;
  /** Sign and figures, with two sd where one is known. */
  readonly figures: (value: number, sd?: number) => string;
  /** Figures of what has only a size. */
  readonly bare: (value: number) => string;
  /** One sd by itself, to a place more. */
  readonly spread: (sd: number) => string;
}

/** The columns of a system's tables. */
export interface TableColumns {
  /** Lengths and places, given in mm: no needless noughts. */
  readonly length: { readonly unit: string; readonly figures: (mm: number) => string };
  /** Deviations, given in µm: a tenth of a µm, a hundredth of a thou. */
  readonly size: TableColumn;
  /** Angles, given in µrad: a tenth of a µrad, a thousandth of a thou in 12 in. */
  readonly angle: TableColumn;
}

function column(unit: string, size: number, decimals: number): TableColumn {
  return {
    unit,
    figures: (value, sd) => {
      const said = say(clean(value / size), '', {
        decimals,
        ...(sd === undefined ? {} : { sd: sd / size }),
      });
      return `${said.sign}${said.number}${said.doubt === undefined ? '' : ` ±${said.doubt}`}`;
    },
    bare: (value) => say(clean(value / size), '', { decimals, signed: false }).number,
    spread: (sd) => say(sd / size, '', { decimals: decimals + 1, signed: false }).number,
  };
}

const inchSlope = spokenSlope('inch');
const inch_mm = size_um.in / size_um.mm;
const noughtless = (value: number, decimals: number): string => `${Number(value.toFixed(decimals))}`;

const systems: Readonly<Record<UnitSystem, TableColumns>> = {
  metric: {
    length: { unit: unitSign.mm, figures: (mm) => noughtless(mm, 3) },
    size: column(unitSign.um, 1, 1),
    angle: column('µrad', 1, 1),
  },
  inch: {
    length: { unit: unitSign.in, figures: (mm) => noughtless(mm / inch_mm, 4) },
    size: column(unitSign.thou, size_um.thou, 2),
    angle: column(slopeSign(inchSlope), slopeSize(inchSlope), 3),
  },
};

export const tableColumns = (system: UnitSystem): TableColumns => systems[system];
