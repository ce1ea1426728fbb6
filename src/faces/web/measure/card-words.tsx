import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { Setup } from '../../../core/ledger/setup.ts';
import { setupDrawing } from '../../../draw/setup/figures.ts';
import { Figure } from '../figure.tsx';
import { Mark } from '../frame/mark.tsx';
import { useWidth } from '../frame/width.ts';

/** The drawing of a set-up: what rides is solid, what is touched is dotted, travel is the long arrow. */
export function CardDrawing({ setup, plan }: { readonly setup: Setup; readonly plan: JobPlan }) {
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const shape = setupDrawing({ setup, slide: plan.slide, places: plan.places, width });
  return (
    <div className="draw" ref={ref}>
      <Figure shape={shape} />
    </div>
  );
}

/** What rides, what touches, which way is plus, and what climbing and falling mean on the part. */
export const CardWords = ({ setup }: { readonly setup: Setup }) => (
  <div className="words">
    <h2>{setup.question}</h2>
    <ol className="rows">
      <li className="rule">
        <span className="disc" aria-hidden="true">
          1
        </span>
        <span>
          <b>Rides</b>
          {setup.rides_words}
        </span>
      </li>
      <li className="rule">
        <span className="disc" aria-hidden="true">
          2
        </span>
        <span>
          <b>Touches</b>
          {setup.touches_words}
        </span>
      </li>
      <li className="rule">
        <span className="disc plus" aria-hidden="true">
          +
        </span>
        <span>
          <b>Plus</b>
          {setup.plus_words}
        </span>
      </li>
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
    {setup.caution ? (
      <p className="caution">
        <Mark name="caution" size={20} /> <span>{setup.caution}</span>
      </p>
    ) : null}
  </div>
);
