import type { HeightFound } from '../../core/heights/heights.ts';
import type { LinerFound } from '../../core/heights/liner.ts';
import { plain } from '../../core/quantity/show.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
import type { HeightsAnswer } from './heights.ts';

const n = (value: number): string => plain(value, 6);
const term = (value: number): string => (value < 0 ? `(${n(value)})` : n(value));
const added = (values: readonly number[]): string =>
  values.length === 0 ? '0' : values.map(term).join(' + ');
const squares = (values: readonly number[]): string =>
  `√(${values.map((value) => `${n(value)}²`).join(' + ')})`;

/** Every height, liner and limit with its formula and what was put in. mm of the drawing, µm of departures from it. */
export const heightsWorking = (answer: HeightsAnswer): Worked[] => [
  ...answer.heights
    .filter((one) => one.verdict !== 'not measured')
    .flatMap((one) => heightWorked(one, one.verdict)),
  ...answer.liners.flatMap(linerWorked),
  ...answer.limits.flatMap((limit) =>
    limit.sink.map(
      (room): Worked => ({
        what: `${limit.joint} may sink, for ${room.name}`,
        formula: 'room to the limit − 2 sd, never below 0',
        worked: `${n(room.room_um)} − 2 × ${n(room.sd_um)} = ${n(room.room_um - 2 * room.sd_um)}: ${n(room.most_um)} µm`,
      }),
    ),
  ),
];

function heightWorked(found: HeightFound, verdict: string): Worked[] {
  const { name, parts, drawn_mm, changes, closure, found_um, um, sd_um, low_um, high_um } = found;
  const before = changes.filter((one) => one.when === 'found');
  const planned = changes.filter((one) => one.when === 'planned');
  const reckoned = `${before.map((one) => `${one.change} ${term(one.um)}`).join(' + ') || 'nothing found'}`;
  // The doubt of what it was before: that of the measuring, or of all that was found.
  const earlier = Math.sqrt(Math.max(0, sd_um ** 2 - planned.reduce((all, one) => all + one.sd_um ** 2, 0)));
  return [
    {
      what: `${name}: as drawn`,
      formula: 'sum of the drawing’s lengths, plus up',
      worked: `${added(parts.map((part) => part.mm))} = ${n(drawn_mm)} mm`,
    },
    {
      what: `${name}: as found`,
      formula: closure ? 'as measured; what was found is held against it' : 'sum of what was found',
      worked: closure
        ? `${n(found_um)} µm measured; ${reckoned} = ${n(found_um - closure.um)} µm; ${n(closure.um)} µm between them, one sd ${n(closure.sd_um)} µm`
        : `${reckoned} = ${n(found_um)} µm`,
    },
    {
      what: `${name}: comes to`,
      formula: 'as found + all that is planned; sds by squares',
      worked: `${added([found_um, ...planned.map((one) => one.um)])} = ${n(um)} µm (${planned.map((one) => one.change).join(', ') || 'nothing planned'}); one sd ${squares([earlier, ...planned.map((one) => one.sd_um)])} = ${n(sd_um)} µm`,
    },
    {
      what: `${name}: against its band`,
      formula: bandRule,
      worked: bandWorked(um, 2 * sd_um, { low: low_um, high: high_um }, 'µm', verdict),
      source: bandSource,
    },
  ];
}

function linerWorked(liner: LinerFound): Worked[] {
  const { sheet_mm, bond_mm, machining_mm, scraping_mm, left_mm, least_mm, stock_um } = liner;
  return [
    ...liner.pads.map(
      (pad): Worked => ({
        what: `mill off first under ${pad.pad} of ${liner.joint}`,
        formula: 'sheet + bond − machining − scraping − how far the face must come up',
        worked: `${n(sheet_mm)} + ${n(bond_mm)} − ${n(machining_mm)} − ${n(scraping_mm)} − ${term(pad.raise_mm)} = ${n(pad.mill_mm)} mm`,
        source: 'trade arithmetic',
      }),
    ),
    {
      what: `liner left on ${liner.joint}`,
      formula: 'sheet − machining − scraping; at least the least must stay',
      worked: `${n(sheet_mm)} − ${n(machining_mm)} − ${n(scraping_mm)} = ${n(left_mm)} mm; least ${n(least_mm)} mm`,
    },
    {
      what: `scraping may take off the liner of ${liner.joint}`,
      formula: 'sheet − machining − least',
      worked: `${n(sheet_mm)} − ${n(machining_mm)} − ${n(least_mm)} = ${n(stock_um / 1000)} mm: ${n(stock_um)} µm`,
    },
  ];
}
