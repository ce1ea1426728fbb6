import type { AxisAsk } from '../../contract/axis.ts';
import { type AxisFound, axisOf } from '../../core/axis/bar-axis.ts';
import { heldSag } from '../../core/axis/bar-sag.ts';
import type { CentresFound } from '../../core/axis/centres.ts';
import type { BarTaken } from '../../core/ledger/entry.ts';
import { plain } from '../../core/quantity/show.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { bracketed, type ShownIn, shownIn } from '../shown-in.ts';
import type { Worked } from '../worked.ts';

/** Constants keep their published units. */
const n = (value: number): string => plain(value, 7);

/** Each axis and each pair of centres with its formula and the numbers put in. */
export function axisWorking(
  ask: AxisAsk,
  axes: readonly AxisFound[],
  centres: readonly CentresFound[],
  system: UnitSystem = 'metric',
): Worked[] {
  const { held } = ask;
  const shown = shownIn(system, 7);
  return [
    ...(held && ask.readings.length > 0 ? sagWorking(held, shown) : []),
    ...(held ? axes.flatMap((found, k) => axisLines(ask, found, k, shown)) : []),
    ...centres.flatMap((found, k) => centresLines(ask.centres[k]!, found, shown)),
  ];
}

/** A bar that a bench took in place of a sweep. */
export const barWorking = ({ held, reading }: BarTaken, system: UnitSystem): Worked[] =>
  axisWorking({ held, readings: [reading], bands: {}, centres: [] }, [axisOf(held, reading)], [], system);

function sagWorking(
  { bar, out_mm, near_mm, far_mm }: NonNullable<AxisAsk['held']>,
  { mm, um, long, small }: ShownIn,
): Worked[] {
  const at = (x_mm: number): Worked => ({
    what: `the bar hangs at ${mm(x_mm)} ${long}`,
    formula: 'q x² (6 L² − 4 L x + x²) / 24 EI',
    worked: `bar ${mm(bar.diameter_mm)} ${long}, bore ${mm(bar.bore_mm)} ${long}, ${n(bar.density_kg_m3)} kg/m³, ${n(bar.modulus_GPa)} GPa, L ${mm(out_mm)} ${long}: ${um(heldSag(bar, out_mm, x_mm))} ${small}`,
    source: 'beam tables',
  });
  return [at(near_mm), at(far_mm)];
}

function axisLines(
  { held, readings }: AxisAsk,
  found: AxisFound,
  k: number,
  { mm, um, urad, slope, long, small }: ShownIn,
): Worked[] {
  const { side, near, far } = readings[k]!;
  const { near_mm, far_mm } = held!;
  const mean = (one: { first_um: number; turned_um: number }): number => (one.first_um + one.turned_um) / 2;
  const put = (one: { first_um: number; turned_um: number }): string =>
    `(${um(one.first_um)} + ${bracketed(um(one.turned_um))})/2 = ${um(mean(one))}`;
  const sign = side === 'top' || side === 'front' ? '' : '−';
  const sag = found.sag_um === 0 ? '' : ` + ${um(found.sag_um)} of sag`;
  return [
    {
      what: `${side}: mean of the half turn, which drops the bar’s own error`,
      formula: '(first + turned)/2',
      worked: `near ${put(near)} ${small}; far ${put(far)} ${small}`,
    },
    {
      what: `${side}: the axis`,
      formula: '(mean far − mean near + sag) / distance',
      worked: `(${sign}(${um(mean(far))} − ${bracketed(um(mean(near)))})${sag}) ${small} / ${mm(far_mm - near_mm)} ${long} = ${urad(found.slope_urad)} ${slope}, one sd ${urad(found.sd_urad)} ${slope}`,
    },
  ];
}

function centresLines(
  read: AxisAsk['centres'][number],
  found: CentresFound,
  { mm, um, small }: ShownIn,
): Worked[] {
  const end = (found_um: number): string => `${um(found_um)} ${small}, one sd ${um(found.sd_um)} ${small}`;
  if (read.kind === 'two bars')
    return [
      {
        what: `two bars exchanged, ${read.plane}`,
        formula: '(first + exchanged)/2',
        worked: `(${um(read.first_um)} + ${bracketed(um(read.exchanged_um))})/2 = ${end(found.um)}`,
      },
    ];
  if (read.kind === 'swung indicator') {
    const { bracket } = read;
    const sag = bracket.um === 0 ? '' : ` − ${um(bracket.um)}/2`;
    return [
      {
        what: `indicator swung round the barrel, ${read.plane}`,
        formula: '(first − opposite)/2 − bracket sag/2',
        worked: `(${um(read.first_um)} − ${bracketed(um(read.opposite_um))})/2${sag} = ${end(found.um)}; the bracket’s sag is known to ${um(bracket.sd_um)} ${small}, one sd`,
        ...(bracket.um === 0 ? {} : { source: 'read on something true, or beam tables for the arm' }),
      },
    ];
  }
  const { between_mm, head_at_mm, tail_at_mm, head, tail } = read;
  return [
    {
      what: `bar between centres, ${read.plane}`,
      formula: '(mean tail + its sag − mean head − its sag) × between / (tail at − head at)',
      worked: `tail (${um(tail.first_um)} + ${bracketed(um(tail.turned_um))})/2, head (${um(head.first_um)} + ${bracketed(um(head.turned_um))})/2, × ${mm(between_mm)} / (${mm(tail_at_mm)} − ${mm(head_at_mm)}) = ${end(found.um)}`,
      source: 'beam tables for the sag',
    },
  ];
}
