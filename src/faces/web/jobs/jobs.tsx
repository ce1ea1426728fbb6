import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { photosTakenWords } from '../../../shop/archive/carried-words.ts';
import { FileButton } from '../frame/file-button.tsx';
import { Mark } from '../frame/mark.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { Caution, Wrong } from '../frame/notice.tsx';
import { Top } from '../frame/top.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import { useJobLines } from '../keep/jobs.ts';
import { isStopped, Refusing, sentJob } from '../keep/server.ts';

/** A date on paper: 25 Nov 2031. */
const day = (iso: string): string =>
  new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** All jobs of the shop, newest first; a new one; one from a file. */
export function JobsScreen() {
  const { data, error } = useJobLines();
  return (
    <>
      <Top title="Jobs" />
      <main className="page narrow with-foot">
        {data && !error ? null : <NotHere what="the list of jobs" failure={error} />}
        {data?.jobs.length === 0 ? (
          <p className="say">
            No jobs yet. A new job takes your own dimensions and about two minutes. Or learn the signs on a
            machine that cannot be spoiled.
          </p>
        ) : null}
        <ul className="rows">
          {data?.jobs.map((job) => (
            <li key={job.id}>
              <Link
                className="choice"
                href={`/job/${encodeURIComponent(job.id)}${job.machine ? '/order' : ''}`}
              >
                <span>
                  <b>{job.title}</b> {job.demo ? <span className="demo">demo, invented</span> : null}
                  {job.practice ? <span className="demo">practice</span> : null}
                  <small>
                    {job.machine
                      ? `${job.machine.title}: ${job.machine.done} of ${job.machine.steps} steps stand`
                      : job.rounds === 1
                        ? '1 round'
                        : `${job.rounds} rounds`}
                    , last entry {day(job.changed)}
                  </small>
                </span>
                <span />
                <Mark name="arrow right" size={20} />
              </Link>
            </li>
          ))}
        </ul>
        <div className="beside">
          <Link className="third" href="/practise">
            Practise on a simulated machine
          </Link>
        </div>
        <ImportFile />
      </main>
      <footer className="foot">
        <Link className="go" href="/new">
          <Mark name="plus" size={26} />
          New job
        </Link>
      </footer>
    </>
  );
}

/** A job file from another shop or an earlier export, with photos or without; refused whole, with the reason, or taken whole. */
function ImportFile() {
  const [wrong, setWrong] = useState<string>();
  const [takes, setTakes] = useState<{ readonly name: string; readonly share?: number }>();
  const stopper = useRef<AbortController>(undefined);
  const [lacking, setLacking] = useState<{ readonly id: string; readonly words: string }>();
  const [, go] = useLocation();
  const client = useQueryClient();
  const take = async (file: File) => {
    setWrong(undefined);
    setLacking(undefined);
    setTakes({ name: file.name });
    stopper.current = new AbortController();
    try {
      const { id, photos } = await sentJob(file, {
        signal: stopper.current.signal,
        onSent: (share) => setTakes({ name: file.name, share }),
      });
      await client.invalidateQueries({ queryKey: ['jobs'] });
      const address = `/job/${encodeURIComponent(id)}`;
      if (photos?.missing.length) setLacking({ id: address, words: photosTakenWords(photos) });
      else go(address);
    } catch (failure) {
      setWrong(
        isStopped(failure)
          ? `Stopped. If ${file.name} is not in the list above, nothing of it was taken.`
          : whyNot(file.name, failure),
      );
      await client.invalidateQueries({ queryKey: ['jobs'] });
    } finally {
      setTakes(undefined);
    }
  };
  return (
    <div>
      <FileButton
        words="Open a job file"
        name="Job file"
        accept="application/json,.json,application/zip,.zip"
        onFile={(file) => void take(file)}
      />
      {takes === undefined ? null : (
        <UnderWay
          words={`Taking in ${takes.name}.`}
          share={takes.share}
          onStop={() => stopper.current?.abort()}
        />
      )}
      {lacking === undefined ? null : (
        <Caution role="status">
          The job is in. {lacking.words}. What was read of them stands.{' '}
          <Link className="third" href={lacking.id}>
            Open the job
          </Link>
        </Caution>
      )}
      {wrong === undefined ? null : <Wrong role="alert">{wrong}</Wrong>}
    </div>
  );
}

function whyNot(name: string, failure: unknown): string {
  if (failure instanceof SyntaxError)
    return `${name} is neither JSON nor a ZIP file. Nothing was taken from it.`;
  if (failure instanceof Refusing) return `${name} was not taken: ${failure.message}`;
  return 'The shop’s file is out of reach. Nothing was taken.';
}
