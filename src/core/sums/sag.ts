import { limpness, overhangSag, type Section, sagOnTwo, supportPoints, tipLoadSag } from '../kit/beam.ts';
import { type SumInput, sum } from './sum.ts';

const density: SumInput = {
  symbol: 'ρ',
  label: 'density',
  unit: 'kg_m3',
  sd: 50,
  preset: 7850,
  above: 0,
  material: 'density_kg_m3',
};
const modulus: SumInput = {
  symbol: 'E',
  label: 'modulus of elasticity',
  unit: 'GPa',
  sd: 4,
  preset: 210,
  above: 0,
  material: 'modulus_GPa',
};
const length: SumInput = { symbol: 'L', label: 'length', unit: 'mm', sd: 0.5, above: 0 };
const depth: SumInput = { symbol: 'h', label: 'depth, the way it stands', unit: 'mm', sd: 0.1, above: 0 };
const tables = {
  text: 'beam theory: 5qL⁴/384EI, qL⁴/8EI and PL³/3EI are in every table of beams',
  came: 'seen',
} as const;
const rectangle = 'For a bar of the same rectangle all along; ribs and holes change it, the width does not.';

const flat = (v: { depth: number; density: number; modulus: number }): number =>
  limpness({ kind: 'rectangle', depth_mm: v.depth }, { density_kg_m3: v.density, modulus_GPa: v.modulus });

export const straightedgeSag = sum({
  name: 'straightedge-sag',
  group: 'sag and warmth',
  title: 'Sag of a straightedge on two supports',
  question: 'How far does a straightedge sag by its own weight?',
  inputs: {
    length,
    depth,
    support: { symbol: 's', label: 'from each end to its support', unit: 'mm', sd: 2, least: 0 },
    density,
    modulus,
  },
  results: {
    limp: {
      symbol: 'u',
      label: 'sag it would have at its middle on its ends',
      unit: 'um',
      formula: '5 × {density} × g × {length}⁴ / (32 × {modulus} × {depth}²)',
    },
    middle: {
      symbol: 'm',
      label: 'middle against the supports',
      unit: 'um',
      formula: '{limp} × f(½; {support} / {length})',
      plus: 'up',
    },
    end: {
      symbol: 'e',
      label: 'ends against the supports',
      unit: 'um',
      formula: '{limp} × f(0; {support} / {length})',
      plus: 'up',
    },
    range: {
      symbol: 'r',
      label: 'from the lowest to the highest place',
      unit: 'um',
      formula: '{limp} × (highest f − lowest f)',
    },
  },
  drawing: 'bar on two',
  source: tables,
  example: { length: 1000, depth: 50, support: 0, density: 7850, modulus: 210 },
  note: `f is the bent line of a bar on two supports, −1 at the middle of a bar on its ends. ${rectangle}`,
  fits: (v) =>
    v.support <= v.length / 2 ? undefined : { key: 'support', expected: 'at most half the length' },
  of: (v) => {
    const limp = flat(v);
    // A doubt may carry the support a hair past an end, where the bent line goes on smoothly.
    const sag = sagOnTwo(limp, v.length, Math.min(0.51, Math.max(-0.01, v.support / v.length)));
    return {
      limp: -sagOnTwo(limp, v.length, 0).middle_um,
      middle: sag.middle_um,
      end: sag.end_um,
      range: sag.range_um,
    };
  },
});

export const bestSupports = sum({
  name: 'support-points',
  group: 'sag and warmth',
  title: 'Where to support a straightedge',
  question: 'Where do the two supports go, and what sag is left?',
  inputs: { length, depth, density, modulus },
  results: {
    airy: {
      symbol: 's₁',
      label: 'Airy: ends stay parallel; from each end',
      unit: 'mm',
      formula: '{length} × (1 − 1/√3) / 2',
    },
    bessel: {
      symbol: 's₂',
      label: 'Bessel: its length changes least; from each end',
      unit: 'mm',
      formula: '0.2203 × {length}',
    },
    least: {
      symbol: 's₃',
      label: 'least sag: ends level with the middle; from each end',
      unit: 'mm',
      formula: '0.2231 × {length}',
    },
    airy_sag: {
      symbol: 'r₁',
      label: 'sag left on the Airy points',
      unit: 'um',
      formula: '0.0460 × 5 × {density} × g × {length}⁴ / (32 × {modulus} × {depth}²)',
    },
    bessel_sag: {
      symbol: 'r₂',
      label: 'sag left on the Bessel points',
      unit: 'um',
      formula: '0.0254 × 5 × {density} × g × {length}⁴ / (32 × {modulus} × {depth}²)',
    },
    least_sag: {
      symbol: 'r₃',
      label: 'sag left on the points of least sag',
      unit: 'um',
      formula: '0.0208 × 5 × {density} × g × {length}⁴ / (32 × {modulus} × {depth}²)',
    },
  },
  drawing: 'support points',
  source: {
    text: 'Airy 0.577 and Bessel 0.559 apart, seen in an encyclopedia; least sag 0.554, seen in lecture slides; digits computed',
    came: 'seen',
  },
  example: { length: 1000, depth: 50, density: 7850, modulus: 210 },
  note: `Bessel’s points are not those of least sag, though many pages say so. ${rectangle}`,
  of: (v) => {
    const limp = flat(v);
    const range = (share: number): number => sagOnTwo(limp, v.length, share).range_um;
    const { airy, bessel, least_sag } = supportPoints;
    return {
      airy: airy * v.length,
      bessel: bessel * v.length,
      least: least_sag * v.length,
      airy_sag: range(airy),
      bessel_sag: range(bessel),
      least_sag: range(least_sag),
    };
  },
});

