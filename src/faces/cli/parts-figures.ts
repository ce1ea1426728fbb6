import { say } from '../../core/quantity/say.ts';
import { told } from '../../core/quantity/told.ts';
import { size_um, type UnitSystem, unitSign } from '../../core/quantity/unit.ts';
import { partsFace } from '../../draw/parts-face.ts';
import { partsPlot } from '../../draw/parts-plot.ts';
import { partsSheet } from '../../draw/parts-sheet.ts';
import type { Shape } from '../../draw/shape.ts';
import type { PartsAnswer } from '../../shop/parts.ts';

const width = 680;
/** Sign and figures of a mark on an axis. */
const mark = (value: number): string => {
  const said = say(value, '');
  return said.sign + said.number;
};

/** Every part as a figure, on one sheet; undefined where there is only wear, which has no picture. */
export function partsFigures(answer: PartsAnswer, system: UnitSystem = 'metric'): Shape | undefined {
  // A thou to an inch is as a µm to a mm: one factor serves places and heights.
  const shown = (value: number): number => (system === 'metric' ? value : value / size_um.thou);
  const small = unitSign[system === 'metric' ? 'um' : 'thou'];
  const { place } = told(system);
  const figures = [
    ...answer.turned.map((part) =>
      partsPlot({
        title: part.name,
        desc: part.text,
        words: part.text,
        width,
        places_mm: part.places_mm.map(shown),
        value_um: part.diameter_um.map(shown),
        doubt_um: part.diameter_sd_um.map((sd) => shown(2 * sd)),
        fit_um: part.fit_um.map(shown),
        x: {
          name: 'saddle along the bed',
          left: `${place(part.from_mm)}, headstock end`,
          right: place(part.to_mm),
        },
        y: { name: `${part.name}: diameter against the headstock end, ${small}`, text: mark },
      }),
    ),
    ...answer.faced.map((part) =>
      partsPlot({
        title: part.name,
        desc: part.text,
        words: part.text,
        width,
        places_mm: part.radius_mm.map(shown),
        // Drawn as it lies: a hollow goes down.
        value_um: part.depth_um.map((depth) => (depth === 0 ? 0 : shown(-depth))),
        doubt_um: part.depth_sd_um.map((sd) => shown(2 * sd)),
        x: {
          name: 'radius',
          left: `rim, ${place(part.rim_mm)}`,
          right: part.inner_mm > 0 ? `root, ${place(part.inner_mm)}` : 'centre',
        },
        y: { name: `${part.name}: face against the rim, ${small}`, text: mark },
      }),
    ),
    ...answer.blocks.flatMap((part) =>
      part.faces.map((face, k) =>
        partsFace({
          title: `${part.name}, face ${face.face}`,
          desc: part.text,
          words: k === 0 ? part.text : `${part.name}, face ${face.face}`,
          width,
          places_mm: face.places_mm,
          out_um: face.out_um,
          ends: [`+${face.axes[0]}`, `+${face.axes[1]}`],
        }),
      ),
    ),
  ];
  return figures.length ? partsSheet('What parts come off', figures) : undefined;
}
