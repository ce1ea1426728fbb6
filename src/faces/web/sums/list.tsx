import { useState } from 'react';
import { fromAddress, keepInAddress } from '../frame/address.ts';
import { Top } from '../frame/top.tsx';
import { sumsFound } from './groups.ts';
import './sums.css';
import { Choice } from '../frame/choice.tsx';

/** Every sum of the shop, in groups, found by a word. */
export function SumsScreen() {
  const [typed, setTyped] = useState(() => fromAddress().find ?? '');
  const find = (text: string) => {
    setTyped(text);
    keepInAddress({ find: text });
  };
  const groups = sumsFound(typed);
  const count = groups.reduce((sum, group) => sum + group.sums.length, 0);
  return (
    <>
      <Top title="Sums" />
      <main className="page">
        <p className="say">Which number do you want?</p>
        <div className="field sum-find">
          <label htmlFor="find-sum">Find a sum</label>
          <input
            id="find-sum"
            type="search"
            value={typed}
            autoComplete="off"
            placeholder="roll, gib, sag, level …"
            onChange={(event) => find(event.target.value)}
          />
          <p className="quiet" role="status">
            {count === 1 ? '1 sum' : `${count} sums`}
            {typed.trim() === '' ? ', each with its drawing, formula and source' : ` with “${typed.trim()}”`}
          </p>
        </div>
        {count === 0 ? (
          <div className="sum-none">
            <p>Nothing here is called so. Try the thing in your hand: roll, level, straightedge, gib.</p>
            <button type="button" className="second" onClick={() => find('')}>
              Show all sums
            </button>
          </div>
        ) : null}
        <div className="sum-groups">
          {groups.map(({ head, sums }) => (
            <section key={head}>
              <h2>{head}</h2>
              <ul className="rows">
                {sums.map((sum) => (
                  <li key={sum.name}>
                    <Choice name={sum.title} note={sum.question} href={`/sums/${sum.name}`} />
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      </main>
    </>
  );
}
