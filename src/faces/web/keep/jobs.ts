import { QueryClient, useQuery } from '@tanstack/react-query';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import type { Template } from '../../../contract/template.ts';
import type { Deed, Entry } from '../../../core/ledger/entry.ts';
import { foldJob, type Job } from '../../../core/ledger/job.ts';
import type { JobAnswer } from '../../../shop/answer-job.ts';
import type { JobListed } from '../../../shop/list-jobs.ts';
import { sendWaitingPhotos } from '../photo/waiting-photo.ts';
import { type JobView, newerView } from './newer-view.ts';
import { listen } from './news.ts';
import { kitParcels, newId, Outbox, type OutboxState } from './outbox.ts';
import { deliver, fetched, jobAddress, Refusing, sentPhoto } from './server.ts';
import { buzz } from './settings.ts';
import { phoneShelf, shelved } from './shelf.ts';
import { thisPhone } from './this-phone.ts';

const retry_ms = 3_000;

export const queries = new QueryClient({
  defaultOptions: {
    // The shop is one machine away: always ask again on return, never hide what is already known.
    queries: {
      // What the shop has refused it refuses again: said at once, not after another try.
      retry: (tried, failure) => tried < 1 && !(failure instanceof Refusing && failure.status < 500),
      retryDelay: 300,
      // What did not come is asked for again while its screen is open; what was refused is not.
      refetchInterval: ({ state }) =>
        state.error && !(state.error instanceof Refusing && state.error.status < 500) ? retry_ms : false,
      staleTime: 2_000,
      networkMode: 'always',
      refetchOnWindowFocus: true,
    },
  },
});

export const outbox = new Outbox(phoneShelf, async (parcel) => {
  const delivery = await deliver(parcel);
  if (delivery.kind === 'kept') {
    buzz(1);
    if (parcel.job === kitParcels) {
      await queries.invalidateQueries({ queryKey: ['kit'] });
      return delivery;
    }
    // Into the job before it leaves the outbox, so that the screen never falls back to a ledger without it.
    const kept = { ...parcel.entry, seq: delivery.seq } as Entry;
    queries.setQueryData<JobView>(entriesOf(parcel.job), (view) =>
      view && !view.entries.some((entry) => entry.id === kept.id)
        ? { ...view, seq: Math.max(view.seq, kept.seq), entries: [...view.entries, kept] }
        : view,
    );
    askAnew(({ job, part }) => job === undefined || (job === parcel.job && part !== 'answer'));
  }
  if (delivery.kind === 'refused') buzz(2);
  return delivery;
});

/** Keeps trying while something waits; tells of what other pages of this phone deliver. */
export function startDelivery(): void {
  setInterval(() => {
    if (outbox.state().waiting.length > 0) void outbox.deliver();
  }, retry_ms);
  setInterval(deliverPhotos, photosRetry_ms);
  addEventListener('online', () => {
    void outbox.deliver();
    deliverPhotos();
  });
  addEventListener('storage', outbox.lookAgain);
  void outbox.deliver();
  deliverPhotos();
}

const photosRetry_ms = 10_000;
let sendingPhotos = false;

/** Photos go to the shop as soon as it is in reach, also those of screens that are not open; one that is refused speaks on its screen. */
function deliverPhotos(): void {
  if (sendingPhotos) return;
  sendingPhotos = true;
  void sendWaitingPhotos((photo) => sentPhoto(photo))
    .catch(() => undefined)
    .finally(() => {
      sendingPhotos = false;
    });
}

export const useOutbox = (): OutboxState => useSyncExternalStore(outbox.subscribe, outbox.state);

export const useJobLines = () =>
  useQuery({ queryKey: ['jobs'], queryFn: () => fetched<{ jobs: JobListed[] }>('/api/jobs') });

/** Templates change only with the program. */
export const useTemplates = () =>
  useQuery({
    queryKey: ['templates'],
    queryFn: () => fetched<Template[]>('/api/templates'),
    staleTime: Number.POSITIVE_INFINITY,
  });

const entriesOf = (id: string) => ['job', id, 'entries'] as const;

const viewKey = (id: string) => `waywright/view/${encodeURIComponent(id)}`;

/** The job from the shop's file, and as last seen on this phone when the shop is out of reach. */
async function jobView(id: string): Promise<JobView> {
  const held = () => queries.getQueryData<JobView>(entriesOf(id));
  const asked = held();
  try {
    const { seq, entries } = await fetched<JobView>(jobAddress(id));
    const seen = newerView(asked, held(), { id, seq, entries });
    try {
      phoneShelf.write(viewKey(id), JSON.stringify(seen));
    } catch {
      // No room to remember the job for when the shop is out of reach; outbox and drafts come first.
    }
    return seen;
  } catch (failure) {
    const seen =
      failure instanceof TypeError
        ? shelved<JobView | undefined>(phoneShelf, viewKey(id), undefined)
        : undefined;
    if (seen) return seen;
    throw failure;
  }
}

