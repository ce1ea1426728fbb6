import { useSyncExternalStore } from 'react';
import { NotHere } from './not-here.tsx';

const changes = ['online', 'offline'] as const;
const subscribe = (told: () => void) => {
  for (const one of changes) window.addEventListener(one, told);
  return () => {
    for (const one of changes) window.removeEventListener(one, told);
  };
};

/** A screen whose answer is not here yet. It says so after a moment only: most answers come sooner. */
export function WorkingOnIt({ failure }: { readonly failure: Error | undefined }) {
  const inReach = useSyncExternalStore(subscribe, () => navigator.onLine);
  if (failure)
    return (
      <main className="page narrow">
        <NotHere what="what it worked out" failure={failure} />
      </main>
    );
  return (
    <main className="page narrow" aria-busy="true">
      <p className="quiet anew" role="status">
        {inReach
          ? 'Working it out. This page stays free: the menu leads on.'
          : 'The shop is out of reach. What you entered is kept here; it is worked out when the shop is back. The menu leads on.'}
      </p>
    </main>
  );
}
