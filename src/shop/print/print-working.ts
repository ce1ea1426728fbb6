import { plain } from '../../core/quantity/show.ts';
import type { Worked } from '../worked.ts';
import type { PhotoReading } from './photo-reading.ts';

const n = (value: number): string => plain(value, 5);

/** How the figures of a print come about from what was seen of it. mm², spots. */
export function printWorking(reading: PhotoReading): Worked[] {
  const { cells, spots, net_area_mm2, bearing_pct, density_per_25mm, evenness, largest_share, trust } =
    reading;
  const net = cells.reduce((sum, cell) => sum + cell.net_mm2, 0);
  const contact = cells.reduce((sum, cell) => sum + (cell.bearing_pct / 100) * cell.net_mm2, 0);
  const whole = cells.filter((cell) => !cell.partial && cell.unreadable_pct <= 5);
  return [
    {
      what: 'net area',
      formula: 'surface − grooves and holes − glare that cannot be read',
      worked: `Σ over ${cells.length} squares = ${n(net)} mm²; ${n(net_area_mm2)} mm² in all`,
    },
    {
      what: 'bearing',
      formula: 'area of contact / net area, mm²',
      worked: `100 × ${n(contact)}/${n(net_area_mm2)} = ${n(bearing_pct)} %`,
    },
    {
      what: 'points',
      formula: 'spots × 625 mm² / net area, a spot being a region of contact of at least 0.5 mm²',
      worked: `${spots.length} × 625/${n(net_area_mm2)} = ${n(density_per_25mm)} per 25 mm square`,
      source: 'common practice: points in a square inch',
    },
    ...(evenness.dispersion === undefined
      ? []
      : [
          {
            what: 'evenness of the counts',
            formula: 'variance / mean of the counts, whole squares; 1 as by chance, more: clumped',
            worked: `${whole.length} whole squares: ${n(evenness.dispersion)}`,
          },
        ]),
    ...(evenness.bearing_cv === undefined
      ? []
      : [
          {
            what: 'evenness of the bearing',
            formula: 'standard deviation / mean of the squares’ bearing',
            worked: n(evenness.bearing_cv),
          },
        ]),
    {
      what: 'largest spot',
      formula: 'its area / area of all contact',
      worked: `${n(100 * largest_share)} %`,
    },
    {
      what: 'how far the photo can be trusted',
      formula: 'the least of its parts, 0 to 1',
      worked: `${n(trust.px_per_mm)} px/mm, blur ${n(trust.blur_mm)} mm, glare ${n(trust.glare_pct)} %, blue from bare by ${n(trust.separation)} × the noise: ${n(trust.confidence)}`,
    },
  ];
}
