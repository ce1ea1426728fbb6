import { useMemo } from 'react';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { Bed } from '../../../core/site/bed.ts';
import { solidView } from '../../../draw/solid-view.ts';
import type { SiteAnswer } from '../../../shop/site.ts';
import { otherText } from '../../../shop/site-words.ts';
import { standing, worstStand } from '../../../shop/survey/standing.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';

/** What is looked at: where the slide was printed, and where it stands; each by its place in its list, absent: not chosen. */
export interface Look {
  readonly printed?: number;
  readonly stands?: number;
}

const whole = (mm: number, system: UnitSystem): string =>
  sayLength(mm, system, { decimals: system === 'metric' ? 0 : 1 }).text;

/** One place of printing in words, and a small solid view of how the slide then stands elsewhere: it explains, nothing is read from it. */
export function StandingView(props: {
  readonly plan: JobPlan;
  readonly bed: Bed;
  readonly site: SiteAnswer;
  readonly positions_mm: readonly number[];
  readonly weight_kg: number;
  readonly look: Look;
  readonly onLook: (look: Look) => void;
  readonly system: UnitSystem;
}) {
  const { plan, bed, site, positions_mm, weight_kg, look, onLook, system } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const best = site.candidates.find((one) => one.at_mm === site.best.at_mm)!;
  const printed = site.candidates[look.printed ?? -1] ?? best;
  const worst = worstStand(site, printed.at_mm);
  const stands = look.stands !== undefined && positions_mm[look.stands] !== undefined ? look.stands : worst;
  const printed_mm = printed.at_mm;
  const at_mm = positions_mm[stands]!;
  const pose = useMemo(
    () => standing(plan, bed, { printed_mm, at_mm, weight_kg }),
    [plan, bed, printed_mm, at_mm, weight_kg],
  );
  const name = plan.slide.name;
  return (
    <section ref={ref} className="standing">
      <h3>How it will stand</h3>
      <div className="survey-fields">
        <div className="field">
          <label htmlFor="look-printed">If printed at</label>
          <select
            id="look-printed"
            value={site.candidates.indexOf(printed)}
            onChange={(event) => onLook({ ...look, printed: Number(event.target.value) })}
          >
            {site.candidates.map((one, k) => (
              <option key={one.at_mm} value={k}>
                {whole(one.at_mm, system)}
                {one === best ? (site.advice === 'print' ? ', best' : ', least bad') : ''}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="look-stands">Standing at</label>
          <select
            id="look-stands"
            value={stands}
            onChange={(event) => onLook({ ...look, stands: Number(event.target.value) })}
          >
            {positions_mm.map((at, k) => (
              <option key={at} value={k}>
                {whole(at, system)}
                {k === worst ? ', worst' : ''}
              </option>
            ))}
          </select>
        </div>
      </div>
      <p>{otherText(site, printed, printed === best ? undefined : best, system)}</p>
      {pose ? (
        <Figure
          shape={solidView({
            title: `The ${name} printed at ${whole(printed_mm, system)}, standing at ${whole(at_mm, system)}`,
            slide: plan.slide,
            pose,
            places: plan.places,
            sits_words: `standing at ${whole(at_mm, system)}`,
            wanted_words: `as printed at ${whole(printed_mm, system)}`,
            width: Math.min(width, 560),
          })}
        />
      ) : null}
    </section>
  );
}
