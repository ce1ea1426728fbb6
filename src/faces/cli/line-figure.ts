import { plain, signed } from '../../core/quantity/show.ts';
import { size_um, type UnitSystem, unitSign } from '../../core/quantity/unit.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { lineStrip } from '../../draw/line-strip.ts';
import type { Shape } from '../../draw/shape.ts';
import type { LineAnswer } from '../../shop/survey/line.ts';
import { lineSentence } from '../../shop/survey/line-sentence.ts';

/** The straightness strip of an answer, in µm over mm or thou over inches. */
export function lineFigure(answer: LineAnswer, input: LineInput, system: UnitSystem = 'metric'): Shape {
  const [long, small] = system === 'metric' ? (['mm', 'um'] as const) : (['in', 'thou'] as const);
  const { endpoint_um, minimum_zone_um, straightness_um, sd } = answer;
  const last = endpoint_um.length - 1;
  const [x_unit_mm, um] = [size_um[long] / size_um.mm, size_um[small]];
  const half = straightness_um.minimum_zone / 2;
  /** The zone's lines beside the end-point line: the same heights against two lines differ by a line. */
  const zoneLine = (side: 1 | -1): [number, number] => [
    (endpoint_um[0]! - minimum_zone_um[0]! + side * half) / um,
    (endpoint_um[last]! - minimum_zone_um[last]! + side * half) / um,
  ];
  return lineStrip({
    title: answer.name ?? 'Straightness',
    desc: lineSentence(answer, system),
    width: 760,
    stations: answer.stations_mm.map((at) => at / x_unit_mm),
    values: endpoint_um.map((off) => off / um),
    ...(sd ? { doubts: sd.endpoint_um.map((one) => (2 * one) / um) } : {}),
    zone: { high: zoneLine(1), low: zoneLine(-1) },
    contacts: answer.contacts,
    ...(input.unworn_mm
      ? { unworn: input.unworn_mm.map(([from, to]) => [from / x_unit_mm, to / x_unit_mm] as const) }
      : {}),
    x: { name: `${unitSign[long]} along the way`, text: (at) => plain(at, 6) },
    y: {
      name: `from the line through the ends, ${unitSign[small]}${sd ? ', ± two sd' : ''}; dashed: minimum zone`,
      text: (off) => signed(off, 4),
    },
    x_unit_mm,
    y_unit_mm: um / size_um.mm,
  });
}
