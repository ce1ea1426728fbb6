import type { PlaceWords } from '../../../core/ledger/setup.ts';
import type { SurveySheet } from '../../../core/ledger/survey-record.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import { told } from '../../../core/quantity/told.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { inPlaces } from '../../../shop/survey/places.ts';
import {
  closureWords,
  edgeBendWords,
  warningWords,
  wearWords,
  worstOf,
} from '../../../shop/survey/screen-words.ts';
import type { CellPlace, SheetReading } from '../../../shop/survey/sheet-reading.ts';
import { Figure } from '../figure.tsx';
import { Mark, VerdictWord } from '../frame/mark.tsx';
import { ShowWorking } from '../frame/show-working.tsx';
import { useWidth } from '../frame/width.ts';
import { type Answered, workingOf } from './answered.ts';
import { ByDrawing } from './by-drawing.tsx';
import { leading, sentenceOf, surveyFigure } from './figures.ts';

interface Shown {
  readonly found: Answered;
  readonly system: UnitSystem;
  readonly places: PlaceWords;
}

/** What a survey says: the sentence, the number with its doubt, the verdict, the picture, then closure and the worst place. */
export function Result({ found, system, places }: Shown) {
  const said = leading(found, system);
  const { decision } = found.answer;
  return (
    <>
      <p className="say">{sentenceOf(found, system)}</p>
      <div className="survey-lead">
        <div className="num hero long">
          {said.number}
          {said.doubt === undefined ? null : <span className="doubt"> ± {said.doubt}</span>}
        </div>
        <div className="unit hero-unit">{said.unit}</div>
        {decision ? <VerdictWord verdict={decision.verdict} side="high" /> : null}
      </div>
      <Picture found={found} system={system} places={places} />
      <div className="rows survey-facts">
        {facts(found, system).map(([head, text]) => (
          <p key={head}>
            <b>{head}</b> <span>{inPlaces(text, places)}</span>
          </p>
        ))}
      </div>
      <ByDrawing found={found} system={system} />
      <ShowWorking lines={workingOf(found, system)} />
    </>
  );
}

function Picture({ found, system, places }: Shown) {
  const [ref, width] = useWidth<HTMLDivElement>(358);
  return (
    <div ref={ref}>
      <Figure shape={surveyFigure(found, system, width, places)} />
    </div>
  );
}

function facts(found: Answered, system: UnitSystem): [string, string][] {
  if (found.sort === 'along') {
    const { drift, over_bridge_um } = found.answer;
    const tell = told(system)[found.answer.kind === 'twist' ? 'angle' : 'size'];
    return [
      ...(drift
        ? [
            [
              'Run back',
              `It ends ${tell(drift.closing, { decimals: 1 })} from where the run there began. A drift of ${tell(drift.per_reading, { sd: drift.sd })} from reading to reading is taken out.`,
            ] as [string, string],
          ]
        : []),
      ...(over_bridge_um === undefined
        ? []
        : [
            ['Over the bridge', sayDeviation(over_bridge_um, system, { signed: false }).text] as [
              string,
              string,
            ],
          ]),
    ];
  }
  if (found.sort === 'plate') {
    const { stepped, flatness_um, sd, closures } = found.answer;
    const width = sayDeviation(flatness_um.least_squares, system, {
      signed: false,
      ...(sd ? { sd: sd.least_squares } : {}),
    }).text;
    const worst = closures.toSorted((a, b) => Math.abs(b.closing_um) - Math.abs(a.closing_um))[0];
    return [
      ['Least squares', width],
      ...(stepped
        ? [
            [
              'Where to scrape',
              `In passes of ${sayDeviation(stepped.pass_um, system, { signed: false }).text}, ${Math.max(...stepped.passes)} at most: ${sayDeviation(stepped.after_um, system, { signed: false }).text} is left if every pass takes what it should.`,
            ] as [string, string],
          ]
        : []),
      ...(worst
        ? [
            [
              'Closing',
              `Largest of ${closures.length}: ${sayDeviation(worst.closing_um, system, worst.sd_um === undefined ? {} : { sd: worst.sd_um }).text}, ${warningWords({ code: '', text: worst.name }, found.input.kind === 'grid' ? 'level grid' : 'eight lines').toLowerCase()}.`,
            ] as [string, string],
          ]
        : []),
    ];
  }
  const { answer } = found;
  const worst = worstOf(answer);
  const closure = answer.closure?.closes ? closureWords(answer, system) : undefined;
  const bend = edgeBendWords(answer, system);
  const wear = wearWords(answer, found.from_mm, system);
  const um = (value: number, sd: number | undefined) =>
    sayDeviation(value, system, { signed: false, ...(sd === undefined ? {} : { sd }) }).text;
  const { straightness_um: widths, sd } = answer;
  return [
    [
      'Worst place',
      `${sayDeviation(worst.um, system, worst.sd_um === undefined ? {} : { sd: worst.sd_um }).text} from the line through the ends, at ${sayLength(answer.stations_mm[worst.index]!, system).text}.`,
    ],
    ...(bend ? [['Straightedge', bend] as [string, string]] : []),
    ...(wear ? [['Wear', wear] as [string, string]] : []),
    ...(closure ? [['Run back', closure] as [string, string]] : []),
    [
      'By other lines',
      `End points ${um(widths.endpoint, sd?.straightness_um.endpoint)}, least squares ${um(widths.least_squares, sd?.straightness_um.least_squares)}. ${sd ? '± is two sd, 19 times in 20.' : ''}`,
    ],
  ];
}

