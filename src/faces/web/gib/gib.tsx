import type { ReactNode } from 'react';
import { Link, useParams, useSearchParams } from 'wouter';
import { gibsOf } from '../../../core/ledger/rebuild-record.ts';
import type { GibAnswer } from '../../../shop/gib.ts';
import {
  type GibTyped,
  gibBlanks,
  type KeeperTyped,
  nextStation,
  placesOf,
  readsOf,
  type Station,
  stationsOf,
} from '../../../shop/order/gib-typed.ts';
import { moved } from '../../../shop/order/machine-draft.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { KeepFoot } from '../frame/keep-foot.tsx';
import { Mark } from '../frame/mark.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { jobAddress } from '../keep/server.ts';
import { ItemList, NumberField, PickField, TextField } from '../machine/fields.tsx';
import { MeasureField } from '../machine/measure-field.tsx';
import { useWorkedOut } from '../machine/worked-out.ts';
import '../machine/machine.css';
import '../axis/axis.css';
import { Wrong } from '../frame/notice.tsx';
import { ShowWorking } from '../frame/show-working.tsx';

/** A dovetail over rolls, its gib and its keepers: what was read, what it comes to, what to do. */
export function GibScreen() {
  const { id = '' } = useParams<{ id: string }>();
  const [search] = useSearchParams();
  const of = search.get('step') ?? 'gib';
  return (
    <JobScreen key={`${id} ${of}`} id={id} title={() => 'Gibs'}>
      {(open) => <Gib open={open} of={of} />}
    </JobScreen>
  );
}

/** Whether there is anything to work on. */
const isSome = ({ rolls, gib, play, keepers }: GibTyped): boolean =>
  Boolean(rolls ?? gib ?? play) || Boolean(keepers?.length);

