/**
 * Photos that the shop has not kept yet, on this phone: in the browser's database, since they are too large for the shelf that
 * holds entries. A browser without one loses such a photo at a reload, and nothing else.
 */
const database = 'waywright-photos';
const store = 'waiting';

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}

async function opened(mode: IDBTransactionMode): Promise<IDBObjectStore> {
  const request = indexedDB.open(database, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(store);
  const db = await asked(request);
  const action = db.transaction(store, mode);
  action.oncomplete = () => db.close();
  return action.objectStore(store);
}

interface Waiting {
  readonly bytes: ArrayBuffer;
  readonly type: string;
  /** The shop has the bytes; what is to be done with the photo is not finished. */
  readonly kept?: true;
}

/** The photo that waits under a key, if there is one. */
export async function waitingPhoto(key: string): Promise<Blob | undefined> {
  const held = (await asked((await opened('readonly')).get(key))) as Waiting | undefined;
  return held && new Blob([held.bytes], { type: held.type });
}

/** Writes a photo down on this phone. */
export async function holdPhoto(key: string, photo: Blob): Promise<void> {
  const held: Waiting = { bytes: await photo.arrayBuffer(), type: photo.type };
  await asked((await opened('readwrite')).put(held, key));
}

/** The photo is kept, or refused: it waits no longer. */
export async function letGoPhoto(key: string): Promise<void> {
  await asked((await opened('readwrite')).delete(key));
}

/** Photos that a screen is sending itself: the same bytes twice at once would halve a slow network. */
const sentByScreen = new Map<string, number>();

/** Leaves a photo to the screen that sends it, until what is returned is called. */
export function leaveToScreen(key: string): () => void {
  sentByScreen.set(key, (sentByScreen.get(key) ?? 0) + 1);
  return () => {
    const still = (sentByScreen.get(key) ?? 1) - 1;
    if (still > 0) sentByScreen.set(key, still);
    else sentByScreen.delete(key);
  };
}

/**
 * Sends every photo that waits, whichever screen it was taken on, but for those a screen is sending now; each stays on this phone until its screen is done with it, and is not
 * sent again from here.
 * @param send  rejects when the shop is out of reach or refuses
 */
export async function sendWaitingPhotos(send: (photo: Blob) => Promise<unknown>): Promise<void> {
  for (const key of await asked((await opened('readonly')).getAllKeys())) {
    if (sentByScreen.has(String(key))) continue;
    const held = (await asked((await opened('readonly')).get(key))) as Waiting | undefined;
    if (!held || held.kept) continue;
    await send(new Blob([held.bytes], { type: held.type }));
    const shelf = await opened('readwrite');
    // Another photo may have taken its place meanwhile, or its screen let it go.
    const now = (await asked(shelf.get(key))) as Waiting | undefined;
    if (now && now.bytes.byteLength === held.bytes.byteLength)
      await asked(shelf.put({ ...now, kept: true }, key));
  }
}
