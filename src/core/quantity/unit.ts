/** What a person chose to see: mm and µm, or inches, thou and tenths. */
export type UnitSystem = 'metric' | 'inch';

/** Units a reading's column may be in. A tenth is a tenth of a thou: 0.0001 in. */
export type DeviationUnit = 'um' | 'mm' | 'thou' | 'tenths' | 'in';

/** Units a length's column may be in. */
export type LengthUnit = 'mm' | 'in';

/** Every length unit that can be spoken; sizes in µm are exact by definition (1 in = 25.4 mm). */
export type SpokenLength = DeviationUnit | 'uin' | 'cm' | 'm' | 'ft';

export const size_um: Readonly<Record<SpokenLength, number>> = {
  um: 1,
  mm: 1_000,
  cm: 10_000,
  m: 1_000_000,
  uin: 0.0254,
  tenths: 2.54,
  thou: 25.4,
  in: 25_400,
  ft: 304_800,
};

/** How a unit is written behind a number. */
export const unitSign: Readonly<Record<SpokenLength, string>> = {
  um: 'µm',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  uin: 'µin',
  tenths: 'tenths',
  thou: 'thou',
  in: 'in',
  ft: 'ft',
};

export const systemOf = (unit: SpokenLength): UnitSystem =>
  unit === 'um' || unit === 'mm' || unit === 'cm' || unit === 'm' ? 'metric' : 'inch';

/** Words for each unit, lower case, µ written u, words parted by single spaces. */
const words: Readonly<Record<SpokenLength, string>> = {
  um: 'um|u|micron|microns|micrometre|micrometres|micrometer|micrometers',
  mm: 'mm|millimetre|millimetres|millimeter|millimeters',
  cm: 'cm|centimetre|centimetres|centimeter|centimeters',
  m: 'm|metre|metres|meter|meters',
  uin: 'uin|microinch|microinches|millionth|millionths|millionths of an inch',
  tenths:
    'tenth|tenths|tenth of a thou|tenths of a thou|tenths of thou|tenth of a thousandth|tenths of a thousandth',
  thou: 'thou|thous|thousandth|thousandths|thousandth of an inch|thousandths of an inch',
  in: 'in|ins|inch|inches|"',
  ft: "ft|foot|feet|'",
};

export type Spellings<Unit extends string> = ReadonlyMap<string, Unit>;

const spellings = <Unit extends SpokenLength>(...units: readonly Unit[]): Spellings<Unit> =>
  new Map(units.flatMap((unit) => words[unit].split('|').map((word): [string, Unit] => [word, unit])));

/** How a deviation may be spoken: nobody reads an indicator in feet or metres. */
export const deviationWords = spellings('um', 'mm', 'uin', 'tenths', 'thou', 'in');
export const lengthWords = spellings('um', 'mm', 'cm', 'm', 'tenths', 'thou', 'in', 'ft');

const angleSpellings = {
  urad: 'urad|microradian|microradians',
  mrad: 'mrad|milliradian|milliradians',
  arcsec: 'arcsec|arcsecs|arcsecond|arcseconds|arc second|arc seconds|arc sec|sec|second|seconds',
  arcmin: 'arcmin|arcmins|arcminute|arcminutes|arc minute|arc minutes|arc min|min|minute|minutes',
  deg: 'deg|degs|degree|degrees|°',
} as const;
export type SpokenAngle = keyof typeof angleSpellings;

export const angleWords: Spellings<SpokenAngle> = new Map(
  (Object.keys(angleSpellings) as SpokenAngle[]).flatMap((unit) =>
    angleSpellings[unit].split('|').map((word): [string, SpokenAngle] => [word, unit]),
  ),
);

/** Sizes of angles in µrad; a whole turn is 2π rad or 1 296 000 arcsec. */
export const size_urad: Readonly<Record<SpokenAngle, number>> = {
  urad: 1,
  mrad: 1_000,
  arcsec: (Math.PI / 648_000) * 1e6,
  arcmin: (Math.PI / 10_800) * 1e6,
  deg: (Math.PI / 180) * 1e6,
};

/** Rounds away what binary fractions leave behind (0.0005 × 25400 is 12.7, not 12.700000000000001). */
export const clean = (value: number): number => Number(value.toPrecision(14));
