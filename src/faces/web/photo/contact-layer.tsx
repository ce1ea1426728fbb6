import { useEffect, useRef } from 'react';
import { applied, composed, type Homography } from '../../../core/print/homography.ts';
import { contactPicture } from '../../../draw/print-contact.ts';
import type { OverlayView } from '../../../draw/print-overlay-view.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';

/** Where it bears, laid over the photo: the map of the surface turned into the photo's perspective by the browser. */
export function ContactLayer(props: {
  readonly map: ShownReading['contact_map'];
  readonly view: OverlayView;
}) {
  const { map, view } = props;
  const ref = useRef<HTMLCanvasElement>(null);
  const toScreen = composed(view.onScreen, scaled(1 / map.px_per_mm));
  // Elements a screen px in the surface's middle: a hatching stroke stays as broad as a stroke.
  const here = applied(toScreen, { x: map.width / 2, y: map.height / 2 });
  const next = applied(toScreen, { x: map.width / 2 + 1, y: map.height / 2 });
  const stroke = Math.min(12, Math.max(1, Math.round(1.1 / Math.hypot(next.x - here.x, next.y - here.y))));
  useEffect(() => {
    let wanted = true;
    const image = new Image();
    image.onload = () => {
      const canvas = ref.current;
      if (!wanted || !canvas) return;
      canvas.width = map.width;
      canvas.height = map.height;
      const pen = canvas.getContext('2d', { willReadFrequently: true })!;
      pen.drawImage(image, 0, 0);
      const { data } = pen.getImageData(0, 0, map.width, map.height);
      const is = Uint8Array.from({ length: map.width * map.height }, (_, at) => data[4 * at]!);
      pen.putImageData(
        new ImageData(contactPicture(is, map.width, map.height, stroke), map.width, map.height),
        0,
        0,
      );
    };
    image.src = map.png;
    return () => {
      wanted = false;
    };
  }, [map, stroke]);
  return (
    <div
      className="contact"
      aria-hidden="true"
      style={{ width: map.width, height: map.height, transform: matrixOf(toScreen) }}
    >
      <canvas ref={ref} />
    </div>
  );
}

const scaled = (by: number): Homography => [by, 0, 0, 0, by, 0, 0, 0, 1];

/** A projection of the plane as CSS has it: column by column, z left alone. */
const matrixOf = ([a, b, c, d, e, f, g, h, i]: Homography): string =>
  `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].join(',')})`;
