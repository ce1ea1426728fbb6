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
