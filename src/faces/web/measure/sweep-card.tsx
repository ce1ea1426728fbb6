import { memo, useDeferredValue, useMemo, useRef, useState } from 'react';
import type { Deed, JobPlan } from '../../../core/ledger/entry.ts';
import { asMade } from '../../../core/ledger/other-side.ts';
import type { SweepSetup } from '../../../core/ledger/setup.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { type DeviationUnit, systemOf, type UnitSystem, unitSign } from '../../../core/quantity/unit.ts';
import { sweepSentence } from '../../../shop/measure/sweep-sentence.ts';
import { stopDistances } from '../../../shop/measure/sweep-so-far.ts';
import { Wrong } from '../frame/notice.tsx';
import { Words } from '../frame/phrase.tsx';
import { useSame } from '../frame/same.ts';
import { Segments } from '../frame/segments.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { PushShown, ReadButton } from '../practice/lazy.tsx';
import { shownDeviation } from '../practice/shown-text.ts';
import { CardDrawing, CardWords } from './card-words.tsx';
import { Cells, type CellsHandle } from './cells.tsx';
import { withPush } from './draft.ts';
import { OffQuestion } from './off-question.tsx';
import { Optional } from './optional.tsx';
import { PushTest } from './push-test.tsx';
import { SweepFitPlot } from './sweep-fit-plot.tsx';
import { emptySweep, missingFrom, poured, readSweep, type SweepReading, withUnit } from './sweep-reading.ts';
import { UnitQuestion } from './unit-question.tsx';
import { WhichSide } from './which-side.tsx';

/** Units of a column of readings, the usual one of each system first. */
const columns: Readonly<Record<'inch' | 'metric', readonly DeviationUnit[]>> = {
  inch: ['tenths', 'thou', 'in'],
  metric: ['um', 'mm'],
};

export interface CardProps<S> {
  readonly jobId: string;
  readonly plan: JobPlan;
  readonly setup: S;
  readonly round: number;
  /** 0 for the first time in this round; a repeat is kept beside the others, never over them. */
  readonly repeat: number;
  readonly onKeep: (deed: Deed) => void;
  /** The job, when it is of a practice machine: its instruments can be read by a button. */
  readonly practice?: OpenJob;
}

/** A reading as it was understood. */
const echoOf = (cell: SweepReading['cells'][number]): string => (cell?.ok ? cell.echo : '');

