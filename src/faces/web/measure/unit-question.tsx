import type { UnitAsked } from '../../../shop/measure/likelier-unit.ts';
import { Mark } from '../frame/mark.tsx';

/** Readings that can hardly be in the unit they are typed in: a question with two answers, not an error. */
export function UnitQuestion<Unit>(props: {
  readonly asked: UnitAsked<Unit>;
  readonly onUnit: (unit: Unit) => void;
  readonly onKeep: () => void;
}) {
  const { asked, onUnit, onKeep } = props;
  return (
    <section className="question" aria-label="The unit of the readings">
      <p role="status">
        <Mark name="caution" size={20} />
        <span>{asked.question}</span>
      </p>
      <div className="two">
        <button type="button" className="go small" onClick={() => onUnit(asked.likelier)}>
          {asked.yes}
        </button>
        <button type="button" className="second" onClick={onKeep}>
          {asked.no}
        </button>
      </div>
    </section>
  );
}
