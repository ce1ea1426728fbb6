/** Units a sum counts in; a key's last part, as in docs/contract.md. Typed, they are read as the shop writes them. */
export type SumUnit =
  | 'mm'
  | 'um'
  | 'urad'
  | 'deg'
  | 'ratio'
  | 'K'
  | 'um_mK'
  | 'GPa'
  | 'kg_m3'
  | 'kg'
  | 'divisions';

/** A pole of a sum: its letter in the formula, and what it is. */
interface Named {
  /** The letter it has in the formula and in the drawing. */
  readonly symbol: string;
  readonly label: string;
  readonly unit: SumUnit;
}

/** Something a sum is asked with. */
export interface SumInput extends Named {
  /** One standard deviation taken when none is given: common practice with a shop's usual means; 0 what is exact by choice. */
  readonly sd: number;
  /** Taken when it is left out, and said so. */
  readonly preset?: number;
  /** Smallest and largest that make sense; `above` and `below` are themselves refused. */
  readonly least?: number;
  readonly most?: number;
  readonly above?: number;
  readonly below?: number;
  /** Which property of a material it is, so that naming a material fills it in. */
  readonly material?: 'density_kg_m3' | 'modulus_GPa' | 'expansion_um_mK';
}

/** Something a sum gives. */
export interface SumResult extends Named {
  /** The right-hand side with {key} for each input or earlier result: numbers put in, it is the working. */
  readonly formula: string;
  /** What plus means; left out, it has only a size. */
  readonly plus?: string;
}

/** Where a formula comes from and how it came to us, as in checks/README.md. */
export interface SumSource {
  readonly text: string;
  readonly came: 'seen' | 'second hand' | 'from memory' | 'derived' | 'common practice';
}

/** Every drawing a sum may have; draw/sums holds one for each. */
export type SumDrawing =
  | 'dovetail male'
  | 'dovetail female'
  | 'dovetail two rolls'
  | 'dovetail height'
  | 'v over roll'
  | 'v two rolls'
  | 'v flanks'
  | 'sine bar'
  | 'taper'
  | 'gib'
  | 'level'
  | 'bar on two'
  | 'support points'
  | 'test bar held'
  | 'test bar between'
  | 'indicator arm'
  | 'bow'
  | 'growth'
  | 'lever'
  | 'cosine line'
  | 'facing'
  | 'headstock taper'
  | 'tailstock taper'
  | 'liner'
  | 'lost height'
  | 'stack'
  | 'square two sides'
  | 'level turned'
  | 'bar turned'
  | 'edge turned'
  | 'parallels'
  | 'three squares';

/** A sum of the shop: numbers in, numbers out, with all that must be said of it. One file each; sums.ts lists them. */
export interface Sum<In extends string = string, Out extends string = string> {
  /** One word, parts joined by hyphens: how it is asked for. */
  readonly name: string;
  readonly group: SumGroup;
  readonly title: string;
  /** What it answers, as a rebuilder would ask it. */
  readonly question: string;
  readonly inputs: Readonly<Record<In, SumInput>>;
  readonly results: Readonly<Record<Out, SumResult>>;
  readonly drawing: SumDrawing;
  readonly source: SumSource;
  /** Numbers to show it with; those of the source where it has some. */
  readonly example: Readonly<Record<In, number>>;
  /** What must be known before it is believed. */
  readonly note?: string;
  /** A relation between inputs that must hold: which input breaks it, and what is expected. */
  fits?(values: Readonly<Record<In, number>>): { readonly key: In; readonly expected: string } | undefined;
  /** The arithmetic. Trusts that inputs are within their limits. */
  of(values: Readonly<Record<In, number>>): Record<Out, number>;
}

export type SumGroup =
  | 'dovetails and Vs'
  | 'angles and tapers'
  | 'sag and warmth'
  | 'the lathe'
  | 'heights'
  | 'reversals';

/** Types a sum's keys by what it lists. */
export const sum = <In extends string, Out extends string>(given: Sum<In, Out>): Sum => given;

const radians = (deg: number): number => (deg * Math.PI) / 180;
const degrees = (rad: number): number => (rad * 180) / Math.PI;
/** Trigonometry in degrees, as the formulas of a shop are written. */
export const sin = (deg: number): number => Math.sin(radians(deg));
export const cos = (deg: number): number => Math.cos(radians(deg));
export const tan = (deg: number): number => Math.tan(radians(deg));
export const cot = (deg: number): number => 1 / Math.tan(radians(deg));
export const asin = (value: number): number => degrees(Math.asin(value));
export const atan = (value: number): number => degrees(Math.atan(value));
/** Angle whose cotangent it is. */
export const acot = (value: number): number => degrees(Math.atan2(1, value));
