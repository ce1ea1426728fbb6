/**
 * Puts what is typed behind the address, so that the address can be handed on and a reload gives it back. Empty texts are
 * left out. No new step in the browser's history.
 */
export function keepInAddress(typed: Readonly<Record<string, string>>): void {
  const search = new URLSearchParams(
    Object.entries(typed).filter(([, text]) => text.trim() !== ''),
  ).toString();
  try {
    history.replaceState(history.state, '', search === '' ? location.pathname : `?${search}`);
  } catch {
    // Browsers refuse when it is done too often in a short time; the next key tries again.
  }
}

/** What stands behind the address. */
export const fromAddress = (): Readonly<Record<string, string>> =>
  Object.fromEntries(new URLSearchParams(location.search));
