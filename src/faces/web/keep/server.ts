import type { PhotosTaken } from '../../../shop/archive/carried-words.ts';
import { type Delivery, kitParcels, type Parcel } from './outbox.ts';

/** A refusal in the server's words. */
export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly issues?: readonly { readonly path: string; readonly found: string; readonly expected: string }[];
}

/** The server answered, but not with what was asked. */
export class Refusing extends Error {
  readonly status: number;
  readonly refusal: Refusal;
  constructor(status: number, refusal: Refusal) {
    super(refusal.message);
    this.name = 'Refusing';
    this.status = status;
    this.refusal = refusal;
  }
}

async function refusalOf(response: Response): Promise<Refusing> {
  const body: unknown = await response.json().catch(() => undefined);
  const known =
    typeof body === 'object' && body !== null && 'message' in body
      ? (body as Refusal)
      : { code: 'unknown', message: `the server answered ${response.status}` };
  return new Refusing(response.status, known);
}

/** GET as JSON. @throws Refusing, or TypeError when the server is out of reach */
export async function fetched<T>(address: string): Promise<T> {
  const response = await fetch(address, { headers: { accept: 'application/json' } });
  if (!response.ok) throw await refusalOf(response);
  return (await response.json()) as T;
}

/** Whether a GET would be answered; what it would hold is not fetched. @throws Refusing, or TypeError when the server is out of reach */
export async function wouldAnswer(address: string, signal?: AbortSignal): Promise<void> {
  const response = await fetch(address, signal ? { signal } : {});
  if (!response.ok) throw await refusalOf(response);
  await response.body?.cancel();
}

/** What the shop took in of a job's file. */
export interface JobIn {
  readonly id: string;
  readonly photos?: PhotosTaken;
}

/** Long work of a request: how it is stopped, and how far it is. */
export interface Underway {
  /** What is asked goes no further; the shop drops what it has not kept. */
  readonly signal?: AbortSignal;
  /** The share that has been sent, 0 to 1. */
  readonly onSent?: (share: number) => void;
}

/** Whether a request ended because it was stopped. */
export const isStopped = (failure: unknown): boolean =>
  failure instanceof DOMException && failure.name === 'AbortError';

/** POST of a whole file, told how far it is: `fetch` does not tell. @throws TypeError out of reach; AbortError stopped */
const sentBytes = (address: string, type: string, body: Blob, way: Underway): Promise<Response> =>
  new Promise((done, failed) => {
    const request = new XMLHttpRequest();
    const stopped = () => failed(new DOMException('stopped', 'AbortError'));
    if (way.signal?.aborted) return stopped();
    way.signal?.addEventListener('abort', () => request.abort());
    request.upload.onprogress = ({ loaded, total }) => way.onSent?.(total > 0 ? loaded / total : 0);
    request.onload = () => done(new Response(request.responseText, { status: request.status }));
    request.onerror = () => failed(new TypeError('the shop is out of reach'));
    request.onabort = stopped;
    request.open('POST', address);
    request.setRequestHeader('content-type', type);
    request.setRequestHeader('accept', 'application/json');
    request.send(body);
  });

/** POST a job's file: JSON, or a ZIP with its photos, sent from where it lies. @throws as `posted`; SyntaxError where it is neither */
export async function sentJob(file: File, way: Underway = {}): Promise<JobIn> {
  const [p, k] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  if (p !== 0x50 || k !== 0x4b) {
    const job: unknown = JSON.parse(await file.text());
    return posted<JobIn>('/api/import', job, way.signal);
  }
  const response = await sentBytes('/api/archives', 'application/zip', file, way);
  if (!response.ok) throw await refusalOf(response);
  return (await response.json()) as JobIn;
}

/** POST JSON, answer JSON; the signal stops it, and what the shop works out for it. @throws Refusing, or TypeError when the server is out of reach */
export const posted = <T>(address: string, body: unknown, signal?: AbortSignal): Promise<T> =>
  sentText(address, JSON.stringify(body), signal);

/** POST a text that is meant to be JSON, as it was written: the server names the line where it is not. @throws as {@link posted} */
export async function sentText<T>(address: string, text: string, signal?: AbortSignal): Promise<T> {
  const response = await fetch(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: text,
    ...(signal ? { signal } : {}),
  });
  if (!response.ok) throw await refusalOf(response);
  return (await response.json()) as T;
}

/** A photo as the shop keeps it: called by its bytes, its sides as shown. */
interface PhotoHead {
  readonly hash: string;
  readonly width_px: number;
  readonly height_px: number;
}

/** POST a photo's bytes. @throws Refusing, or TypeError when the server is out of reach */
export async function sentPhoto(photo: Blob, way: Underway = {}): Promise<PhotoHead> {
  // What it is, is told by its bytes; a phone that does not say gets any picture's name.
  const type = photo.type.startsWith('image/') ? photo.type : 'image/jpeg';
  const response = await sentBytes('/api/photos', type, photo, way);
  if (!response.ok) throw await refusalOf(response);
  return (await response.json()) as PhotoHead;
}

export const photoAddress = (hash: string): string => `/api/photos/${hash}`;

export const jobAddress = (id: string): string => `/api/jobs/${encodeURIComponent(id)}`;

/** Hands one entry to the shop. A lost connection and an overloaded server are worth trying again; a 4xx is not. */
export async function deliver(parcel: Parcel): Promise<Delivery> {
  try {
    const ledger = parcel.job === kitParcels ? '/api/kit' : jobAddress(parcel.job);
    const { seq } = await posted<{ seq: number }>(`${ledger}/entries`, parcel.entry);
    return { kind: 'kept', seq };
  } catch (failure) {
    if (!(failure instanceof Refusing)) return { kind: 'out of reach' };
    // Kept until this device is let in again.
    if (failure.status === 401) return { kind: 'cannot keep', why: 'this device is not let in' };
    if (failure.status >= 500) return { kind: 'cannot keep', why: failure.message };
    if (failure.status === 429 || failure.status === 408) return { kind: 'out of reach' };
    return { kind: 'refused', why: failure.message };
  }
}
