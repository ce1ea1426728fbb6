import { type ComponentType, useCallback, useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { Wrong } from './notice.tsx';
import { Top } from './top.tsx';

const again_ms = 3_000;

/** Imports a screen's file. */
type FetchIt<Props> = () => Promise<ComponentType<Props>>;

const here = new Map<unknown, unknown>();

/** Fetches screens before anyone asks for them: they are then there at once. One that does not come is asked for when it is wanted. */
export async function fetchAhead(screens: readonly (() => Promise<unknown>)[]): Promise<void> {
  for (const fetchIt of screens)
    if (!here.has(fetchIt))
      try {
        here.set(fetchIt, await fetchIt());
      } catch {
        return;
      }
}

/** When the page was last begun anew for a screen; twice within this time is once too often. */
const begunKey = 'waywright/begun-anew';
const begunAgain_ms = 10_000;

/**
 * Begins the page anew once the shop answers: browsers may remember for the life of a page that a file did not come, and then never
 * ask for it again. What is typed stands on the phone's shelf.
 * @param asked  by hand: however short ago it was begun anew
 */
async function beginAnew(asked: boolean): Promise<void> {
  const last = Number(sessionStorage.getItem(begunKey) ?? 0);
  if (!asked && Date.now() - last < begunAgain_ms) return;
  const isThere = await fetch('/api/health').then(
    (answer) => answer.ok,
    () => false,
  );
  if (!isThere) return;
  sessionStorage.setItem(begunKey, String(Date.now()));
  location.reload();
}

/** The job that an address is about. */
const jobOf = (path: string): string | undefined => {
  const [, id] = /^\/job\/([^/]+)/.exec(path) ?? [];
  return id === undefined ? undefined : decodeURIComponent(id);
};

/**
 * A screen that is fetched when it is asked for: says so while it is on its way, and when it does not come, that it is tried
 * again.
 */
export function FetchedScreen<Props extends object = Record<never, never>>(props: {
  readonly title: string;
  readonly fetchIt: FetchIt<Props>;
  /** What the screen is given. */
  readonly given?: Props;
}) {
  const { title, fetchIt, given } = props;
  const [path] = useLocation();
  const [state, setState] = useState<'waiting' | 'here' | 'out of reach'>('waiting');
  const Screen = here.get(fetchIt) as ComponentType<Props> | undefined;
  const ask = useCallback(
    async (again?: 'again' | 'by hand') => {
      try {
        here.set(fetchIt, await fetchIt());
        setState('here');
      } catch {
        setState('out of reach');
        if (again) await beginAnew(again === 'by hand');
      }
    },
    [fetchIt],
  );
  useEffect(() => {
    if (here.has(fetchIt)) return;
    if (state === 'waiting') void ask();
    if (state !== 'out of reach') return;
    const timer = setInterval(() => void ask('again'), again_ms);
    return () => clearInterval(timer);
  }, [fetchIt, state, ask]);
  if (Screen) return <Screen {...((given ?? {}) as Props)} />;
  return (
    <>
      <Top title={title} job={jobOf(path)} />
      <main className="page narrow">
        {state === 'out of reach' ? (
          <>
            <Wrong role="alert">
              The shop is out of reach, and this screen was not on this phone yet. Nothing is lost; it is
              asked for again by itself.
            </Wrong>
            <button type="button" className="second" onClick={() => void ask('by hand')}>
              Try again
            </button>
          </>
        ) : (
          <p className="quiet anew" role="status">
            This screen is on its way from the shop.
          </p>
        )}
      </main>
    </>
  );
}
