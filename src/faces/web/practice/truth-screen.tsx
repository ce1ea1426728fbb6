import { Link } from 'wouter';
import './practice.css';
import { practiceOf } from '../../../shop/practise/practice-of.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { Truth } from './truth.tsx';

/** The truth on a screen of its own, with what the practice machine was made from. */
export const TruthScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id}>
    {(open) => {
      const record = practiceOf(open.job);
      return (
        <main className="page narrow">
          {record ? (
            <>
              <p className="say">
                Practice machine {record.seed}: {record.slide}, {record.material}, {record.level}.
              </p>
              <Truth open={open} />
            </>
          ) : (
            <>
              <p className="say">This job is of a real part. Its truth is for the indicator to find.</p>
              <Link className="third" href={`/job/${encodeURIComponent(open.id)}`}>
                Back to the bench
              </Link>
            </>
          )}
        </main>
      );
    }}
  </JobScreen>
);
