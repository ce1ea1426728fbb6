import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { kitOf } from '../../../core/ledger/kit-ledger.ts';
import { surveyKey, surveysOf, type TakenSurvey } from '../../../core/ledger/survey-record.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { siteSentence } from '../../../shop/site-words.ts';
import { bedForm } from '../../../shop/survey/bed-form.ts';
import { hows } from '../../../shop/survey/sheet-hows.ts';
import { type Subject, subjectHead, surveySubjects } from '../../../shop/survey/subjects.ts';
import type { WorkDraft } from '../../../shop/survey/work-typed.ts';
import { Figure } from '../figure.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import { Mark, VerdictWord } from '../frame/mark.tsx';
import { Segments } from '../frame/segments.tsx';
import { useWidth } from '../frame/width.ts';
import { draftKey, useDraft } from '../keep/draft.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { useKit } from '../keep/kit.ts';
import { useSettings } from '../keep/settings.ts';
import { phoneShelf } from '../keep/shelf.ts';
import { surveyAddress } from './address.ts';
import { answered } from './answered.ts';
import { leading } from './figures.ts';
import { HingeAndRock } from './hinge-rock.tsx';
import { PrintPlace, siteOf } from './print-place.tsx';
import { References } from './references.tsx';
import { allStrips, type FoundLine, foundLines } from './strips.ts';
import './survey.css';

/** The bed as it is surveyed: every way on one axis, where to print, and what is still to be surveyed. */
export const SurveyScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id} title={() => 'Survey'}>
    {(open) => <Overview open={open} />}
  </JobScreen>
);

function Overview({ open }: { readonly open: OpenJob }) {
  const { units } = useSettings();
  const { plan, live } = open.job;
  const { kit } = useKit();
  const named = useMemo(() => (kit ? kitOf(kit.items) : undefined), [kit]);
  const surveys = useMemo(() => surveysOf(live), [live]);
  const lines = useMemo(() => foundLines(surveys.values(), units), [surveys, units]);
  const form = useMemo(() => (surveys.size ? bedForm(plan, surveys) : undefined), [plan, surveys]);
  const [work, setWork] = useDraft<WorkDraft>(draftKey(open.id, 'where to print'), {});
  const site = useMemo(() => siteOf(plan, form, work, units), [plan, form, work, units]);
  const subjects = surveySubjects(plan);
  const own = [...surveys.values()].filter(
    (one) => !subjects.some((subject) => subject.key === surveyKey(one)),
  );
  const next = subjects.find(({ key }) => !surveys.has(key));
  return (
    <main className="page with-foot">
      <p className="say">
        {sentence(lines, subjects, form?.ok === true && site?.ok ? siteSentence(site, units) : undefined)}
      </p>
      {lines.length ? (
        <Strips open={open} lines={lines} site={site?.ok ? site : undefined} system={units} />
      ) : null}
      <div className="survey-pair">
        <div className="survey-entry">
          <section>
            <h2>Ways</h2>
            <ul className="rows">
              {subjects.map((subject) => (
                <Row
                  key={subject.key}
                  open={open}
                  subject={subject}
                  taken={surveys.get(subject.key)}
                  system={units}
                />
              ))}
            </ul>
          </section>
          <section>
            <h2>Faces and other lines</h2>
            <ul className="rows">
              {own.map((one) => (
                <Row
                  key={one.entry}
                  open={open}
                  subject={{ key: surveyKey(one), kind: kindOf(one), of: one.of, ways: [] }}
                  taken={one}
                  system={units}
                />
              ))}
            </ul>
            <Another open={open} />
          </section>
          <References open={open} kit={named} system={units} />
          <HingeAndRock open={open} />
        </div>
        <div className="survey-result">
          {form?.ok && site ? (
            <PrintPlace plan={plan} form={form} site={site} draft={work} onDraft={setWork} system={units} />
          ) : (
            <section>
              <h2>Where to print</h2>
              <p className="quiet">
                {form && !form.ok
                  ? `Told once the bed’s form is known under every pad. To survey yet: ${form.lacks.join('; ')}.`
                  : 'Told once every way under the pads is surveyed: what each place costs in what the machine makes, and the best of them.'}
              </p>
            </section>
          )}
        </div>
      </div>
      <footer className="foot">
        {!next && site?.ok && site.advice === 'print' ? (
          <Link className="go" href={`/job/${encodeURIComponent(open.id)}/print`}>
            Print at {sayLength(site.best.at_mm, units).text}
            <span className="end">enter the print</span>
          </Link>
        ) : (
          <Link className="go" href={surveyAddress(open.id, (next ?? subjects[0]!).key)}>
            Survey {(next ?? subjects[0]!).of}, {subjectHead[(next ?? subjects[0]!).kind].toLowerCase()}
            <span className="end">
              {subjects.filter(({ key }) => surveys.has(key)).length} of {subjects.length}
            </span>
          </Link>
        )}
      </footer>
    </main>
  );
}

