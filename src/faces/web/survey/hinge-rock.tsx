import { readHinge } from '../../../core/kit/hinge.ts';
import { readRock } from '../../../core/kit/rock.ts';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { readLength } from '../../../core/quantity/length.ts';
import { testCards } from '../../../shop/survey/setup-cards.ts';
import { Wrong } from '../frame/notice.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { SetUp } from './set-up.tsx';

type Typed = Readonly<Record<string, string>>;
type Read = { readonly value?: number; readonly wrong?: string };

/** "71 %", "0.71", "71". */
function readShare(text: string): Read {
  if (text.trim() === '') return {};
  const number = Number(text.replace('%', '').trim());
  const share = /%/.test(text) || number > 1 ? number / 100 : number;
  return Number.isFinite(share) && share >= 0 && share <= 1
    ? { value: share }
    : { wrong: `“${text}” is no share of the length. Write 71 %.` };
}

const corners = ['first', 'second', 'third', 'fourth'] as const;

/** Where the part turned and how it rocked on its master: read into words, and kept with the round as evidence. */
export function HingeAndRock({ open }: { readonly open: OpenJob }) {
  const { units } = useSettings();
  const write = useWrite(open.id);
  const { round, live } = open.job;
  const [typed, setTyped] = useDraft<Typed>(draftKey(open.id, round, 'hinge and rock'), {});
  const share = (name: string) => readShare(typed[name] ?? '');
  const [first, last] = [share('pushed first'), share('pushed last')];
  const um = (name: string): Read => {
    const text = (typed[name] ?? '').trim().replace(/^±\s*/, '');
    if (text === '') return {};
    const read = readDeviation(text, units === 'metric' ? 'um' : 'tenths');
    return read.ok ? { value: read.um } : { wrong: read.why };
  };
  const mm = (name: string): Read => {
    const text = (typed[name] ?? '').trim();
    if (text === '') return {};
    const read = readLength(text, units === 'metric' ? 'mm' : 'in', { sort: 'size' });
    return read.ok ? { value: read.mm } : { wrong: read.why };
  };
  const moved = corners.map(um);
  const doubt = um('repeats');
  const [length, width] = [mm('length'), mm('width')];
  const hinge =
    first.value === undefined || last.wrong
      ? undefined
      : { pushed_first: first.value, ...(last.value === undefined ? {} : { pushed_last: last.value }) };
  const isRock = [...moved, doubt, length, width].every(({ value }) => value !== undefined);
  const rock = isRock
    ? {
        moved_um: moved.map(({ value }) => value!) as [number, number, number, number],
        sd_um: doubt.value! / 2,
        length_mm: length.value!,
        width_mm: width.value!,
      }
    : undefined;
  const field = (name: string, label: string, read: Read) => (
    <div className="field" key={name}>
      <label htmlFor={`test-${name}`}>{label}</label>
      <input
        id={`test-${name}`}
        value={typed[name] ?? ''}
        autoComplete="off"
        aria-invalid={read.wrong === undefined ? undefined : true}
        aria-describedby={read.wrong === undefined ? undefined : `test-${name}-wrong`}
        onChange={(event) => setTyped({ ...typed, [name]: event.target.value })}
      />
      {read.wrong === undefined ? null : <Wrong id={`test-${name}-wrong`}>{read.wrong}</Wrong>}
    </div>
  );
  const small = units === 'metric' ? 'µm' : 'tenths';
  const long = units === 'metric' ? 'mm' : 'in';
  const kept = live.filter(
    (entry) => (entry.kind === 'hinge tested' || entry.kind === 'rock tested') && entry.round === round,
  );
  const [hingeSays, rockSays] = [hinge && readHinge(hinge), rock && readRock(rock)];
  return (
    <details className="optional" open={kept.length > 0 || Object.values(typed).some(Boolean)}>
      <summary>Pivot and rock on the master</summary>
      <div>
        <SetUp card={testCards.pivot} plan={open.job.plan} />
        <p className="quiet">
          Push one end of the part sideways on its master. How far from the pushed end does it turn, as a
          share of its length?
        </p>
        <div className="survey-fields">
          {field('pushed first', 'Pushed at the first end, %', first)}
          {field('pushed last', 'Pushed at the other end, %', last)}
        </div>
        {hingeSays ? (
          <>
            <p>{hingeSays.text}</p>
            <p className="quiet">{hingeSays.limits}</p>
          </>
        ) : null}
        <button
          type="button"
          className="second"
          disabled={!hinge}
          onClick={() => {
            if (!hinge) return;
            write({ kind: 'hinge tested', round, test: hinge });
            setTyped({ ...typed, 'pushed first': '', 'pushed last': '' });
          }}
        >
          Keep the pivot test
        </button>
        <SetUp card={testCards.rock} plan={open.job.plan} />
        <p className="quiet">
          Tip it from one pair of opposite corners to the other. How far does each corner move, going round?
        </p>
        <div className="survey-fields">
          {corners.map((name, k) =>
            field(name, `${name.charAt(0).toUpperCase()}${name.slice(1)} corner, ${small}`, moved[k]!),
          )}
          {field('repeats', `One reading repeats within ±, ${small}`, doubt)}
          {field('length', `Corner to corner along, ${long}`, length)}
          {field('width', `Corner to corner across, ${long}`, width)}
        </div>
        {rockSays ? (
          <>
            <p>{rockSays.text}</p>
            <p className="quiet">{rockSays.limits}</p>
          </>
        ) : null}
        <button
          type="button"
          className="second"
          disabled={!rock}
          onClick={() => {
            if (!rock) return;
            write({ kind: 'rock tested', round, test: rock });
            setTyped({ ...typed, ...Object.fromEntries(corners.map((name) => [name, ''])) });
          }}
        >
          Keep the rock test
        </button>
        {kept.length ? (
          <p className="quiet">
            Kept with round {round}:{' '}
            {kept.map((entry) => (entry.kind === 'hinge tested' ? 'pivot test' : 'rock test')).join(', ')}.
            The ledger shows what they say, and undoes them.
          </p>
        ) : null}
      </div>
    </details>
  );
}