/** The last entry of a job that this page has seen from the shop. */
const knownSeq = (id: string): number => queries.getQueryData<JobView>(entriesOf(id))?.seq ?? 0;

/** An entry that another hand wrote, as the shop tells it. */
function hear(id: string, entry: Entry): void {
  const view = queries.getQueryData<JobView>(entriesOf(id));
  if (!view || view.entries.some((one) => one.id === entry.id)) return;
  const entries = [...view.entries, entry].sort((a, b) => a.seq - b.seq);
  queries.setQueryData<JobView>(entriesOf(id), { ...view, seq: entries.at(-1)!.seq, entries });
  // A place that was skipped: the whole ledger is asked for.
  if (entry.seq > view.seq + 1) void queries.invalidateQueries({ queryKey: entriesOf(id) });
  soon(id);
}

/** Asks again for the list of jobs (no `job`), and for what stands under a job, where `which` says so. An answer is asked for by its place. */
function askAnew(which: (of: { readonly job?: unknown; readonly part?: unknown }) => boolean): void {
  void queries.invalidateQueries({
    predicate: ({ queryKey: [what, job, part] }) =>
      what === 'jobs' ? which({}) : what === 'job' && which({ job, part }),
  });
}

const gather_ms = 250;
const due = new Map<string, number>();

/** What is worked out from a ledger is asked for once when several entries come in a row. */
function soon(id: string): void {
  if (due.has(id)) return;
  const ask = () => {
    due.delete(id);
    askAnew(({ job, part }) => job === undefined || (job === id && part !== 'entries' && part !== 'answer'));
  };
  due.set(id, window.setTimeout(ask, gather_ms));
}

const useView = (id: string) => useQuery({ queryKey: entriesOf(id), queryFn: () => jobView(id) });

/** A job as it stands, with what still waits on this phone counted in. */
export interface OpenJob {
  readonly id: string;
  readonly job: Job;
  /** Time of the newest entry in the shop's file. */
  readonly last?: string;
}

export function useJob(id: string): { open?: OpenJob; failure?: Error } {
  const box = useOutbox();
  const query = useView(id);
  const view = query.data;
  const isHere = view !== undefined;
  useEffect(
    () =>
      isHere
        ? listen(id, {
            after: () => knownSeq(id),
            hear: (entry) => hear(id, entry),
            back: () => void outbox.deliver(),
          })
        : undefined,
    [id, isHere],
  );
  const open = useMemo(() => (view ? openJob(view, box) : undefined), [view, box]);
  if (open) return { open };
  return query.error ? { failure: query.error } : {};
}

function openJob(view: JobView, box: OutboxState): OpenJob {
  const known = new Set(view.entries.map((entry) => entry.id));
  const waiting = box.waiting
    .filter((parcel) => parcel.job === view.id && !known.has(parcel.entry.id))
    .map((parcel, i) => ({ ...parcel.entry, seq: view.seq + 1 + i }) as Entry);
  const entries = [...view.entries, ...waiting];
  const last = view.entries.at(-1)?.at;
  return { id: view.id, job: foldJob(entries), ...(last === undefined ? {} : { last }) };
}

/**
 * What the tool answers for the job as the shop's file has it. Asked for by the ledger's place: an answer that was under way
 * when an entry came in is never taken for one that knows of it.
 */
export const useAnswer = (id: string): JobAnswer | undefined => useAnswering(id).answer;

/** The same, and why it does not come where it does not. */
export function useAnswering(id: string): { readonly answer?: JobAnswer; readonly failure?: Error } {
  const seq = useView(id).data?.seq;
  const { data, error } = useQuery({
    queryKey: [...answersOf(id), seq],
    queryFn: () => fetched<JobAnswer>(`${jobAddress(id)}/answer`),
    enabled: seq !== undefined,
    // A ledger's place has one answer.
    staleTime: Number.POSITIVE_INFINITY,
  });
  // The old answer stays in sight until the new one is here: nothing jumps, no spinner.
  const answer = data ?? lastAnswer(id);
  return answer ? { answer } : error ? { failure: error } : {};
}

const answersOf = (id: string) => ['job', id, 'answer'] as const;

/** The newest answer that this page was given for a job. */
function lastAnswer(id: string): JobAnswer | undefined {
  const given = queries.getQueriesData<JobAnswer>({ queryKey: answersOf(id) });
  return given
    .flatMap(([, answer]) => answer ?? [])
    .reduce<JobAnswer | undefined>((last, one) => (last && last.seq > one.seq ? last : one), undefined);
}

/** Writes deeds of a job: first on this phone, then in the shop's file. */
export function useWrite(id: string): (deed: Deed) => void {
  return (deed) => {
    const written = { on: thisPhone(), knowing: knownSeq(id) };
    outbox.add({ job: id, entry: { ...deed, id: newId(), at: new Date().toISOString(), written } });
  };
}
