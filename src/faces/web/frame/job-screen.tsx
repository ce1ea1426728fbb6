import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { benchOf, machineOf } from '../../../core/ledger/rebuild-record.ts';
import { capital } from '../../../shop/phrase.ts';
import { practiceOf } from '../../../shop/practise/practice-of.ts';
import { type OpenJob, useJob } from '../keep/jobs.ts';
import { Conflicts } from './conflicts.tsx';
import { NotHere } from './not-here.tsx';
import { Wrong } from './notice.tsx';
import { Top } from './top.tsx';

/** A screen of one job: its bar at the top, and its content once the job is known. */
export function JobScreen(props: {
  readonly id: string;
  readonly title?: (open: OpenJob) => string;
  readonly children: (open: OpenJob) => ReactNode;
}) {
  const { id, title, children } = props;
  const { open, failure } = useJob(id);
  if (open) {
    const { plan, round } = open.job;
    const words = title?.(open) ?? `${capital(plan.slide.name)}, round ${round}`;
    return (
      <>
        <Top
          title={words}
          name={plan.title}
          job={id}
          demo={plan.demo}
          practice={practiceOf(open.job) !== undefined}
          order={machineOf(open.job.live) ? id : benchOf(open.job.live)?.job}
          last={open.last}
        />
        <Conflicts open={open} />
        {children(open)}
      </>
    );
  }
  return (
    <>
      <Top title="Job" job={id} />
      <main className="page narrow">
        <NotHere
          what="the job"
          failure={failure}
          missing={
            <>
              <Wrong role="alert">
                There is no such job in the shop’s file. Its address may be mistyped, or it is in another
                workshop’s file.
              </Wrong>
              <Link className="second" href="/jobs">
                All jobs
              </Link>
            </>
          }
        />
      </main>
    </>
  );
}
