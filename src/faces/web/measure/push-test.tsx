import { type Ref, useState } from 'react';

export type Push = 'climbed' | 'fell';

/**
 * The finger test that settles an instrument's own sign. "It fell" stops the card until its signs are turned or the
 * indicator is: the only thing that blocks the entry of readings.
 */
export function PushTest(props: {
  readonly push: Push | undefined;
  readonly onPush: (push: Push | undefined) => void;
  readonly first?: Ref<HTMLButtonElement>;
}) {
  const { push, onPush, first } = props;
  const [asking, setAsking] = useState(false);
  if (asking)
    return (
      <section className="push" aria-label="Push test">
        <p>
          It fell when you pushed. This indicator counts the other way, so{' '}
          <b className="nb">every sign would be wrong.</b>
        </p>
        <div className="two">
          <button
            type="button"
            className="go small"
            // biome-ignore lint/a11y/noAutofocus: the question replaces the button that was just pressed
            autoFocus
            onClick={() => {
              setAsking(false);
              onPush('fell');
            }}
          >
            Turn its signs
          </button>
          <button
            type="button"
            className="second"
            onClick={() => {
              setAsking(false);
              onPush(undefined);
            }}
          >
            Push again
          </button>
        </div>
      </section>
    );
  return (
    <section className="push asks" aria-label="Push test">
      <p>
        <b>Push the plunger with a finger.</b>
        {push === 'fell' ? 'It fell: signs are turned in the sum.' : 'What did the number do?'}
      </p>
      <button
        ref={first}
        type="button"
        className="second"
        aria-pressed={push === 'climbed'}
        onClick={() => onPush('climbed')}
      >
        It climbed
      </button>
      <button
        type="button"
        className="second"
        aria-pressed={push === 'fell'}
        onClick={() => {
          onPush(undefined);
          setAsking(true);
        }}
      >
        It fell
      </button>
    </section>
  );
}
