/** What has, or had last, the focus, and the places it stood in, the nearest first. */
interface Held {
  readonly element: Element;
  readonly within: readonly Element[];
}

const placesOf = (element: Element): Element[] => {
  const within: Element[] = [];
  for (let place = element.parentElement; place; place = place.parentElement) within.push(place);
  return within;
};

/**
 * Keeps the keyboard where the work is: when a screen gives way to another, what had the focus goes with it, and the browser begins
 * anew at the top of the page. The focus is then given to the new screen's `main`, called as its heading, so that the next Tab leads
 * to its first control and a screen reader says where one is.
 *
 * What vanishes out of a screen that stays is left to the browser: it goes on from where that was.
 * @param page  what all screens are drawn in; dialogs lie beside it and give the focus back themselves
 */
export function keepPlace(page: Element): void {
  let held: Held | undefined;
  let due = false;
  // A finger leaves the focus nowhere: a new address is a new screen all the same.
  let place = location.pathname;
  let moved = false;
  document.addEventListener('focusin', ({ target }) => {
    if (target instanceof Element) held = { element: target, within: placesOf(target) };
  });
  const look = () => {
    due = false;
    const { activeElement } = document;
    const isLost = held !== undefined && !held.element.isConnected;
    if (activeElement && activeElement !== document.body) moved = false;
    else if (isLost || moved) goToMain();
  };
  const goToMain = () => {
    const main = page.querySelector('main');
    const stands = moved ? undefined : held?.within.find((one) => one.isConnected);
    // A screen that is still on its way has no main yet: it is looked for again when something comes.
    if (!main || (stands && stands !== main && main.contains(stands))) return;
    main.tabIndex = -1;
    main.setAttribute('aria-label', page.querySelector('h1')?.textContent ?? '');
    main.focus({ preventScroll: true });
    moved = false;
  };
  // After a screen has put the focus where it wants it itself.
  const soon = () => {
    if (due) return;
    due = true;
    requestAnimationFrame(() => requestAnimationFrame(look));
  };
  new MutationObserver(soon).observe(page, { childList: true, subtree: true });
  const onMove = () => {
    if (location.pathname === place) return;
    place = location.pathname;
    moved = true;
    soon();
  };
  // The router tells of each step it takes by an event of that name.
  for (const step of ['pushState', 'popstate']) addEventListener(step, onMove);
}
