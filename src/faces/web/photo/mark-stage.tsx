import {
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { PlaceWords } from '../../../core/ledger/setup.ts';
import type { PlacePx } from '../../../core/print/picture.ts';
import { edgeOf, exclusionFigure, pointsOf } from '../../../draw/print-overlay-exclusions.ts';
import { inPhoto, type OverlayView, onScreen } from '../../../draw/print-overlay-view.ts';
import { outline } from '../../../draw/print-overlay-zones.ts';
import { shape } from '../../../draw/shape.ts';
import { dragged, moved } from '../../../shop/print/mark-moves.ts';
import { type Arrow, arrowStep, millimetres, placeUnder } from '../../../shop/print/mark-places.ts';
import { markStep_mm } from '../../../shop/print/mark-sizes.ts';
import { markName, placeWords, pointName } from '../../../shop/print/mark-words.ts';
import { leaveOff, type MarkedFace, type Marking, pick, tapped } from '../../../shop/print/marking.ts';
import { Figure } from '../figure.tsx';
import { photoAddress } from '../keep/server.ts';
import { besideThumb, Loupe, loupeSide } from './loupe.tsx';
import type { KeptHead } from './photo-draft.ts';

const arrows: Readonly<Record<string, Arrow>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** How near a mark a thumb must come to pick it, px. */
const thumb_px = 20;

/** The photo with the marks over it: a tap makes or picks one, grips move the points of the one that is chosen. */
export function MarkStage(props: {
  readonly photo: KeptHead;
  readonly view: OverlayView;
  /** It runs on to the side. */
  readonly wide: boolean;
  readonly face: MarkedFace;
  readonly places: PlaceWords;
  readonly marking: Marking;
  readonly onMarking: (marking: Marking) => void;
}) {
  const { photo, view, wide, face, places, marking, onMarking } = props;
  const { marks, chosen, point, ends, doing } = marking;
  const from = useRef<{ readonly pointer: PlacePx; readonly at: PlacePx; drags: boolean }>(undefined);
  // A drag ends in a click of its own.
  const wasDragged = useRef(false);
  const holder = useRef<HTMLDivElement>(null);
  const [image, setImage] = useState<HTMLImageElement | null>(null);
  /** The point under the thumb, and what of the stage is in sight. */
  const [held, setHeld] = useState<{
    readonly point: number;
    readonly seen: { readonly left: number; readonly width: number };
  }>();
  const edge = useMemo(
    () =>
      shape(
        'svg',
        { width: view.width, height: view.height, viewBox: `0 0 ${view.width} ${view.height}` },
        ...outline(view, face),
      ),
    [view, face],
  );
  const figure = useMemo(
    () =>
      exclusionFigure({
        title: 'Grooves, holes and patches, marked',
        view,
        exclusions: marks,
        chosen,
        point,
        ends,
        numbered: true,
      }),
    [view, marks, chosen, point, ends],
  );
  const mark = chosen === undefined ? undefined : marks[chosen];
  const points = mark ? pointsOf(mark) : [];

  // What is picked comes into sight along the photo; the page itself stays where it is.
  const many = points.length;
  useEffect(() => {
    const window = holder.current?.parentElement;
    const grip = holder.current?.querySelectorAll<HTMLElement>('.grip')[point ?? 0];
    if (!wide || !window || !grip || chosen === undefined || many === 0) return;
    const [seen, at] = [window.getBoundingClientRect(), grip.getBoundingClientRect()];
    if (at.left < seen.left || at.right > seen.right)
      window.scrollLeft += at.left + at.width / 2 - seen.left - seen.width / 2;
  }, [wide, chosen, point, many]);

  const onStage = (event: { readonly clientX: number; readonly clientY: number }): PlacePx => {
    const box = holder.current!.getBoundingClientRect();
    return { x: event.clientX - box.x, y: event.clientY - box.y };
  };
  const tap = (event: MouseEvent<HTMLDivElement>) => {
    if ((event.target as Element).closest('button')) return;
    const at = placeUnder(view.onScreen, onStage(event));
    onMarking(tapped(marking, at, face, millimetres(view.onScreen, at, thumb_px)));
  };
  const down = (k: number) => (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    wasDragged.current = false;
    from.current = {
      pointer: { x: event.clientX, y: event.clientY },
      at: onScreen(view, points[k]!),
      drags: false,
    };
  };
  const move = (k: number) => (event: PointerEvent<HTMLButtonElement>) => {
    const start = from.current;
    if (!start) return;
    const by = { x: event.clientX - start.pointer.x, y: event.clientY - start.pointer.y };
    if (!start.drags && Math.hypot(by.x, by.y) < 3) return;
    if (!start.drags) {
      const window = wide ? holder.current?.parentElement : undefined;
      setHeld({
        point: k,
        seen: { left: window?.scrollLeft ?? 0, width: window?.clientWidth ?? view.width },
      });
    }
    start.drags = true;
    wasDragged.current = true;
    onMarking(
      dragged(marking, k, placeUnder(view.onScreen, { x: start.at.x + by.x, y: start.at.y + by.y }), face),
    );
  };
  const up = () => {
    from.current = undefined;
    setHeld(undefined);
  };
  const click = (k: number) => {
    if (wasDragged.current) return;
    // Back at the first corner, a patch is whole; other points only get in the way of a tap.
    if (doing !== 'more') onMarking(pick(marking, chosen!, k));
    else if (mark?.type === 'polygon' && k === 0) onMarking(leaveOff(marking));
  };
  const key = (k: number) => (event: KeyboardEvent) => {
    const arrow = arrows[event.key];
    if (!arrow) return;
    event.preventDefault();
    const step = markStep_mm(face.units) * (event.shiftKey ? 10 : 1);
    onMarking(moved(pick(marking, chosen!, k), arrowStep(view.onScreen, points[k]!, arrow, step), face));
  };
  const inside = (
    // biome-ignore lint/a11y/noStaticElementInteractions: a tap is one way of three; grips and arrow buttons are the others
    // biome-ignore lint/a11y/useKeyWithClickEvents: as above
    <div
      ref={holder}
      className="stage"
      style={{ width: view.width, height: view.height }}
      data-doing={doing}
      onClick={tap}
    >
      <img
        ref={setImage}
        src={photoAddress(photo.hash)}
        alt="The printed face"
        draggable={false}
        style={{
          left: view.left,
          top: view.top,
          width: photo.width_px * view.scale,
          height: photo.height_px * view.scale,
        }}
      />
      <Figure shape={edge} className="over" />
      <Figure shape={figure} className="over" />
      {points.map((place, k) => {
        const { x, y } = onScreen(view, place);
        return (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: points have no other name than their place in the line
            key={`${chosen} ${k}`}
            type="button"
            className="grip"
            aria-label={`${pointName(mark!, k)} of ${markName(mark!, chosen!).toLowerCase()}`}
            aria-description={`${placeWords(place, places, face.units)}; arrow keys move it by a step, with Shift by ten`}
            aria-pressed={point === k}
            style={{ left: x - 24, top: y - 24 }}
            onPointerDown={down(k)}
            onPointerMove={move(k)}
            onPointerUp={up}
            onPointerCancel={up}
            onClick={() => click(k)}
            onKeyDown={key(k)}
          />
        );
      })}
      {held && mark && points[held.point] ? (
        <Loupe
          className="beside-thumb"
          image={image}
          at={inPhoto(view, onScreen(view, points[held.point]!))}
          lines={[closed(edgeOf(mark)).map((place) => inPhoto(view, onScreen(view, place)))]}
          side={loupeSide}
          scale={Math.min(3, Math.max(0.75, view.scale * 4))}
          style={besideThumb(onScreen(view, points[held.point]!), { ...held.seen, height: view.height })}
        />
      ) : null}
    </div>
  );
  return wide ? (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what runs off the side must be reached by the arrow keys too
    // biome-ignore lint/a11y/useSemanticElements: a region of its own to scroll, not a form's fields
    <div className="runs-on" tabIndex={0} role="group" aria-label="The photo, to mark; runs on to the side">
      {inside}
    </div>
  ) : (
    inside
  );
}

const closed = <T,>(edge: readonly T[]): readonly T[] => [...edge, ...edge.slice(0, 1)];
