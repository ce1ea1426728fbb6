import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Machine } from '../../../core/order/machine.ts';
import { placeWords, scratchMachine } from '../../../shop/order/machine-draft.ts';
import { counted } from '../../../shop/phrase.ts';
import { GoButton } from '../frame/go.tsx';
import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { useTemplates } from '../keep/jobs.ts';
import { newId } from '../keep/outbox.ts';
import { fetched, posted, Refusing, sentText } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { dimensionStart, dimensionUnit, readDimension } from '../new/dimension-text.ts';
import './machine.css';
import { Choice } from '../frame/choice.tsx';
import { FileButton } from '../frame/file-button.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { Wrong } from '../frame/notice.tsx';

interface Draft {
  readonly machine?: Machine;
  readonly title: string;
  readonly system: 'metric' | 'inch';
  readonly typed: Readonly<Record<string, string>>;
}

/** A new job about a whole machine: one of the program's, one from a file, or one's own from scratch. */
export function NewMachineScreen() {
  const { units } = useSettings();
  const start: Draft = { title: '', system: units, typed: {} };
  const [draft, keep, finish] = useDraft<Draft>(draftKey('whole'), start);
  return (
    <>
      <Top title="A whole machine" />
      <main className={draft.machine ? 'page narrow with-foot' : 'page narrow'}>
        {draft.machine ? (
          <Sizes
            machine={draft.machine}
            draft={draft}
            onChange={keep}
            onMade={finish}
            onOther={() => keep(start)}
          />
        ) : (
          <Choose onChoose={(machine) => keep({ ...start, machine })} />
        )}
      </main>
    </>
  );
}

const outOfReach = 'The shop’s file is out of reach. What you typed stays here; try again.';

