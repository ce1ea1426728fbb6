/** What of a browser's storage is needed: localStorage is one, a Map in a test is another. */
export interface Shelf {
  readonly keys: () => string[];
  readonly read: (key: string) => string | null;
  /** @throws when there is no room left */
  readonly write: (key: string, text: string) => void;
  readonly drop: (key: string) => void;
}

/** This browser's storage; its keys all begin with "waywright/". */
export const phoneShelf: Shelf = {
  keys: () => Object.keys(localStorage).filter((key) => key.startsWith('waywright/')),
  read: (key) => localStorage.getItem(key),
  write: (key, text) => localStorage.setItem(key, text),
  drop: (key) => localStorage.removeItem(key),
};

/** The value kept under a key, or `otherwise` when there is none or it cannot be read. */
export function shelved<T>(shelf: Shelf, key: string, otherwise: T): T {
  const text = shelf.read(key);
  if (text === null) return otherwise;
  try {
    return JSON.parse(text) as T;
  } catch {
    return otherwise;
  }
}
