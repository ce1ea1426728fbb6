import { useQuery } from '@tanstack/react-query';
import type { Job } from '../../../core/ledger/job.ts';
import type {
  PracticeMeasured,
  PracticePrinted,
  PracticeTruth,
} from '../../../shop/practise/practice-job.ts';
import { truthAsked } from '../../../shop/practise/practice-of.ts';
import { type OpenJob, outbox } from '../keep/jobs.ts';
import { jobAddress, posted, Refusing } from '../keep/server.ts';

/** The machine changes when a round is closed, and with nothing else. */
const machineNow = (job: Job): string =>
  job.live.findLast((entry) => entry.kind === 'round closed')?.id ?? 'as found';

/** The same machine shows the same for ever; one that could not be asked is asked again. */
const lasting = {
  staleTime: Number.POSITIVE_INFINITY,
  refetchInterval: ({ state }: { readonly state: { readonly status: string } }) =>
    state.status === 'error' ? 3_000 : (false as const),
};

/** Asks the machine once all that was done to it is in the shop's file: what waits on this phone has not happened there yet. */
async function asked<T>(id: string, what: 'measure' | 'print' | 'truth', body: object): Promise<T> {
  await outbox.deliver();
  return posted<T>(`${jobAddress(id)}/practice/${what}`, body);
}

/** What the instruments of a practice job show in the round that is being worked. */
export const useMeasured = ({ id, job }: OpenJob, repeat: number) =>
  useQuery({
    queryKey: ['practice', id, 'measure', job.round, repeat, machineNow(job)],
    queryFn: () => asked<PracticeMeasured>(id, 'measure', { round: job.round, repeat }),
    ...lasting,
  });

/** The blue of the round that is being worked, once it was asked for. */
export const usePrinted = ({ id, job }: OpenJob, wanted: boolean) =>
  useQuery({
    queryKey: ['practice', id, 'print', job.round, machineNow(job)],
    queryFn: () => asked<PracticePrinted>(id, 'print', { round: job.round }),
    ...lasting,
    enabled: wanted,
  });

/** The truth, once the ledger says that it was asked for. */
export const useTruth = ({ id, job }: OpenJob) =>
  useQuery({
    queryKey: ['practice', id, 'truth', machineNow(job), truthAsked(job)],
    queryFn: () => asked<PracticeTruth>(id, 'truth', {}),
    ...lasting,
    enabled: truthAsked(job),
  });

/** Why a practice machine did not answer, in words. */
export const whyNot = (failure: Error): string =>
  failure instanceof Refusing
    ? failure.message
    : 'The shop’s file is out of reach, and the practice machine with it. This page asks again by itself.';
