import { useDeferredValue, useMemo, useRef, useState } from 'react';
import { Link } from 'wouter';
import { kitOf } from '../../../core/ledger/kit-ledger.ts';
import { type SurveyRecord, type SurveySheet, surveysOf } from '../../../core/ledger/survey-record.ts';
import { inPlaces } from '../../../shop/survey/places.ts';
import { edgeTurnedCard, surveyCard } from '../../../shop/survey/setup-cards.ts';
import { unitWords } from '../../../shop/survey/sheet-fields.ts';
import {
  askedOfEdge,
  fieldWords,
  hows,
  howsFor,
  newSheet,
  plainFields,
} from '../../../shop/survey/sheet-hows.ts';
import { inUnit, poured, reversedOrder, turned, withCells } from '../../../shop/survey/sheet-paste.ts';
import { type CellPlace, leftOut, mayLeaveOut, readSheet } from '../../../shop/survey/sheet-reading.ts';
import { type Subject, subjectHead, subjectOf } from '../../../shop/survey/subjects.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { clock } from '../frame/kept.tsx';
import { Mark } from '../frame/mark.tsx';
import { Segments } from '../frame/segments.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { useKit } from '../keep/kit.ts';
import { useSettings } from '../keep/settings.ts';
import { answered } from './answered.ts';
import { Columns, type ColumnsHandle } from './columns.tsx';
import { after, isSame, type SurveyDraft, typedOn } from './draft.ts';
import { Fields, fieldId } from './fields.tsx';
import { FromKit } from './from-kit.tsx';
import { LookAt, Result } from './result.tsx';
import { SetUp } from './set-up.tsx';
import './survey.css';

/** One survey of a job: how it is taken, its cells, and what it says while it is typed. */
export const SheetScreen = ({ id, name }: { readonly id: string; readonly name: string }) => (
  <JobScreen id={id} title={() => 'Survey'}>
    {(open) => {
      const subject = subjectOf(open.job.plan, name);
      return subject ? (
        <Sheet key={name} open={open} subject={subject} />
      ) : (
        <main className="page narrow">
          <p className="say">There is no such survey.</p>
        </main>
      );
    }}
  </JobScreen>
);

/** A run beside the first: one of these at a time. */
const secondRuns = ['back', 'reversed', 'other'] as const;
type SecondRun = (typeof secondRuns)[number];

const withoutColumn = (sheet: SurveySheet, key: string): SurveySheet => ({
  ...sheet,
  cells: Object.fromEntries(Object.entries(sheet.cells).filter(([name]) => name !== key)),
});

