import { plain } from '../../core/quantity/show.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { bracketed, type ShownIn, shownIn } from '../shown-in.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { LineAnswer } from './line.ts';

const n = (value: number): string => plain(value, 6);

type Show = (value: number) => string;
const inTurn = (values: readonly number[], show: Show): string => values.map(show).join(', ');

/** Every number of a line with its formula and what was put in. */
export function lineWorking(input: LineInput, answer: LineAnswer, system: UnitSystem = 'metric'): Worked[] {
  const shown = shownIn(system);
  return [
    ...readingsWorked(input, answer, shown),
    ...departuresWorked(answer, shown),
    ...widthsWorked(answer, shown),
  ];
}

function readingsWorked(input: LineInput, answer: LineAnswer, shown: ShownIn): Worked[] {
  const { mm, um, urad, long, small } = shown;
  const back = input.kind === 'angles' ? input.return_urad : input.return_um;
  const there = input.kind === 'angles' ? input.angles_urad : input.heights_um;
  const [show, unit] = input.kind === 'angles' ? [urad, shown.slope] : [um, small];
  const returned = back?.toReversed();
  return [
    ...(returned
      ? [
          {
            what: 'mean of the run there and the run back, place by place',
            formula: '(there + back)/2; a steady drift then bends nothing',
            worked: `${there.map((value, k) => `(${show(value)} + ${bracketed(show(returned[k]!))})/2 = ${show((value + returned[k]!) / 2)}`).join('; ')} ${unit}`,
          },
        ]
      : []),
    ...(input.kind === 'angles'
      ? [
          {
            what: 'heights',
            formula: 'h₀ = 0, hᵢ₊₁ = hᵢ + angle × step',
            worked: `step ${mm(input.step_mm)} ${long}; at ${inTurn(answer.stations_mm, mm)} ${long}: ${inTurn(answer.heights_um, um)} ${small}`,
          },
        ]
      : heightsRead(input, answer, shown)),
  ];
}

function heightsRead(
  input: Extract<LineInput, { kind: 'heights' }>,
  answer: LineAnswer,
  { mm, um, long, small }: ShownIn,
): Worked[] {
  const turned = input.reversed_um !== undefined;
  const formula = [
    turned ? '(first + turned over)/2' : input.return_um ? 'the mean' : 'as read',
    ...(input.plus === 'hollow' ? ['sign turned: plus was hollow'] : []),
    ...(answer.edge_bend_um ? ['plus the straightedge’s own bend'] : []),
  ].join(', ');
  return [
    {
      what: 'heights',
      formula,
      worked: `at ${inTurn(answer.stations_mm, mm)} ${long}: ${inTurn(answer.heights_um, um)} ${small}${answer.edge_bend_um ? `; bend ${inTurn(answer.edge_bend_um, um)} ${small}` : ''}`,
      ...(turned ? { source: 'reversal as Evans, Hocken and Estler 1996' } : {}),
    },
  ];
}

function departuresWorked(
  { stations_mm, heights_um, endpoint_um, least_squares_um }: LineAnswer,
  { mm, um, long, small }: ShownIn,
): Worked[] {
  const [first, last] = [heights_um[0]!, heights_um.at(-1)!];
  const length = stations_mm.at(-1)! - stations_mm[0]!;
  return [
    {
      what: 'from the line through the ends',
      formula: 'd = h − h₀ − (hₙ − h₀)(x − x₀)/L',
      worked: `h₀ ${um(first)}, hₙ ${um(last)} ${small}, L ${mm(length)} ${long}: ${inTurn(endpoint_um, um)} ${small}`,
    },
    {
      what: 'from the least-squares line',
      formula: 'd = h − h̄ − (x − x̄) Σ(x − x̄)(h − h̄)/Σ(x − x̄)²',
      worked: `${inTurn(least_squares_um, um)} ${small}`,
    },
  ];
}

const most = (values: readonly number[]): number => Math.max(...values);
const least = (values: readonly number[]): number => Math.min(...values);

function widthsWorked(answer: LineAnswer, { mm, um, asSmall, long, small }: ShownIn): Worked[] {
  const { endpoint_um, least_squares_um, straightness_um, sd, contacts, heights_um, decision } = answer;
  const doubt = (one: number | undefined): string =>
    one === undefined ? '' : `, one sd ${um(one)} ${small}`;
  const range = (
    what: string,
    values: readonly number[],
    width: number,
    one: number | undefined,
  ): Worked => ({
    what: `straightness, ${what}`,
    formula: 'greatest − least departure',
    worked: `${um(most(values))} − ${bracketed(um(least(values)))} = ${um(width)} ${small}${doubt(one)}`,
  });
  const held = (side: 'high' | 'low'): string =>
    contacts
      .filter((one) => one.side === side)
      .map(
        (one) =>
          `${n(one.share)} × ${bracketed(um(heights_um[one.index]!))} (at ${mm(one.station_mm)} ${long})`,
      )
      .join(' + ');
  const zone = straightness_um.minimum_zone;
  const zoneSd = sd?.straightness_um.minimum_zone;
  return [
    range('end-point', endpoint_um, straightness_um.endpoint, sd?.straightness_um.endpoint),
    range(
      'least squares',
      least_squares_um,
      straightness_um.least_squares,
      sd?.straightness_um.least_squares,
    ),
    {
      what: 'straightness, minimum zone',
      formula: 'Σ share × height of the points that hold it from above − of those from below',
      worked: `${held('high')} − (${held('low')}) = ${um(zone)} ${small}${doubt(zoneSd)}`,
      source: 'hull rule in Gy. Hermann, Acta Polytechnica Hungarica 4(4), 2007',
    },
    ...(decision && zoneSd !== undefined
      ? [
          {
            what: 'against its limit',
            formula: bandRule,
            worked: bandWorked(
              asSmall(zone),
              2 * asSmall(zoneSd),
              { high: asSmall(decision.limit_um) },
              small,
              decision.verdict,
            ),
            source: bandSource,
          },
        ]
      : []),
  ];
}
