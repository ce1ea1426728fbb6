import type { JobPlan } from '../../../core/ledger/entry.ts';
import { readLength, sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { percent } from '../../../shop/phrase.ts';
import type { SiteAnswer } from '../../../shop/site.ts';
import type { BedForm } from '../../../shop/survey/bed-form.ts';
import { reachOf, usualWork, type WorkPlaces, whereToPrint } from '../../../shop/survey/where-to-print.ts';
import { Mark } from '../frame/mark.tsx';

/** What is typed of the work, by name. */
export type WorkDraft = Readonly<Record<string, string>>;

const asked: readonly { readonly name: keyof WorkPlaces; readonly label: string }[] = [
  { name: 'from_mm', label: 'works from' },
  { name: 'to_mm', label: 'to' },
  { name: 'most_mm', label: 'most at' },
  { name: 'tool_across_mm', label: 'Tool from the middle, plus: to the back' },
  { name: 'tool_up_mm', label: 'Tool above the ways' },
];

/** The work as typed, with what is usual where nothing is said; and what cannot be read. */
export function workOf(draft: WorkDraft, plan: JobPlan, form: BedForm & { ok: true }, system: UnitSystem) {
  const [first, last] = reachOf(plan, form.bed);
  const usual: WorkPlaces = {
    ...usualWork,
    from_mm: first,
    to_mm: last,
    most_mm: first + (last - first) / 3,
  };
  const wrong: Partial<Record<string, string>> = {};
  const read = asked.map(({ name }) => {
    const text = (draft[name] ?? '').trim();
    if (text === '') return [name, usual[name]] as const;
    const value = readLength(text, system === 'metric' ? 'mm' : 'in');
    if (!value.ok) wrong[name] = value.why;
    return [name, value.ok ? value.mm : usual[name]] as const;
  });
  return { work: { ...usual, ...Object.fromEntries(read) } as WorkPlaces, usual, wrong };
}

const shown = (mm: number, system: UnitSystem): string => {
  const said = sayLength(mm, system, { decimals: system === 'metric' ? 0 : 1 });
  return `${said.sign}${said.number}`;
};

export const siteOf = (plan: JobPlan, form: BedForm | undefined, draft: WorkDraft, system: UnitSystem) =>
  form?.ok ? whereToPrint(plan, form.bed, workOf(draft, plan, form, system).work) : undefined;

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
  const { usual, wrong } = workOf(draft, plan, form, system);
  const um = (value: number) => sayDeviation(value, system, { signed: false, decimals: 1 }).text;
  const unit = system === 'metric' ? 'mm' : 'in';
  return (
    <section className="print-place" aria-label="Where to print">
      <h2>Where to print</h2>
      {site.ok ? null : (
        <p className="caution">
          <Mark name="caution" size={20} />
          <span>{site.text}</span>
        </p>
      )}
      {form.notes.map((note) => (
        <p className="caution" key={note}>
          <Mark name="caution" size={20} />
          <span>{note}</span>
        </p>
      ))}
      <div className="survey-fields">
        {asked.map(({ name, label }) => (
          <div className="field" key={name}>
            <label htmlFor={`work-${name}`}>
              {name === 'from_mm' ? `The ${plan.slide.name} ${label}` : label}, {unit}
            </label>
            <input
              id={`work-${name}`}
              value={draft[name] ?? ''}
              placeholder={shown(usual[name], system)}
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
                  <tr key={one.at_mm} className={one.at_mm === site.best.at_mm ? 'best' : undefined}>
                    <th scope="row">
                      {sayLength(one.at_mm, system).text}
                      {one.at_mm === site.best.at_mm ? ', best' : ''}
                    </th>
                    <td>{um(one.parts.diameter_rms_um)}</td>
                    <td>{um(one.parts.facing_rms_um)}</td>
                    <td>{percent(one.bearing_fraction)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <p className="quiet">
            Diameters wander and faces lean by so much, rms over the work, against the rest at the place of
            printing; faces over a radius of {sayLength(site.facing_mm, system).text}. A weight of{' '}
            {usualWork.weight_kg} kg over the middle is assumed. The surveys are taken as they stand, so no
            doubt is known here.
          </p>
        </>
      ) : null}
    </section>
  );
}
