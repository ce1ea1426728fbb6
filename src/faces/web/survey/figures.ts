import type { PlaceWords } from '../../../core/ledger/setup.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { say, sayDeviation, spokenUnit } from '../../../core/quantity/say.ts';
import { plain } from '../../../core/quantity/show.ts';
import { saySlope, slopeSign, slopeSize, spokenSlope } from '../../../core/quantity/slope.ts';
import { size_um, type UnitSystem, unitSign } from '../../../core/quantity/unit.ts';
import { lineStrip } from '../../../draw/line-strip.ts';
import { plateMap } from '../../../draw/plate-map.ts';
import type { Shape } from '../../../draw/shape.ts';
import { alongSentence } from '../../../shop/survey/along.ts';
import { lineSentence } from '../../../shop/survey/line-sentence.ts';
import { plateSentence } from '../../../shop/survey/plate-sentence.ts';
import type { Answered } from './answered.ts';

/** A number with its sign, for an axis that has its unit at its head. */
export const axisText = (value: number): string => `${say(value, '').sign}${plain(Math.abs(value), 4)}`;

export const lengthUnit = (system: UnitSystem): { readonly unit: 'mm' | 'in'; readonly mm: number } =>
  system === 'metric' ? { unit: 'mm', mm: 1 } : { unit: 'in', mm: 25.4 };

/** The figure of a survey: strip or map, in the units of the house. */
export function surveyFigure(found: Answered, system: UnitSystem, width: number, places: PlaceWords): Shape {
  const length = lengthUnit(system);
  const x = { name: `${length.unit} from the ${places.minus_end}`, text: (at: number) => plain(at, 6) };
  if (found.sort === 'plate') return plateFigure(found, system, width);
  if (found.sort === 'along') {
    const { answer } = found;
    const isTwist = answer.kind === 'twist';
    const unit = spokenSlope(system);
    const size = isTwist ? slopeSize(unit) : size_um[spokenUnit(1e3, system)];
    const change = answer.change_urad ?? answer.change_um ?? [];
    return lineStrip({
      title: 'Change along the way',
      desc: alongSentence(answer, system),
      width,
      stations: answer.stations_mm.map((at) => at / length.mm),
      values: change.map((one) => one / size),
      ...(answer.sd
        ? { doubts: change.map((_, i) => (i === 0 ? 0 : (2 * Math.SQRT2 * answer.sd!.each) / size)) }
        : {}),
      x,
      y: {
        name: `from the first, ${isTwist ? slopeSign(unit) : unitSign[spokenUnit(1e3, system)]}, plus: ${isTwist ? 'back high' : found.input.kind === 'parallel' && found.input.other_um ? 'above the other' : 'nearer'}`,
        text: axisText,
      },
      x_unit_mm: length.mm,
      // A tilt over its span is a height over that span.
      y_unit_mm: isTwist ? (size / 1e6) * 300 : size / 1e3,
    });
  }
  const { answer, input, from_mm } = found;
  const { endpoint_um, minimum_zone_um, straightness_um, sd } = answer;
  const unit = spokenUnit(Math.max(straightness_um.minimum_zone, 1e-9), system);
  const um = size_um[unit];
  const last = endpoint_um.length - 1;
  const edge = (side: 1 | -1): [number, number] =>
    [0, last].map(
      (i) => (endpoint_um[i]! - minimum_zone_um[i]! + (side * straightness_um.minimum_zone) / 2) / um,
    ) as [number, number];
  return lineStrip({
    title: answer.name ?? 'Straightness',
    desc: lineSentence(answer, system),
    width,
    stations: answer.stations_mm.map((at) => at / length.mm),
    values: endpoint_um.map((one) => one / um),
    ...(sd ? { doubts: sd.endpoint_um.map((one) => (2 * one) / um) } : {}),
    zone: { high: edge(1), low: edge(-1) },
    contacts: answer.contacts,
    ...(input.unworn_mm
      ? {
          unworn: input.unworn_mm.map(
            ([a, b]) => [(a + from_mm) / length.mm, (b + from_mm) / length.mm] as const,
          ),
        }
      : {}),
    ...(answer.wear
      ? {
          wear: {
            // Height and what is worn off it make the line through what was not run on.
            line: [0, last].map((i) => (endpoint_um[i]! + answer.wear!.wear_um[i]!) / um) as [number, number],
            deepest: answer.stations_mm.indexOf(answer.wear.deepest.station_mm + from_mm),
            text: `worn ${
              sayDeviation(answer.wear.deepest.um, system, {
                signed: false,
                ...(answer.wear.deepest.sd_um === undefined ? {} : { sd: answer.wear.deepest.sd_um }),
              }).text
            }`,
          },
        }
      : {}),
    x,
    y: {
      name: `${unitSign[unit]} from the ends, + ${answer.direction === 'vertical' ? 'high' : 'to the back'}`,
      text: axisText,
    },
    x_unit_mm: length.mm,
    y_unit_mm: um / 1e3,
  });
}

function plateFigure(found: Answered & { sort: 'plate' }, system: UnitSystem, width: number): Shape {
  const { points, depth_um, stepped, contacts } = found.answer;
  const unit = spokenUnit(Math.max(...depth_um, 1e-9), system);
  const span = (values: readonly number[]) =>
    sayLength(Math.max(...values) - Math.min(...values), system).text;
  return plateMap({
    title: found.answer.name ?? 'Flatness',
    desc: plateSentence(found.answer, system),
    width,
    points: points.map(({ x_mm, y_mm }, i) => ({
      x: x_mm,
      y: y_mm,
      depth: stepped ? stepped.passes[i]! : depth_um[i]!,
      text: stepped ? String(stepped.passes[i]) : (depth_um[i]! / size_um[unit]).toFixed(1),
    })),
    contacts,
    key: stepped
      ? `passes of ${sayDeviation(stepped.pass_um, system, { signed: false }).text} to be flat`
      : `to take off to be flat, ${unitSign[unit]}`,
    long: span(points.map((point) => point.x_mm)),
    broad: span(points.map((point) => point.y_mm)),
  });
}

/** The number that leads a survey: width with its doubt. */
export function leading(found: Answered, system: UnitSystem) {
  if (found.sort === 'plate') {
    const { flatness_um, sd } = found.answer;
    return sayDeviation(flatness_um.minimum_zone, system, {
      signed: false,
      ...(sd ? { sd: sd.minimum_zone } : {}),
    });
  }
  if (found.sort === 'line') {
    const { straightness_um, sd } = found.answer;
    return sayDeviation(straightness_um.minimum_zone, system, {
      signed: false,
      ...(sd ? { sd: sd.straightness_um.minimum_zone } : {}),
    });
  }
  const { answer } = found;
  const sd = answer.sd ? { sd: answer.sd.range } : {};
  return answer.twist_urad
    ? saySlope(answer.twist_urad.range, system, { signed: false, ...sd })
    : sayDeviation(answer.parallelism_um!.range, system, { signed: false, ...sd });
}

export function sentenceOf(found: Answered, system: UnitSystem): string {
  if (found.sort === 'plate') return plateSentence(found.answer, system);
  return found.sort === 'along' ? alongSentence(found.answer, system) : lineSentence(found.answer, system);
}
