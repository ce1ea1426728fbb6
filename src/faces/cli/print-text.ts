import type { Agreement } from '../../core/print/agreement.ts';
import { isReadable } from '../../core/print/readable-square.ts';
import type { Cell } from '../../core/print/reading.ts';
import { tableColumns } from '../../core/quantity/table-column.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { counted } from '../../shop/phrase.ts';
import type { PhotoReading } from '../../shop/print/photo-reading.ts';
import { lengthWords, spotsPerSquare, squareWords } from '../../shop/print/reading-words.ts';
import { trustWords } from '../../shop/print/trust-words.ts';
import { table } from './table.ts';

const inch_mm = 25.4;

const one = (value: number): string => value.toFixed(1);
/** Always with its sign, a real minus. */
const signed = (value: number): string => `${value < 0 ? '\u2212' : '+'}${Math.abs(value).toFixed(1)}`;

/** Squares as they lie: columns along the length, rows across; cut ones in brackets, unreadable ones a dash. */
function grid(
  cells: readonly Cell[],
  cell_mm: number,
  system: UnitSystem,
  said: (cell: Cell) => string,
): string {
  const { length } = tableColumns(system);
  const cols = 1 + Math.max(...cells.map((cell) => cell.col));
  const rows = 1 + Math.max(...cells.map((cell) => cell.row));
  const at = (k: number) => length.figures(Math.round(k * cell_mm * 10) / 10);
  const body = Array.from({ length: rows }, (_, row) => [
    at(row),
    ...Array.from({ length: cols }, (_, col) => {
      const cell = cells.find((each) => each.col === col && each.row === row);
      if (!cell) return '';
      if (!isReadable(cell)) return '\u2013';
      return cell.partial ? `(${said(cell)})` : said(cell);
    }),
  ]);
  return table([length.unit, ...Array.from({ length: cols }, (_, col) => at(col))], body);
}

function evennessText({ evenness: even }: PhotoReading, system: UnitSystem): string[] {
  const parts = [
    even.dispersion === undefined
      ? 'too few whole squares to judge the spread'
      : `spread of the counts ${even.dispersion.toFixed(2)} (1 is chance, less is regular, more is clumped)`,
    ...(even.bearing_cv === undefined
      ? []
      : [`bearing varies by ${(100 * even.bearing_cv).toFixed(0)} % from square to square`]),
    counted(even.empty_squares, 'empty square'),
    `longest bare run ${lengthWords(even.longest_bare_mm, system)}`,
  ];
  return [
    `evenness  ${parts.join('; ')}`,
    `trend     ${signed(even.along_pct)} points from x = 0 to the far end, ${signed(even.across_pct)} from y = 0 to the far edge`,
  ];
}

const cornersText = ({ corners_found: found }: PhotoReading): string => {
  if (!found) return 'corners as given';
  const by = found.how === 'card' ? 'with the card' : 'by the surface’s outline';
  return `corners found ${by}, ± ${found.doubt_px.toFixed(1)} px`;
};

function zonesText({ zone_shares: zones }: PhotoReading): string[] {
  if (!zones) return [];
  const shares = zones.map((share) =>
    share === undefined ? 'not readable' : `${(100 * share).toFixed(0)} %`,
  );
  return [`zones     ${shares.join(', ')} (zone 1 at x = 0)`];
}

/** A count a 25 mm square as one an inch square. */
const perInch = ({ value, sd }: { value: number; sd: number }) => ({
  value: spotsPerSquare(value, 'inch'),
  sd: spotsPerSquare(sd, 'inch'),
});

function spotsText({ density_per_25mm, doubt }: PhotoReading, system: UnitSystem): string {
  const inInch = perInch({ value: density_per_25mm, sd: doubt.density_per_25mm });
  return system === 'metric'
    ? `${one(density_per_25mm)} ± ${one(2 * doubt.density_per_25mm)} in a 25 mm square, ${one(inInch.value)} in an inch square`
    : `${one(inInch.value)} ± ${one(2 * inInch.sd)} in an inch square`;
}

