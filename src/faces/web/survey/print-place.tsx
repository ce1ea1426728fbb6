import { useState } from 'react';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { percent } from '../../../shop/phrase.ts';
import type { SiteAnswer } from '../../../shop/site.ts';
import { bedHowText } from '../../../shop/site-words.ts';
import type { BedForm } from '../../../shop/survey/bed-form.ts';
import { placesOfWork, whereToPrint } from '../../../shop/survey/where-to-print.ts';
import { type AskedOfWork, type WorkDraft, workTyped } from '../../../shop/survey/work-typed.ts';
import { Mark } from '../frame/mark.tsx';
import { type Look, StandingView } from './standing-view.tsx';

const asked = (slide: string): readonly { readonly name: AskedOfWork; readonly label: string }[] => [
  { name: 'from_mm', label: `The ${slide} works from` },
  { name: 'to_mm', label: 'to' },
  { name: 'most_mm', label: 'Most at' },
  { name: 'tool_up_mm', label: 'Tool above the ways' },
  { name: 'tool_across_mm', label: 'Tool from the middle, plus: to the back' },
  { name: 'diameter_um', label: 'Diameters may wander, rms' },
  { name: 'facing_um', label: 'Faces may lean, rms' },
];
const isSmall = (name: AskedOfWork): boolean => name === 'diameter_um' || name === 'facing_um';

const shown = (name: AskedOfWork, value: number, system: UnitSystem): string => {
  const inch = system === 'inch';
  const said = isSmall(name)
    ? sayDeviation(value, system, { signed: false, decimals: inch ? 2 : 0, unit: inch ? 'thou' : 'um' })
    : sayLength(value, system, { decimals: inch ? 1 : 0 });
  return `${said.sign}${said.number}`;
};
const unitOf = (name: AskedOfWork, system: UnitSystem): string =>
  isSmall(name) ? (system === 'metric' ? 'µm' : 'thou') : system === 'metric' ? 'mm' : 'in';

export const siteOf = (plan: JobPlan, form: BedForm | undefined, draft: WorkDraft, system: UnitSystem) =>
  form?.ok ? whereToPrint(plan, form.bed, workTyped(plan, form.bed, draft, system).work) : undefined;

/** Where to print: in words, then every place with what it costs. */
export function PrintPlace(props: {
  readonly plan: JobPlan;
  readonly form: BedForm & { ok: true };
  readonly site: SiteAnswer | { readonly ok: false; readonly text: string };
  readonly draft: WorkDraft;
  readonly onDraft: (draft: WorkDraft) => void;
  readonly system: UnitSystem;
}) {
  const { plan, form, site, draft, onDraft, system } = props;
  const { work, usual, wrong } = workTyped(plan, form.bed, draft, system);
  const [look, setLook] = useState<Look>({});
  const um = (value: number) =>
    sayDeviation(value, system, {
      signed: false,
      decimals: system === 'metric' ? 1 : 2,
      unit: system === 'metric' ? 'um' : 'thou',
    }).text;
  return (
    <section className="print-place" aria-label="Where to print">
      <h2>Where to print</h2>
      {site.ok ? null : (
        <p className="caution">
          <Mark name="caution" size={20} />
          <span>{site.text}</span>
        </p>
      )}
      {site.ok && site.advice === 'bed first' ? (
        <p className="caution">
          <Mark name="caution" size={20} />
          <span>{bedHowText(site, system)}</span>
        </p>
      ) : null}
      {form.notes.map((note) => (
        <p className="caution" key={note}>
          <Mark name="caution" size={20} />
          <span>{note}</span>
        </p>
      ))}
      <div className="survey-fields">
        {asked(plan.slide.name).map(({ name, label }) => (
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
            {wrong[name] === undefined ? null : (
              <p className="wrong" id={`work-${name}-wrong`}>
                <Mark name="caution" size={20} />
                <span>{wrong[name]}</span>
              </p>
            )}
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
                  <th scope="col">Diameters</th>
                  <th scope="col">Faces</th>
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
                    <td className={one.parts.diameter_rms_um > site.allow.diameter_um ? 'over' : undefined}>
                      {um(one.parts.diameter_rms_um)}
                      {one.parts.diameter_rms_um > site.allow.diameter_um ? <small>over</small> : null}
                    </td>
                    <td className={one.parts.facing_rms_um > site.allow.facing_um ? 'over' : undefined}>
                      {um(one.parts.facing_rms_um)}
                      {one.parts.facing_rms_um > site.allow.facing_um ? <small>over</small> : null}
                    </td>
                    <td>{percent(one.bearing_fraction)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <p className="quiet">
            Diameters wander and faces lean by so much, rms over the work, against the rest at the place of
            printing; faces over a radius of {sayLength(site.facing_mm, system).text}. A weight of{' '}
            {work.weight_kg} kg over the middle is assumed. The surveys are taken as they stand, so no doubt
            is known here.
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
        </>
      ) : null}
    </section>
  );
}
