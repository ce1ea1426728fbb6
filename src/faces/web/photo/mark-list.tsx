import type { PlaceWords } from '../../../core/ledger/setup.ts';
import { pointsOf } from '../../../draw/print-overlay-exclusions.ts';
import { markName, markSize, placeWords } from '../../../shop/print/mark-words.ts';
import { type MarkedFace, type Marking, pick, removed } from '../../../shop/print/marking.ts';
import { Mark } from '../frame/mark.tsx';

/** Every mark by name and size: picked to be worked on, or taken away. */
export function MarkList(props: {
  readonly face: MarkedFace;
  readonly places: PlaceWords;
  readonly marking: Marking;
  readonly onMarking: (marking: Marking) => void;
}) {
  const { face, places, marking, onMarking } = props;
  const { marks, chosen } = marking;
  if (marks.length === 0) return <p className="quiet">Nothing is marked on this pad yet.</p>;
  return (
    <ul className="mark-list rows" aria-label="Marks">
      {marks.map((mark, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: marks are known by their number
        <li key={k}>
          <button
            type="button"
            className="choice"
            aria-pressed={chosen === k}
            aria-description={`At ${placeWords(pointsOf(mark)[0]!, places, face.units)}`}
            onClick={() => onMarking(pick(marking, k))}
          >
            <span className="pick" aria-hidden="true">
              {chosen === k ? <Mark name="tick" size={20} /> : null}
            </span>
            <span>
              {markName(mark, k)}
              <small>{markSize(mark, face.units)}</small>
            </span>
          </button>
          <button
            type="button"
            className="third"
            aria-label={`Take away ${markName(mark, k).toLowerCase()}`}
            onClick={() => onMarking(removed(marking, k))}
          >
            Take away
          </button>
        </li>
      ))}
    </ul>
  );
}
