import { type KeyboardEvent, type MouseEvent, type PointerEvent, useMemo, useRef, useState } from 'react';
import type { Corners, PlacePx } from '../../../core/print/picture.ts';
import { cornerFigure, type StageFit, stageGrips } from '../../../draw/print-overlay-corners.ts';
import { Figure } from '../figure.tsx';
import { besideThumb, Loupe, loupeSide, sidesAt } from './loupe.tsx';

/** The photo with its four corners as grips: dragged by thumb, moved by arrow keys, or put where the photo is tapped. */
export function CornerStage(props: {
  readonly address: string;
  readonly fit: StageFit;
  readonly corners: Corners;
  readonly names: readonly string[];
  readonly ends: { readonly minus: string; readonly plus: string };
  readonly chosen: number | undefined;
  readonly onChoose: (corner: number) => void;
  readonly onMove: (corner: number, to: PlacePx) => void;
  /** A drag or a tap has ended. */
  readonly onLetGo: (corner: number) => void;
  readonly image: HTMLImageElement | null;
  readonly onImage: (image: HTMLImageElement | null) => void;
  readonly loupeScale: number;
  readonly onCannotShow: () => void;
}) {
  const { address, fit, corners, names, ends, chosen, onChoose, onMove, onLetGo } = props;
  const [dragged, setDragged] = useState<number>();
  const from = useRef<{ readonly pointer: PlacePx; readonly corner: PlacePx }>(undefined);
  const grips = stageGrips(corners, fit);
  const shape = useMemo(() => cornerFigure({ corners, fit, ends, chosen }), [corners, fit, ends, chosen]);

  const down = (k: number) => (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    from.current = { pointer: { x: event.clientX, y: event.clientY }, corner: corners[k]! };
    onChoose(k);
  };
  const move = (k: number) => (event: PointerEvent<HTMLButtonElement>) => {
    const start = from.current;
    if (!start) return;
    const dx = event.clientX - start.pointer.x;
    const dy = event.clientY - start.pointer.y;
    if (dragged === undefined && Math.hypot(dx, dy) < 3) return;
    setDragged(k);
    onMove(k, { x: start.corner.x + dx / fit.scale, y: start.corner.y + dy / fit.scale });
  };
  const up = (k: number) => () => {
    from.current = undefined;
    if (dragged === undefined) return;
    setDragged(undefined);
    onLetGo(k);
  };
  const key = (k: number) => (event: KeyboardEvent) => {
    const step = arrowStep(event);
    if (!step) return;
    event.preventDefault();
    onChoose(k);
    onMove(k, { x: corners[k]!.x + step.x, y: corners[k]!.y + step.y });
  };
  const tap = (event: MouseEvent<HTMLDivElement>) => {
    if (chosen === undefined || (event.target as Element).closest('button')) return;
    const box = event.currentTarget.getBoundingClientRect();
    onMove(chosen, {
      x: (event.clientX - box.x - fit.left) / fit.scale - 0.5,
      y: (event.clientY - box.y - fit.top) / fit.scale - 0.5,
    });
    onLetGo(chosen);
  };
  const grip = dragged === undefined ? undefined : grips[dragged];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a tap is one way of three; grips and arrow buttons are the others
    // biome-ignore lint/a11y/useKeyWithClickEvents: as above
    <div className="stage" style={{ width: fit.width, height: fit.height }} onClick={tap}>
      <img
        ref={props.onImage}
        src={address}
        alt="The printed face on the bench"
        draggable={false}
        onError={props.onCannotShow}
        onLoad={(event) => props.onImage(event.currentTarget)}
        style={{
          left: fit.left,
          top: fit.top,
          width: fit.photo.width_px * fit.scale,
          height: fit.photo.height_px * fit.scale,
        }}
      />
      <Figure shape={shape} className="over" />
      {grips.map(({ x, y }, k) => (
        <button
          key={names[k]}
          type="button"
          className="grip"
          aria-label={`Corner at the ${names[k]}`}
          aria-description={`${Math.round(corners[k]!.x)} across, ${Math.round(corners[k]!.y)} down; arrow keys move it by a pixel, with Shift by ten`}
          aria-pressed={chosen === k}
          style={{ left: x - 24, top: y - 24 }}
          onPointerDown={down(k)}
          onPointerMove={move(k)}
          onPointerUp={up(k)}
          onPointerCancel={up(k)}
          onClick={() => onChoose(k)}
          onKeyDown={key(k)}
        />
      ))}
      {grip && dragged !== undefined ? (
        <Loupe
          className="beside-thumb"
          image={props.image}
          at={corners[dragged]!}
          lines={sidesAt(corners, dragged)}
          side={loupeSide}
          scale={props.loupeScale}
          style={besideThumb(grip, { left: 0, width: fit.width, height: fit.height })}
        />
      ) : null}
    </div>
  );
}

/** A pixel, or ten with Shift. */
function arrowStep({ key, shiftKey }: KeyboardEvent): PlacePx | undefined {
  const far = shiftKey ? 10 : 1;
  switch (key) {
    case 'ArrowLeft':
      return { x: -far, y: 0 };
    case 'ArrowRight':
      return { x: far, y: 0 };
    case 'ArrowUp':
      return { x: 0, y: -far };
    case 'ArrowDown':
      return { x: 0, y: far };
    default:
      return undefined;
  }
}