const diameter: SumInput = { symbol: 'D', label: 'diameter', unit: 'mm', sd: 0.01, above: 0 };
const bore: SumInput = {
  symbol: 'd',
  label: 'bore; 0 for a solid bar',
  unit: 'mm',
  sd: 0.1,
  preset: 0,
  least: 0,
};
const tube = (v: { diameter: number; bore: number }): Section & { kind: 'round' } => ({
  kind: 'round',
  diameter_mm: v.diameter,
  bore_mm: v.bore,
});
const boreFits = (v: { diameter: number; bore: number }) =>
  v.bore < v.diameter ? undefined : ({ key: 'bore', expected: 'a bore smaller than the diameter' } as const);
const round = (v: { diameter: number; bore: number; density: number; modulus: number }): number =>
  limpness(tube(v), { density_kg_m3: v.density, modulus_GPa: v.modulus });

export const testBarSag = sum({
  name: 'test-bar-sag',
  group: 'sag and warmth',
  title: 'Sag of a test bar in a spindle',
  question: 'How far does a test bar hang at its free end?',
  inputs: {
    overhang: { ...length, label: 'from the spindle nose to where it is read' },
    diameter,
    bore,
    density,
    modulus,
  },
  results: {
    sag: {
      symbol: 'y',
      label: 'it hangs down',
      unit: 'um',
      formula: '2 × {density} × g × {overhang}⁴ / ({modulus} × ({diameter}² + {bore}²))',
    },
    slope: {
      symbol: 'A',
      label: 'it points down',
      unit: 'urad',
      formula: '8 × {density} × g × {overhang}³ / (3 × {modulus} × ({diameter}² + {bore}²))',
    },
  },
  drawing: 'test bar held',
  source: tables,
  example: { overhang: 300, diameter: 40, bore: 0, density: 7850, modulus: 210 },
  note: 'For a bar of one diameter that ends where it is read. Add the sag to the height that was read.',
  fits: (v) => boreFits(v),
  of: (v) => {
    const hung = overhangSag(round(v), v.overhang);
    return { sag: hung.sag_um, slope: hung.slope_urad };
  },
});

export const barBetweenCentres = sum({
  name: 'bar-between-centres',
  group: 'sag and warmth',
  title: 'Sag of a test bar between centres',
  question: 'How far does a test bar sag between centres?',
  inputs: { length: { ...length, label: 'between the centres' }, diameter, bore, density, modulus },
  results: {
    sag: {
      symbol: 'y',
      label: 'its middle hangs down',
      unit: 'um',
      formula: '5 × {density} × g × {length}⁴ / (24 × {modulus} × ({diameter}² + {bore}²))',
    },
  },
  drawing: 'test bar between',
  source: tables,
  example: { length: 1000, diameter: 60, bore: 50, density: 7850, modulus: 210 },
  fits: (v) => boreFits(v),
  of: (v) => ({ sag: -sagOnTwo(round(v), v.length, 0).middle_um }),
});

export const indicatorArm = sum({
  name: 'indicator-arm',
  group: 'sag and warmth',
  title: 'Sag of an indicator on an arm',
  question: 'How far does an indicator’s bracket sag?',
  inputs: {
    arm: { ...length, label: 'length of the arm' },
    diameter,
    mass: { symbol: 'M', label: 'mass at its end', unit: 'kg', sd: 0.005, least: 0 },
    density,
    modulus,
  },
  results: {
    by_mass: {
      symbol: 'y₁',
      label: 'sag from the mass at its end',
      unit: 'um',
      formula: '{mass} × g × {arm}³ / (3 × {modulus} × π × {diameter}⁴ / 64)',
    },
    by_arm: {
      symbol: 'y₂',
      label: 'sag from the arm’s own weight',
      unit: 'um',
      formula: '2 × {density} × g × {arm}⁴ / ({modulus} × {diameter}²)',
    },
    swept: {
      symbol: 'r',
      label: 'what a sweep from top to underside reads too much',
      unit: 'um',
      formula: '2 × ({by_mass} + {by_arm})',
    },
  },
  drawing: 'indicator arm',
  source: tables,
  example: { arm: 250, diameter: 12, mass: 0.1, density: 7850, modulus: 210 },
  note: 'Clamps and joints give more than the arm: measure it, swinging the bracket on a stiff bar.',
  of: (v) => {
    const by_mass = tipLoadSag(
      v.arm,
      v.mass,
      { kind: 'round', diameter_mm: v.diameter, bore_mm: 0 },
      v.modulus,
    );
    const by_arm = overhangSag(round({ ...v, bore: 0 }), v.arm).sag_um;
    return { by_mass, by_arm, swept: 2 * (by_mass + by_arm) };
  },
});
