import { QueryClient, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import type { Template } from '../../../contract/template.ts';
import type { Deed, Entry } from '../../../core/ledger/entry.ts';
import { foldJob, type Job } from '../../../core/ledger/job.ts';
import type { JobAnswer } from '../../../shop/answer-job.ts';
import type { JobListed } from '../../../shop/keep-job.ts';
import { sendWaitingPhotos } from '../photo/waiting-photo.ts';
import { listen } from './news.ts';
import { kitParcels, newId, Outbox, type OutboxState } from './outbox.ts';
import { deliver, fetched, jobAddress, sentPhoto } from './server.ts';
import { buzz } from './settings.ts';
import { phoneShelf, shelved } from './shelf.ts';
import { thisPhone } from './this-phone.ts';

interface JobView {
  readonly id: string;
  readonly seq: number;
  readonly entries: readonly Entry[];
}

export const queries = new QueryClient({
  defaultOptions: {
    // The shop is one machine away: always ask again on return, never hide what is already known.
    queries: { retry: 1, staleTime: 2_000, networkMode: 'always', refetchOnWindowFocus: true },
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
    queries.setQueryData<JobView>(['job', parcel.job, 'entries'], (view) =>
      view && !view.entries.some((entry) => entry.id === kept.id)
        ? { ...view, seq: Math.max(view.seq, kept.seq), entries: [...view.entries, kept] }
        : view,
    );
    void queries.invalidateQueries({ queryKey: ['job', parcel.job] });
    void queries.invalidateQueries({ queryKey: ['jobs'] });
  }
  if (delivery.kind === 'refused') buzz(2);
  return delivery;
});

const retry_ms = 3_000;

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
  void sendWaitingPhotos(sentPhoto)
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

const viewKey = (id: string) => `waywright/view/${encodeURIComponent(id)}`;

/** The job from the shop's file, and as last seen on this phone when the shop is out of reach. */
async function jobView(id: string): Promise<JobView> {
  try {
    const view = await fetched<JobView>(jobAddress(id));
    const seen: JobView = { id: view.id, seq: view.seq, entries: view.entries };
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
const knownSeq = (id: string): number => queries.getQueryData<JobView>(['job', id, 'entries'])?.seq ?? 0;

/** An entry that another hand wrote, as the shop tells it. */
function hear(id: string, entry: Entry): void {
  const view = queries.getQueryData<JobView>(['job', id, 'entries']);
  if (!view || view.entries.some((one) => one.id === entry.id)) return;
  const entries = [...view.entries, entry].sort((a, b) => a.seq - b.seq);
  queries.setQueryData<JobView>(['job', id, 'entries'], { ...view, seq: entries.at(-1)!.seq, entries });
  // A place that was skipped: the whole ledger is asked for.
  if (entry.seq > view.seq + 1) void queries.invalidateQueries({ queryKey: ['job', id, 'entries'] });
  soon(id);
}

const gather_ms = 250;
const due = new Map<string, number>();

/** What is worked out from a ledger is asked for once when several entries come in a row. */
function soon(id: string): void {
  if (due.has(id)) return;
  const ask = () => {
    due.delete(id);
    void queries.invalidateQueries({
      predicate: ({ queryKey: [what, job, part] }) =>
        what === 'jobs' || (what === 'job' && job === id && part !== 'entries'),
    });
  };
  due.set(id, window.setTimeout(ask, gather_ms));
}

/** A job as it stands, with what still waits on this phone counted in. */
export interface OpenJob {
  readonly id: string;
  readonly job: Job;
  /** Time of the newest entry in the shop's file. */
  readonly last?: string;
}

export function useJob(id: string): { open?: OpenJob; failure?: Error } {
  const box = useOutbox();
  const query = useQuery({ queryKey: ['job', id, 'entries'], queryFn: () => jobView(id) });
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

/** What the tool answers for the job as the shop's file has it. */
export function useAnswer(id: string) {
  return useQuery({
    queryKey: ['job', id, 'answer'],
    queryFn: () => fetched<JobAnswer>(`${jobAddress(id)}/answer`),
    // The old answer stays in sight until the new one is here: nothing jumps, no spinner.
    placeholderData: (before) => before,
  });
}

/** Writes deeds of a job: first on this phone, then in the shop's file. */
export function useWrite(id: string): (deed: Deed) => void {
  const client = useQueryClient();
  return (deed) => {
    const written = { on: thisPhone(), knowing: knownSeq(id) };
    outbox.add({ job: id, entry: { ...deed, id: newId(), at: new Date().toISOString(), written } });
    void client.cancelQueries({ queryKey: ['job', id, 'answer'] });
  };
}
