import { useEffect, useRef } from 'react';
import type { Corners, PlacePx } from '../../../core/print/picture.ts';

/** Side of a loupe that follows a drag, px. */
export const loupeSide = 136;

/** On the other half of what is seen of a stage, level with the thumb: never under it. */
export function besideThumb(
  grip: PlacePx,
  seen: { readonly left: number; readonly width: number; readonly height: number },
): { left: number; top: number } {
  const inLeftHalf = grip.x - seen.left <= seen.width / 2;
  const left = seen.left + (inLeftHalf ? seen.width - loupeSide - 8 : 8);
  const top = Math.min(Math.max(grip.y - loupeSide / 2, 0), Math.max(0, seen.height - loupeSide));
  return { left, top };
}

/** A corner's two sides, to be drawn in a loupe over it. */
export const sidesAt = (corners: Corners, k: number): readonly (readonly PlacePx[])[] => [
  [corners[(k + 3) % 4]!, corners[k]!, corners[(k + 1) % 4]!],
];

/** The photo round one place, enlarged, with a cross on it and the lines that belong to it. */
export function Loupe(props: {
  readonly image: HTMLImageElement | null;
  /** In the photo, px; pixel centres at whole numbers. */
  readonly at: PlacePx;
  /** Lines to draw, in the photo, px. */
  readonly lines: readonly (readonly PlacePx[])[];
  /** Side, px on the screen. */
  readonly side: number;
  /** Screen px a photo px. */
  readonly scale: number;
  readonly className?: string;
  readonly style?: { readonly left: number; readonly top: number };
}) {
  const { image, at, lines, side, scale, className, style } = props;
  const ref = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = ref.current;
    if (!canvas || !image?.complete || image.naturalWidth === 0) return;
    const sharp = Math.min(3, devicePixelRatio || 1);
    canvas.width = side * sharp;
    canvas.height = side * sharp;
    const pen = canvas.getContext('2d')!;
    const zoom = scale * sharp;
    const middle = (side * sharp) / 2;
    const { x, y } = at;
    pen.fillStyle = '#12202a';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.imageSmoothingEnabled = zoom < 3;
    // Pixel centres are at whole numbers.
    pen.setTransform(zoom, 0, 0, zoom, middle - (x + 0.5) * zoom, middle - (y + 0.5) * zoom);
    pen.drawImage(image, 0, 0);
    pen.setTransform(1, 0, 0, 1, 0, 0);
    const line = (points: readonly (readonly [number, number])[]) => {
      for (const [stroke, wide] of [
        ['#fcfdfa', 4],
        ['#12202a', 1.5],
      ] as const) {
        pen.strokeStyle = stroke;
        pen.lineWidth = wide * sharp;
        pen.beginPath();
        for (const [i, [px, py]] of points.entries()) {
          if (i === 0) pen.moveTo(px, py);
          else pen.lineTo(px, py);
        }
        pen.stroke();
      }
    };
    for (const places of lines)
      line(places.map((place) => [middle + (place.x - x) * zoom, middle + (place.y - y) * zoom] as const));
    const arm = 9 * sharp;
    line([
      [middle - arm, middle],
      [middle + arm, middle],
    ]);
    line([
      [middle, middle - arm],
      [middle, middle + arm],
    ]);
  }, [image, at, lines, side, scale]);
  return (
    <div
      className={['loupe', className].filter(Boolean).join(' ')}
      style={{ width: side, height: side, ...style }}
      aria-hidden="true"
    >
      <canvas ref={ref} />
    </div>
  );
}
