import { sayDeviation } from '../../../core/quantity/say.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { OffTheLine } from '../../../shop/measure/look-at-sweep.ts';
import { turnedText } from '../../../shop/measure/turned-text.ts';
import { Mark } from '../frame/mark.tsx';

/** A reading that stands off the line of the rest: a question with two answers, not an error. */
export function OffQuestion(props: {
  readonly off: OffTheLine;
  readonly place: string;
  readonly typed: string;
  /** The reading as it was understood, with its unit. */
  readonly echo: string;
  readonly units: UnitSystem;
  readonly onTurn: (text: string) => void;
  readonly onKeep: () => void;
  readonly onReadAgain: () => void;
}) {
  const { off, place, typed, echo, units, onTurn, onKeep, onReadAgain } = props;
  const far = sayDeviation(off.off_um, units, { signed: false, decimals: units === 'metric' ? 0 : 1 }).text;
  const turned = turnedText(typed);
  return (
    <section className="question" aria-label={`The reading at ${place}`}>
      <p>
        <Mark name="caution" size={20} />
        <span>
          {place}: this one stands {far} off the line of the rest.{' '}
          {off.turned_fits ? `Was it ${turned}?` : 'Read it again?'}
        </span>
      </p>
      <div className="two">
        {off.turned_fits ? (
          <button type="button" className="go small" onClick={() => onTurn(turned)}>
            It was {turned}
          </button>
        ) : (
          <button type="button" className="go small" onClick={onReadAgain}>
            Read it again
          </button>
        )}
        <button type="button" className="second" onClick={onKeep}>
          Keep {echo}
        </button>
      </div>
    </section>
  );
}
