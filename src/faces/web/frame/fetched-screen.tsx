import { type ComponentType, useCallback, useEffect, useState } from 'react';
import { Mark } from './mark.tsx';
import { Top } from './top.tsx';

const again_ms = 3_000;

/** Imports a screen's file. */
type FetchIt = () => Promise<ComponentType>;

const here = new Map<FetchIt, ComponentType>();

/**
 * A screen that is fetched when it is asked for: says so while it is on its way, and when it does not come, that it is tried
 * again.
 */
export function FetchedScreen({ title, fetchIt }: { readonly title: string; readonly fetchIt: FetchIt }) {
  const [state, setState] = useState<'waiting' | 'here' | 'out of reach'>('waiting');
  const Screen = here.get(fetchIt);
  const ask = useCallback(async () => {
    try {
      here.set(fetchIt, await fetchIt());
      setState('here');
    } catch {
      setState('out of reach');
    }
  }, [fetchIt]);
  useEffect(() => {
    if (here.has(fetchIt)) return;
    if (state === 'waiting') void ask();
    if (state !== 'out of reach') return;
    const timer = setInterval(() => void ask(), again_ms);
    return () => clearInterval(timer);
  }, [fetchIt, state, ask]);
  if (Screen) return <Screen />;
  return (
    <>
      <Top title={title} />
      <main className="page narrow">
        {state === 'out of reach' ? (
          <>
            <p className="wrong" role="alert">
              <Mark name="caution" size={20} />
              <span>
                The shop is out of reach, and this screen was not on this phone yet. Nothing is lost; it is
                asked for again by itself.
              </span>
            </p>
            <button type="button" className="second" onClick={() => void ask()}>
              Try again
            </button>
          </>
        ) : (
          <p className="quiet">This screen is on its way from the shop.</p>
        )}
      </main>
    </>
  );
}
