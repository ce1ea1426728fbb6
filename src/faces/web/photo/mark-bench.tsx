import { type KeyboardEvent, useState } from 'react';
import { pointsOf } from '../../../draw/print-overlay-exclusions.ts';
import type { OverlayView } from '../../../draw/print-overlay-view.ts';
import { moved, pointCanGo, resized, withoutPoint, withPointAfter } from '../../../shop/print/mark-moves.ts';
import { arrowStep } from '../../../shop/print/mark-places.ts';
import { markStep_mm, sizeOf, sizeWords } from '../../../shop/print/mark-sizes.ts';
import { markName, pointName } from '../../../shop/print/mark-words.ts';
import { lengthen, type MarkedFace, type Marking, pick } from '../../../shop/print/marking.ts';
import { Mark } from '../frame/mark.tsx';
import { Segments } from '../frame/segments.tsx';

const ways = [
  { name: 'arrow up', arrow: 'up' },
  { name: 'arrow left', arrow: 'left' },
  { name: 'arrow right', arrow: 'right' },
  { name: 'arrow down', arrow: 'down' },
] as const;

/** Steps a key makes on a size. */
const sizeKeys: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: 10,
  PageDown: -10,
};

/** The mark that is chosen: its size, and its points or all of it moved by four buttons. */
export function MarkBench(props: {
  readonly face: MarkedFace;
  readonly view: OverlayView;
  readonly marking: Marking;
  readonly onMarking: (marking: Marking) => void;
}) {
  const { face, view, marking, onMarking } = props;
  const [step, setStep] = useState<'1' | '10'>('1');
  const { marks, chosen, point, doing } = marking;
  const mark = chosen === undefined ? undefined : marks[chosen];
  if (!mark || chosen === undefined) return null;
  const { units } = face;
  const step_mm = markStep_mm(units) * Number(step);
  const points = pointsOf(mark);
  const name = markName(mark, chosen);
  return (
    <section className="mark-bench" aria-label={name}>
      <h3>{name}</h3>
      <Size face={face} marking={marking} onMarking={onMarking} />
      {mark.type === 'circle' ? null : (
        // biome-ignore lint/a11y/useSemanticElements: a group of pressed buttons, not a form's fields
        <div className="mark-points" role="group" aria-label="What the arrows move">
          <button
            type="button"
            className="second"
            aria-pressed={point === undefined}
            onClick={() => onMarking(pick(marking, chosen))}
          >
            All of it
          </button>
          {points.map((_, k) => (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: points have no other name than their place in the line
              key={k}
              type="button"
              className="second"
              aria-pressed={point === k}
              onClick={() => onMarking(pick(marking, chosen, k))}
            >
              {pointName(mark, k)}
            </button>
          ))}
        </div>
      )}
      {/* biome-ignore lint/a11y/useSemanticElements: a group of buttons, not a form's fields */}
      <div className="nudge plain" role="group" aria-label={`Move ${name.toLowerCase()}`}>
        {ways.map((way) => (
          <button
            key={way.arrow}
            type="button"
            className={`second to-${way.arrow}`}
            aria-label={`${way.arrow} by ${sizeWords(step_mm, units)}`}
            onClick={() =>
              onMarking(
                moved(marking, arrowStep(view.onScreen, points[point ?? 0]!, way.arrow, step_mm), face),
              )
            }
          >
            <Mark name={way.name} size={22} />
          </button>
        ))}
        <div className="step">
          <Segments
            label="How far a press moves it"
            choices={(['1', '10'] as const).map((value) => ({
              value,
              words: sizeWords(markStep_mm(units) * Number(value), units),
            }))}
            chosen={step}
            onChoose={setStep}
          />
        </div>
      </div>
      {mark.type !== 'circle' && doing !== 'more' ? (
        <div className="turns">
          <button type="button" className="third" onClick={() => onMarking(lengthen(marking))}>
            {mark.type === 'polygon' ? 'Add corners after its last' : 'Add points to its end'}
          </button>
          {point !== undefined && (mark.type === 'polygon' || point < points.length - 1) ? (
            <button type="button" className="third" onClick={() => onMarking(withPointAfter(marking, face))}>
              Put one in after {pointName(mark, point).toLowerCase()}
            </button>
          ) : null}
          {pointCanGo(marking) ? (
            <button type="button" className="third" onClick={() => onMarking(withoutPoint(marking, face))}>
              Take out {pointName(mark, point!).toLowerCase()}
            </button>
          ) : null}
        </div>
      ) : null}
    </section>
  );
}

/** A hole's diameter or a groove's width, by two buttons, or by arrow keys on the figure between them. */
function Size(props: {
  readonly face: MarkedFace;
  readonly marking: Marking;
  readonly onMarking: (marking: Marking) => void;
}) {
  const { face, marking, onMarking } = props;
  const mark = marking.marks[marking.chosen!]!;
  const mm = sizeOf(mark);
  if (mm === undefined) return null;
  const what = mark.type === 'circle' ? 'Diameter' : 'Width';
  const words = sizeWords(mm, face.units);
  const by = (steps: number) => onMarking(resized(marking, steps, face));
  const key = (event: KeyboardEvent) => {
    const steps = sizeKeys[event.key];
    if (!steps) return;
    event.preventDefault();
    by(event.shiftKey && Math.abs(steps) === 1 ? 10 * steps : steps);
  };
  return (
    <div className="mark-size">
      <span className="label" aria-hidden="true">
        {what}
      </span>
      <button type="button" className="second" aria-label={`${what} smaller`} onClick={() => by(-1)}>
        −
      </button>
      <span
        className="num"
        role="spinbutton"
        tabIndex={0}
        aria-label={what}
        aria-valuenow={mm}
        aria-valuemin={0}
        aria-valuetext={words}
        onKeyDown={key}
      >
        {words}
      </span>
      <button type="button" className="second" aria-label={`${what} larger`} onClick={() => by(1)}>
        +
      </button>
    </div>
  );
}
