import { useState } from 'react';
import type { Kit } from '../../../core/kit/kit.ts';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { readLength, sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import { saySlope } from '../../../core/quantity/slope.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { thingLine } from '../../../shop/kit/thing-words.ts';
import { capital } from '../../../shop/phrase.ts';
import {
  faceFromKit,
  faceFromTwoSides,
  type ReferenceFace,
  referenceFaces,
  referencesFor,
} from '../../../shop/survey/reference-faces.ts';
import { testCards } from '../../../shop/survey/setup-cards.ts';
import { Wrong } from '../frame/notice.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { SetUp } from './set-up.tsx';

/** What the job's sweeps are held against: which thing of the kit it is, and its own slope from a sweep on both its sides. */
export function References(props: {
  readonly open: OpenJob;
  readonly kit: Kit | undefined;
  readonly system: UnitSystem;
}) {
  const { open, kit, system } = props;
  const faces = referenceFaces(open.job.plan, open.job.live);
  if (faces.length === 0) return null;
  return (
    <section aria-label="References">
      <h2>What the job is held against</h2>
      {faces.map((one) => (
        <Face key={one.cards.join()} open={open} face={one} kit={kit} system={system} />
      ))}
    </section>
  );
}

function Face(props: {
  readonly open: OpenJob;
  readonly face: ReferenceFace;
  readonly kit: Kit | undefined;
  readonly system: UnitSystem;
}) {
  const { open, face, kit, system } = props;
  const write = useWrite(open.id);
  const offers = kit ? referencesFor(face, kit) : [];
  const counts = saySlope(face.slope_urad, system, { sd: face.sd_urad }).text;
  return (
    <div className="survey-reference">
      <h3>{capital(face.face)}</h3>
      <p>
        Its own slope counts as <b className="nb">{counts}</b> along “{face.cards.join('” and “')}”
        {face.turnedIn.length
          ? `; swept turned over too in round ${face.turnedIn.join(', ')}, which finds it anew.`
          : '.'}
      </p>
      {face.kind ? (
        <div className="field">
          <label htmlFor={`reference-${face.cards.join()}`}>Which {face.kind} of the kit it is</label>
          <select
            id={`reference-${face.cards.join()}`}
            value={face.thing ?? ''}
            onChange={(event) => {
              const thing = offers.find(({ name }) => name === event.target.value);
              if (thing)
                write({ kind: 'plan amended', change: faceFromKit(open.job.plan, face.face, thing) });
            }}
          >
            <option value="" disabled={face.thing !== undefined}>
              {offers.length ? 'not said: as the job was made' : `no ${face.kind} in the kit yet`}
            </option>
            {face.thing !== undefined && !offers.some(({ name }) => name === face.thing) ? (
              <option value={face.thing}>{face.thing}</option>
            ) : null}
            {offers.map((thing) => (
              <option key={thing.name} value={thing.name}>
                {thing.name}: {thingLine(thing, system)}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      <TwoSidesForm open={open} face={face} system={system} />
    </div>
  );
}

type Typed = Readonly<Record<'first' | 'turned' | 'length' | 'doubt', string>>;
const nothing: Typed = { first: '', turned: '', length: '', doubt: '' };

function TwoSidesForm(props: {
  readonly open: OpenJob;
  readonly face: ReferenceFace;
  readonly system: UnitSystem;
}) {
  const { open, face, system } = props;
  const write = useWrite(open.id);
  const [typed, setTyped, finish] = useDraft<Typed>(
    draftKey(open.id, 'two sides', face.cards.join()),
    nothing,
  );
  const [kept, setKept] = useState(false);
  const isBar = face.kind === 'test bar';
  const um = (text: string) =>
    readDeviation(text.replace(/^±\s*/, ''), system === 'metric' ? 'um' : 'tenths');
  const small = system === 'metric' ? 'µm' : 'tenths';
  const mm = (text: string) => readLength(text, system === 'metric' ? 'mm' : 'in', { sort: 'size' });
  const reads = {
    first: um(typed.first),
    turned: um(typed.turned),
    doubt: um(typed.doubt),
    length: mm(typed.length === '' ? `${face.length_mm} mm` : typed.length),
  };
  const { first, turned, doubt, length } = reads;
  const said =
    first.ok && turned.ok && length.ok && doubt.ok && doubt.um > 0
      ? faceFromTwoSides(open.job.plan, face.face, {
          first_um: first.um,
          turned_um: turned.um,
          length_mm: length.mm,
          sd_um: doubt.um / 2,
        })
      : undefined;
  const field = (name: keyof Typed, label: string, placeholder?: string) => {
    const read = reads[name];
    const wrong =
      typed[name].trim() === ''
        ? undefined
        : !read.ok
          ? read.why
          : name === 'doubt' && 'um' in read && !(read.um > 0)
            ? 'That must be above 0.'
            : undefined;
    const id = `two-sides-${face.cards.join()}-${name}`;
    return (
      <div className="field" key={name}>
        <label htmlFor={id}>{label}</label>
        <input
          id={id}
          value={typed[name]}
          placeholder={placeholder}
          autoComplete="off"
          aria-invalid={wrong === undefined ? undefined : true}
          aria-describedby={wrong === undefined ? undefined : `${id}-wrong`}
          onChange={(event) => {
            setKept(false);
            setTyped({ ...typed, [name]: event.target.value });
          }}
        />
        {wrong === undefined ? null : <Wrong id={`${id}-wrong`}>{wrong}</Wrong>}
      </div>
    );
  };
  const over = length.ok ? sayLength(length.mm, system).text : '';
  return (
    <details className="optional" open={Object.values(typed).some((text) => text !== '')}>
      <summary>
        {isBar ? 'Turn it half round: bar against axis' : 'Sweep both its sides: its own error'}
      </summary>
      <div>
        <SetUp card={isBar ? testCards.bar : testCards.square} plan={open.job.plan} />
        <div className="survey-fields">
          {field('first', `Last stop less first, as it stands, ${small}`)}
          {field('turned', `The same, ${isBar ? 'half round' : 'turned over'}, ${small}`)}
          {field(
            'length',
            `Between the stops, ${system === 'metric' ? 'mm' : 'in'}`,
            sayLength(face.length_mm, system).number,
          )}
          {field('doubt', `Either is known within ±, ${small}`)}
        </div>
        {said ? (
          <>
            <p>
              Over {over} the machine makes{' '}
              <b className="nb">{sayDeviation(said.machine_um, system, { sd: said.sd_um }).text}</b> of it,
              the {face.kind ?? 'reference'}{' '}
              <b className="nb">{sayDeviation(said.face_um, system, { sd: said.sd_um }).text}</b>, plus: as
              the first reading.
            </p>
            <p className="quiet">
              M = (r₁ + r₂) / 2, S = (r₁ − r₂) / 2; each is surer than one reading by √2. Taken into the job,
              every round is worked out anew with it; the ledger undoes it.
            </p>
          </>
        ) : null}
        <button
          type="button"
          className="second"
          disabled={!said}
          onClick={() => {
            if (!said) return;
            write({ kind: 'plan amended', change: said.change });
            setTyped(nothing);
            finish();
            setKept(true);
          }}
        >
          Take it into the job
        </button>
        <p role="status" className="quiet">
          {kept ? 'Taken into the job: the next answer counts with it.' : ''}
        </p>
      </div>
    </details>
  );
}
