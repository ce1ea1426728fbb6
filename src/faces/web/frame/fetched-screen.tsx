import { type ComponentType, lazy, Suspense } from 'react';
import { Mark } from './mark.tsx';
import { Top } from './top.tsx';

/**
 * A screen that is fetched when it is asked for: says so while it is on its way, and says what to do when it does not come.
 * @param fetchIt  imports the screen's file
 */
export function fetchedScreen<P extends object>(title: string, fetchIt: () => Promise<ComponentType<P>>) {
  const Screen = lazy(async (): Promise<{ default: ComponentType<P> }> => {
    try {
      return { default: await fetchIt() };
    } catch {
      return { default: () => <NotFetched title={title} /> };
    }
  });
  return (props: P) => (
    <Suspense fallback={<Waiting title={title} />}>
      <Screen {...props} />
    </Suspense>
  );
}

const Waiting = ({ title }: { readonly title: string }) => (
  <>
    <Top title={title} />
    <main className="page narrow">
      <p className="quiet">This screen is on its way from the shop.</p>
    </main>
  </>
);

const NotFetched = ({ title }: { readonly title: string }) => (
  <>
    <Top title={title} />
    <main className="page narrow">
      <p className="wrong" role="alert">
        <Mark name="caution" size={20} />
        <span>The shop is out of reach, and this screen was not on this phone yet. Nothing is lost.</span>
      </p>
      <button type="button" className="second" onClick={() => location.reload()}>
        Try again
      </button>
    </main>
  </>
);
