import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { Machine } from '../../../core/order/machine.ts';
import { isListed } from '../../../shop/order/machine-draft.ts';
import { heldNames } from '../../../shop/order/machine-rename.ts';
import { counted } from '../../../shop/phrase.ts';
import { FileButton } from '../frame/file-button.tsx';
import { GoButton } from '../frame/go.tsx';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { saveAs } from '../frame/save-as.ts';
import { Segments } from '../frame/segments.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { useTemplates, useWrite } from '../keep/jobs.ts';
import { MachineScreen, type OpenMachine } from '../order/whole.tsx';
import { type MachineChecked, useChecked } from './checked.ts';
import { SizesRoom, SlidesRoom, WaysRoom } from './room-of.tsx';
import { StepsRoom } from './steps-room.tsx';

type Room = 'steps' | 'sizes' | 'ways' | 'slides' | 'text';

/** The machine of a job, to be changed: lists for what people change, its text for the rest. */
export const EditScreen = ({ id }: { readonly id: string }) => (
  <MachineScreen id={id} title="Machine">
    {(open) => <Edit open={open} />}
  </MachineScreen>
);

const written = (machine: Machine): string => JSON.stringify(machine, null, 2);

function Edit({ open }: { readonly open: OpenMachine }) {
  const { id, machine: kept, job } = open;
  const held = useMemo(() => heldNames(job.live), [job.live]);
  const was = written(kept);
  const [text, keep, finish] = useDraft<string>(draftKey(id, 'machine'), was);
  const [room, setRoom] = useState<Room>('steps');
  const { data: templates = [] } = useTemplates();
  const write = useWrite(id);
  const [, go] = useLocation();
  const checked = useChecked(text);
  const machine = parsed(text);
  const changed = text !== was;
  const change = (next: Machine) => keep(written(next));
  const order = `/job/${encodeURIComponent(id)}/order`;
  const keepIt = () => {
    if (checked.is !== 'right' || !machine) return;
    write({ kind: 'machine set', machine });
    finish();
    go(order);
  };
  return (
    <main className="page with-foot machine-page">
      <p>
        <Link className="third" href={order}>
          <Mark name="arrow left" size={20} />
          Order of work
        </Link>
      </p>
      <p className="say">
        This is your own copy of the machine. What you change stays on this device until you keep it.
      </p>
      <Segments<Room>
        label="Part of the machine"
        choices={[
          { value: 'steps', words: 'Steps' },
          { value: 'sizes', words: 'Sizes' },
          { value: 'ways', words: 'Ways' },
          { value: 'slides', words: 'Pads' },
          { value: 'text', words: 'Text' },
        ]}
        chosen={room}
        onChoose={setRoom}
      />
      <Said checked={checked} />
      {room === 'text' ? (
        <TextRoom text={text} name={kept.id} onChange={keep} />
      ) : machine ? (
        <div className="machine-room">
          {room === 'steps' ? <StepsRoom machine={machine} held={held} onChange={change} /> : null}
          {room === 'sizes' ? <SizesRoom machine={machine} held={held} onChange={change} /> : null}
          {room === 'ways' ? <WaysRoom machine={machine} held={held} onChange={change} /> : null}
          {room === 'slides' ? (
            <SlidesRoom machine={machine} held={held} onChange={change} templates={templates} />
          ) : null}
        </div>
      ) : (
        <p>The text cannot be shown as lists yet. Put it right under Text; nothing you wrote is lost.</p>
      )}
      <p>
        <Link className="third" href={`/job/${encodeURIComponent(id)}/chart`}>
          Tests and limits are chosen on the Chart
        </Link>
      </p>
      {changed ? (
        <button type="button" className="third" onClick={() => keep(was)}>
          Drop what I changed
        </button>
      ) : null}
      <footer className="foot">
        <p role="status">
          {changed
            ? checked.is === 'right'
              ? 'It hangs together. Benches that are open keep their set-ups.'
              : 'Not kept yet.'
            : 'Nothing is changed.'}
        </p>
        {changed && checked.is === 'right' ? (
          <GoButton onPress={keepIt}>Keep this machine</GoButton>
        ) : (
          <button type="button" className="go" aria-disabled="true">
            Keep this machine
          </button>
        )}
      </footer>
    </main>
  );
}

/** The machine that a text is, when it has a machine's lists. */
function parsed(text: string): Machine | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isListed(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

const shownAtOnce = 6;

/** What is wrong, each thing by its place's own name. */
function Said({ checked }: { readonly checked: MachineChecked }) {
  return (
    <div aria-live="polite" className="machine-said">
      {checked.is === 'wrong' ? (
        <>
          {checked.issues.slice(0, shownAtOnce).map(({ where, what }) => (
            <Wrong key={where + what}>
              {where}: {what}
            </Wrong>
          ))}
          {checked.issues.length > shownAtOnce ? (
            <p className="quiet">and {counted(checked.issues.length - shownAtOnce, 'thing')} more.</p>
          ) : null}
        </>
      ) : checked.is === 'out of reach' ? (
        <Wrong>The shop is out of reach: the machine cannot be looked at. What you wrote stays here.</Wrong>
      ) : null}
    </div>
  );
}

/** The whole machine as its file: to be written by hand, taken from a file, or saved as one. */
function TextRoom(props: {
  readonly text: string;
  readonly name: string;
  readonly onChange: (text: string) => void;
}) {
  const { text, name, onChange } = props;
  const take = async (file: File) => {
    onChange(await file.text());
  };
  return (
    <div className="machine-room">
      <div className="field">
        <label htmlFor="machine-text">The machine as JSON; its shape is told in machines/README.md</label>
        <textarea
          id="machine-text"
          className="machine-text"
          rows={24}
          spellCheck={false}
          autoCapitalize="none"
          autoComplete="off"
          value={text}
          onChange={(event) => onChange(event.target.value)}
        />
      </div>
      <div className="machine-moves">
        <button
          type="button"
          className="third"
          onClick={() => saveAs(new Blob([text], { type: 'application/json' }), `${name}.machine.json`)}
        >
          <Mark name="arrow down" size={20} />
          Save as a file
        </button>
        <FileButton
          words="Take from a file"
          name="Machine file"
          accept="application/json,.json"
          onFile={(file) => void take(file)}
        />
      </div>
    </div>
  );
}
