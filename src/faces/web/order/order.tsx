import { Link } from 'wouter';
import { nextStep, type StepShown } from '../../../shop/order/order.ts';
import { forecastSentence, stepHours } from '../../../shop/order/order-words.ts';
import { GoLink } from '../frame/go.tsx';
import { Mark } from '../frame/mark.tsx';
import { StepStatus } from './status.tsx';
import { stepAddress } from './step-address.ts';
import { MachineScreen, type OpenMachine } from './whole.tsx';

/** The order of work of a whole rebuild: what can be taken up, what waits and for what, what must be proven again. */
export const OrderScreen = ({ id }: { readonly id: string }) => (
  <MachineScreen id={id} title="Order of work">
    {(open) => <Order open={open} />}
  </MachineScreen>
);

function Order({ open }: { readonly open: OpenMachine }) {
  const { id, machine, answer } = open;
  const { steps, ready } = answer;
  const now = steps.filter((one) => ready.includes(one.id));
  const next = nextStep(answer);
  const base = `/job/${encodeURIComponent(id)}`;
  return (
    <main className={next ? 'page with-foot' : 'page'}>
      <div className="order-head">
        <p className="say">{answer.text}</p>
        <p>{forecastSentence(answer)}</p>
        <nav className="order-links" aria-label="The whole machine">
          {machine.heights ? (
            <Link className="third" href={`${base}/heights`}>
              Heights
            </Link>
          ) : null}
          <Link className="third" href={`${base}/axis`}>
            Axes
          </Link>
          <Link className="third" href={`${base}/chart`}>
            Chart
          </Link>
          <Link className="third" href={`${base}/machine`}>
            Edit the machine
          </Link>
        </nav>
      </div>
      <div className="order-lists">
        {now.length > 0 ? (
          <section aria-labelledby="order-now">
            <h2 id="order-now">Can be taken up now</h2>
            <ul className="rows">
              {now.map((step) => (
                <Row key={step.id} job={id} step={step} more={step.because[0] ?? step.reason} />
              ))}
            </ul>
          </section>
        ) : null}
        <section aria-labelledby="order-all">
          <h2 id="order-all">All steps, in order</h2>
          <ol className="rows">
            {steps.map((step) => (
              <Row
                key={step.id}
                job={id}
                step={step}
                more={step.because[0] ?? (step.status === 'waits' ? step.waits[0] : undefined)}
              />
            ))}
          </ol>
        </section>
      </div>
      {next ? (
        <footer className="foot">
          <GoLink to={stepAddress(id, next.id)} mark={<Mark name="arrow right" size={26} />}>
            {next.title}
          </GoLink>
        </footer>
      ) : null}
    </main>
  );
}

const Row = (props: {
  readonly job: string;
  readonly step: StepShown;
  readonly more: string | undefined;
}) => {
  const { job, step, more } = props;
  return (
    <li>
      <Link className="choice order-row" href={stepAddress(job, step.id)}>
        <span>
          <b>{step.title}</b>
          {more ? <small>{more}</small> : null}
          <small className="order-hours">{stepHours(step)}</small>
        </span>
        <StepStatus step={step} />
      </Link>
    </li>
  );
};
