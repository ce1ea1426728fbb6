import { useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { type MaterialName, materials } from '../../../core/kit/material.ts';
import { formulaText } from '../../../core/sums/said.ts';
import type { Sum } from '../../../core/sums/sum.ts';
import { sumNamed } from '../../../core/sums/sums.ts';
import { sumDrawing } from '../../../draw/sums/sum-drawing.ts';
import { Figure } from '../figure.tsx';
import { fromAddress, keepInAddress } from '../frame/address.ts';
import { Mark } from '../frame/mark.tsx';
import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { useWidth } from '../frame/width.ts';
import { draftKey, useDraft } from '../keep/draft.ts';
import { changeSettings, useSettings } from '../keep/settings.ts';
import { type Answered, answered } from './answered.ts';
import { SumCell } from './cell.tsx';
import {
  addressOf,
  draftFrom,
  inSystem,
  readCells,
  type SumDraft,
  takesMaterial,
  withExample,
} from './cells.ts';
import { Outcome } from './outcome.tsx';
import { Working } from './working.tsx';
import './sums.css';
import { Caution } from '../frame/notice.tsx';

/** One sum: its drawing, what it wants, what it gives, and where that comes from. */
export function SumScreen({ name }: { readonly name: string }) {
  const sum = sumNamed(name);
  if (sum) return <KnownSum key={name} sum={sum} />;
  return (
    <>
      <Top title="Sums" />
      <main className="page narrow">
        <p className="say">There is no sum called “{name.slice(0, 60)}”.</p>
        <Link className="third" href="/sums">
          All sums
        </Link>
      </main>
    </>
  );
}

function KnownSum({ sum }: { readonly sum: Sum }) {
  const { units } = useSettings();
  const [linked] = useState(() => draftFrom(sum, fromAddress(), units));
  const [kept, keep] = useDraft<SumDraft>(draftKey('sum', sum.name), { system: units, typed: {} });
  const [fresh, setFresh] = useState(linked !== undefined);
  // An address that was handed on goes before what was typed here last, until something is typed.
  const draft = useMemo(
    () => inSystem(sum, fresh && linked ? linked : kept, units),
    [sum, fresh, linked, kept, units],
  );
  const [cleared, setCleared] = useState<SumDraft>();
  const change = (next: SumDraft) => {
    setFresh(false);
    keep(next);
  };
  useEffect(() => keepInAddress(addressOf(draft)), [draft]);

  const read = useMemo(() => readCells(sum, draft), [sum, draft]);
  const answer = useMemo(
    () => (read.ask ? answered(read.ask, draft.system) : undefined),
    [read, draft.system],
  );
  const isEmpty = Object.values(draft.typed).every((text) => text.trim() === '');
  const type = (key: string, text: string) => {
    setCleared(undefined);
    change({ ...draft, typed: { ...draft.typed, [key]: text } });
  };

  return (
    <>
      <Top title={sum.title} />
      <main className="page">
        <p className="say">{sum.question}</p>
        <div className="pair sum-page">
          <form onSubmit={(event) => event.preventDefault()} aria-label="What it is asked with">
            <SumFigure sum={sum} answer={answer} />
            <Segments
              label="Lengths in"
              choices={[
                { value: 'inch', words: 'inches, thou' },
                { value: 'metric', words: 'mm, µm' },
              ]}
              chosen={units}
              onChoose={(value) => changeSettings({ units: value })}
            />
            {takesMaterial(sum) ? (
              <div className="field">
                <label htmlFor="sum-material">What it is made of</label>
                <select
                  id="sum-material"
                  value={draft.material ?? ''}
                  onChange={(event) => {
                    const { material: _, ...others } = draft;
                    const named = event.target.value as MaterialName | '';
                    change(named === '' ? others : { ...others, material: named });
                  }}
                >
                  <option value="">as typed below, or steel</option>
                  {Object.keys(materials).map((one) => (
                    <option key={one}>{one}</option>
                  ))}
                </select>
              </div>
            ) : null}
            <div className="dimensions">
              {Object.entries(sum.inputs).map(([key, input]) => (
                <SumCell
                  key={key}
                  name={key}
                  input={input}
                  system={draft.system}
                  text={draft.typed[key] ?? ''}
                  read={read.cells[key]!}
                  taken={takenWords(
                    answer,
                    key,
                    read.cells[key]!.state === 'read' ? read.cells[key] : undefined,
                  )}
                  onChange={(text) => type(key, text)}
                />
              ))}
            </div>
            <p className="quiet">
              A number alone takes the unit of its cell; 1 1/2 thou, half thou,{' '}
              {draft.system === 'metric' ? '12um' : '.0005 in'} and 60° 30' are read too. Your own doubt goes
              behind ±, or +-: {draft.system === 'metric' ? '40 mm +- 4 um' : '1.5 in +- 2 tenths'}.
            </p>
            <div className="sum-deeds">
              {read.missing.length > 0 ? (
                <button type="button" className="second" onClick={() => change(withExample(sum, draft))}>
                  {isEmpty ? 'Put in an example' : 'Fill the rest with an example'}
                </button>
              ) : null}
              {cleared ? (
                <button
                  type="button"
                  className="third"
                  onClick={() => {
                    change(inSystem(sum, cleared, units));
                    setCleared(undefined);
                  }}
                >
                  <Mark name="undo" size={20} />
                  Bring back what was typed
                </button>
              ) : isEmpty ? null : (
                <button
                  type="button"
                  className="third"
                  onClick={() => {
                    setCleared(draft);
                    change({ system: units, typed: {} });
                  }}
                >
                  Clear all
                </button>
              )}
            </div>
            <Outcome sum={sum} read={read} answer={answer} />
          </form>
          <div>
            <SumFigure sum={sum} answer={answer} withLegend />
            <section className="sum-law">
              <h2>Formula</h2>
              {Object.keys(sum.results).map((key) => (
                <p key={key} className="sum-formula">
                  {formulaText(sum, key)}
                </p>
              ))}
              {sum.note === undefined ? null : <Caution>{sum.note}</Caution>}
              <h2>Source</h2>
              <p>
                {sum.source.text} <span className="quiet">({cameWords[sum.source.came]})</span>
              </p>
            </section>
            {read.ask && answer?.ok ? (
              <Working sum={sum} ask={read.ask} answer={answer.answer} system={draft.system} />
            ) : null}
            <Link className="third" href="/sums">
              All sums
            </Link>
          </div>
        </div>
      </main>
    </>
  );
}

const cameWords: Record<Sum['source']['came'], string> = {
  seen: 'seen',
  'second hand': 'second hand',
  'from memory': 'from memory: hold it against the book before you rely on it',
  derived: 'worked out here',
  'common practice': 'common practice',
};

/** What was understood of a cell, with what was taken beside it. */
function takenWords(
  answer: Answered | undefined,
  key: string,
  read: { readonly text?: string } | undefined,
): string | undefined {
  const shown = answer?.ok ? answer.inputs[key] : undefined;
  if (!shown) return read?.text === undefined ? undefined : `Read as ${read.text}.`;
  if (shown.assumed === 'value') return undefined;
  return shown.assumed === 'doubt' ? `Read as ${shown.text}; this doubt is usual.` : `Read as ${shown.text}.`;
}

/** The drawing with its letters; on a phone the cells below it say what each letter is, on a wide screen a legend does. */
function SumFigure(props: {
  readonly sum: Sum;
  readonly answer: Answered | undefined;
  readonly withLegend?: boolean;
}) {
  const { sum, answer, withLegend = false } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const figure = useMemo(() => {
    const letters = Object.entries({ ...sum.inputs, ...sum.results });
    return sumDrawing({
      drawing: sum.drawing,
      title: sum.title,
      legend: withLegend
        ? letters.map(([key, { symbol, label }]) => ({
            symbol,
            label,
            text: answer?.ok ? (answer.texts[key] ?? '') : '',
          }))
        : [],
      width: Math.min(width, 560),
    });
  }, [sum, answer, width, withLegend]);
  return (
    <div ref={ref} className={withLegend ? 'sum-beside' : 'sum-above'}>
      <Figure shape={figure} />
    </div>
  );
}
