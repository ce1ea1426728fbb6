import { say } from '../../core/quantity/say.ts';
import { plain } from '../../core/quantity/show.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { lineStrip } from '../../draw/line-strip.ts';
import type { Shape } from '../../draw/shape.ts';
import type { LineAnswer } from '../../shop/survey/line.ts';
import { lineSentence } from '../../shop/survey/line-sentence.ts';

/** The straightness strip of an answer, in µm over mm. */
export function lineFigure(answer: LineAnswer, input: LineInput): Shape {
  const { endpoint_um, minimum_zone_um, straightness_um, sd } = answer;
  const last = endpoint_um.length - 1;
  const half = straightness_um.minimum_zone / 2;
  /** The zone's lines beside the end-point line: the same heights against two lines differ by a line. */
  const zoneLine = (side: 1 | -1): [number, number] => [
    endpoint_um[0]! - minimum_zone_um[0]! + side * half,
    endpoint_um[last]! - minimum_zone_um[last]! + side * half,
  ];
  return lineStrip({
    title: answer.name ?? 'Straightness',
    desc: lineSentence(answer),
    width: 760,
    stations: answer.stations_mm,
    values: endpoint_um,
    ...(sd ? { doubts: sd.endpoint_um.map((one) => 2 * one) } : {}),
    zone: { high: zoneLine(1), low: zoneLine(-1) },
    contacts: answer.contacts,
    ...(input.unworn_mm ? { unworn: input.unworn_mm } : {}),
    x: { name: 'mm along the way', text: (mm) => plain(mm, 6) },
    y: {
      name: `from the line through the ends, µm${sd ? ', ± two sd' : ''}; dashed: minimum zone`,
      text: (um) => `${say(um, '').sign}${plain(Math.abs(um), 4)}`,
    },
    x_unit_mm: 1,
    y_unit_mm: 0.001,
  });
}
