import { useSyncExternalStore } from 'react';
import { phoneShelf, shelved } from './shelf.ts';

/** Thousandths and tenths of an inch, or millimetres and micrometres. */
export type Units = 'inch' | 'metric';

/** How this phone shows things; not part of any job. */
export interface Settings {
  readonly units: Units;
  /** `as the phone`: follows what the device asks for. */
  readonly theme: 'as the phone' | 'light' | 'dark';
  readonly leftHanded: boolean;
  readonly buzz: boolean;
  /** The job that was open last. */
  readonly lastJob?: string;
}

const key = 'waywright/settings';
const first: Settings = { units: 'metric', theme: 'as the phone', leftHanded: false, buzz: false };

let now: Settings = { ...first, ...shelved<Partial<Settings>>(phoneShelf, key, {}) };
const listeners = new Set<() => void>();

/** Puts theme and hand on the document, where the stylesheet finds them. */
export function showSettings(): void {
  const root = document.documentElement;
  if (now.theme === 'as the phone') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', now.theme);
  root.classList.toggle('left-handed', now.leftHanded);
}

export function changeSettings(change: Partial<Settings>): void {
  now = { ...now, ...change };
  try {
    phoneShelf.write(key, JSON.stringify(now));
  } catch {
    // A full phone forgets a setting; it must not stop the work.
  }
  showSettings();
  for (const listener of listeners) listener();
}

export const useSettings = (): Settings =>
  useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => now,
  );

/** One short buzz for a kept entry, two for a refused one, where the device can and the person asked for it. */
export function buzz(times: 1 | 2): void {
  if (now.buzz && 'vibrate' in navigator) navigator.vibrate(times === 1 ? 30 : [30, 60, 30]);
}
