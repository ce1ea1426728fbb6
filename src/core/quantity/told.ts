import { sayLength } from './length.ts';
import { type SayOptions, say, sayDeviation } from './say.ts';
import { plain } from './show.ts';
import { saySlope } from './slope.ts';
import { size_um, type UnitSystem } from './unit.ts';

/** How readings and places are told in a sentence of one system: µm, µrad and mm; or thou and tenths, thou in 12 in, inches. */
export interface Told {
  /** @param um  sd of the options in µm too; decimals count in µm only */
  readonly size: (um: number, options?: SayOptions) => string;
  /** @param urad  sd of the options in µrad too; decimals count in µrad only */
  readonly angle: (urad: number, options?: SayOptions) => string;
  readonly place: (mm: number) => string;
  /** Of metal to take off. */
  readonly volume: (mm3: number) => string;
}

/** A doubt keeps its own places in inches: a tenth of a µm and a tenth of a tenth are not the same figure. */
const own = ({ decimals: _, ...options }: SayOptions = {}): SayOptions => options;

const metric: Told = {
  size: (um, options) => say(um, 'µm', options).text,
  angle: (urad, options) => say(urad, 'µrad', options).text,
  place: (mm) => `${Number(mm.toPrecision(9))} mm`,
  volume: (mm3) => `${mm3.toFixed(0)} mm³`,
};
const inch: Told = {
  size: (um, options) => sayDeviation(um, 'inch', own(options)).text,
  angle: (urad, options) => saySlope(urad, 'inch', own(options)).text,
  place: (mm) => sayLength(mm, 'inch').text,
  // Two figures: scrapings are thousandths of a cubic inch.
  volume: (mm3) => `${plain(mm3 / (size_um.in / size_um.mm) ** 3, 2)} in³`,
};

/** The words of a system. */
export const told = (system: UnitSystem): Told => (system === 'metric' ? metric : inch);