function Gib({ open, of }: { readonly open: OpenJob; readonly of: string }) {
  const { id, job } = open;
  const kept = (gibsOf(job.live).get(of)?.asked ?? {}) as GibTyped;
  const [asked, keep, finish] = useDraft<GibTyped>(draftKey(id, 'gib', of), kept);
  const { data, wrong } = useWorkedOut<GibAnswer>(`${jobAddress(id)}/gib`, asked, isSome(asked));
  const write = useWrite(id);
  const changed = JSON.stringify(asked) !== JSON.stringify(kept);
  const said = isSome(asked)
    ? [data?.rolls, data?.gib, data?.play, ...(data?.keepers ?? [])].flatMap((one) => one?.sentence ?? [])
    : [];
  return (
    <main className="page narrow with-foot">
      <p>
        <Link className="third" href={`/job/${encodeURIComponent(id)}/order/${encodeURIComponent(of)}`}>
          <Mark name="arrow left" size={20} />
          The step
        </Link>
      </p>
      <div aria-live="polite" className="axis-said">
        {isSome(asked) ? null : <p className="say">Choose below what was measured: one part is enough.</p>}
        {(wrong ?? []).map((text) => (
          <Wrong key={text}>{text}</Wrong>
        ))}
        {wrong
          ? null
          : said.map((text) => (
              <p key={text} className="say">
                {text}
              </p>
            ))}
        {said.length && data ? <ShowWorking lines={data.working} /> : null}
      </div>
      <form
        className="machine-room"
        aria-label="What was measured"
        onSubmit={(event) => event.preventDefault()}
      >
        <NumberField
          label="Angle of the dovetail, ° (60 when left empty)"
          value={asked.angle_deg}
          onChange={(angle) => {
            const { angle_deg: _was, ...rest } = asked;
            keep(angle === undefined ? rest : { ...rest, angle_deg: angle as number });
          }}
        />
        <Part
          title="Dovetail over rolls"
          what="Width over two rolls, along the slide"
          value={asked.rolls}
          blank={gibBlanks.rolls}
          onChange={(rolls) => {
            const { rolls: _was, ...rest } = asked;
            keep(rolls ? { ...rest, rolls } : rest);
          }}
        >
          {(rolls, set) => (
            <>
              <PickField
                label="Which dovetail"
                value={rolls.kind}
                among={[
                  { value: 'male', words: 'male, rolls outside' },
                  { value: 'female', words: 'female, rolls inside' },
                ]}
                onChange={(kind) => set({ ...rolls, kind: kind as typeof rolls.kind })}
              />
              <MeasureField
                label="Roll, diameter"
                unit="mm"
                value={rolls.roll_mm}
                onChange={(mm) => set({ ...rolls, roll_mm: mm ?? 0 })}
              />
              <Stations
                title="Readings"
                read="Over the rolls"
                unit="mm"
                stations={stationsOf(rolls.stations_mm, rolls.read_mm)}
                onChange={(all) => set({ ...rolls, stations_mm: placesOf(all), read_mm: readsOf(all) })}
              />
            </>
          )}
        </Part>
        <Part
          title="Gib, its taper"
          what="Thickness along it, from the thin end"
          value={asked.gib}
          blank={gibBlanks.gib}
          onChange={(wedge) => {
            const { gib: _was, ...rest } = asked;
            keep(wedge ? { ...rest, gib: wedge } : rest);
          }}
        >
          {(wedge, set) => (
            <Stations
              title="Thickness"
              read="Thick"
              unit="mm"
              stations={stationsOf(wedge.stations_mm, wedge.thick_mm)}
              onChange={(all) => set({ stations_mm: placesOf(all), thick_mm: readsOf(all) })}
            />
          )}
        </Part>
        <Part
          title="Play"
          what="Pushed and pulled at both ends of the gib, with an indicator"
          value={asked.play}
          blank={gibBlanks.play}
          onChange={(play) => {
            const { play: _was, ...rest } = asked;
            keep(play ? { ...rest, play } : rest);
          }}
        >
          {(play, set) => (
            <>
              <PickField
                label="Which way it was felt"
                value={play.how}
                among={[
                  { value: 'across', words: 'across the slide' },
                  { value: 'square', words: 'square to the gib' },
                  { value: 'lift', words: 'lifted' },
                ]}
                onChange={(how) => set({ ...play, how: how as typeof play.how })}
              />
              <div className="machine-three">
                <MeasureField
                  label="At the thick end"
                  unit="um"
                  value={play.thick_end_um}
                  onChange={(um) => set({ ...play, thick_end_um: um ?? 0 })}
                />
                <MeasureField
                  label="At the thin end"
                  unit="um"
                  value={play.thin_end_um}
                  onChange={(um) => set({ ...play, thin_end_um: um ?? 0 })}
                />
                <MeasureField
                  label="Still to be scraped off"
                  unit="um"
                  empty="nothing"
                  value={play.scrape_um}
                  onChange={(um) => set(put(play, 'scrape_um', um))}
                />
                <MeasureField
                  label="May go in further"
                  unit="mm"
                  empty="not looked at"
                  value={play.in_left_mm}
                  onChange={(mm) => set(put(play, 'in_left_mm', mm))}
                />
                <MeasureField
                  label="May come out"
                  unit="mm"
                  empty="not looked at"
                  value={play.out_left_mm}
                  onChange={(mm) => set(put(play, 'out_left_mm', mm))}
                />
                <MeasureField
                  label="Lead of its screw"
                  unit="mm"
                  empty="turns not told"
                  value={play.screw_mm}
                  onChange={(mm) => set(put(play, 'screw_mm', mm))}
                />
              </div>
              {asked.gib ? null : (
                <NumberField
                  label="Taper by the drawing, 1 in"
                  value={asked.taper_one_in}
                  onChange={(one_in) => {
                    const { taper_one_in: _was, ...rest } = asked;
                    keep(one_in === undefined ? rest : { ...rest, taper_one_in: one_in as number });
                  }}
                />
              )}
            </>
          )}
        </Part>
        <ItemList<KeeperTyped>
          title="Keepers"
          one="a keeper"
          items={asked.keepers ?? []}
          name={(one) => one.name}
          onChange={(keepers) => keep({ ...asked, keepers })}
          blank={() => gibBlanks.keeper}
          move={moved}
        >
          {(one, set) => (
            <>
              <TextField label="Called" value={one.name} onChange={(name) => set({ ...one, name })} />
              <Stations
                title="Clearance"
                read="Clearance"
                unit="um"
                stations={stationsOf(one.stations_mm, one.clearance_um)}
                onChange={(all) => set({ ...one, stations_mm: placesOf(all), clearance_um: readsOf(all) })}
              />
            </>
          )}
        </ItemList>
      </form>
      <KeepFoot
        status={
          changed ? 'Not kept yet.' : isSome(asked) ? 'Kept in the ledger.' : 'Nothing is measured yet.'
        }
        can={changed && !wrong && isSome(asked)}
        words="Keep this"
        onKeep={() => {
          write({ kind: 'gib taken', of, asked: { ...asked } });
          finish();
        }}
      />
    </main>
  );
}

