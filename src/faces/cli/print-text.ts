import type { Agreement } from '../../core/print/agreement.ts';
import { isReadable } from '../../core/print/readable-square.ts';
import type { Cell } from '../../core/print/reading.ts';
import { counted } from '../../shop/phrase.ts';
import type { PhotoReading } from '../../shop/print/photo-reading.ts';
import { trustWords } from '../../shop/print/trust-words.ts';
import { table } from './table.ts';

const inch_mm = 25.4;

const one = (value: number): string => value.toFixed(1);
/** Always with its sign, a real minus. */
const signed = (value: number): string => `${value < 0 ? '\u2212' : '+'}${Math.abs(value).toFixed(1)}`;

/** Squares as they lie: columns along the length, rows across; cut ones in brackets, unreadable ones a dash. */
function grid(cells: readonly Cell[], cell_mm: number, said: (cell: Cell) => string): string {
  const cols = 1 + Math.max(...cells.map((cell) => cell.col));
  const rows = 1 + Math.max(...cells.map((cell) => cell.row));
  const at = (k: number) => String(Math.round(k * cell_mm * 10) / 10);
  const body = Array.from({ length: rows }, (_, row) => [
    at(row),
    ...Array.from({ length: cols }, (_, col) => {
      const cell = cells.find((each) => each.col === col && each.row === row);
      if (!cell) return '';
      if (!isReadable(cell)) return '\u2013';
      return cell.partial ? `(${said(cell)})` : said(cell);
    }),
  ]);
  return table(['mm', ...Array.from({ length: cols }, (_, col) => at(col))], body);
}

function evennessText({ evenness: even }: PhotoReading): string[] {
  const parts = [
    even.dispersion === undefined
      ? 'too few whole squares to judge the spread'
      : `spread of the counts ${even.dispersion.toFixed(2)} (1 is chance, less is regular, more is clumped)`,
    ...(even.bearing_cv === undefined
      ? []
      : [`bearing varies by ${(100 * even.bearing_cv).toFixed(0)} % from square to square`]),
    counted(even.empty_squares, 'empty square'),
    `longest bare run ${even.longest_bare_mm.toFixed(0)} mm`,
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

/** A print as a person reads it: figures first, then square by square, then how far to trust it. */
export function printText(reading: PhotoReading): string {
  const { photo, size, cell_mm, trust, cells, doubt } = reading;
  const perInch = (reading.density_per_25mm * inch_mm ** 2) / 25 ** 2;
  const percentiles = reading.area_percentiles_mm2;
  const { good, words, rest } = trustWords(reading);
  return [
    // What makes the figures worth little stands before them.
    ...(good ? [] : [words]),
    [
      `${size.length_mm} × ${size.width_mm} mm, from a ${photo.format.toUpperCase()} of ${photo.width_px} × ${photo.height_px} pixels, ${cornersText(reading)}`,
      `spots     ${one(reading.density_per_25mm)} ± ${one(2 * doubt.density_per_25mm)} in a 25 mm square, ${one(perInch)} in an inch square; ${reading.spots.length} in all`,
      `bearing   ${one(reading.bearing_pct)} ± ${one(2 * doubt.bearing_pct)} % of ${reading.net_area_mm2.toFixed(0)} mm²`,
      ...(percentiles.length === 5
        ? [
            `sizes     half of the spots are ${one(percentiles[1]!)} to ${one(percentiles[3]!)} mm²; the largest region holds ${(100 * reading.largest_share).toFixed(0)} % of the contact`,
          ]
        : []),
      ...evennessText(reading),
      ...zonesText(reading),
      `trust     ${trust.confidence.toFixed(2)}${good ? '' : ': take it again'} (${one(trust.px_per_mm)} px per mm, blur ${trust.blur_mm.toFixed(2)} mm, glare ${one(trust.glare_pct)} %, blue ${one(trust.separation)} times the noise off the bare surface)`,
    ].join('\n'),
    `Spots in each ${cell_mm} mm square, x to the right, y down; cut squares in brackets\n${grid(cells, cell_mm, (cell) => String(cell.count))}`,
    `Bearing of each, %\n${grid(cells, cell_mm, (cell) => cell.bearing_pct.toFixed(0))}`,
    `± is two sd, 19 times in 20, as on rendered prints of known truth (a square’s count ± ${one(2 * doubt.square_count)}); a second photo of the same print tells more: --second.`,
    ...rest.map((warning) => `! ${warning.text}`),
  ].join('\n\n');
}

/** Whether a second photo of the same print tells the same. */
export function agreementText(agreement: Agreement, cell_mm: number): string {
  const { agrees, bearing_pct, density_per_25mm, squares_apart, squares } = agreement;
  const off = (part: { value: number; sd: number }) => `${signed(part.value)} ± ${one(2 * part.sd)}`;
  return [
    agrees
      ? 'The second photo agrees with the first.'
      : 'The second photo does not agree with the first: take both again, from another side, with the same corners.',
    `second less first: ${off(density_per_25mm)} spots in a 25 mm square, ${off(bearing_pct)} points of bearing`,
    `${squares_apart.length} of ${counted(squares, 'whole square')} apart by more than their doubt`,
    ...squares_apart.map(
      ({ col, row, first, second }) =>
        `  square at ${col * cell_mm}, ${row * cell_mm} mm: ${first} spots, then ${second}`,
    ),
  ].join('\n');
}
