import { usualReadingSd_um } from '../../../core/axis/bar-axis.ts';
import type { AxisRecord } from '../../../core/ledger/rebuild-record.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { AxisAnswer } from '../../../shop/order/axis.ts';
import type { AxisTyped, BarTyped, ReadingTyped } from '../../../shop/order/axis-typed.ts';
import { moved } from '../../../shop/order/machine-draft.ts';
import { KeepFoot } from '../frame/keep-foot.tsx';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { ShowWorking } from '../frame/show-working.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { jobAddress } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { ItemList, PickField } from '../machine/fields.tsx';
import { MeasureField } from '../machine/measure-field.tsx';
import { useWorkedOut } from '../machine/worked-out.ts';
import { CentresFields } from './centres-fields.tsx';
import { ToBench } from './to-bench.tsx';

const sides = [
  { value: 'top', words: 'the top' },
  { value: 'bottom', words: 'underneath' },
  { value: 'front', words: 'your side' },
  { value: 'back', words: 'the back' },
];

/** One sheet: the bar, its readings, the bands; what it comes to stands over it as it is typed. */
export function AxisSheet(props: {
  readonly open: OpenJob;
  /** Which way a bar of this sheet points along x, seen from the part that holds it. */
  readonly toward: 1 | -1 | undefined;
  /** The step it was opened from. */
  readonly from: string | undefined;
  readonly start: AxisRecord;
  readonly isKept: boolean;
  readonly onBack: () => void;
}) {
  const { open, toward, from, start, isKept, onBack } = props;
  const { id } = open;
  const { of } = start;
  const [asked, keep, finish] = useDraft<AxisTyped>(draftKey(id, 'axis', of), start.asked as AxisTyped);
  const { data, wrong } = useWorkedOut<AxisAnswer>(`${jobAddress(id)}/axis`, asked);
  const write = useWrite(id);
  const changed = !isKept || JSON.stringify(asked) !== JSON.stringify(start.asked);
  return (
    <main className="page narrow with-foot">
      <p>
        <button type="button" className="third" onClick={onBack}>
          <Mark name="arrow left" size={20} />
          All axes
        </button>
      </p>
      <h2>{of.charAt(0).toUpperCase() + of.slice(1)}</h2>
      <div aria-live="polite" className="axis-said">
        {wrong ? (
          wrong.map((text) => <Wrong key={text}>{text}</Wrong>)
        ) : (
          <>
            {(data?.axes ?? []).map((one) => (
              <p key={one.side} className="say">
                {sides.find((side) => side.value === one.side)?.words.replace(/^./, (c) => c.toUpperCase())}:{' '}
                {one.sentence}
              </p>
            ))}
            {(data?.centres ?? []).map((one) => (
              <p key={one.sentence} className="say">
                {one.sentence}
              </p>
            ))}
            {data ? <ShowWorking lines={data.working} /> : null}
          </>
        )}
      </div>
      <form className="machine-room" aria-label={of} onSubmit={(event) => event.preventDefault()}>
        {asked.bar ? <BarFields bar={asked.bar} set={(bar) => keep({ ...asked, bar })} /> : null}
        {asked.bar ? (
          <ItemList<ReadingTyped>
            title="Readings; plus: plunger in"
            one="a side"
            items={asked.readings ?? []}
            name={(one) => `On ${sides.find((side) => side.value === one.side)?.words}`}
            onChange={(readings) => keep({ ...asked, readings })}
            blank={() => ({ side: 'top', near: [0, 0], far: [0, 0] })}
            move={moved}
          >
            {(one, set) => (
              <>
                <PickField
                  label="The plunger touches"
                  value={one.side}
                  among={sides}
                  onChange={(side) => set({ ...one, side: side as typeof one.side })}
                />
                {(['near', 'far'] as const).map((place) => (
                  <div className="machine-three" key={place}>
                    <MeasureField
                      label={place === 'near' ? 'Near the bore' : 'At the free end'}
                      unit="um"
                      signed
                      value={one[place][0]}
                      onChange={(um) => set({ ...one, [place]: [um ?? 0, one[place][1]] })}
                    />
                    <MeasureField
                      label={`${place === 'near' ? 'Near the bore' : 'At the free end'}, turned half round`}
                      unit="um"
                      signed
                      value={one[place][1]}
                      onChange={(um) => set({ ...one, [place]: [one[place][0], um ?? 0] })}
                    />
                  </div>
                ))}
              </>
            )}
          </ItemList>
        ) : null}
        {asked.bands ? (
          <section className="machine-list">
            <h2>Bands</h2>
            <p className="quiet">
              As ordinary lathes are remembered, free end; put your own in. Plus is up, or toward you.
            </p>
            {(['up', 'sideways'] as const).map((plane) => {
              const band = asked.bands?.[plane];
              if (!band) return null;
              const set = (change: Partial<typeof band>) =>
                keep({ ...asked, bands: { ...asked.bands, [plane]: { ...band, ...change } } });
              return (
                <fieldset className="machine-three" key={plane}>
                  <legend>{plane === 'up' ? 'Up and down' : 'Sideways'}</legend>
                  <MeasureField
                    label="From"
                    unit="um"
                    signed
                    value={band.low_um}
                    onChange={(um) => set({ low_um: um ?? 0 })}
                  />
                  <MeasureField
                    label="To"
                    unit="um"
                    signed
                    value={band.high_um}
                    onChange={(um) => set({ high_um: um ?? 0 })}
                  />
                  <MeasureField
                    label="Over"
                    unit="mm"
                    value={band.over_mm}
                    onChange={(mm) => set({ over_mm: mm ?? 300 })}
                  />
                </fieldset>
              );
            })}
          </section>
        ) : null}
        {(asked.centres ?? []).map((one, k) => (
          <CentresFields
            // biome-ignore lint/suspicious/noArrayIndexKey: comparisons have no other name than their place
            key={k}
            one={one}
            set={(next) =>
              keep({ ...asked, centres: asked.centres!.map((was, i) => (i === k ? next : was)) })
            }
          />
        ))}
      </form>
      {wrong ? null : <ToBench open={open} asked={asked} answer={data} toward={toward} from={from} />}
      <KeepFoot
        status={changed ? 'Not kept yet.' : 'Kept in the ledger.'}
        can={changed && !wrong}
        words="Keep this"
        onKeep={() => {
          write({ kind: 'axis taken', of, asked: { ...asked } });
          finish();
        }}
      />
    </main>
  );
}

