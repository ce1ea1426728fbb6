import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { type CardDraft, temperatureOf } from './draft.ts';

/** What may be said of the set-up besides: nothing here stops the work. */
export function Optional<Unit extends string>(props: {
  readonly draft: CardDraft<Unit>;
  readonly onChange: (draft: CardDraft<Unit>) => void;
  /** The touched face's own name, when its reference can be turned over (reversal). */
  readonly face?: string;
}) {
  const { draft, onChange, face } = props;
  const temperature = temperatureOf(draft.temperature);
  return (
    <details className="optional" open={Boolean(draft.turned_over || draft.support || draft.temperature)}>
      <summary>
        {face === undefined ? 'Support, temperature' : `Is the ${face} turned over? Support, temperature`}
      </summary>
      <div>
        {face === undefined ? null : (
          <>
            <button
              type="button"
              className="second"
              aria-pressed={draft.turned_over === true}
              onClick={() => onChange({ ...draft, turned_over: draft.turned_over !== true })}
            >
              <Mark name="turned over" size={24} />
              The {face} is turned over
            </button>
            <p className="quiet">
              One sweep each way parts the error of the {face} from the part’s: keep this one, then sweep
              again with it turned over.
            </p>
          </>
        )}
        <label className="field">
          <span className="label">Stands on</span>
          <input
            value={draft.support ?? ''}
            placeholder="its own ways, wedges, three points"
            onChange={(event) => onChange({ ...draft, support: event.target.value })}
          />
        </label>
        <label className="field">
          <span className="label">Room, °C</span>
          <input
            value={draft.temperature ?? ''}
            inputMode="decimal"
            aria-invalid={typeof temperature === 'string' ? true : undefined}
            aria-describedby={typeof temperature === 'string' ? 'room-wrong' : undefined}
            onChange={(event) => onChange({ ...draft, temperature: event.target.value })}
          />
        </label>
        {typeof temperature === 'string' ? <Wrong id="room-wrong">{temperature}</Wrong> : null}
      </div>
    </details>
  );
}
