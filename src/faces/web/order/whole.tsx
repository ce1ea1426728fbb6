import { type ReactNode, useMemo } from 'react';
import { Link } from 'wouter';
import { benchOf, machineOf, stepRecords } from '../../../core/ledger/rebuild-record.ts';
import type { Machine } from '../../../core/order/machine.ts';
import { type OrderAnswer, order } from '../../../shop/order/order.ts';
import { GoLink } from '../frame/go.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import type { OpenJob } from '../keep/jobs.ts';

/** A job's machine with its order of work as the ledger has it. */
export interface OpenMachine extends OpenJob {
  readonly machine: Machine;
  readonly answer: OrderAnswer;
}

/** A screen about the whole machine of a job; a job about one slide is told where its machine is, or how one is begun. */
export const MachineScreen = (props: {
  readonly id: string;
  readonly title: string;
  readonly children: (open: OpenMachine) => ReactNode;
}) => (
  <JobScreen id={props.id} title={() => props.title}>
    {(open) => <Inside open={open}>{props.children}</Inside>}
  </JobScreen>
);

function Inside({
  open,
  children,
}: {
  readonly open: OpenJob;
  readonly children: (open: OpenMachine) => ReactNode;
}) {
  const { live } = open.job;
  const machine = useMemo(() => machineOf(live), [live]);
  const answer = useMemo(() => (machine ? order(machine, stepRecords(live)) : undefined), [machine, live]);
  if (machine && answer) return children({ ...open, machine, answer });
  const link = benchOf(live);
  return (
    <main className="page narrow with-foot">
      <p className="say">
        {link
          ? 'This job is the bench of one step. Its machine’s order of work is kept in the machine’s own job.'
          : 'This job is about one slide. An order of work belongs to a whole machine.'}
      </p>
      {link ? null : (
        <p>
          <Link className="third" href={`/job/${encodeURIComponent(open.id)}`}>
            Back to the Bench
          </Link>
        </p>
      )}
      <footer className="foot">
        {link ? (
          <GoLink to={`/job/${encodeURIComponent(link.job)}/order`}>To the order of work</GoLink>
        ) : (
          <GoLink to="/whole">Begin a whole machine</GoLink>
        )}
      </footer>
    </main>
  );
}
