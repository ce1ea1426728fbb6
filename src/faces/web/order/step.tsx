import { Link } from 'wouter';
import { nextStep, type StepShown } from '../../../shop/order/order.ts';
import { basisWords, makesWords, proofWith, standsOnIt, stepHours } from '../../../shop/order/order-words.ts';
import { Mark } from '../frame/mark.tsx';
import { Caution } from '../frame/notice.tsx';
import { DeedForm } from './deed-form.tsx';
import { StepHistory } from './history.tsx';
import { StepPlaces } from './places.tsx';
import { StepStatus } from './status.tsx';
import { MachineScreen, type OpenMachine } from './whole.tsx';

/** One step: why it is done, what it stands on, where its numbers are taken, and what was done. */
export const StepScreen = ({ id, step }: { readonly id: string; readonly step: string }) => (
  <MachineScreen id={id} title="Order of work">
    {(open) => {
      const its = open.answer.steps.find((one) => one.id === step);
      return its ? <Step key={its.id} open={open} step={its} /> : <NoStep id={id} step={step} />;
    }}
  </MachineScreen>
);

const NoStep = ({ id, step }: { readonly id: string; readonly step: string }) => (
  <main className="page narrow">
    <p className="say">This machine has no step “{step}”.</p>
    <Link className="third" href={`/job/${encodeURIComponent(id)}/order`}>
      All steps
    </Link>
  </main>
);

function Step({ open, step }: { readonly open: OpenMachine; readonly step: StepShown }) {
  const { id, machine } = open;
  const makes = makesWords(machine, step.id);
  const above = standsOnIt(machine, step.id);
  return (
    <main className="page with-foot order-step">
      <p>
        <Link className="third" href={`/job/${encodeURIComponent(id)}/order`}>
          <Mark name="arrow left" size={20} />
          All steps
        </Link>
      </p>
      <div className="pair">
        <div>
          <header>
            <h2>{step.title}</h2>
            <p>
              <StepStatus step={step} />
            </p>
            <p className="say">{step.reason}</p>
            <p className="quiet">{stepHours(step)}</p>
          </header>
          <Reasons title="To be re-proven, because" texts={step.because} />
          <Reasons title="Waits" texts={step.waits} />
          <StepPlaces open={open} step={step} />
          {step.cautions.map((text) => (
            <Caution key={text}>{text}</Caution>
          ))}
        </div>
        <div className="order-facts">
          <section>
            <h2>Shown to be right by</h2>
            <ul className="rows">
              {step.proofs.map((proof) => (
                <li key={proof.what} className="order-fact">
                  {proof.what}
                  <small>{proofWith(proof.with)}</small>
                </li>
              ))}
            </ul>
          </section>
          <section>
            <h2>Made true from</h2>
            {basisWords(machine, step.id).length === 0 ? (
              <p className="quiet">Nothing: it is measured as it is found.</p>
            ) : (
              <ul className="rows">
                {basisWords(machine, step.id).map((basis) => (
                  <li key={basis.from} className="order-fact">
                    {basis.from}
                    <small>{basis.why}</small>
                  </li>
                ))}
              </ul>
            )}
          </section>
          {makes.length > 0 ? (
            <section>
              <h2>Makes</h2>
              <p>{makes.join('; ')}</p>
              {above.length > 0 ? (
                <p className="quiet">If metal comes off here again, to be re-proven: {above.join(', ')}.</p>
              ) : null}
            </section>
          ) : null}
          <StepHistory open={open} step={step.id} />
        </div>
      </div>
      <DeedForm id={id} step={step} next={nextStep(open.answer)} />
    </main>
  );
}

const Reasons = ({ title, texts }: { readonly title: string; readonly texts: readonly string[] }) =>
  texts.length === 0 ? null : (
    <section>
      <h2>{title}</h2>
      <ul className="order-reasons">
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
