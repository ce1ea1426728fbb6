import { useMemo, useState } from 'react';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { Corners } from '../../../core/print/picture.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { overlayView } from '../../../draw/print-overlay-view.ts';
import { undone } from '../../../shop/print/mark-undo.ts';
import { markingAsk, markKind, netAreaWords } from '../../../shop/print/mark-words.ts';
import {
  beginMark,
  leaveOff,
  type MarkedFace,
  type Marking,
  putInMiddle,
} from '../../../shop/print/marking.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import { pct } from '../../../shop/print/reading-words.ts';
import { Mark } from '../frame/mark.tsx';
import { Segments } from '../frame/segments.tsx';
import { useWidth } from '../frame/width.ts';
import { MarkBench } from './mark-bench.tsx';
import { MarkList } from './mark-list.tsx';
import { MarkStage } from './mark-stage.tsx';
import type { KeptHead } from './photo-draft.ts';

/** Room for 25 mm of the surface on the screen, px: the whole of it, or near enough for a thumb to meet a groove. */
const closeness = { whole: 0, close: 60, closer: 120 } as const;
type Closeness = keyof typeof closeness;

/** Grooves, holes and patches marked over the photo, so that they are out of the net area; the reading follows. */
export function MarkStep(props: {
  readonly photo: KeptHead;
  readonly corners: Corners;
  readonly face: MarkedFace;
  readonly plan: JobPlan;
  readonly marking: Marking;
  readonly onMarking: (marking: Marking) => void;
  /** The reading with these marks, or the one before it while they are read. */
  readonly reading: ShownReading | undefined;
  readonly reads: boolean;
}) {
  const { photo, corners, face, plan, marking, onMarking, reading, reads } = props;
  const { places } = plan;
  const { units } = face;
  const [near, setNear] = useState<Closeness>('close');
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const view = useMemo(
    () =>
      overlayView({
        corners,
        size: face,
        width,
        most_height: 520,
        ...(closeness[near] ? { squares: { px: closeness[near], mm: 25 } } : {}),
      }),
    [corners, face, width, near],
  );
  const { marks, chosen, doing, ends = [], said, past = [] } = marking;
  const mark = chosen === undefined ? undefined : marks[chosen];
  const kind = mark && markKind(mark);
  return (
    <>
      <div>
        <p className="say">{markingAsk(doing, ends.length, marks.length, kind)}</p>
        <div className="mark-tools">
          {(['groove', 'hole', 'patch'] as const).map((kind) => (
            <button
              key={kind}
              type="button"
              className="second"
              aria-pressed={doing === kind}
              onClick={() => onMarking(doing === kind ? leaveOff(marking) : beginMark(marking, kind))}
            >
              A {kind}
            </button>
          ))}
        </div>
        {doing ? (
          <div className="turns">
            {doing === 'more' ? null : (
              <button type="button" className="third" onClick={() => onMarking(putInMiddle(marking, face))}>
                Put it in the middle
              </button>
            )}
            <button type="button" className="third" onClick={() => onMarking(leaveOff(marking))}>
              {doing !== 'more' ? 'Leave it' : kind === 'patch' ? 'Close the patch' : 'The groove is whole'}
            </button>
          </div>
        ) : null}
        <p role="status" className={said?.refused ? 'wrong' : 'quiet'}>
          {said?.refused ? <Mark name="caution" size={20} /> : null}
          <span>{said?.words ?? 'By keyboard: put it in the middle, then move it by the arrow keys.'}</span>
        </p>
        {past.length ? (
          <button type="button" className="third" onClick={() => onMarking(undone(marking))}>
            <Mark name="undo" size={20} />
            Undo the last step
          </button>
        ) : null}
        <NetArea reading={reading} face={face} units={units} reads={reads} />
      </div>
      <div>
        <div className="heading">
          <h2>Left out</h2>
          <Segments
            label="How near the photo is shown"
            choices={[
              { value: 'whole', words: 'Whole' },
              { value: 'close', words: 'Close' },
              { value: 'closer', words: 'Closer' },
            ]}
            chosen={near}
            onChoose={setNear}
          />
        </div>
        <div ref={ref}>
          <MarkStage
            photo={photo}
            view={view}
            wide={view.width > width}
            face={face}
            places={places}
            marking={marking}
            onMarking={onMarking}
          />
        </div>
        <p className="quiet">
          A dotted edge is left out of the net area. Marks belong to the pad: the next photo of it begins with
          them.
        </p>
      </div>
      <div className="beside-stage">
        <MarkList face={face} places={places} marking={marking} onMarking={onMarking} />
        <MarkBench face={face} view={view} marking={marking} onMarking={onMarking} />
      </div>
    </>
  );
}

/** What the marks do to the figures. */
const NetArea = (props: {
  readonly reading: ShownReading | undefined;
  readonly face: MarkedFace;
  readonly units: UnitSystem;
  readonly reads: boolean;
}) => {
  const { reading, face, units, reads } = props;
  return (
    <p className="net-area" aria-live="polite">
      {reading && !reads ? (
        <>
          {netAreaWords(reading.net_area_mm2, face, units)} Bears on <b>{pct(reading.bearing_pct)}</b>.
        </>
      ) : reads ? (
        'Reading it again.'
      ) : (
        'Not read with these marks yet.'
      )}
    </p>
  );
};
