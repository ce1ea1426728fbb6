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
export async function wouldAnswer(address: string): Promise<void> {
  const response = await fetch(address);
  if (!response.ok) throw await refusalOf(response);
  await response.body?.cancel();
}

/** What the shop took in of a job's file. */
export interface JobIn {
  readonly id: string;
  readonly photos?: PhotosTaken;
}

/** POST a job's file: JSON, or a ZIP with its photos, sent from where it lies. @throws as `posted`; SyntaxError where it is neither */
export async function sentJob(file: File): Promise<JobIn> {
  const [p, k] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  if (p !== 0x50 || k !== 0x4b) return posted<JobIn>('/api/import', JSON.parse(await file.text()));
  const response = await fetch('/api/archives', {
    method: 'POST',
    headers: { 'content-type': 'application/zip' },
    body: file,
  });
  if (!response.ok) throw await refusalOf(response);
  return (await response.json()) as JobIn;
}

/** POST JSON, answer JSON. @throws Refusing, or TypeError when the server is out of reach */
export const posted = <T>(address: string, body: unknown): Promise<T> =>
  sentText(address, JSON.stringify(body));

/** POST a text that is meant to be JSON, as it was written: the server names the line where it is not. @throws as {@link posted} */
export async function sentText<T>(address: string, text: string): Promise<T> {
  const response = await fetch(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: text,
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
export async function sentPhoto(photo: Blob): Promise<PhotoHead> {
  // What it is, is told by its bytes; a phone that does not say gets any picture's name.
  const type = photo.type.startsWith('image/') ? photo.type : 'image/jpeg';
  const response = await fetch('/api/photos', {
    method: 'POST',
    headers: { 'content-type': type },
    body: photo,
  });
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
