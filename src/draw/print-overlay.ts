import { applied, pxPerMm, surfaceToPhoto } from '../core/print/homography.ts';
import type { Corners, PlaceMm, SurfaceSize } from '../core/print/picture.ts';
import { isReadable } from '../core/print/readable-square.ts';
import type { PrintReading } from '../core/print/reading.ts';
import { type Shape, shape } from './shape.ts';

/** What is drawn over a photo, and where the surface lies in it. */
export interface Overlaid extends Pick<PrintReading, 'cells' | 'spots'> {
  readonly photo: { readonly width_px: number; readonly height_px: number };
  readonly corners: Corners;
  readonly size: SurfaceSize;
  readonly cell_mm: number;
}

// On a photo of blue and grey the lines must be neither; letters are dark on a light rim.
const line = '#ffd400';
const spotLine = '#ff3b1f';
const dark = '#111111';

/** Squares, their counts and every spot, as they lie in the photo: a drawing as large as the photo, see-through elsewhere. */
export function printOverlay(reading: Overlaid): Shape {
  const { photo, size, cell_mm } = reading;
  const h = surfaceToPhoto(reading.corners, size);
  const { length_mm, width_mm } = size;
  const px_per_mm = pxPerMm(h, { x: length_mm / 2, y: width_mm / 2 });
  const thin = Math.max(1, px_per_mm / 6);
  const from = (place: PlaceMm) => applied(h, place);
  // A projection keeps lines straight, so ends are enough.
  const rule = (a: PlaceMm, b: PlaceMm): Shape => {
    const [p, q] = [from(a), from(b)];
    return shape('line', { x1: p.x, y1: p.y, x2: q.x, y2: q.y, stroke: line, 'stroke-width': thin });
  };
  const stops = (whole: number): number[] => [
    ...Array.from({ length: Math.ceil(whole / cell_mm - 1e-9) }, (_, k) => k * cell_mm),
    whole,
  ];
  return shape(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: photo.width_px,
      height: photo.height_px,
      // Pixel centres are at whole numbers: the photo's first pixel reaches from −0.5 to 0.5.
      viewBox: `-0.5 -0.5 ${photo.width_px} ${photo.height_px}`,
      'font-family': 'Helvetica, Arial, sans-serif',
    },
    shape('title', {}, 'Squares, counts and spots'),
    ...stops(length_mm).map((x) => rule({ x, y: 0 }, { x, y: width_mm })),
    ...stops(width_mm).map((y) => rule({ x: 0, y }, { x: length_mm, y })),
    ...reading.spots.map(({ x_mm, y_mm, area_mm2 }) => {
      const at = { x: x_mm, y: y_mm };
      const { x, y } = from(at);
      const r = Math.max(2, Math.sqrt(area_mm2 / Math.PI) * pxPerMm(h, at));
      return shape('circle', { cx: x, cy: y, r, fill: 'none', stroke: spotLine, 'stroke-width': thin / 2 });
    }),
    ...reading.cells.map((cell) => {
      const middle = (k: number, whole: number) => (k * cell_mm + Math.min(whole, (k + 1) * cell_mm)) / 2;
      const at = { x: middle(cell.col, length_mm), y: middle(cell.row, width_mm) };
      const { x, y } = from(at);
      const text = !isReadable(cell) ? '–' : cell.partial ? `(${cell.count})` : String(cell.count);
      return shape(
        'text',
        {
          x,
          y,
          'font-size': Math.max(10, 6 * px_per_mm),
          'text-anchor': 'middle',
          'dominant-baseline': 'central',
          fill: dark,
          stroke: '#ffffff',
          'stroke-width': Math.max(1, px_per_mm / 2),
          'paint-order': 'stroke',
        },
        text,
      );
    }),
  );
}

/** The drawing with the photo under it: `photo` is a JPEG, turned upright. */
export function overPhoto(drawing: Shape, photo: { readonly base64: string }): Shape {
  const { width, height } = drawing.attributes;
  const picture = shape('image', {
    x: -0.5,
    y: -0.5,
    width,
    height,
    href: `data:image/jpeg;base64,${photo.base64}`,
  });
  return { ...drawing, children: [picture, ...drawing.children] };
}
