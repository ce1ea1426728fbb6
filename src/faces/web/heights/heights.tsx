import { Link, useParams } from 'wouter';
import type { Template } from '../../../contract/template.ts';
import { type HeightsRecord, heightsOf } from '../../../core/ledger/rebuild-record.ts';
import { bandText, type HeightsAnswer } from '../../../shop/order/heights.ts';
import { linerWords, linkWords } from '../../../shop/order/heights-words.ts';
import { moved } from '../../../shop/order/machine-draft.ts';
import {
  blankChange,
  blankLiner,
  changeSizes,
  heightSlides,
  slidePads,
  writtenAs,
} from '../../../shop/order/sheet-blanks.ts';
import { KeepFoot } from '../frame/keep-foot.tsx';
import { Mark, VerdictWord } from '../frame/mark.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { useTemplates, useWrite } from '../keep/jobs.ts';
import { jobAddress } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { ItemList, PickField, TextField } from '../machine/fields.tsx';
import { MeasureField } from '../machine/measure-field.tsx';
import { useWorkedOut } from '../machine/worked-out.ts';
import { MachineScreen, type OpenMachine } from '../order/whole.tsx';
import '../machine/machine.css';
import './heights.css';
import { Wrong } from '../frame/notice.tsx';

/** The machine's heights: what wear, cuts and liners do to each, and the room that is left to scrape. */
export function HeightsScreen() {
  const { id = '' } = useParams<{ id: string }>();
  return (
    <MachineScreen key={id} id={id} title="Heights">
      {(open) =>
        open.machine.heights ? (
          <Heights open={open} />
        ) : (
          <main className="page narrow">
            <p className="say">
              This machine has no heights to keep: nothing on it must stand at another’s height.
            </p>
          </main>
        )
      }
    </MachineScreen>
  );
}

function Heights({ open }: { readonly open: OpenMachine }) {
  const { id, job, machine } = open;
  const kept = heightsOf(job.live) ?? {};
  const was = JSON.stringify(kept);
  const [record, keep, finish] = useDraft<HeightsRecord>(draftKey(id, 'heights'), kept);
  const { data: templates = [] } = useTemplates();
  const write = useWrite(id);
  const { units } = useSettings();
  // An empty sheet is asked as one, not as the ledger's.
  const body = {
    changes: record.changes ?? [],
    liners: record.liners ?? [],
    measured: record.measured ?? {},
  };
  const { data, wrong } = useWorkedOut<HeightsAnswer>(`${jobAddress(id)}/heights`, body);
  const changed = JSON.stringify(record) !== was;
  const slideName = (joint: string) =>
    heightSlides(machine).find((one) => one.value === joint)?.words ?? joint;
  return (
    <main className="page with-foot heights-page">
      <p>
        <Link className="third" href={`/job/${encodeURIComponent(id)}/order`}>
          <Mark name="arrow left" size={20} />
          Order of work
        </Link>
      </p>
      <div className="pair">
        <section aria-live="polite">
          {data?.warnings.map((one) => (
            <Wrong key={one.text}>{one.text}</Wrong>
          ))}
          {(wrong ?? []).map((text) => (
            <Wrong key={text} role="alert">
              {text}
            </Wrong>
          ))}
          {data?.heights.map((height) => (
            <article key={height.name} className="height">
              <h2>{height.name}</h2>
              <p className="say">{height.sentence}</p>
              <p>
                {height.verdict === 'not measured' ? (
                  <span className="unit">not measured</span>
                ) : (
                  <VerdictWord verdict={height.verdict} side={height.um > height.aim_um ? 'high' : 'low'} />
                )}{' '}
                <span className="unit">band {bandText(height, units)}</span>
              </p>
              {height.why ? <p className="quiet">{height.why}</p> : null}
              <details className="chart-more">
                <summary>
                  Show the working<span className="hidden"> of {height.name}</span>
                </summary>
                <ul className="rows">
                  {linkWords(height, units).map((text) => (
                    <li key={text}>{text}</li>
                  ))}
                </ul>
              </details>
            </article>
          ))}
          {data?.liners.map((liner) => (
            <article key={liner.joint} className="height">
              <h2>Liner: {slideName(liner.joint)}</h2>
              {linerWords(liner, units).map((text) => (
                <p key={text}>{text}</p>
              ))}
            </article>
          ))}
        </section>
        <div className="heights-asked">
          <Sheet machine={machine} templates={templates} record={record} onChange={keep} />
        </div>
      </div>
      <KeepFoot
        status={
          changed
            ? 'Not kept yet. Kept heights give each new bench the room it has left to scrape.'
            : 'Kept in the ledger.'
        }
        can={changed && !wrong}
        words="Keep these heights"
        onKeep={() => {
          write({ kind: 'heights set', heights: record });
          finish();
        }}
      />
    </main>
  );
}

