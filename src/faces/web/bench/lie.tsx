import type { TurnedOver } from '../../../core/ledger/entry.ts';
import { Mark } from '../frame/mark.tsx';

const ways: readonly { readonly how: TurnedOver; readonly words: string; readonly detail: string }[] = [
  {
    how: 'end over end',
    words: 'End over end',
    detail: 'operator’s side stays near you, ends change places',
  },
  {
    how: 'front to back',
    words: 'Front to back',
    detail: 'ends stay, operator’s side goes away from you',
  },
];

/** Which way the part was turned over: asked each time it is lifted, because a map read end for end costs a round. */
export const LieQuestion = (props: {
  readonly chosen?: TurnedOver | undefined;
  readonly onChoose: (how: TurnedOver) => void;
}) => (
  // biome-ignore lint/a11y/useSemanticElements: two buttons that belong together; a fieldset would add nothing
  <div className="rows" role="group" aria-label="Which way did you turn it?">
    {ways.map(({ how, words, detail }) => (
      <button
        key={how}
        type="button"
        className="choice"
        aria-pressed={props.chosen === how}
        onClick={() => props.onChoose(how)}
      >
        <Mark name="turned over" size={28} />
        <span>
          <b>{words}</b>
          <small>{detail}</small>
        </span>
        {props.chosen === how ? <Mark name="tick" size={24} /> : <span />}
      </button>
    ))}
  </div>
);
