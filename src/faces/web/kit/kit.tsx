import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'wouter';
import { isReference, type KitItem } from '../../../core/ledger/kit-ledger.ts';
import { thingLine } from '../../../shop/kit/thing-words.ts';
import { GoLink } from '../frame/go.tsx';
import { dayMonth } from '../frame/kept.tsx';
import { Mark } from '../frame/mark.tsx';
import { Top } from '../frame/top.tsx';
import { useOutbox } from '../keep/jobs.ts';
import { useKit } from '../keep/kit.ts';
import { kitParcels } from '../keep/outbox.ts';
import { posted, Refusing } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { KitDeeds } from './deeds.tsx';
import { JobTargets } from './targets.tsx';
import './kit.css';
import { FileButton } from '../frame/file-button.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { RefusedParcels } from '../frame/refused-parcels.tsx';

/** The workshop's instruments and references, and what they can prove of the job that is open. */
export function KitScreen() {
  const { kit, failure } = useKit();
  const box = useOutbox();
  return (
    <>
      <Top title="Kit" />
      <main className="page with-foot">
        {kit ? null : <NotHere what="the kit" failure={failure} />}
        <RefusedParcels refused={box.refused.filter((parcel) => parcel.job === kitParcels)} />
        {kit ? (
          <>
            <p className="say">
              {kit.items.length === 0
                ? 'The kit is empty. Add the indicator you trust most; it takes a minute.'
                : 'What the workshop measures with, and what it can prove.'}
            </p>
            <div className="pair kit-page">
              <JobTargets items={kit.items} />
              <div>
                <Things head="Instruments" items={kit.items.filter(({ thing }) => !isReference(thing))} />
                <Things head="References" items={kit.items.filter(({ thing }) => isReference(thing))} />
                <KitDeeds kit={kit} />
                <KitFiles />
              </div>
            </div>
          </>
        ) : null}
      </main>
      <footer className="foot">
        <GoLink to="/kit/new" mark={<Mark name="plus" size={26} />}>
          Add to the kit
        </GoLink>
      </footer>
    </>
  );
}

function Things({ head, items }: { readonly head: string; readonly items: readonly KitItem[] }) {
  const { units } = useSettings();
  return (
    <section>
      <h2>{head}</h2>
      {items.length === 0 ? <p className="quiet">None yet.</p> : null}
      <ul className="rows">
        {items.map(({ item, thing }) => (
          <li key={item}>
            <Link className="choice kit-thing" href={`/kit/thing/${encodeURIComponent(item)}`}>
              <span>
                <b>{thing.name}</b>
                <small>{thingLine(thing, units)}</small>
                {thing.checked === undefined ? null : <small>checked {checkedOn(thing.checked)}</small>}
              </span>
              <Mark name="arrow right" size={20} />
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** "25 Nov 2031" of a day. */
const checkedOn = (day: string): string => `${dayMonth(day)} ${day.slice(0, 4)}`;

/** The kit as a file, out and in. */
function KitFiles() {
  const [said, setSaid] = useState<{ readonly ok: boolean; readonly words: string }>();
  const client = useQueryClient();
  const take = async (file: File) => {
    try {
      await posted('/api/kit/import', JSON.parse(await file.text()));
      await client.invalidateQueries({ queryKey: ['kit'] });
      setSaid({ ok: true, words: `${file.name} is taken in. What was here already stays.` });
    } catch (failure) {
      setSaid({ ok: false, words: whyNot(file.name, failure) });
    }
  };
  return (
    <section>
      <div className="kit-files">
        <a className="third" href="/api/kit/export" download>
          <Mark name="arrow down" size={20} />
          Export the kit
        </a>
        <FileButton
          words="Take in a kit file"
          name="Kit file"
          accept="application/json,.json"
          onFile={(file) => void take(file)}
        />
      </div>
      <p role="status" className={said?.ok === false ? 'wrong' : 'quiet'}>
        {said?.ok === false ? <Mark name="caution" size={20} /> : null}
        <span>{said?.words}</span>
      </p>
    </section>
  );
}

function whyNot(name: string, failure: unknown): string {
  if (failure instanceof SyntaxError) return `${name} is not JSON. Nothing was taken from it.`;
  if (failure instanceof Refusing) return `${name} was not taken: ${failure.message}`;
  return 'The shop’s file is out of reach. Nothing was taken.';
}