function Choose({ onChoose }: { readonly onChoose: (machine: Machine) => void }) {
  const { data, error } = useQuery({
    queryKey: ['machines'],
    queryFn: async () => (await fetched<{ machines: Machine[] }>('/api/machines')).machines,
    staleTime: Number.POSITIVE_INFINITY,
  });
  const { data: templates } = useTemplates();
  const [scratch, setScratch] = useState(false);
  return (
    <>
      <p className="say">
        Which machine? Its steps, ways and tests come with it; you can change all of them.
      </p>
      {data && !error ? null : <NotHere what="the machines" failure={error} />}
      <ul className="rows">
        {data?.map((one) => (
          <li key={one.id}>
            <Choice
              name={one.title}
              note={
                <>
                  {one.description} {counted(one.steps.length, 'step')}.
                </>
              }
              onClick={() => onChoose(one)}
            />
          </li>
        ))}
        <li>
          <Choice
            name="My own, from scratch"
            note="One slide and two steps to begin with; the rest you add."
            open={scratch}
            onClick={() => setScratch(!scratch)}
          />
        </li>
      </ul>
      {scratch ? (
        <section>
          <h2>What does its first slide lie on?</h2>
          <ul className="rows">
            {templates?.map((one) => (
              <li key={one.id}>
                <Choice
                  name={one.title}
                  note={one.description}
                  onClick={() => onChoose(scratchMachine(one.id, 'My own machine'))}
                />
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <FromFile onChoose={onChoose} />
    </>
  );
}

/** A machine from its file; one that does not hang together is told where. */
function FromFile({ onChoose }: { readonly onChoose: (machine: Machine) => void }) {
  const [wrong, setWrong] = useState<readonly string[]>([]);
  const take = async (file: File) => {
    const text = await file.text();
    try {
      await sentText('/api/machines/check', text);
      onChoose(JSON.parse(text) as Machine);
    } catch (failure) {
      const issues = failure instanceof Refusing ? (failure.refusal.issues ?? []) : [];
      const told = issues.map(
        (one) => `${placeWords(undefined, one.path)}: ${one.found}; expected ${one.expected}`,
      );
      setWrong(told.length ? told.slice(0, 6) : [failure instanceof Refusing ? failure.message : outOfReach]);
    }
  };
  return (
    <div>
      <FileButton
        words="Open a machine file"
        name="Machine file"
        accept="application/json,.json"
        onFile={(file) => void take(file)}
      />
      {wrong.map((text) => (
        <Wrong key={text} role="alert">
          {text}
        </Wrong>
      ))}
    </div>
  );
}

function Sizes(props: {
  readonly machine: Machine;
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
  readonly onMade: () => void;
  readonly onOther: () => void;
}) {
  const { machine, draft, onChange, onMade, onOther } = props;
  const { system } = draft;
  const [, go] = useLocation();
  const client = useQueryClient();
  const [wrong, setWrong] = useState<string>();
  // One id for all tries: a second press after a lost answer makes no second job.
  const [id] = useState(newId);
  const sizes = machine.dimensions.map((size) => {
    const text = draft.typed[size.key] ?? dimensionStart(size, system);
    return { size, text, read: readDimension(text, size, system) };
  });
  const bad = sizes.filter((one) => !one.read.ok);
  const begin = async () => {
    const [first] = bad;
    if (first) return document.getElementById(`size-${first.size.key}`)?.focus();
    try {
      await posted('/api/rebuilds', {
        id,
        at: new Date().toISOString(),
        title: draft.title.trim() === '' ? machine.title : draft.title.trim(),
        machine,
        dimensions: Object.fromEntries(
          sizes.flatMap(({ size, read }) =>
            read.ok && read.value !== undefined ? [[size.key, read.value] as const] : [],
          ),
        ),
      });
      await client.invalidateQueries({ queryKey: ['jobs'] });
      onMade();
      go(`/job/${encodeURIComponent(id)}/order`);
    } catch (failure) {
      setWrong(failure instanceof Refusing ? failure.message : outOfReach);
    }
  };
  return (
    <>
      <p className="say">
        {machine.title}.{' '}
        {sizes.length
          ? 'Measure these on the machine; what stands there is usual.'
          : 'Its sizes are its slides’ own.'}
      </p>
      <button type="button" className="third" onClick={onOther}>
        Another machine
      </button>
      <label className="field">
        <span className="label">Name of the job</span>
        <input
          value={draft.title}
          placeholder={machine.title}
          maxLength={200}
          onChange={(event) => onChange({ ...draft, title: event.target.value })}
        />
      </label>
      {sizes.length ? (
        <Segments
          label="Sizes in"
          choices={[
            { value: 'inch', words: 'inches' },
            { value: 'metric', words: 'mm' },
          ]}
          chosen={system}
          // What was typed meant the other unit: it is asked again.
          onChoose={(next) => (next === system ? undefined : onChange({ ...draft, system: next, typed: {} }))}
        />
      ) : null}
      <div className="dimensions">
        {sizes.map(({ size, text, read }) => (
          <div className="field" key={size.key}>
            <label htmlFor={`size-${size.key}`}>
              {size.label}, <span className="unit">{dimensionUnit(size, system)}</span>
            </label>
            <input
              id={`size-${size.key}`}
              value={text}
              autoComplete="off"
              aria-invalid={read.ok ? undefined : true}
              aria-describedby={`size-${size.key}-where`}
              onChange={(event) =>
                onChange({ ...draft, typed: { ...draft.typed, [size.key]: event.target.value } })
              }
            />
            <span className="quiet" id={`size-${size.key}-where`}>
              {size.where}
            </span>
            {read.ok ? null : <Wrong>{read.why}</Wrong>}
          </div>
        ))}
      </div>
      {wrong === undefined ? null : <Wrong role="alert">{wrong}</Wrong>}
      <footer className="foot">
        <p>
          {counted(machine.steps.length, 'step')}; each bench opens as a job of its own. All of it can be
          changed later.
        </p>
        <GoButton onPress={() => void begin()}>Begin this machine</GoButton>
      </footer>
    </>
  );
}