function Sheet(props: {
  readonly machine: OpenMachine['machine'];
  readonly templates: readonly Template[];
  readonly record: HeightsRecord;
  readonly onChange: (record: HeightsRecord) => void;
}) {
  const { machine, templates, record, onChange } = props;
  const slides = heightSlides(machine);
  const first = slides[0]?.value ?? '';
  const heights = machine.heights!.heights.map((one) => ({ value: one.name, words: one.name }));
  const padsOf = (joint: string) => slidePads(machine, joint, templates);
  const slideName = (joint: string) => slides.find((one) => one.value === joint)?.words ?? joint;
  return (
    <>
      <ItemList
        title="Found and planned"
        one="wear, a cut or a shim"
        items={record.changes ?? []}
        name={(one) => one.name}
        note={(one) => `${slideName(one.joint)}, ${one.when}`}
        onChange={(changes) => onChange({ ...record, changes })}
        blank={() => blankChange(first, padsOf(first))}
        move={moved}
      >
        {(one, set) => {
          const way = one.on_um ? 'on' : 'off';
          const sizes = changeSizes(one);
          return (
            <>
              <TextField label="Called" value={one.name} onChange={(name) => set({ ...one, name })} />
              <PickField
                label="Where"
                value={one.joint}
                among={slides}
                onChange={(joint) =>
                  set({ ...blankChange(joint, padsOf(joint)), name: one.name, when: one.when })
                }
              />
              <div className="machine-three">
                <PickField
                  label="When"
                  value={one.when}
                  among={[
                    { value: 'found', words: 'found so' },
                    { value: 'planned', words: 'planned' },
                  ]}
                  onChange={(when) => set({ ...one, when: when as typeof one.when })}
                />
                <PickField
                  label="Which way"
                  value={way}
                  among={[
                    { value: 'off', words: 'worn or taken off' },
                    { value: 'on', words: 'put on' },
                  ]}
                  onChange={(next) => set(writtenAs(one, next as 'off' | 'on', sizes))}
                />
              </div>
              <div className="machine-three">
                {padsOf(one.joint).map((pad) => (
                  <MeasureField
                    key={`${one.joint} ${pad}`}
                    label={pad}
                    unit="um"
                    value={sizes[pad]}
                    onChange={(um) => {
                      const { [pad]: _was, ...rest } = sizes;
                      set(writtenAs(one, way, um === undefined ? rest : { ...rest, [pad]: um }));
                    }}
                  />
                ))}
                <MeasureField
                  label="Known within, one sd"
                  unit="um"
                  value={one.sd_um}
                  onChange={(sd_um) => {
                    const { sd_um: _sd, ...rest } = one;
                    set(sd_um === undefined ? rest : { ...rest, sd_um });
                  }}
                />
              </div>
            </>
          );
        }}
      </ItemList>
      <ItemList
        title="Liners"
        one="a liner"
        items={record.liners ?? []}
        name={(one) => `${slideName(one.joint)}: ${one.pads.join(', ')}`}
        note={(one) => `brings back ${one.brings}`}
        onChange={(liners) => onChange({ ...record, liners })}
        blank={() => blankLiner(first, padsOf(first), heights[0]?.value ?? '')}
        move={moved}
      >
        {(one, set) => (
          <>
            <PickField
              label="Where"
              value={one.joint}
              among={slides}
              onChange={(joint) => set(blankLiner(joint, padsOf(joint), one.brings))}
            />
            <fieldset className="machine-checks">
              <legend>Faces that get it</legend>
              {padsOf(one.joint).map((pad) => (
                <label key={pad}>
                  <input
                    type="checkbox"
                    checked={one.pads.includes(pad)}
                    onChange={({ target }) =>
                      set({
                        ...one,
                        pads: target.checked ? [...one.pads, pad] : one.pads.filter((its) => its !== pad),
                      })
                    }
                  />
                  <span>{pad}</span>
                </label>
              ))}
            </fieldset>
            <PickField
              label="Brings back"
              value={one.brings}
              among={heights}
              onChange={(brings) => set({ ...one, brings })}
            />
            <div className="machine-three">
              {(
                [
                  ['sheet_mm', 'Sheet', 'the thinnest usual one that fits'],
                  ['bond_mm', 'Bond line', '0.1 mm, common practice'],
                  ['machining_mm', 'Comes off by machine', 'nothing'],
                  ['scraping_mm', 'Left on for scraping', '0.1 mm, common practice'],
                  ['least_mm', 'Least liner left', '0.5 mm, or half the sheet'],
                  ['wall_mm', 'Wall under the face', 'not looked at'],
                ] as const
              ).map(([key, label, empty]) => (
                <MeasureField
                  key={key}
                  label={label}
                  unit="mm"
                  empty={empty}
                  value={one[key]}
                  onChange={(mm) => {
                    const { [key]: _was, ...rest } = one;
                    set(mm === undefined ? rest : { ...rest, [key]: mm });
                  }}
                />
              ))}
            </div>
          </>
        )}
      </ItemList>
      <section className="machine-list">
        <h2>Measured on the machine as found</h2>
        <p className="quiet">How far each stands off the drawing; plus is too high. Empty: not measured.</p>
        {heights.map(({ value }) => {
          const its = record.measured?.[value];
          const { [value]: _was, ...others } = record.measured ?? {};
          return (
            <div className="machine-three" key={value}>
              <MeasureField
                label={value}
                unit="um"
                signed
                value={its?.um}
                onChange={(um) =>
                  onChange({
                    ...record,
                    measured:
                      um === undefined ? others : { ...others, [value]: { um, sd_um: its?.sd_um ?? 10 } },
                  })
                }
              />
              {its ? (
                <MeasureField
                  label="within, one sd"
                  unit="um"
                  value={its.sd_um}
                  onChange={(sd_um) =>
                    onChange({
                      ...record,
                      measured: { ...others, [value]: { ...its, sd_um: sd_um ?? 0 } },
                    })
                  }
                />
              ) : null}
            </div>
          );
        })}
      </section>
    </>
  );
}
