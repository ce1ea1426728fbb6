import type { DeviationUnit } from '../../../core/quantity/unit.ts';
import { sweepPlot } from '../../../draw/sweep-plot.ts';
import type { SweepLook } from '../../../shop/measure/look-at-sweep.ts';
import { axisFigure, shownSweep } from '../../../shop/measure/shown-sweep.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';

/** The readings of a sweep with the fitted line and its doubt; points left out are named. */
export function SweepFitPlot(props: {
  readonly distances_mm: readonly number[];
  /** One a stop, µm, with the signs the sum has. */
  readonly values_um: readonly (number | undefined)[];
  readonly look: SweepLook;
  readonly unit: DeviationUnit;
}) {
  const { distances_mm, values_um, look, unit } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const { x_name, y_name, ...shown } = shownSweep(distances_mm, values_um, look, unit);
  return (
    <div ref={ref}>
      <Figure
        shape={sweepPlot({
          title: 'Readings along the sweep, with the line that fits them',
          width,
          ...shown,
          x: { name: x_name, text: (at) => axisFigure(at).replace('+', '') },
          y: { name: y_name, text: axisFigure },
        })}
      />
    </div>
  );
}
