import { say } from '../../../core/quantity/say.ts';
import { partsPlot } from '../../../draw/parts-plot.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';
import type { Units } from '../keep/settings.ts';

/** A thou to an inch is as a µm to a mm, so one factor serves both and heights stay as many times too tall. */
const inch = 25.4;
export const unitsOf = (system: Units) =>
  system === 'metric'
    ? { factor: 1, small: 'µm', large: 'mm' }
    : { factor: 1 / inch, small: 'thou', large: 'in' };

const mark = (value: number): string => {
  const said = say(value, '');
  return said.sign + said.number;
};

/** A profile of a part: a line with its doubt as a ribbon, what is forecast dashed. */
export function ProfilePlot(props: {
  readonly title: string;
  readonly desc: string;
  readonly system: Units;
  readonly places_mm: readonly number[];
  readonly value_um: readonly number[];
  readonly sd_um: readonly number[];
  readonly dashed_um?: readonly number[];
  readonly x: { readonly name: string; readonly left: string; readonly right: string };
  /** What the heights are; the unit is put behind. */
  readonly y: string;
}) {
  const { title, desc, system, places_mm, value_um, sd_um, dashed_um, x, y } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const { factor, small } = unitsOf(system);
  const scaled = (values: readonly number[], times = 1) => values.map((one) => one * factor * times + 0);
  return (
    <div ref={ref}>
      <Figure
        shape={partsPlot({
          title,
          desc,
          width: Math.min(width, 640),
          places_mm: scaled(places_mm),
          value_um: scaled(value_um),
          doubt_um: scaled(sd_um, 2),
          ...(dashed_um ? { fit_um: scaled(dashed_um) } : {}),
          x,
          y: { name: `${y}, ${small}`, text: mark },
        })}
      />
    </div>
  );
}
