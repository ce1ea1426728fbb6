import { useState } from 'react';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import { saySlope, slopeSign, spokenSlope } from '../../../core/quantity/slope.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { percent } from '../../../shop/phrase.ts';
import type { SiteAnswer } from '../../../shop/site.ts';
import { bedHowText, siteFigures, siteSize } from '../../../shop/site-words.ts';
import type { BedForm } from '../../../shop/survey/bed-form.ts';
import {
  limitNames,
  type PlaceFound,
  placesOfWork,
  showsFor,
  whereToPrint,
} from '../../../shop/survey/where-to-print.ts';
import { type AskedOfWork, type WorkDraft, workTyped } from '../../../shop/survey/work-typed.ts';
import { Caution, Wrong } from '../frame/notice.tsx';
import { ShowWorking } from '../frame/show-working.tsx';
import { type Look, StandingView } from './standing-view.tsx';

/** What is asked of the work; where the tool stands counts only where it turns: a block's own place is in the machine's file. */
function asked(plan: JobPlan): readonly { readonly name: AskedOfWork; readonly label: string }[] {
  const shows = showsFor(plan);
  const face = plan.makes?.faces[0]?.name;
  const figures = siteFigures({ shows, ...(face === undefined ? {} : { face }) });
  return [
    { name: 'from_mm', label: `The ${plan.slide.name} works from` },
    { name: 'to_mm', label: 'to' },
    { name: 'most_mm', label: 'Most at' },
    ...(shows === 'turned'
      ? ([
          { name: 'tool_up_mm', label: 'Tool above the ways' },
          { name: 'tool_across_mm', label: 'Tool from the middle, plus: to the back' },
        ] as const)
      : []),
    ...limitNames[shows].map((name, k) => ({ name, label: figures[k]!.asks })),
  ];
}
const isSlope = (name: AskedOfWork): boolean => name.endsWith('_urad');
const isSmall = (name: AskedOfWork): boolean => name.endsWith('_um');

const shown = (name: AskedOfWork, value: number, system: UnitSystem): string => {
  const inch = system === 'inch';
  const said = isSlope(name)
    ? saySlope(value, system, { signed: false, decimals: inch ? 2 : 0 })
    : isSmall(name)
      ? sayDeviation(value, system, { signed: false, decimals: inch ? 2 : 0, unit: inch ? 'thou' : 'um' })
      : sayLength(value, system, { decimals: inch ? 1 : 0 });
  return `${said.sign}${said.number}`;
};
const unitOf = (name: AskedOfWork, system: UnitSystem): string =>
  isSlope(name)
    ? slopeSign(spokenSlope(system))
    : isSmall(name)
      ? system === 'metric'
        ? 'µm'
        : 'thou'
      : system === 'metric'
        ? 'mm'
        : 'in';

export const siteOf = (plan: JobPlan, form: BedForm | undefined, draft: WorkDraft, system: UnitSystem) =>
  form?.ok ? whereToPrint(plan, form.bed, workTyped(plan, form.bed, draft, system).work, system) : undefined;

/** What the figures of the table are, and over what they are taken. */
function shownOver(plan: JobPlan, site: SiteAnswer, system: UnitSystem): string {
  const against = 'rms over the work, against the rest at the place of printing';
  if (site.shows === 'turned')
    return `Diameters wander and faces lean by so much, ${against}; faces over a radius of ${sayLength(site.facing_mm, system).text}.`;
  if (site.shows === 'slide')
    return `The ${plan.slide.name} leans and turns by so much, ${against}; what its machine makes is not known.`;
  const sizes = plan.makes!.size_mm.map((mm) => sayLength(mm, system).text).join(' × ');
  return `A block of ${sizes}, cut all over in one setting, is out by so much, ${against}; all else of the machine is taken as true.`;
}

/** Where to print: in words, then every place with what it costs. */
export function PrintPlace(props: {
  readonly plan: JobPlan;
  readonly form: BedForm & { ok: true };
  readonly site: PlaceFound | { readonly ok: false; readonly text: string };
  readonly draft: WorkDraft;
  readonly onDraft: (draft: WorkDraft) => void;
  readonly system: UnitSystem;
}) {
  const { plan, form, site, draft, onDraft, system } = props;
  const { work, usual, wrong } = workTyped(plan, form.bed, draft, system);
  const [look, setLook] = useState<Look>({});
  const figures = site.ok ? siteFigures(site) : [];
  return (
    <section className="print-place" aria-label="Where to print">
      <h2>Where to print</h2>
      {site.ok ? null : <Caution>{site.text}</Caution>}
      {site.ok && site.advice === 'bed first' ? <Caution>{bedHowText(site, system)}</Caution> : null}
      {form.notes.map((note) => (
        <Caution key={note}>{note}</Caution>
      ))}
      <div className="survey-fields">
        {asked(plan).map(({ name, label }) => (
          <div className="field" key={name}>
            <label htmlFor={`work-${name}`}>
              {label}, {unitOf(name, system)}
            </label>
            <input
              id={`work-${name}`}
              value={draft[name] ?? ''}
              placeholder={shown(name, usual[name], system)}
              autoComplete="off"
              aria-invalid={wrong[name] === undefined ? undefined : true}
              aria-describedby={wrong[name] === undefined ? undefined : `work-${name}-wrong`}
              onChange={(event) => onDraft({ ...draft, [name]: event.target.value })}
            />
            {wrong[name] === undefined ? null : <Wrong id={`work-${name}-wrong`}>{wrong[name]}</Wrong>}
          </div>
        ))}
      </div>
      {site.ok ? (
        <>
          <div className="survey-table">
            <table>
              <caption className="hidden">What printing at each place costs</caption>
              <thead>
                <tr>
                  <th scope="col">Printed at</th>
                  {figures.map(({ head }) => (
                    <th scope="col" key={head}>
                      {head}
                    </th>
                  ))}
                  <th scope="col">Bears</th>
                </tr>
              </thead>
              <tbody>
                {site.candidates.map((one) => (
                  <tr
                    key={one.at_mm}
                    className={one.at_mm === site.best.at_mm && site.advice === 'print' ? 'best' : undefined}
                  >
                    <th scope="row">
                      {sayLength(one.at_mm, system).text}
                      {one.at_mm === site.best.at_mm ? (
                        <small>{site.advice === 'print' ? 'best' : 'least bad'}</small>
                      ) : null}
                    </th>
                    {figures.map((figure, k) => (
                      <td key={figure.head} className={one.cost[k]! > site.limits[k]! ? 'over' : undefined}>
                        {siteSize(figure, one.cost[k]!, system)}
                        {one.cost[k]! > site.limits[k]! ? <small>over</small> : null}
                      </td>
                    ))}
                    <td>{percent(one.bearing_fraction)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <p className="quiet">
            {shownOver(plan, site, system)} A weight of {work.weight_kg} kg over the middle is assumed. The
            surveys are taken as they stand, so no doubt is known here.
          </p>
          <StandingView
            plan={plan}
            bed={form.bed}
            site={site}
            positions_mm={placesOfWork(plan, form.bed, work)}
            weight_kg={work.weight_kg}
            look={look}
            onLook={setLook}
            system={system}
          />
          <ShowWorking lines={site.working} of="where to print" />
        </>
      ) : null}
    </section>
  );
}
