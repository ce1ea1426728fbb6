import type { Alarm } from '../../../core/estimate/cause.ts';
import { causeId } from '../../../core/estimate/cause-name.ts';
import { roundRecord } from '../../../core/ledger/round-record.ts';
import { scrapedIn } from '../../../core/ledger/steer-input.ts';
import { gauge } from '../../../draw/gauge.ts';
import { alarmState, askedFor, movedBy } from '../../../shop/bench/alarm-state.ts';
import { causeQuestion } from '../../../shop/bench/cause-question.ts';
import { causeWords, fitsFound, placedCauses } from '../../../shop/bench/cause-words.ts';
import { featureLine } from '../../../shop/bench/feature-line.ts';
import { mendDeeds } from '../../../shop/bench/mend-record.ts';
import { capital } from '../../../shop/phrase.ts';
import { Figure } from '../figure.tsx';
import { Mark } from '../frame/mark.tsx';
import { useWidth } from '../frame/width.ts';
import { useWrite } from '../keep/jobs.ts';
import type { BenchView } from './bench.tsx';
import { gaugeBand } from './gauge-band.ts';
import { PracticeTruth } from './practice-truth.tsx';

/** It went otherwise than asked: what was asked, what was found, what would explain it, and one look at the metal. */
export function AlarmBench({ view, alarm }: { readonly view: BenchView; readonly alarm: Alarm }) {
  const { open, units, record } = view;
  const { plan, live, round } = open.job;
  const write = useWrite(open.id);
  const line = featureLine(plan, { name: alarm.feature, ...alarm.found }, units);
  const { say } = line.scale;
  const ask = alarmState(alarm, record.causes).ask;
  // The scraping in question came before the readings of the cause's round, which is counted from 0.
  const scraped = (ask && scrapedIn(plan, roundRecord(live, ask.round))?.passes) ?? {};
  const question = ask && causeQuestion(ask.cause, plan, scraped);
  const wanted = askedFor(alarm, say);
  const moved = movedBy(alarm, say);
  const short = (value: { value: number; sd: number }) => {
    const said = say(value.value, { sd: value.sd });
    return `${said.sign}${said.number} ± ${said.doubt ?? '0'}`;
  };
  const settle = (answer: 'yes' | 'no' | 'cannot tell') => {
    if (!ask) return;
    write({ kind: 'cause settled', round, cause: causeId(ask), answer });
    if (answer === 'yes') for (const deed of mendDeeds(ask, plan, live)) write(deed);
  };
  return (
    <>
      <section className="banner lead" role="alert" aria-label="Alarm">
        <Mark name="wrong way" size={56} />
        <div>
          <h2>{wanted.sign === moved.sign ? 'It went too far astray.' : 'It went the wrong way.'}</h2>
          <p>Put the scraper down. Nothing is lost.</p>
        </div>
      </section>
      <main className="page with-foot alarm">
        <div className="pair">
          <div>
            <p className="say">
              Asked for{' '}
              <b>
                {wanted.sign}
                {wanted.number}
              </b>
              , {alarm.feature} moved <b className="nb">{moved.text}</b>. That is not chance.
            </p>
            <AlarmGauge alarm={alarm} line={line} short={short} />
          </div>
          <div>
            <h3>
              What would read {line.said.sign}
              {line.said.number}?
            </h3>
            <ol className="rows causes">
              {placedCauses(alarm).map((found, i) => {
                const fits = fitsFound(found, alarm.found);
                return (
                  <li key={causeId(found)}>
                    <b>{i + 1}</b>
                    <span>
                      <b>{causeWords(found.cause, plan.places)}</b>
                      <small>
                        {found.would_read
                          ? `would read ${short(found.would_read)}`
                          : 'only a look at the metal can tell'}
                      </small>
                    </span>
                    <span
                      className={
                        fits === 'fits' ? 'verdict outside' : fits === 'cannot tell' ? 'quiet' : 'verdict'
                      }
                    >
                      {fits}
                    </span>
                  </li>
                );
              })}
            </ol>
            <PracticeTruth open={open} />
          </div>
        </div>
        <footer className="foot">
          {question ? (
            <>
              <p className="ask">{question.text}</p>
              <div className="two">
                {question.answers.map(({ words, answer }) => (
                  <button type="button" className="go small" key={words} onClick={() => settle(answer)}>
                    {words}
                  </button>
                ))}
              </div>
              <button type="button" className="third cannot" onClick={() => settle('cannot tell')}>
                I cannot tell
              </button>
            </>
          ) : null}
        </footer>
      </main>
    </>
  );
}

function AlarmGauge(props: {
  readonly alarm: Alarm;
  readonly line: ReturnType<typeof featureLine>;
  readonly short: (value: { value: number; sd: number }) => string;
}) {
  const { alarm, line, short } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const { shown, words } = line.scale;
  const at = (value: { value: number; sd: number }) => ({
    value: shown(value.value),
    doubt: shown(2 * value.sd),
    text: short(value),
  });
  return (
    <div ref={ref}>
      <Figure
        shape={gauge({
          title: `${capital(alarm.feature)} before, asked and found, against its band`,
          width,
          band: gaugeBand(line.scale),
          rows: [
            { kind: 'past', label: 'before', ...at(alarm.before) },
            { kind: 'forecast', label: 'asked', ...at(alarm.asked) },
            {
              kind: 'now',
              label: 'found',
              ...at(alarm.found),
              ...(line.judged ? { verdict: line.judged.verdict } : {}),
            },
          ],
          ...(words ? { minus_word: words.minus, plus_word: words.plus } : {}),
          show_now_text: true,
        })}
      />
    </div>
  );
}
