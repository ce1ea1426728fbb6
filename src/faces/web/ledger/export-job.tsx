import { useQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { Job } from '../../../core/ledger/job.ts';
import { photosNamed } from '../../../shop/archive/archive.ts';
import { exportWords, type PhotosHere } from '../../../shop/archive/carried-words.ts';
import { counted } from '../../../shop/phrase.ts';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import { fetched, isStopped, jobAddress, Refusing, wouldAnswer } from '../keep/server.ts';

/** The whole job as a file: its ledger alone, or with the photos that the ledger names. */
export function ExportJob({ id, job }: { readonly id: string; readonly job: Job }) {
  const named = photosNamed(job.entries).length;
  const { data: here } = useQuery({
    queryKey: ['job', id, 'photos', job.seq],
    queryFn: () => fetched<PhotosHere>(`${jobAddress(id)}/photos`),
    enabled: named > 0,
  });
  const plain = `${jobAddress(id)}/export`;
  return (
    <div className="export-job">
      <div className="turns">
        {here?.photos.length ? <WithPhotos id={id} here={here} /> : null}
        <a className="third" href={plain} download>
          <Mark name="arrow down" size={20} />
          {named ? 'Export without photos' : 'Export this job'}
        </a>
      </div>
      {here?.missing.length ? (
        <p className="quiet">
          {counted(here.missing.length, 'photo')} of this job {here.missing.length === 1 ? 'is' : 'are'} not
          in this workshop: the job came without {here.missing.length === 1 ? 'it' : 'them'}.
        </p>
      ) : null}
    </div>
  );
}

/** Asked for once before it is fetched, so that a refusal stands on the screen and not in a file. */
function WithPhotos({ id, here }: { readonly id: string; readonly here: PhotosHere }) {
  const [state, setState] = useState<'looking' | { readonly why: string } | undefined>();
  const stopper = useRef<AbortController>(undefined);
  const whole = `${jobAddress(id)}/archive`;
  const partial = `${whole}?partial=yes`;
  const address = here.missing.length ? partial : whole;
  const press = async () => {
    setState('looking');
    try {
      stopper.current = new AbortController();
      await wouldAnswer(address, stopper.current.signal);
      setState(undefined);
      location.assign(address);
    } catch (failure) {
      if (isStopped(failure)) return setState(undefined);
      setState({
        why:
          failure instanceof Refusing
            ? failure.message
            : 'The shop’s file is out of reach. Try again when it is back.',
      });
    }
  };
  return (
    <>
      <button type="button" className="third" onClick={() => void press()}>
        <Mark name="arrow down" size={20} />
        {exportWords(here)}
      </button>
      {state === 'looking' ? (
        <UnderWay words="Looking through the photos." onStop={() => stopper.current?.abort()} />
      ) : state ? (
        <Wrong role="alert">
          Not exported. {state.why}.{' '}
          <a className="third" href={partial} download>
            Export without what is damaged
          </a>
        </Wrong>
      ) : null}
    </>
  );
}
