import { useEffect, useRef } from 'react';

/** "1 Dec 2031", the device's day. */
const today = (): string =>
  new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** What only paper shows, at its head: the job, and the day it was printed. A page may stand open for days, so the day is asked for then. */
export function OnPaper({
  job,
  demo,
}: {
  readonly job?: string | undefined;
  readonly demo?: string | undefined;
}) {
  const day = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const dated = () => {
      if (day.current) day.current.textContent = today();
    };
    dated();
    addEventListener('beforeprint', dated);
    return () => removeEventListener('beforeprint', dated);
  }, []);
  return (
    <p className="on-paper" aria-hidden="true">
      {[job, demo].filter(Boolean).map((words) => `${words} · `)}
      printed <span ref={day} />
    </p>
  );
}
