import { useEffect, useRef } from 'react';
import type { Corners } from '../../../core/print/picture.ts';

/** The photo round one corner, enlarged, with its two sides and a cross on the corner. */
export function Loupe(props: {
  readonly image: HTMLImageElement | null;
  readonly corners: Corners;
  readonly corner: number;
  /** Side, px on the screen. */
  readonly side: number;
  /** Screen px a photo px. */
  readonly scale: number;
  readonly className?: string;
  readonly style?: { readonly left: number; readonly top: number };
}) {
  const { image, corners, corner, side, scale, className, style } = props;
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
    const { x, y } = corners[corner]!;
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
    const toward = (other: number): readonly [number, number] => {
      const to = corners[other % 4]!;
      const far = Math.hypot(to.x - x, to.y - y) || 1;
      const reach = Math.min(far * zoom, 2 * middle);
      return [middle + ((to.x - x) / far) * reach, middle + ((to.y - y) / far) * reach];
    };
    line([toward(corner + 3), [middle, middle], toward(corner + 1)]);
    const arm = 9 * sharp;
    line([
      [middle - arm, middle],
      [middle + arm, middle],
    ]);
    line([
      [middle, middle - arm],
      [middle, middle + arm],
    ]);
  }, [image, corners, corner, side, scale]);
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
