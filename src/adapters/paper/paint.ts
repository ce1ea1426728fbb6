/** How a node is painted: what SVG hands down from parent to child. */
export interface Paint {
  readonly fill: string;
  readonly stroke: string;
  readonly 'stroke-width': number;
  readonly 'fill-opacity': number;
  readonly 'stroke-opacity': number;
  readonly opacity: number;
  readonly color: string;
  readonly 'font-size': number;
  readonly 'font-weight': number;
  readonly 'text-anchor': string;
  readonly 'stroke-dasharray'?: string;
  readonly 'stroke-linecap'?: string;
  readonly 'stroke-linejoin'?: string;
}

/** What SVG says when nothing is said. */
export const plainPaint: Paint = {
  fill: '#000000',
  stroke: 'none',
  'stroke-width': 1,
  'fill-opacity': 1,
  'stroke-opacity': 1,
  opacity: 1,
  color: '#000000',
  'font-size': 16,
  'font-weight': 400,
  'text-anchor': 'start',
};

const inherited = Object.keys({
  ...plainPaint,
  'stroke-dasharray': '',
  'stroke-linecap': '',
  'stroke-linejoin': '',
});
const numbers = new Set(
  Object.entries(plainPaint).flatMap(([key, value]) => (typeof value === 'number' ? [key] : [])),
);

/** A colour for paper: the screen's variable is not known here, so what stands behind it counts. */
function colour(value: string, current: string): string {
  const fallback = /^var\([^,]+,\s*(.+)\)$/.exec(value)?.[1] ?? value;
  return fallback.toLowerCase() === 'currentcolor' ? current : fallback;
}

/** The paint of a node inside its parent's. Opacity multiplies, all else replaces. */
export function paintOf(attributes: Readonly<Record<string, string | number>>, parent: Paint): Paint {
  const own: Record<string, string | number> = {};
  for (const key of inherited) {
    const value = attributes[key];
    if (value !== undefined) own[key] = numbers.has(key) ? Number.parseFloat(String(value)) : String(value);
  }
  const color = colour(String(own.color ?? parent.color), parent.color);
  const paint = { ...parent, ...own, color } as Paint;
  return {
    ...paint,
    fill: colour(paint.fill, color),
    stroke: colour(paint.stroke, color),
    opacity: parent.opacity * Number(own.opacity ?? 1),
  };
}
