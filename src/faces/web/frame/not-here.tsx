import type { ReactNode } from 'react';
import { Refusing } from '../keep/server.ts';
import { NotLetIn } from './not-let-in.tsx';
import { Wrong } from './notice.tsx';

/** Why what a screen needs has not come, in words: the shop does not answer, or it answers that it cannot. */
export function whyNotHere(what: string, failure: Error): string {
  if (!(failure instanceof Refusing))
    return 'The shop’s file is out of reach. Nothing is lost: what you entered is kept on this phone, and this page looks again by itself. If it stays so, see whether Waywright runs there and this phone is on the shop’s network.';
  if (failure.status >= 500)
    return `The shop answers, but it cannot give out ${what} now: ${failure.message}. Nothing is lost, and this page asks again by itself. If it stays so, look at the machine that Waywright runs on.`;
  return `The shop does not give out ${what}: ${failure.message}`;
}

/**
 * What a screen shows in the place of something that is not here: after a moment, that it is on its way; or why it does not come.
 * @param what     with its article, "the job": it stands in the middle of a sentence
 * @param missing  what is said where the shop has no such thing
 */
export function NotHere(props: {
  readonly what: string;
  readonly failure: Error | null | undefined;
  readonly missing?: ReactNode;
}) {
  const { what, failure, missing } = props;
  if (!failure)
    return (
      <p className="quiet anew" role="status">
        Asking the shop for {what}.
      </p>
    );
  if (failure instanceof Refusing && failure.status === 401) return <NotLetIn />;
  if (failure instanceof Refusing && failure.status === 404 && missing !== undefined) return missing;
  return <Wrong role="alert">{whyNotHere(what, failure)}</Wrong>;
}