/** The same with one part put in, or taken out. */
const put = <T extends object, K extends keyof T>(all: T, key: K, value: T[K] | undefined): T => {
  const { [key]: _was, ...rest } = all;
  return (value === undefined ? rest : { ...rest, [key]: value }) as T;
};

/** A part of the sheet that is there or not. */
function Part<T>(props: {
  readonly title: string;
  readonly what: string;
  readonly value: T | undefined;
  readonly blank: T;
  readonly onChange: (value: T | undefined) => void;
  readonly children: (value: T, set: (value: T) => void) => ReactNode;
}) {
  const { title, what, value, blank, onChange, children } = props;
  return (
    <section className="machine-list">
      <h2>{title}</h2>
      <p className="quiet">{what}</p>
      {value === undefined ? (
        <button type="button" className="second" onClick={() => onChange(blank)}>
          Measured<span className="hidden"> {title}</span>
        </button>
      ) : (
        <>
          {children(value, onChange)}
          <button type="button" className="third" onClick={() => onChange(undefined)}>
            Take out<span className="hidden"> {title}</span>
          </button>
        </>
      )}
    </section>
  );
}

const fewest = 2;

/** Places along a slide and what was read at each; at least two. */
function Stations(props: {
  readonly title: string;
  readonly read: string;
  readonly unit: 'um' | 'mm';
  readonly stations: readonly Station[];
  readonly onChange: (stations: readonly Station[]) => void;
}) {
  const { title, read, unit, stations, onChange } = props;
  const set = (k: number, change: Partial<Station>) =>
    onChange(stations.map((one, i) => (i === k ? { ...one, ...change } : one)));
  return (
    <fieldset className="machine-list">
      <legend>{title}</legend>
      {stations.map((one, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a station has no other name than its place in the row
        <div className="machine-three" key={k}>
          <MeasureField
            label={`${k + 1}, at`}
            unit="mm"
            value={one.at_mm}
            onChange={(mm) => set(k, { at_mm: mm ?? 0 })}
          />
          <MeasureField
            label={`${k + 1}, ${read.toLowerCase()}`}
            unit={unit}
            value={one.read}
            onChange={(value) => set(k, { read: value ?? 0 })}
          />
        </div>
      ))}
      <div className="machine-moves">
        <button
          type="button"
          className="third"
          onClick={() => onChange([...stations, nextStation(stations)])}
        >
          One more<span className="hidden"> station of {title.toLowerCase()}</span>
        </button>
        {stations.length > fewest ? (
          <button type="button" className="third" onClick={() => onChange(stations.slice(0, -1))}>
            One less<span className="hidden"> station of {title.toLowerCase()}</span>
          </button>
        ) : null}
      </div>
    </fieldset>
  );
}
