import { memo } from 'react';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { Setup } from '../../../core/ledger/setup.ts';
import { setupDrawing } from '../../../draw/setup/figures.ts';
import { firstSentence } from '../../../shop/phrase.ts';
import { Figure } from '../figure.tsx';
import { Mark } from '../frame/mark.tsx';
import { Caution } from '../frame/notice.tsx';
import { useWidth } from '../frame/width.ts';

/** The drawing of a set-up: what rides is solid, what is touched is dotted, travel is the long arrow. */
export const CardDrawing = memo(function CardDrawing(props: {
  readonly setup: Setup;
  readonly plan: JobPlan;
  /** How the places of a sweep's stops are said, first to last. */
  readonly places?: readonly string[];
}) {
  const { setup, plan, places } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const [first, second] = places ?? [];
  const last = places?.at(-1);
  const words = first && second && last ? { first, last, travel: `stop each ${second}` } : undefined;
  const shape = setupDrawing({
    setup,
    slide: plan.slide,
    places: plan.places,
    width,
    ...(words ? { words } : {}),
  });
  return (
    <div className="draw" ref={ref}>
      <Figure shape={shape} />
    </div>
  );
});

/** One rule of the card: its first sentence large, the rest below. */
const Rule = (props: { readonly mark: string; readonly start: string; readonly words: string }) => {
  const [first, rest] = firstSentence(props.words);
  return (
    <li className="rule">
      <span className={props.mark === '+' ? 'disc plus' : 'disc'} aria-hidden="true">
        {props.mark}
      </span>
      <span>
        <b>
          {props.start} {first}
        </b>
        {rest}
      </span>
    </li>
  );
};

/** What rides, what touches, which way is plus, and what climbing and falling mean on the part. */
export const CardWords = memo(({ setup }: { readonly setup: Setup }) => (
  <div className="words">
    <h2>{setup.question}</h2>
    <ol className="rows">
      <Rule mark="1" start="Rides" words={setup.rides_words} />
      <Rule mark="2" start="Touches" words={setup.touches_words} />
      <Rule mark="+" start="Plus:" words={setup.plus_words} />
      <li className="meaning">
        <span>
          <b>
            <Mark name="arrow up" size={18} /> Climbs +
          </b>
          {setup.climbs_words}
        </span>
        <span>
          <b>
            <Mark name="arrow down" size={18} /> Falls −
          </b>
          {setup.falls_words}
        </span>
      </li>
    </ol>
    {setup.caution ? <Caution>{setup.caution}</Caution> : null}
  </div>
));
