import { useRef, useState } from 'react';
import type { HeightSetup, LevelSetup } from '../../../core/ledger/setup.ts';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { readSlope, type SlopeUnit, slopeSign } from '../../../core/quantity/slope.ts';
import { type DeviationUnit, unitSign } from '../../../core/quantity/unit.ts';
import { likelierDeviation, likelierSlope, type UnitAsked } from '../../../shop/measure/likelier-unit.ts';
import { Segments } from '../frame/segments.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { useSettings } from '../keep/settings.ts';
import { ReadButton } from '../practice/lazy.tsx';
import { shownDeviation, shownSlope } from '../practice/shown-text.ts';
import { CardDrawing, CardWords } from './card-words.tsx';
import { Cells, type CellsHandle } from './cells.tsx';
import { type CardDraft, recordOf, temperatureOf, unitIsKept, withPush } from './draft.ts';
import { Optional } from './optional.tsx';
import { PushTest } from './push-test.tsx';
import type { CardProps } from './sweep-card.tsx';
import { UnitQuestion } from './unit-question.tsx';

type SingleUnit = SlopeUnit | DeviationUnit;

const levelUnits = {
  metric: ['um/m', 'mm/m', 'arcsec'],
  inch: ['thou/12 in', 'arcsec', 'um/m'],
} as const satisfies Record<string, readonly SlopeUnit[]>;
const heightUnits = {
  metric: ['um', 'mm'],
  inch: ['tenths', 'thou', 'in'],
} as const satisfies Record<string, readonly DeviationUnit[]>;

const isDeviation = (unit: SingleUnit): unit is DeviationUnit => Object.hasOwn(unitSign, unit);

/** What a single cell says: understood with its value (µrad or µm) and echo, or why not. */
function readOne(typed: string, unit: SingleUnit) {
  if (typed.trim() === '') return undefined;
  if (isDeviation(unit)) {
    const read = readDeviation(typed, unit);
    return read.ok ? { ...read, value: read.um } : read;
  }
  const read = readSlope(typed, unit);
  return read.ok ? { ...read, value: read.urad } : read;
}

const likelierOf = (typed: string, unit: SingleUnit): UnitAsked<SingleUnit> | undefined =>
  isDeviation(unit) ? likelierDeviation([typed], unit) : likelierSlope(typed, unit);

/** One level or one height: a card with a single cell. */
export function SingleCard(props: CardProps<LevelSetup | HeightSetup>) {
  const { jobId, plan, setup, round, repeat, onKeep, practice } = props;
  const { units } = useSettings();
  const choices: readonly SingleUnit[] = setup.kind === 'level' ? levelUnits[units] : heightUnits[units];
  const start: CardDraft<SingleUnit> = { unit: choices[0]!, typed: [''] };
  const [draft, setDraft, finish] = useDraft(draftKey(jobId, round, setup.id, repeat), start);
  const [asked, setAsked] = useState<string>();
  const cells = useRef<CellsHandle>(null);
  const push = useRef<HTMLButtonElement>(null);
  const keep = useRef<HTMLButtonElement>(null);
  const typed = draft.typed[0] ?? '';
  const read = readOne(typed, draft.unit);
  const unitAsked = unitIsKept(draft) ? undefined : likelierOf(typed, draft.unit);
  const pushed = setup.kind === 'level' || draft.push !== undefined;
  const name = setup.kind === 'level' ? 'level' : 'height';

  const keepIt = () => {
    const temperature = temperatureOf(draft.temperature);
    const why = !pushed
      ? 'Say first what the number did when you pushed.'
      : !read?.ok
        ? read
          ? 'The reading cannot be read yet.'
          : 'The reading is missing.'
        : unitAsked
          ? 'Say first which unit the reading is in.'
          : typeof temperature === 'string'
            ? temperature
            : undefined;
    setAsked(why);
    if (why !== undefined || !read?.ok) {
      if (!pushed) push.current?.focus();
      else if (!read?.ok) cells.current?.focus(0);
      return;
    }
    onKeep({
      kind: setup.kind === 'level' ? 'level read' : 'height read',
      round,
      setup: setup.id,
      ...(repeat > 0 ? { repeat } : {}),
      record: recordOf(draft),
      reading: { typed, value: read.value },
    });
    finish();
  };

  return (
    <div className="card">
      <CardDrawing setup={setup} plan={plan} />
      <div>
        <CardWords setup={setup} />
        {setup.kind === 'height' ? (
          <PushTest push={draft.push} first={push} onPush={(answer) => setDraft(withPush(draft, answer))} />
        ) : null}
      </div>
      <div className="enter">
        <div className="readings-head">
          <h2>Reading, {isDeviation(draft.unit) ? unitSign[draft.unit] : slopeSign(draft.unit)}</h2>
          <Segments
            label="A bare number is in"
            choices={choices.map((unit) => ({
              value: unit,
              words: isDeviation(unit) ? unitSign[unit] : slopeSign(unit),
            }))}
            chosen={draft.unit}
            onChoose={(unit) => setDraft({ ...draft, unit, typed: [read?.ok ? read.echo : typed] })}
          />
          <output className="echo">{read?.ok ? `${read.echo} is ${read.echoOther}` : null}</output>
        </div>
        {practice ? (
          <ReadButton
            open={practice}
            setup={setup}
            repeat={repeat}
            onRead={([value = 0]) => {
              const { unit } = draft;
              const text = isDeviation(unit) ? shownDeviation(value, unit) : shownSlope(value, unit);
              setDraft({ ...draft, typed: [text] });
            }}
          />
        ) : null}
        <Cells
          label={`Reading, ${isDeviation(draft.unit) ? unitSign[draft.unit] : slopeSign(draft.unit)}`}
          handle={cells}
          cells={[{ place: setup.name, typed, wrong: read && !read.ok ? read.why : undefined }]}
          onType={(_, text) => setDraft({ ...draft, typed: [text] })}
          onColumn={(_, text) => setDraft({ ...draft, typed: [text.trim()] })}
          onFocus={() => undefined}
          onEnd={() => keep.current?.focus()}
        />
        {unitAsked ? (
          <UnitQuestion
            asked={unitAsked}
            onUnit={(unit) => {
              setAsked(undefined);
              setDraft({ ...draft, unit });
            }}
            onKeep={() => {
              setAsked(undefined);
              setDraft({ ...draft, kept_unit: draft.typed });
            }}
          />
        ) : null}
        <div className="out">
          <span />
          <footer className="foot">
            <p role="status">
              {asked ??
                (setup.kind === 'level'
                  ? 'Turn the level end for end and read again: the mean is free of its own error.'
                  : '')}
            </p>
            <button ref={keep} type="button" className="go" onClick={keepIt}>
              Keep this {name}
            </button>
          </footer>
        </div>
        <Optional draft={draft} onChange={setDraft} />
      </div>
    </div>
  );
}
