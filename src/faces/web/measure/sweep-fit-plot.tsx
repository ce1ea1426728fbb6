import { sayDeviation } from '../../../core/quantity/say.ts';
import { type DeviationUnit, size_um, systemOf, unitSign } from '../../../core/quantity/unit.ts';
import { sweepPlot } from '../../../draw/sweep-plot.ts';
import type { SweepLook } from '../../../shop/measure/look-at-sweep.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';

/** The readings of a sweep with the fitted line and its doubt; points left out are named. */
export function SweepFitPlot(props: {
  readonly distances_mm: readonly number[];
  readonly places: readonly string[];
  /** One a stop, µm, with the signs the sum has. */
  readonly values_um: readonly (number | undefined)[];
  readonly look: SweepLook;
  readonly unit: DeviationUnit;
}) {
  const { distances_mm, places, values_um, look, unit } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const system = systemOf(unit);
  const read = values_um.flatMap((value, i) => (value === undefined ? [] : [{ value, i }]));
  const out = new Set(look.off.map((off) => off.point));
  const shape = sweepPlot({
    title: 'Readings along the sweep, with the line that fits them',
    width,
    points: read.map(({ value, i }, k) => ({
      at: distances_mm[i]!,
      value,
      ...(out.has(k) ? { left_out: `${places[i]} left out` } : {}),
    })),
    fit: look.line.map(({ at_mm, value_um, doubt_um }) => ({ at: at_mm, value: value_um, doubt: doubt_um })),
    x: { name: '', text: (at) => places[distances_mm.indexOf(at)] ?? '' },
    y: {
      name: `${unitSign[unit]}, plus pushes the plunger in`,
      text: (value) =>
        `${sayDeviation(value, system, { unit }).sign}${sayDeviation(value, system, { unit }).number}`,
    },
    x_unit_mm: system === 'metric' ? 1 : 25.4,
    y_unit_mm: size_um[unit],
  });
  return (
    <div ref={ref}>
      <Figure shape={shape} />
    </div>
  );
}