function BarFields({ bar, set }: { readonly bar: BarTyped; readonly set: (bar: BarTyped) => void }) {
  const { units } = useSettings();
  return (
    <section className="machine-list">
      <h2>The bar</h2>
      <div className="machine-three">
        {(
          [
            ['diameter_mm', 'Diameter'],
            ['bore_mm', 'Bore through it'],
            ['out_mm', 'Stands out'],
            ['near_mm', 'First place, from the bore'],
            ['far_mm', 'Second place'],
          ] as const
        ).map(([key, label]) => (
          <MeasureField
            key={key}
            label={label}
            unit="mm"
            value={bar[key]}
            {...(key === 'bore_mm' ? { empty: 'solid' } : {})}
            onChange={(mm) => {
              const { bore_mm, ...rest } = bar;
              if (key === 'bore_mm') set(mm === undefined ? rest : { ...rest, bore_mm: mm });
              else set({ ...bar, [key]: mm ?? 0 });
            }}
          />
        ))}
        <MeasureField
          label="One reading, one sd"
          unit="um"
          value={bar.reading_sd_um}
          empty={`${sayDeviation(usualReadingSd_um, units, { signed: false }).text}, common practice`}
          onChange={(um) => {
            const { reading_sd_um: _sd, ...rest } = bar;
            set(um === undefined ? rest : { ...rest, reading_sd_um: um });
          }}
        />
      </div>
    </section>
  );
}
