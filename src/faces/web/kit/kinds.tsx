import { Link } from 'wouter';
import { isReferenceKind, thingKinds } from '../../../shop/kit/thing-fields.ts';
import { Mark } from '../frame/mark.tsx';
import { Top } from '../frame/top.tsx';
import './kit.css';

/** What is to be added to the kit? */
export const KitKindsScreen = () => (
  <>
    <Top title="Add to the kit" />
    <main className="page narrow">
      <p className="say">What do you add?</p>
      {[false, true].map((reference) => (
        <section key={String(reference)}>
          <h2>{reference ? 'A reference' : 'An instrument'}</h2>
          <ul className="rows">
            {thingKinds
              .filter(({ kind }) => isReferenceKind(kind) === reference)
              .map(({ kind, words, does }) => (
                <li key={kind}>
                  <Link className="choice kit-thing" href={`/kit/new/${encodeURIComponent(kind)}`}>
                    <span>
                      <b>{words}</b>
                      <small>{does}</small>
                    </span>
                    <Mark name="arrow right" size={20} />
                  </Link>
                </li>
              ))}
          </ul>
        </section>
      ))}
      <Link className="third" href="/kit">
        Back to the kit
      </Link>
    </main>
  </>
);