function Sheet({ open, subject }: { readonly open: OpenJob; readonly subject: Subject }) {
  const { units } = useSettings();
  const write = useWrite(open.id);
  const { kit } = useKit();
  const named = useMemo(() => (kit ? kitOf(kit.items) : undefined), [kit]);
  const { plan } = open.job;
  const placed = (words: string) => inPlaces(words, plan.places);
  const kept = surveysOf(open.job.live).get(subject.key);
  const [draft, setDraft, finish] = useDraft<SurveyDraft>(draftKey(open.id, 'survey', subject.key), {
    sheet: kept?.sheet ?? newSheet(subject.kind, units),
  });
  const { sheet } = draft;
  const [at, setAt] = useState<CellPlace>();
  const [said, setSaid] = useState<string>();
  const cells = useRef<ColumnsHandle>(null);
  const keep = useRef<HTMLButtonElement>(null);

  const reading = useMemo(() => readSheet(sheet, subject), [sheet, subject]);
  const settled = useDeferredValue(reading);
  const found = useMemo(
    () => (settled.input ? answered(settled.input, settled.from_mm, units) : undefined),
    [settled, units],
  );
  const { layout, missing } = reading;
  const how = hows[sheet.how];
  const now = at && reading.cells[at.column]?.[at.index];
  const gap =
    missing?.at && reading.cells[missing.at.column]?.[missing.at.index]?.is === 'empty'
      ? missing.at
      : undefined;
  const isLine = subject.kind !== 'flatness';

  const type = (next: SurveySheet) => {
    setDraft(typedOn(draft, next));
    setSaid(undefined);
  };
  const deed = (next: SurveySheet, words: string) => setDraft(after(draft, next, words));
  const field = (name: string, text: string) => type({ ...sheet, fields: { ...sheet.fields, [name]: text } });
  const cell = (place: CellPlace, text: string) =>
    withCells(sheet, layout, place.column, place.index, [text]);
  const paste = (place: CellPlace, text: string) => {
    const result = poured(sheet, layout, place, text);
    setSaid(result.ok ? result.said : result.why);
    if (!result.ok) return;
    deed(result.sheet, 'the paste');
    cells.current?.focus(result.next);
  };
  const change = (next: SurveySheet['how']) => {
    const units_of = hows[next].units[units];
    const same = hows[next].reads === how.reads;
    const { kit: _, ...bare } = sheet;
    deed({ ...bare, how: next, unit: same ? sheet.unit : units_of[0] }, 'the change of instrument');
  };
  const column = (key: SecondRun, on: boolean) => {
    const bare = secondRuns.reduce(withoutColumn, sheet);
    deed(on ? { ...bare, cells: { ...bare.cells, [key]: [] } } : bare, 'that');
  };
  const keepIt = () => {
    setSaid(missing?.why);
    if (missing || !reading.input) {
      if (missing?.at) cells.current?.focus(missing.at);
      else if (missing?.field) document.getElementById(fieldId(missing.field))?.focus();
      return;
    }
    const record = {
      what: isLine ? 'line' : 'plate',
      of: subject.of,
      ...(isLine ? { ways: subject.ways, from_mm: reading.from_mm } : {}),
      sheet,
      input: reading.input,
    } as SurveyRecord;
    write({ kind: 'survey taken', ...record });
    setDraft({ sheet });
    finish();
    setSaid(undefined);
  };
  const isKept = kept !== undefined && isSame(kept.sheet, sheet);

  return (
    <main className="page with-foot survey-sheet">
      <div className="survey-heading">
        <div>
          <h2>
            {subjectHead[subject.kind]}, {subject.of}
          </h2>
          <p className="quiet">{placed(`${how.does} ${how.plus}`)}</p>
        </div>
        <Link className="third" href={`/job/${encodeURIComponent(open.id)}/survey`}>
          All surveys
        </Link>
      </div>
      <div className="survey-pair">
        <div className="survey-entry">
          {howsFor[subject.kind].length > 1 ? (
            <div className="field">
              <label htmlFor="survey-how">Surveyed with</label>
              <select
                id="survey-how"
                value={sheet.how}
                onChange={(event) => change(event.target.value as SurveySheet['how'])}
              >
                {howsFor[subject.kind].map((one) => (
                  <option key={one} value={one}>
                    {hows[one].words}
                  </option>
                ))}
              </select>
            </div>
          ) : null}
          <details className="optional" open={reading.filled === 0}>
            <summary>How it is set up</summary>
            <div>
              <SetUp card={surveyCard(sheet.how, subject.kind)} plan={plan} />
              {sheet.cells.reversed ? <SetUp card={edgeTurnedCard(subject.kind)} plan={plan} /> : null}
            </div>
          </details>
          <FromKit sheet={sheet} kit={named} system={units} onPick={deed} />
          <div className="survey-fields">
            <Fields
              sheet={sheet}
              layout={layout}
              names={plainFields(how.fields)}
              lacks={layout.lacks}
              placed={placed}
              onType={field}
            />
          </div>
          {sheet.how === 'straightedge' && subject.kind === 'vertical' ? (
            <details className="optional" open={(sheet.fields.edge_stands ?? '') !== ''}>
              <summary>Its sag and warmth</summary>
              <div>
                <p className="quiet">
                  Said what it stands on, its own sag is worked out and taken out of the readings, and the bow
                  of a warmer top with it.
                </p>
                <div className="survey-fields">
                  <Fields
                    sheet={sheet}
                    layout={layout}
                    names={askedOfEdge(sheet)}
                    lacks={layout.lacks}
                    placed={placed}
                    onType={field}
                  />
                </div>
              </div>
            </details>
          ) : null}
          {layout.lacks ? (
            <p className="say">
              Say the {fieldWords[layout.lacks.field]!.label.toLowerCase()}, and the cells stand here.
            </p>
          ) : (
            <>
              <div className="readings-head">
                <h2>Readings, {unitWords(sheet.unit)}</h2>
                <output className="echo">
                  {now?.is === 'read' ? `${now.echo} is ${now.echoOther}` : null}
                </output>
              </div>
              <Segments
                label="A bare number is in"
                choices={[...new Set([...how.units.metric, ...how.units.inch])].map((unit) => ({
                  value: unit,
                  words: unitWords(unit),
                }))}
                chosen={sheet.unit as (typeof how.units.metric)[number]}
                onChoose={(unit) => type(inUnit(sheet, layout, unit))}
              />
              <p className="quiet">
                {isLine
                  ? placed(`Cells count ${sheet.lengths === 'in' ? 'inches' : 'mm'} from the headstock end. `)
                  : ''}
                Enter moves on. A column or a table can be pasted.
              </p>
              {isLine ? (
                <div className="survey-runs">
                  <button
                    type="button"
                    className="second"
                    aria-pressed={sheet.cells.back !== undefined}
                    onClick={() => column('back', sheet.cells.back === undefined)}
                  >
                    And back again
                  </button>
                  {sheet.how === 'parallel' ? (
                    <button
                      type="button"
                      className="second"
                      aria-pressed={sheet.cells.other !== undefined}
                      onClick={() => column('other', sheet.cells.other === undefined)}
                    >
                      The other way too, from one reference
                    </button>
                  ) : null}
                  {sheet.how === 'straightedge' ? (
                    <button
                      type="button"
                      className="second"
                      aria-pressed={sheet.cells.reversed !== undefined}
                      onClick={() => column('reversed', sheet.cells.reversed === undefined)}
                    >
                      Straightedge turned over
                    </button>
                  ) : null}
                </div>
              ) : null}
              <Columns
                sheet={sheet}
                placed={placed}
                reading={reading}
                handle={cells}
                onType={(place, text) => type(cell(place, text))}
                onPaste={paste}
                onFocus={setAt}
                onEnd={() => keep.current?.focus()}
              />
              {gap && mayLeaveOut(sheet) && reading.filled > 0 ? (
                <button type="button" className="third" onClick={() => deed(cell(gap, leftOut), 'that')}>
                  Leave {layout.columns.find(({ key }) => key === gap.column)!.places[gap.index]} out
                </button>
              ) : null}
            </>
          )}
        </div>
        <div className={isKept ? 'survey-result first' : 'survey-result'}>
          {found ? (
            <>
              {reading.isWhole ? null : (
                <p className="quiet">
                  So far: {reading.filled} of {reading.total} readings.
                </p>
              )}
              <Result found={found} system={units} places={plan.places} />
              <LookAt
                found={found}
                sheet={sheet}
                reading={settled}
                onGo={(place) => cells.current?.focus(place)}
                onTurn={(place) => deed(turned(sheet, layout, place), 'the turning of signs')}
                onReverse={(key) => deed(reversedOrder(sheet, key), 'the turning round')}
              />
            </>
          ) : layout.lacks ? null : (
            <p className="quiet">
              {reading.filled === 0
                ? `${reading.total} readings to take. The answer stands here and grows with them.`
                : `${reading.filled} of ${reading.total} readings.`}
            </p>
          )}
        </div>
      </div>
      <footer className="foot">
        <div className="beside survey-undo">
          <p role="status">{said ?? keptWords(kept?.at, isKept, missing?.why)}</p>
          {draft.before ? (
            <button
              type="button"
              className="third"
              onClick={() => {
                setDraft({ sheet: draft.before!.sheet });
                setSaid(undefined);
              }}
            >
              <Mark name="undo" size={20} />
              Undo {draft.before.deed}
            </button>
          ) : null}
          {kept && !isKept ? (
            <button
              type="button"
              className="third"
              onClick={() => {
                deed(kept.sheet, 'that');
                setSaid(undefined);
              }}
            >
              Back to what was kept
            </button>
          ) : null}
          {kept && isKept ? (
            <button
              type="button"
              className="third"
              onClick={() => {
                setDraft({ sheet });
                write({ kind: 'undone', entry: kept.entry });
                setSaid('Undone. What you typed stays on the sheet.');
              }}
            >
              <Mark name="undo" size={20} />
              Undo this survey
            </button>
          ) : null}
        </div>
        <button ref={keep} type="button" className="go" onClick={keepIt}>
          {kept && !isKept ? 'Keep it anew' : 'Keep this survey'}
          {layout.lacks ? null : (
            <span className="end">
              {reading.filled} of {reading.total}
            </span>
          )}
        </button>
      </footer>
    </main>
  );
}

function keptWords(at: string | undefined, isKept: boolean, missing: string | undefined): string {
  if (isKept && at !== undefined) return `Kept ${clock(at)}.`;
  if (at !== undefined) return 'Changed since it was kept.';
  return missing ?? 'All readings are in.';
}