/** What the readings hint at: what and where, and what can be done about it; nothing was changed. */
export function LookAt(props: {
  readonly found: Answered;
  readonly sheet: SurveySheet;
  readonly reading: SheetReading;
  readonly onGo: (at: CellPlace) => void;
  readonly onTurn: (at: CellPlace) => void;
  readonly onReverse: (column: string) => void;
}) {
  const { found, sheet, reading, onGo, onTurn, onReverse } = props;
  const { warnings } = found.answer;
  const nameOf = (at: CellPlace | undefined) =>
    at && reading.layout.columns.find(({ key }) => key === at.column)?.places[at.index];
  if (warnings.length + reading.notices.length === 0) return null;
  return (
    <section className="look-at" aria-label="Look at">
      <h2>Look at</h2>
      <p className="quiet">Nothing is lost or left out: every reading counts as typed.</p>
      {reading.notices.map(({ text, at }) => (
        <Notice key={text} text={text}>
          <Go at={at} place={nameOf(at)} onGo={onGo} />
        </Notice>
      ))}
      {warnings.map((warning) => {
        const at = reading.placeOf(warning.path);
        return (
          <Notice key={warning.code + warning.text} text={warningWords(warning, sheet.how, nameOf(at))}>
            {warning.code === 'signs turned from here' && at ? (
              <button type="button" className="third" onClick={() => onTurn(at)}>
                Turn signs from {nameOf(at)} on
              </button>
            ) : null}
            {warning.code === 'run back with signs turned' ? (
              <button type="button" className="third" onClick={() => onTurn({ column: 'back', index: 0 })}>
                Turn the signs of the run back
              </button>
            ) : null}
            {warning.code === 'run back in order there' ? (
              <button type="button" className="third" onClick={() => onReverse('back')}>
                Turn the run back round
              </button>
            ) : null}
            {at ? <Go at={at} place={nameOf(at)} onGo={onGo} /> : null}
          </Notice>
        );
      })}
    </section>
  );
}

const Notice = ({ text, children }: { readonly text: string; readonly children: React.ReactNode }) => (
  <div className="survey-notice">
    <Mark name="caution" size={20} />
    <div>
      <p>{text}</p>
      {children}
    </div>
  </div>
);

const Go = (props: {
  readonly at: CellPlace;
  readonly place: string | undefined;
  readonly onGo: (at: CellPlace) => void;
}) => (
  <button type="button" className="third" onClick={() => props.onGo(props.at)}>
    Go to {props.place}
  </button>
);
