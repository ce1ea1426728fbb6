import { useMemo } from 'react';
import type { AxisName, Vector } from '../../../core/body/vector.ts';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { TakenSurvey } from '../../../core/ledger/survey-record.ts';
import type { MadeBlock } from '../../../core/parts/made-block.ts';
import type { FeatureAnswer } from '../../../core/plan/answer.ts';
import { partsFace } from '../../../draw/parts-face.ts';
import { blockFrom, travelOfBlock } from '../../../shop/parts/block-parts.ts';
import { blockLines, blockSentence, faceName } from '../../../shop/parts/block-words.ts';
import { heightDoubt } from '../../../shop/parts/height-doubt.ts';
import { blockWorked } from '../../../shop/parts-working.ts';
import { capital, phraseText } from '../../../shop/phrase.ts';
import type { BedForm } from '../../../shop/survey/bed-form.ts';
import { Figure } from '../figure.tsx';
import { Words } from '../frame/phrase.tsx';
import { ShowWorking } from '../frame/show-working.tsx';
import { useWidth } from '../frame/width.ts';
import type { Units } from '../keep/settings.ts';

/** What a block comes out as on this mill or grinder, now and as planned. */
export function BlockMade(props: {
  readonly plan: JobPlan;
  readonly makes: MadeBlock;
  readonly size_mm: Vector;
  readonly now: readonly FeatureAnswer[];
  /** After all passes of the plan; left out: nothing is left to scrape. */
  readonly planned: readonly FeatureAnswer[] | undefined;
  readonly form: BedForm | undefined;
  readonly surveys: ReadonlyMap<string, TakenSurvey>;
  readonly system: Units;
}) {
  const { plan, makes, size_mm, now, planned, form, surveys, system } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const length_mm = size_mm['xyz'.indexOf(plan.slide.free)]!;
  const travel = useMemo(
    () => (form?.ok ? travelOfBlock(plan, form.bed, length_mm, heightDoubt(surveys.values())) : undefined),
    [plan, form, length_mm, surveys],
  );
  const made = blockFrom(plan, makes, size_mm, now, travel);
  const sentence = blockSentence(makes, made, system);
  const then = planned && blockFrom(plan, makes, size_mm, planned, travel);
  const lines = blockLines(makes, made, system);
  const thenLines = then && blockLines(makes, then, system);
  const planText = (name: string) => {
    const planned = thenLines?.find((line) => line.name === name);
    return planned ? <small className="quiet">as planned {planned.said}</small> : null;
  };
  const others = makes.carriages.filter((one) => !one.is_slide).map(({ name }) => name);
  const end = (axis: AxisName) => `toward ${makes.plus[axis]}`;
  return (
    <>
      <p className="say">
        <Words phrase={sentence} />
      </p>
      {then ? (
        <p>
          As planned: <Words phrase={blockSentence(makes, then, system)} />
        </p>
      ) : null}
      <dl className="parts-numbers">
        {lines.map((line) => (
          <div key={line.name}>
            <dt>{capital(line.name)}</dt>
            <dd>
              <span className="num">{line.said}</span> {line.word ? <small>{line.word}</small> : null}
              {planText(line.name)}
            </dd>
          </div>
        ))}
      </dl>
      <div ref={ref} className="parts-faces">
        {made.faces.map((face, k) => (
          <Figure
            key={face.face}
            shape={partsFace({
              title: `The ${faceName(makes, face.face)} as it is cut`,
              desc: k === 0 ? phraseText(sentence) : `The ${faceName(makes, face.face)}, far too tall`,
              words: `${capital(faceName(makes, face.face))} against a true one`,
              width: Math.min(width, 560),
              places_mm: face.places_mm,
              out_um: face.out_um,
              ends: [end(face.axes[0]), end(face.axes[1])],
            })}
          />
        ))}
      </div>
      <p className="quiet">
        Cut all over in one setting. Only how the {plan.slide.name} stands
        {travel ? ' and the surveyed ways under it are' : ' is'} in this: the {others.join(' and the ')} are
        taken as true, and the cutter as a point. A corner that is not named does not hang on it.{' '}
        {travel
          ? ''
          : form?.ok
            ? 'The surveyed ways are too short for this block.'
            : 'Its ways are taken as straight until they are surveyed.'}{' '}
        All ± are two sd, 19 times in 20.
      </p>
      <ShowWorking lines={blockWorked('block', made, system)} of="the block" />
    </>
  );
}
