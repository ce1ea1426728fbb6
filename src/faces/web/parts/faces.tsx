import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { Doubted, Spindle } from '../../../core/parts/spindle.ts';
import type { FeatureAnswer } from '../../../core/plan/answer.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { featureLine } from '../../../shop/bench/feature-line.ts';
import { faceFrom } from '../../../shop/parts/lathe-parts.ts';
import { facesSentence, faceWord, signedText } from '../../../shop/parts/part-sentence.ts';
import { facedWorked } from '../../../shop/parts-working.ts';
import { phraseText } from '../../../shop/phrase.ts';
import { VerdictWord } from '../frame/mark.tsx';
import { Words } from '../frame/phrase.tsx';
import { ShowWorking } from '../frame/show-working.tsx';
import type { Units } from '../keep/settings.ts';
import { ProfilePlot } from './plot.tsx';

const doubtedOf = ({ value, sd }: FeatureAnswer): Doubted => ({ value, sd });

/** What faces come out as, now and as planned. */
export function Faces(props: {
  readonly plan: JobPlan;
  readonly now: FeatureAnswer;
  readonly planned: FeatureAnswer | undefined;
  readonly spindle: Spindle;
  /** Whether the spindle's slope was typed. */
  readonly withSpindle: boolean;
  readonly rim_mm: number;
  readonly system: Units;
}) {
  const { plan, now, planned, spindle, withSpindle, rim_mm, system } = props;
  const made = faceFrom(doubtedOf(now), spindle, rim_mm);
  const then = planned && faceFrom(doubtedOf(planned), spindle, rim_mm);
  const line = featureLine(plan, now, system);
  const sentence = facesSentence(made, then, rim_mm, system);
  return (
    <>
      <p className="say">
        <Words phrase={sentence} />
      </p>
      <dl className="parts-numbers">
        <div>
          <dt>Face now, plus: concave</dt>
          <dd>
            <span className="num">{signedText(made.concave_um, system)}</span>{' '}
            <small>{faceWord(made.concave_um)}</small>
          </dd>
        </div>
        {then ? (
          <div>
            <dt>Face as planned</dt>
            <dd>
              <span className="num">{signedText(then.concave_um, system)}</span>{' '}
              <small>{faceWord(then.concave_um)}</small>
            </dd>
          </div>
        ) : null}
        <div>
          <dt>{line.scale.feature.name === 'facing' ? 'Cross ways to the bed, now' : line.name}</dt>
          <dd>
            <span className="num">{line.said.text}</span>{' '}
            {line.judged ? <VerdictWord verdict={line.judged.verdict} side={line.judged.side} /> : null}
          </dd>
        </div>
      </dl>
      <ProfilePlot
        title="A face from rim to centre"
        desc={phraseText(sentence)}
        system={system}
        places_mm={made.radius_mm}
        // Drawn as it lies: a hollow goes down.
        value_um={made.depth_um.map((depth) => -depth)}
        sd_um={made.depth_sd_um}
        {...(then ? { dashed_um: then.depth_um.map((depth) => -depth) } : {})}
        x={{
          name: 'radius',
          left: `rim, ${sayLength(rim_mm, system).text}`,
          right: 'centre',
        }}
        y="face against its rim, plus: proud"
      />
      <p className="quiet">
        {then ? 'Whole line: now, as wide as its doubt. Dashed: as planned, all passes made. ' : ''}An
        indicator swept past the centre shows twice the figure.{' '}
        {withSpindle
          ? 'The spindle’s slope across is taken off.'
          : 'The spindle is taken as true to the bed until its slope is typed.'}
      </p>
      <ShowWorking lines={facedWorked('face', made, system)} of="the face" />
    </>
  );
}
