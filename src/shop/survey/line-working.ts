import { plain } from '../../core/quantity/show.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { LineAnswer } from './line.ts';

const n = (value: number): string => plain(value, 6);
const inTurn = (values: readonly number[]): string => values.map(n).join(', ');
const term = (value: number): string => (value < 0 ? `(${n(value)})` : n(value));

/** Every number of a line with its formula and what was put in. µm, µrad, mm. */
export function lineWorking(input: LineInput, answer: LineAnswer): Worked[] {
  return [...readingsWorked(input, answer), ...departuresWorked(answer), ...widthsWorked(answer)];
}

function readingsWorked(input: LineInput, answer: LineAnswer): Worked[] {
  const back = input.kind === 'angles' ? input.return_urad : input.return_um;
  const there = input.kind === 'angles' ? input.angles_urad : input.heights_um;
  const unit = input.kind === 'angles' ? 'µrad' : 'µm';
  const returned = back?.toReversed();
  return [
    ...(returned
      ? [
          {
            what: 'mean of the run there and the run back, place by place',
            formula: '(there + back)/2; a steady drift then bends nothing',
            worked: `${there.map((value, k) => `(${n(value)} + ${term(returned[k]!)})/2 = ${n((value + returned[k]!) / 2)}`).join('; ')} ${unit}`,
          },
        ]
      : []),
    ...(input.kind === 'angles'
      ? [
          {
            what: 'heights',
            formula: 'h₀ = 0, hᵢ₊₁ = hᵢ + angle × step',
            worked: `step ${n(input.step_mm)} mm; at ${inTurn(answer.stations_mm)} mm: ${inTurn(answer.heights_um)} µm`,
          },
        ]
      : heightsRead(input, answer)),
  ];
}

function heightsRead(input: Extract<LineInput, { kind: 'heights' }>, answer: LineAnswer): Worked[] {
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
      worked: `at ${inTurn(answer.stations_mm)} mm: ${inTurn(answer.heights_um)} µm${answer.edge_bend_um ? `; bend ${inTurn(answer.edge_bend_um)} µm` : ''}`,
      ...(turned ? { source: 'reversal as Evans, Hocken and Estler 1996' } : {}),
    },
  ];
}

function departuresWorked({ stations_mm, heights_um, endpoint_um, least_squares_um }: LineAnswer): Worked[] {
  const [first, last] = [heights_um[0]!, heights_um.at(-1)!];
  const long = stations_mm.at(-1)! - stations_mm[0]!;
  return [
    {
      what: 'from the line through the ends',
      formula: 'd = h − h₀ − (hₙ − h₀)(x − x₀)/L',
      worked: `h₀ ${n(first)}, hₙ ${n(last)} µm, L ${n(long)} mm: ${inTurn(endpoint_um)} µm`,
    },
    {
      what: 'from the least-squares line',
      formula: 'd = h − h̄ − (x − x̄) Σ(x − x̄)(h − h̄)/Σ(x − x̄)²',
      worked: `${inTurn(least_squares_um)} µm`,
    },
  ];
}

const most = (values: readonly number[]): number => Math.max(...values);
const least = (values: readonly number[]): number => Math.min(...values);

function widthsWorked(answer: LineAnswer): Worked[] {
  const { endpoint_um, least_squares_um, straightness_um, sd, contacts, heights_um, decision } = answer;
  const doubt = (one: number | undefined): string => (one === undefined ? '' : `, one sd ${n(one)} µm`);
  const range = (
    what: string,
    values: readonly number[],
    width: number,
    one: number | undefined,
  ): Worked => ({
    what: `straightness, ${what}`,
    formula: 'greatest − least departure',
    worked: `${n(most(values))} − ${term(least(values))} = ${n(width)} µm${doubt(one)}`,
  });
  const held = (side: 'high' | 'low'): string =>
    contacts
      .filter((one) => one.side === side)
      .map((one) => `${n(one.share)} × ${term(heights_um[one.index]!)} (at ${n(one.station_mm)} mm)`)
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
      worked: `${held('high')} − (${held('low')}) = ${n(zone)} µm${doubt(zoneSd)}`,
      source: 'hull rule in Gy. Hermann, Acta Polytechnica Hungarica 4(4), 2007',
    },
    ...(decision && zoneSd !== undefined
      ? [
          {
            what: 'against its limit',
            formula: bandRule,
            worked: bandWorked(zone, 2 * zoneSd, { high: decision.limit_um }, 'µm', decision.verdict),
            source: bandSource,
          },
        ]
      : []),
  ];
}
