import { useRef, useState } from 'react';
import type { Corners, PlacePx } from '../../../core/print/picture.ts';
import { Mark } from '../frame/mark.tsx';
import { Segments } from '../frame/segments.tsx';
import { Loupe, loupeSide, sidesAt } from './loupe.tsx';

const ways = [
  { name: 'arrow up', words: 'up', x: 0, y: -1 },
  { name: 'arrow left', words: 'left', x: -1, y: 0 },
  { name: 'arrow right', words: 'right', x: 1, y: 0 },
  { name: 'arrow down', words: 'down', x: 0, y: 1 },
] as const;

/** One corner from close by, with four buttons round it: for who cannot drag, or wants a pixel. */
export function NudgePad(props: {
  readonly image: HTMLImageElement | null;
  readonly corners: Corners;
  readonly corner: number;
  readonly name: string;
  readonly scale: number;
  readonly onMove: (to: PlacePx) => void;
}) {
  const { image, corners, corner, name, scale, onMove } = props;
  const [step, setStep] = useState<'1' | '10'>('1');
  const from = useRef<{ readonly x: number; readonly y: number; readonly corner: PlacePx }>(undefined);
  const { x, y } = corners[corner]!;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of buttons, not a form's fields
    <div className="nudge" role="group" aria-label={`Move the corner at the ${name}`}>
      {ways.map((way) => (
        <button
          key={way.words}
          type="button"
          className={`second to-${way.words}`}
          aria-label={`${way.words} by ${step}`}
          onClick={() => onMove({ x: x + way.x * Number(step), y: y + way.y * Number(step) })}
        >
          <Mark name={way.name} size={22} />
        </button>
      ))}
      {/* A drag here is as fine as the loupe is large; the four buttons round it do the same. */}
      <div
        className="fine"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          from.current = { x: event.clientX, y: event.clientY, corner: { x, y } };
        }}
        onPointerMove={(event) => {
          const start = from.current;
          // The photo goes with the thumb, so the corner goes against it.
          if (start)
            onMove({
              x: start.corner.x - (event.clientX - start.x) / scale,
              y: start.corner.y - (event.clientY - start.y) / scale,
            });
        }}
        onPointerUp={() => {
          from.current = undefined;
        }}
        onPointerCancel={() => {
          from.current = undefined;
        }}
      >
        <Loupe
          image={image}
          at={corners[corner]!}
          lines={sidesAt(corners, corner)}
          side={loupeSide}
          scale={scale}
        />
      </div>
      <div className="step">
        <Segments
          label="Pixels a press"
          choices={[
            { value: '1', words: '1 px' },
            { value: '10', words: '10 px' },
          ]}
          chosen={step}
          onChoose={setStep}
        />
      </div>
    </div>
  );
}
