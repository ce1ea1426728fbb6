import { sayLength } from '../../core/quantity/length.ts';
import { tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { plateMap } from '../../draw/plate-map.ts';
import type { Shape } from '../../draw/shape.ts';
import type { PlateAnswer } from '../../shop/survey/plate.ts';
import { plateSentence } from '../../shop/survey/plate-sentence.ts';

/** The surface as a map of what must come off to be flat. */
export function plateFigure(answer: PlateAnswer, system: UnitSystem = 'metric'): Shape {
  const { size } = tableColumns(system);
  const { points, depth_um, stepped } = answer;
  const span = (values: readonly number[]) => {
    const low = values.reduce((least, value) => Math.min(least, value), Infinity);
    const high = values.reduce((most, value) => Math.max(most, value), -Infinity);
    return sayLength(high - low, system).text;
  };
  return plateMap({
    title: answer.name ?? 'Flatness',
    desc: plateSentence(answer, system),
    width: 760,
    points: points.map(({ x_mm, y_mm }, i) => ({
      x: x_mm,
      y: y_mm,
      depth: stepped ? stepped.passes[i]! : depth_um[i]!,
      text: stepped ? String(stepped.passes[i]) : size.bare(depth_um[i]!),
    })),
    contacts: answer.contacts,
    key: stepped
      ? `passes of ${told(system).size(stepped.pass_um, { signed: false })} to be flat`
      : `to take off to be flat, ${size.unit}`,
    long: span(points.map((point) => point.x_mm)),
    broad: span(points.map((point) => point.y_mm)),
  });
}
