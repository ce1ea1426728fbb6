import './practice.css';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { whyNot } from './ask.ts';

/** Blues the practice machine and turns it over; then the blue is on the map, to be said zone by zone or taken as seen. */
export function BlueAndPrint(props: {
  readonly blued: boolean;
  readonly seen: boolean;
  readonly left: number;
  readonly failure: Error | null;
  readonly onBlue: () => void;
  readonly onTake: () => void;
}) {
  const { blued, seen, left, failure, onBlue, onTake } = props;
  return (
    <section className="blue-it" aria-label="Practice">
      {failure ? <Wrong role="alert">{whyNot(failure)}</Wrong> : null}
      {blued && seen ? (
        <>
          <p className="quiet">
            The blue is on the map. Say a word for each zone, as on metal, or take the shares as they are.
          </p>
          <button type="button" className="second" disabled={left === 0} onClick={onTake}>
            <Mark name="print" size={24} />
            Take it as seen
          </button>
        </>
      ) : (
        <button type="button" className="second" disabled={blued} onClick={onBlue}>
          <Mark name="print" size={24} />
          Blue and print it
        </button>
      )}
    </section>
  );
}
