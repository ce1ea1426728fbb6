import { useState } from 'react';
import type { TurnedOver } from '../../../core/ledger/entry.ts';
import { Mark } from '../frame/mark.tsx';
import { LieQuestion } from './lie.tsx';

/** How the part lies, as a link beside the map's heading; a tap opens the question, and the map follows at once. */
export function TurnedLink(props: {
  readonly turned: TurnedOver;
  readonly onTurn: (how: TurnedOver) => void;
  readonly zones: number;
}) {
  const { turned, onTurn, zones } = props;
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="third" aria-expanded={open} onClick={() => setOpen(!open)}>
        <Mark name="turned over" size={22} />
        turned {turned}
      </button>
      {open ? (
        <div className="lie">
          <p>
            The map is drawn the way your part lies. Find the punch mark, then check the names of the ends.
          </p>
          <LieQuestion
            chosen={turned}
            onChoose={(how) => {
              setOpen(false);
              if (how !== turned) onTurn(how);
            }}
          />
          <p className="quiet">
            Both drawings carry the same {zones} numbers. If the punch mark is not where the drawing shows it,
            stop.
          </p>
        </div>
      ) : null}
    </>
  );
}