/** A print as a person reads it: figures first, then square by square, then how far to trust it. */
export function printText(reading: PhotoReading, system: UnitSystem = 'metric'): string {
  const { length } = tableColumns(system);
  const area = (mm2: number, decimals: number): string =>
    system === 'metric' ? `${mm2.toFixed(decimals)} mm²` : `${(mm2 / inch_mm ** 2).toPrecision(2)} in²`;
  const { photo, size, cell_mm, trust, cells, doubt } = reading;
  const percentiles = reading.area_percentiles_mm2;
  const { good, words, rest } = trustWords(reading);
  return [
    // What makes the figures worth little stands before them.
    ...(good ? [] : [words]),
    [
      `${length.figures(size.length_mm)} × ${length.figures(size.width_mm)} ${length.unit}, from a ${photo.format.toUpperCase()} of ${photo.width_px} × ${photo.height_px} pixels, ${cornersText(reading)}`,
      `spots     ${spotsText(reading, system)}; ${reading.spots.length} in all`,
      `bearing   ${one(reading.bearing_pct)} ± ${one(2 * doubt.bearing_pct)} % of ${area(reading.net_area_mm2, 0)}`,
      ...(percentiles.length === 5
        ? [
            `sizes     half of the spots are ${area(percentiles[1]!, 1).replace(/ .*/, '')} to ${area(percentiles[3]!, 1)}; the largest region holds ${(100 * reading.largest_share).toFixed(0)} % of the contact`,
          ]
        : []),
      ...evennessText(reading, system),
      ...zonesText(reading),
      `trust     ${trust.confidence.toFixed(2)}${good ? '' : ': take it again'} (${system === 'metric' ? `${one(trust.px_per_mm)} px per mm` : `${(trust.px_per_mm * inch_mm).toFixed(0)} px per inch`}, blur ${system === 'metric' ? `${trust.blur_mm.toFixed(2)} mm` : `${(trust.blur_mm / inch_mm).toFixed(3)} in`}, glare ${one(trust.glare_pct)} %, blue ${one(trust.separation)} times the noise off the bare surface)`,
    ].join('\n'),
    `Spots in ${system === 'metric' ? `each ${cell_mm} mm square` : `each square of ${length.figures(cell_mm)} ${length.unit}`}, x to the right, y down; cut squares in brackets\n${grid(cells, cell_mm, system, (cell) => String(cell.count))}`,
    `Bearing of each, %\n${grid(cells, cell_mm, system, (cell) => cell.bearing_pct.toFixed(0))}`,
    `± is two sd, 19 times in 20, as on rendered prints of known truth (a square’s count ± ${one(2 * doubt.square_count)}); a second photo of the same print tells more: --second.`,
    ...rest.map((warning) => `! ${warning.text}`),
  ].join('\n\n');
}

/** Whether a second photo of the same print tells the same. */
export function agreementText(agreement: Agreement, cell_mm: number, system: UnitSystem = 'metric'): string {
  const { length } = tableColumns(system);
  const { agrees, bearing_pct, density_per_25mm, squares_apart, squares } = agreement;
  const off = (part: { value: number; sd: number }) => `${signed(part.value)} ± ${one(2 * part.sd)}`;
  return [
    agrees
      ? 'The second photo agrees with the first.'
      : 'The second photo does not agree with the first: take both again, from another side, with the same corners.',
    `second less first: ${off(system === 'metric' ? density_per_25mm : perInch(density_per_25mm))} spots in ${squareWords(system)}, ${off(bearing_pct)} points of bearing`,
    `${squares_apart.length} of ${counted(squares, 'whole square')} apart by more than their doubt`,
    ...squares_apart.map(
      ({ col, row, first, second }) =>
        `  square at ${length.figures(col * cell_mm)}, ${length.figures(row * cell_mm)} ${length.unit}: ${first} spots, then ${second}`,
    ),
  ].join('\n');
}
