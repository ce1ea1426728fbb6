import type { JobPlan } from '../../../core/ledger/entry.ts';
import { surveyCardDrawing } from '../../../draw/survey-setup/cards.ts';
import { firstSentence } from '../../../shop/phrase.ts';
import { inPlaces } from '../../../shop/survey/places.ts';
import type { SurveyCard } from '../../../shop/survey/setup-cards.ts';
import { Figure } from '../figure.tsx';
import { Mark } from '../frame/mark.tsx';
import { Caution } from '../frame/notice.tsx';
import { useWidth } from '../frame/width.ts';

/** A survey's set-up: the drawing, what to put where, which way to move, which sign means what. */
export function SetUp({ card, plan }: { readonly card: SurveyCard; readonly plan: JobPlan }) {
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const { places, slide } = plan;
  const said = (words: string) => inPlaces(words, places);
  const rules = [
    ['1', card.put],
    ['2', card.move],
    ['+', card.plus],
  ] as const;
  const shape = surveyCardDrawing(
    card.drawing,
    {
      title: said(card.question),
      desc: said(`${card.put} ${card.move} Plus: ${card.plus}`),
      width,
      places: {
        minusEnd: places.minus_end,
        plusEnd: places.plus_end,
        near: places.minus_side,
        far: places.plus_side,
      },
    },
    slide,
  );
  return (
    <div className="survey-card">
      <div ref={ref}>
        <Figure shape={shape} />
      </div>
      <h3>{said(card.question)}</h3>
      <ol className="rows">
        {rules.map(([mark, words]) => (
          <Rule key={mark} mark={mark} words={said(words)} />
        ))}
        <li className="meaning">
          <span>
            <b>
              <Mark name="arrow up" size={18} /> Climbs +
            </b>
            {said(card.climbs)}
          </span>
          <span>
            <b>
              <Mark name="arrow down" size={18} /> Falls −
            </b>
            {said(card.falls)}
          </span>
        </li>
      </ol>
      <p className="survey-check">{said(card.check)}</p>
      {card.caution === undefined ? null : <Caution>{card.caution}</Caution>}
    </div>
  );
}

/** The first sentence large, the rest below it. */
function Rule({ mark, words }: { readonly mark: string; readonly words: string }) {
  const [first, rest] = firstSentence(words);
  return (
    <li className="rule">
      <span className={mark === '+' ? 'disc plus' : 'disc'} aria-hidden="true">
        {mark}
      </span>
      <span>
        <b>
          {mark === '+' ? 'Plus: ' : ''}
          {mark === '+' ? first.charAt(0).toLowerCase() + first.slice(1) : first}
        </b>
        {rest}
      </span>
    </li>
  );
}
