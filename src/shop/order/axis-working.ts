import type { AxisAsk } from '../../contract/axis.ts';
import type { AxisFound } from '../../core/axis/bar-axis.ts';
import { heldSag } from '../../core/axis/bar-sag.ts';
import type { CentresFound } from '../../core/axis/centres.ts';
import { plain } from '../../core/quantity/show.ts';
import type { Worked } from '../worked.ts';

const n = (value: number): string => plain(value, 7);
const bracketed = (value: number): string => (value < 0 ? `(${n(value)})` : n(value));

/** Each axis and each pair of centres with its formula and the numbers put in. */
export function axisWorking(
  ask: AxisAsk,
  axes: readonly AxisFound[],
  centres: readonly CentresFound[],
): Worked[] {
  const { held } = ask;
  return [
    ...(held && ask.readings.length > 0 ? sagWorking(held) : []),
    ...(held ? axes.flatMap((found, k) => axisLines(ask, found, k)) : []),
    ...centres.flatMap((found, k) => centresLines(ask.centres[k]!, found)),
  ];
}

function sagWorking({ bar, out_mm, near_mm, far_mm }: NonNullable<AxisAsk['held']>): Worked[] {
  const at = (x_mm: number): Worked => ({
    what: `the bar hangs at ${n(x_mm)} mm`,
    formula: 'q x² (6 L² − 4 L x + x²) / 24 EI',
    worked: `bar ${n(bar.diameter_mm)} mm, bore ${n(bar.bore_mm)} mm, ${n(bar.density_kg_m3)} kg/m³, ${n(bar.modulus_GPa)} GPa, L ${n(out_mm)} mm: ${n(heldSag(bar, out_mm, x_mm))} µm`,
    source: 'beam tables',
  });
  return [at(near_mm), at(far_mm)];
}

function axisLines({ held, readings }: AxisAsk, found: AxisFound, k: number): Worked[] {
  const { side, near, far } = readings[k]!;
  const { near_mm, far_mm } = held!;
  const mean = (one: { first_um: number; turned_um: number }): number => (one.first_um + one.turned_um) / 2;
  const put = (one: { first_um: number; turned_um: number }): string =>
    `(${n(one.first_um)} + ${bracketed(one.turned_um)})/2 = ${n(mean(one))}`;
  const sign = side === 'top' || side === 'front' ? '' : '−';
  const sag = found.sag_um === 0 ? '' : ` + ${n(found.sag_um)} of sag`;
  return [
    {
      what: `${side}: mean of the half turn, which drops the bar’s own error`,
      formula: '(first + turned)/2',
      worked: `near ${put(near)} µm; far ${put(far)} µm`,
    },
    {
      what: `${side}: the axis`,
      formula: '(mean far − mean near + sag) / distance',
      worked: `(${sign}(${n(mean(far))} − ${bracketed(mean(near))})${sag}) µm / ${n(far_mm - near_mm)} mm = ${n(found.slope_urad)} µrad, one sd ${n(found.sd_urad)} µrad`,
    },
  ];
}

function centresLines(read: AxisAsk['centres'][number], found: CentresFound): Worked[] {
  const end = (found_um: number): string => `${n(found_um)} µm, one sd ${n(found.sd_um)} µm`;
  if (read.kind === 'two bars')
    return [
      {
        what: `two bars exchanged, ${read.plane}`,
        formula: '(first + exchanged)/2',
        worked: `(${n(read.first_um)} + ${bracketed(read.exchanged_um)})/2 = ${end(found.um)}`,
      },
    ];
  if (read.kind === 'swung indicator') {
    const { bracket } = read;
    const sag = bracket.um === 0 ? '' : ` − ${n(bracket.um)}/2`;
    return [
      {
        what: `indicator swung round the barrel, ${read.plane}`,
        formula: '(first − opposite)/2 − bracket sag/2',
        worked: `(${n(read.first_um)} − ${bracketed(read.opposite_um)})/2${sag} = ${end(found.um)}; the bracket’s sag is known to ${n(bracket.sd_um)} µm, one sd`,
        ...(bracket.um === 0 ? {} : { source: 'read on something true, or beam tables for the arm' }),
      },
    ];
  }
  const { between_mm, head_at_mm, tail_at_mm, head, tail } = read;
  return [
    {
      what: `bar between centres, ${read.plane}`,
      formula: '(mean tail + its sag − mean head − its sag) × between / (tail at − head at)',
      worked: `tail (${n(tail.first_um)} + ${bracketed(tail.turned_um)})/2, head (${n(head.first_um)} + ${bracketed(head.turned_um)})/2, × ${n(between_mm)} / (${n(tail_at_mm)} − ${n(head_at_mm)}) = ${end(found.um)}`,
      source: 'beam tables for the sag',
    },
  ];
}
