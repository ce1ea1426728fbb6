import { useEffect, useState } from 'react';
import type { StepDeed } from '../../../core/order/progress.ts';
import { readHours } from '../../../shop/order/hours-typed.ts';
import type { StepShown } from '../../../shop/order/order.ts';
import { GoButton, GoLink } from '../frame/go.tsx';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { useWrite } from '../keep/jobs.ts';
import { orderAddress, stepAddress } from './step-address.ts';

interface Typed {
  readonly hours: string;
  readonly note: string;
}

interface Choice {
  readonly what: StepDeed['what'];
  readonly words: string;
}

/** What may be told of a step as it stands: the likely one first. */
function choicesOf({ status, begun, was_done }: StepShown): readonly Choice[] {
  const done: Choice = { what: 'done', words: was_done ? 'Done again, metal came off' : 'Done' };
  const proven: Choice = { what: 'proven', words: 'Proven again, nothing changed' };
  const reopened: Choice = { what: 'reopened', words: 'Must be done again' };
  if (status === 'to be re-proven') return [proven, done, reopened];
  if (status === 'done') return [done, proven, reopened];
  return begun ? [done] : [{ what: 'begun', words: 'Begin this step' }, done];
}

/**
 * Hours, a note, and what became of the step: the likely deed at the foot, the others beside it. Of a step that stands the likely
 * deed is to go on to the next, so that a second press on Done does not say that metal came off again.
 */
export function DeedForm(props: {
  readonly id: string;
  readonly step: StepShown;
  readonly next: StepShown | undefined;
}) {
  const { id, step, next } = props;
  const write = useWrite(id);
  const [typed, keep, finish] = useDraft<Typed>(draftKey(id, 'step', step.id), { hours: '', note: '' });
  const [told, setTold] = useState<string>();
  const read = readHours(typed.hours);
  const tell = (what: StepDeed['what'], words: string) => {
    if (read.is === 'wrong') return document.getElementById('step-hours')?.focus();
    write({
      kind: 'step told',
      step: step.id,
      what,
      ...(read.is === 'read' ? { hours: read.hours } : {}),
      ...(typed.note.trim() === '' ? {} : { note: typed.note.trim() }),
    });
    finish();
    keep({ hours: '', note: '' });
    setTold(words);
  };
  const goesOn = step.status === 'done';
  const hasTold = told !== undefined;
  useEffect(() => {
    // The button that was pressed has gone.
    if (goesOn && hasTold) document.getElementById('step-next')?.focus();
  }, [goesOn, hasTold]);
  const choices = choicesOf(step);
  const first = choices[0]!;
  const others = goesOn ? choices : choices.slice(1);
  return (
    <>
      <form className="order-deed" aria-label="What was done" onSubmit={(event) => event.preventDefault()}>
        <div className="field">
          <label htmlFor="step-hours">
            Hours spent, <span className="unit">h</span>
          </label>
          <input
            id="step-hours"
            value={typed.hours}
            autoComplete="off"
            placeholder="2.5"
            aria-invalid={read.is === 'wrong' ? true : undefined}
            aria-describedby="step-hours-read"
            onChange={(event) => keep({ ...typed, hours: event.target.value })}
          />
          <div id="step-hours-read">
            {read.is === 'wrong' ? (
              <Wrong>{read.why}</Wrong>
            ) : (
              <p className="quiet">{read.is === 'read' ? `Read as ${read.echo}.` : 'May be left empty.'}</p>
            )}
          </div>
        </div>
        <div className="field">
          <label htmlFor="step-note">Note</label>
          <textarea
            id="step-note"
            rows={2}
            maxLength={5000}
            value={typed.note}
            onChange={(event) => keep({ ...typed, note: event.target.value })}
          />
        </div>
        <div className="order-others">
          {others.map(({ what, words }) => (
            <button key={what} type="button" className="second" onClick={() => tell(what, words)}>
              {words}
            </button>
          ))}
          {read.is === 'read' ? (
            <button type="button" className="second" onClick={() => tell('worked', `${read.echo} written`)}>
              Only write the hours
            </button>
          ) : null}
        </div>
        <p role="status" className="quiet">
          {told === undefined ? '' : `Written: ${told}. It can be undone under “So far”.`}
        </p>
      </form>
      <footer className="foot">
        {goesOn ? (
          <GoLink
            id="step-next"
            to={next ? stepAddress(id, next.id) : orderAddress(id)}
            mark={<Mark name="arrow right" size={26} />}
          >
            {next ? `Next: ${next.title}` : 'All steps stand'}
          </GoLink>
        ) : (
          <GoButton onPress={() => tell(first.what, first.words)}>{first.words}</GoButton>
        )}
      </footer>
    </>
  );
}