const kindOf = (one: TakenSurvey): Subject['kind'] =>
  one.what === 'plate'
    ? 'flatness'
    : one.input.kind === 'twist' || one.input.kind === 'parallel'
      ? one.input.kind
      : (one.input.direction ?? 'vertical');

function sentence(
  lines: readonly FoundLine[],
  subjects: readonly Subject[],
  why: string | undefined,
): string {
  if (why !== undefined) return why;
  if (lines.length === 0)
    return `No way is surveyed yet. ${subjects.length} surveys tell the bed’s form and where to print.`;
  const left = subjects.filter(({ key }) => !lines.some((one) => surveyKey(one) === key)).length;
  return left === 0
    ? 'Every way is surveyed.'
    : `${lines.length === 1 ? 'One survey is' : `${lines.length} surveys are`} kept; ${left === 1 ? 'one is' : `${left} are`} still to take.`;
}

function Strips(props: {
  readonly open: OpenJob;
  readonly lines: readonly FoundLine[];
  readonly site: Parameters<typeof allStrips>[1];
  readonly system: UnitSystem;
}) {
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const { pads, free } = props.open.job.plan.slide;
  const travel = 'xyz'.indexOf(free);
  const reach = [
    Math.min(...pads.map((pad) => pad.centre_mm[travel]! - pad.length_mm / 2)),
    Math.max(...pads.map((pad) => pad.centre_mm[travel]! + pad.length_mm / 2)),
  ] as const;
  return (
    <div ref={ref}>
      <Figure
        shape={allStrips(props.lines, props.site, reach, props.system, width, props.open.job.plan.places)}
      />
    </div>
  );
}

function Row(props: {
  readonly open: OpenJob;
  readonly subject: Subject;
  readonly taken: TakenSurvey | undefined;
  readonly system: UnitSystem;
}) {
  const { open, subject, taken, system } = props;
  const found = taken && answered(taken.input, taken.what === 'line' ? taken.from_mm : 0, system);
  const isBegun = phoneShelf.read(draftKey(open.id, 'survey', subject.key)) !== null;
  return (
    <li>
      <Link className="choice survey-row" href={surveyAddress(open.id, subject.key)}>
        <span>
          <b>
            {subjectHead[subject.kind]}, {subject.of}
          </b>
          <small>
            {subject.ways.length > 1 ? `${subject.ways.join(' and ')}; ` : ''}
            {taken
              ? [hows[taken.sheet.how].words, ...Object.values(taken.sheet.kit ?? {})].join(', ')
              : isBegun
                ? 'begun, not kept yet'
                : 'not surveyed yet'}
          </small>
        </span>
        <span className="survey-said">
          {found ? <b className="nb">{leading(found, system).text}</b> : null}
          {found?.answer.decision ? (
            <VerdictWord verdict={found.answer.decision.verdict} side="high" />
          ) : null}
        </span>
        <Mark name="arrow right" size={20} />
      </Link>
    </li>
  );
}

/** A face, or a line that is no way of this job, by the name the user gives it. */
function Another({ open }: { readonly open: OpenJob }) {
  const [, go] = useLocation();
  const [name, setName] = useState('');
  const [kind, setKind] = useState<Subject['kind']>('flatness');
  const begin = () => {
    if (name.trim() === '') document.getElementById('survey-name')?.focus();
    else go(surveyAddress(open.id, `${kind} of ${name.trim()}`));
  };
  return (
    <form
      className="survey-another"
      onSubmit={(event) => {
        event.preventDefault();
        begin();
      }}
    >
      <div className="field">
        <label htmlFor="survey-name">Survey another face or line, called</label>
        <input
          id="survey-name"
          value={name}
          maxLength={80}
          placeholder="surface plate, tailstock ways"
          autoComplete="off"
          onChange={(event) => setName(event.target.value)}
        />
      </div>
      <Segments
        label="What of it"
        choices={[
          { value: 'flatness', words: 'flatness' },
          { value: 'vertical', words: 'straightness' },
          { value: 'parallel', words: 'parallel' },
        ]}
        chosen={kind}
        onChoose={setKind}
      />
      <button type="submit" className="second">
        Survey it
      </button>
    </form>
  );
}
