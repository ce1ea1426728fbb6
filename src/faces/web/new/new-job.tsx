import { useQueryClient } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { buildPlan, type Template } from '../../../core/ledger/template.ts';
import { numberedZones } from '../bench/numbered-zones.ts';
import { PartMap } from '../bench/part-map.tsx';
import { Choice } from '../frame/choice.tsx';
import { GoButton } from '../frame/go.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { Wrong } from '../frame/notice.tsx';
import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { useTemplates } from '../keep/jobs.ts';
import { newId } from '../keep/outbox.ts';
import { posted, Refusing } from '../keep/server.ts';
import { changeSettings, useSettings } from '../keep/settings.ts';
import { dimensionStart, dimensionUnit, inSystem, type NewJobDraft, readAll } from './dimension-text.ts';

/** A new job from a template: pick the machine, say its dimensions, begin. */
export function NewJobScreen() {
  const { data: templates, error } = useTemplates();
  const { units } = useSettings();
  const [draft, setDraft, finish] = useDraft<NewJobDraft>(draftKey('new'), {
    title: '',
    system: units,
    typed: {},
  });
  const template = templates?.find((one) => one.id === draft.template);
  return (
    <>
      <Top title="New job" />
      <main className={template ? 'page with-foot' : 'page narrow'}>
        {templates && !error ? null : <NotHere what="the forms of ways" failure={error} />}
        {template ? (
          <Dimensions template={template} draft={draft} onChange={setDraft} onMade={finish} />
        ) : (
          <>
            <p className="say">What lies on your bench?</p>
            <ul className="rows">
              {templates?.map((one) => (
                <li key={one.id}>
                  <Choice
                    name={one.title}
                    note={one.description}
                    onClick={() => setDraft({ ...draft, template: one.id, system: units, typed: {} })}
                  />
                </li>
              ))}
              <li>
                <Choice
                  name="A whole machine"
                  note="From survey to acceptance chart: steps in their order, a bench for each slide, heights, axes."
                  href="/whole"
                />
              </li>
              <li>
                <Choice
                  name="Nothing yet: practise"
                  note="A simulated machine to measure, blue and scrape, its truth hidden until you ask."
                  href="/practise"
                />
              </li>
            </ul>
          </>
        )}
      </main>
    </>
  );
}

function Dimensions(props: {
  readonly template: Template;
  readonly draft: NewJobDraft;
  readonly onChange: (draft: NewJobDraft) => void;
  readonly onMade: () => void;
}) {
  const { template, draft, onChange, onMade } = props;
  const [, go] = useLocation();
  const client = useQueryClient();
  const [tried, setTried] = useState(false);
  const [wrong, setWrong] = useState<string>();
  // One id for all tries: a second press after a lost answer makes no second job.
  const [id] = useState(newId);
  const { reads, answers, wrong: bad } = readAll(template, draft);
  const title = draft.title.trim() === '' ? template.title : draft.title.trim();
  const built = useMemo(
    () => (bad.length === 0 ? buildPlan(template, answers, title) : undefined),
    [template, title, bad.length, answers],
  );

  /** Each can be read, but they do not go together. */
  const misfits = built && !built.ok ? built.refusals : [];

  const make = async () => {
    setTried(true);
    const first = bad[0] ?? misfits[0]?.key;
    if (first !== undefined) {
      document.getElementById(`dimension-${first}`)?.focus();
      return;
    }
    try {
      const at = new Date().toISOString();
      await posted('/api/jobs', { id, template: template.id, title, dimensions: answers, at });
      await client.invalidateQueries({ queryKey: ['jobs'] });
      onMade();
      go(`/job/${encodeURIComponent(id)}`);
    } catch (failure) {
      setWrong(
        failure instanceof Refusing
          ? failure.message
          : 'The shop’s file is out of reach. What you typed stays here; try again.',
      );
    }
  };

  return (
    <>
      <div className="pair">
        <div>
          <p className="say">{template.title}. Measure these on the machine; the rest is done.</p>
          <button
            type="button"
            className="third"
            onClick={() => onChange({ title: draft.title, system: draft.system, typed: {} })}
          >
            Another machine
          </button>
          <Segments
            label="Dimensions in"
            choices={[
              { value: 'inch', words: 'inches' },
              { value: 'metric', words: 'mm' },
            ]}
            chosen={draft.system}
            onChoose={(system) => {
              changeSettings({ units: system });
              onChange(inSystem(draft, template, system));
            }}
          />
          <label className="field">
            <span className="label">Name of the job</span>
            <input
              value={draft.title}
              placeholder={template.title}
              onChange={(event) => onChange({ ...draft, title: event.target.value })}
            />
          </label>
          {template.surface.options.length > 1 ? (
            <div className="field">
              <span className="label">{template.surface.label}</span>
              <Segments
                label={template.surface.label}
                choices={template.surface.options.map((option) => ({
                  value: option,
                  words: template.materials[option]?.label ?? option,
                }))}
                chosen={draft.surface ?? template.surface.value}
                onChoose={(surface) => onChange({ ...draft, surface })}
              />
            </div>
          ) : null}
          <div className="dimensions">
            {template.dimensions.map((dimension) => {
              const read = reads[dimension.key]!;
              const typed = draft.typed[dimension.key];
              const misfit = misfits.find(({ key }) => key === dimension.key);
              const why = !read.ok
                ? (tried || (typed !== undefined && typed !== '')) && read.why
                : misfit && `${misfit.found}; expected ${misfit.expected}`;
              return (
                <div className="field" key={dimension.key}>
                  <label htmlFor={`dimension-${dimension.key}`}>
                    {dimension.label}, {dimensionUnit(dimension, draft.system)}
                    {dimension.value === undefined ? ' (if known)' : ''}
                  </label>
                  <input
                    id={`dimension-${dimension.key}`}
                    value={typed ?? dimensionStart(dimension, draft.system)}
                    aria-invalid={why ? true : undefined}
                    aria-describedby={`where-${dimension.key}`}
                    autoComplete="off"
                    onChange={(event) =>
                      onChange({ ...draft, typed: { ...draft.typed, [dimension.key]: event.target.value } })
                    }
                  />
                  <span className="quiet" id={`where-${dimension.key}`}>
                    {dimension.where}
                    {read.ok && read.echo !== undefined && typed !== undefined
                      ? ` Read as ${read.echo}.`
                      : ''}
                  </span>
                  {why ? <Wrong>{why}</Wrong> : null}
                </div>
              );
            })}
          </div>
          {misfits
            .filter(({ key }) => !template.dimensions.some((dimension) => dimension.key === key))
            .map((refusal) => (
              <Wrong key={refusal.key} role="alert">
                {refusal.key}: {refusal.found}; expected {refusal.expected}
              </Wrong>
            ))}
        </div>
        <div className="beside-map">
          {built?.ok ? (
            <PartMap
              title={`Underside of the ${template.part} as these dimensions make it`}
              plan={built.plan}
              turned="end over end"
              show={numberedZones(built.plan.slide)}
            />
          ) : null}
        </div>
      </div>
      <footer className="foot">
        <p role="status">
          {wrong ??
            (tried && bad.length > 0
              ? 'One or more dimensions cannot be read yet.'
              : tried && misfits.length > 0
                ? 'One or more dimensions do not go together yet.'
                : `${template.dimensions.length} dimensions; what stands there already is usual.`)}
        </p>
        <GoButton onPress={() => void make()}>Begin this job</GoButton>
      </footer>
    </>
  );
}