/** One sweep: what rides, touches and is plus; the push test; a cell a stop; what the sweep says by itself. */
export function SweepCard(props: CardProps<SweepSetup>) {
  const { jobId, plan, setup: card, round, repeat, onKeep, practice } = props;
  const { units } = useSettings();
  const [draft, setDraft, finish] = useDraft(
    draftKey(jobId, round, card.id, repeat),
    emptySweep(card, columns[units][0]!),
  );
  const setup = useSame(asMade(card, draft, plan.places));
  const [at, setAt] = useState(0);
  const [asked, setAsked] = useState<string>();
  const [pasteWrong, setPasteWrong] = useState<string>();
  const cells = useRef<CellsHandle>(null);
  const push = useRef<HTMLButtonElement>(null);
  const keep = useRef<HTMLButtonElement>(null);

  const distances_mm = useMemo(() => stopDistances(setup), [setup]);
  const places = useMemo(() => distances_mm.map((mm) => sayLength(mm, units).text), [distances_mm, units]);
  // What is typed shows with the key; what it comes to is worked out in the moment after.
  const later = useDeferredValue(draft);
  const reading = useMemo(() => readSweep(later, setup, plan), [later, setup, plan]);
  const now = reading.cells[at];

  const type = (stop: number, text: string) =>
    setDraft({ ...draft, typed: draft.typed.map((old, i) => (i === stop ? text : old)) });
  const pour = (stop: number, text: string) => {
    const result = poured(draft, stop, text);
    setPasteWrong(result.ok ? undefined : result.why);
    if (!result.ok) return;
    setDraft(result.draft);
    cells.current?.focus(result.next);
  };
  const keepIt = () => {
    const reading = readSweep(draft, setup, plan);
    const missing = missingFrom(reading, draft, places);
    setAsked(missing?.why);
    if (!missing) {
      const readings = draft.typed.map((typed, i) => ({ typed, value: reading.values_um[i]! }));
      const again = repeat > 0 ? { repeat } : {};
      onKeep({ kind: 'sweep taken', round, setup: setup.id, ...again, record: reading.record, readings });
      finish();
    } else if (missing.stop !== undefined) cells.current?.focus(missing.stop);
    else if (draft.push === undefined) push.current?.focus();
  };

  return (
    <div className="card">
      <CardDrawing setup={setup} plan={plan} places={places} />
      <div>
        <CardWords setup={setup} />
        {practice ? null : (
          <WhichSide
            setup={setup}
            other={draft.other_side === true}
            onOther={(other_side) => setDraft({ ...draft, other_side })}
          />
        )}
        {practice ? <PushShown open={practice} setup={setup.id} repeat={repeat} units={units} /> : null}
        <PushTest push={draft.push} first={push} onPush={(answer) => setDraft(withPush(draft, answer))} />
      </div>
      <div className="enter">
        <div className="readings-head">
          <h2>Readings, {unitSign[draft.unit]}</h2>
          <p className="quiet">Enter moves on. A column can be pasted.</p>
          <Segments
            label="A bare number is in"
            choices={columns[systemOf(draft.unit)].map((unit) => ({ value: unit, words: unitSign[unit] }))}
            chosen={draft.unit}
            onChoose={(unit) => setDraft(withUnit(draft, unit))}
          />
          <output className="echo">{now?.ok ? `${now.echo} is ${now.echoOther}` : null}</output>
        </div>
        {practice ? (
          <ReadButton
            open={practice}
            setup={setup}
            repeat={repeat}
            onRead={(values) =>
              setDraft({ ...draft, typed: values.map((um) => shownDeviation(um, draft.unit)) })
            }
          />
        ) : null}
        <Cells
          label={`Readings, ${unitSign[draft.unit]}`}
          handle={cells}
          cells={draft.typed.map((typed, i) => {
            const cell = reading.cells[i];
            return { place: places[i]!, typed, wrong: cell && !cell.ok ? cell.why : undefined };
          })}
          onType={type}
          onColumn={pour}
          onFocus={setAt}
          onEnd={() => keep.current?.focus()}
        />
        {pasteWrong === undefined ? null : <Wrong role="alert">{pasteWrong}</Wrong>}
        {reading.unit_asked ? (
          <UnitQuestion
            asked={reading.unit_asked}
            // The figures as they stand, taken in the other unit.
            onUnit={(unit) => setDraft({ ...draft, unit })}
            onKeep={() => setDraft({ ...draft, kept_unit: draft.typed })}
          />
        ) : null}
        {reading.off.map((off) => (
          <OffQuestion
            key={off.stop}
            off={off}
            place={places[off.stop]!}
            typed={draft.typed[off.stop]!}
            echo={echoOf(reading.cells[off.stop])}
            units={systemOf(draft.unit)}
            onTurn={(text) => type(off.stop, text)}
            onKeep={() =>
              setDraft({ ...draft, kept_off: { ...draft.kept_off, [off.stop]: draft.typed[off.stop]! } })
            }
            onReadAgain={() => cells.current?.focus(off.stop)}
          />
        ))}
        <div className="out">
          <p className="say" aria-live="polite">
            <SweepSays
              reading={reading}
              setup={setup}
              plan={plan}
              units={units}
              turned={later.push === 'fell'}
            />
          </p>
          <footer className="foot">
            <p role="status">{asked ?? `${reading.filled} of ${setup.points} readings`}</p>
            <button ref={keep} type="button" className="go" onClick={keepIt}>
              Keep this sweep
            </button>
          </footer>
        </div>
        <SweepDrawn
          reading={reading}
          distances_mm={distances_mm}
          unit={later.unit}
          turned={later.push === 'fell'}
        />
        <Optional draft={draft} onChange={setDraft} face={setup.face} />
      </div>
    </div>
  );
}

/** What the sweep says by itself, as far as it goes. */
const SweepSays = memo(function SweepSays(props: {
  readonly reading: SweepReading;
  readonly setup: SweepSetup;
  readonly plan: JobPlan;
  readonly units: UnitSystem;
  readonly turned: boolean;
}) {
  const { reading, setup, plan, units, turned } = props;
  return reading.look ? <Words phrase={sweepSentence(reading.look, setup, plan, units, turned)} /> : null;
});

const SweepDrawn = memo(function SweepDrawn(props: {
  readonly reading: SweepReading;
  readonly distances_mm: readonly number[];
  readonly unit: DeviationUnit;
  readonly turned: boolean;
}) {
  const { reading, distances_mm, unit, turned } = props;
  return reading.look ? (
    <SweepFitPlot
      distances_mm={distances_mm}
      values_um={reading.values_um.map((value) => (value !== undefined && turned ? -value : value))}
      look={reading.look}
      unit={unit}
    />
  ) : null;
});
