import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';

const chromiumPath = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find((path) => path && existsSync(path));

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The two screens the bench is made for. */
export const phone = { width: 390, height: 844 };
export const tablet = { width: 1180, height: 820 };

/** What a browser said while a test ran: nothing is the only right answer. */
export interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly complaints: string[];
  /** Requests to anywhere but the workshop. */
  readonly strangers: string[];
}

/** A browser with nothing in its memory. */
export async function openBrowser(
  address: string,
  viewport = phone,
  more: { readonly keepsPage?: boolean } = {},
): Promise<Opened> {
  if (!chromiumPath)
    throw new Error('no Chromium; install it (Debian: apt-get install chromium) or set CHROMIUM to its path');
  const context = await chromium.launchPersistentContext(mkdtempSync(join(tmpdir(), 'waywright-page-')), {
    executablePath: chromiumPath,
    headless: true,
    args: flags,
    viewport,
    // A page that is kept opens without the shop: only tests of just that let it.
    serviceWorkers: more.keepsPage ? 'allow' : 'block',
    locale: 'en-GB',
    timezoneId: 'UTC',
    reducedMotion: 'reduce',
    colorScheme: 'light',
  });
  const page = context.pages()[0] ?? (await context.newPage());
  // Long, for a machine that does much else besides: what is waited for comes, or the test was to fail anyway.
  page.setDefaultTimeout(45_000);
  const complaints: string[] = [];
  const strangers: string[] = [];
  page.on('pageerror', (failure) => complaints.push(String(failure)));
  page.on('console', (message) => {
    // The browser itself reports a refused connection; the page's answer to it is what the tests look at.
    if (message.type() === 'error' && !/ERR_CONNECTION_REFUSED|Failed to load resource/.test(message.text()))
      complaints.push(message.text());
  });
  page.on('request', (request) => {
    if (
      !request.url().startsWith(address) &&
      !request.url().startsWith('data:') &&
      !request.url().startsWith('blob:')
    )
      strangers.push(request.url());
  });
  return { context, page, complaints, strangers };
}

/** Presses Tab until what has the focus is called `name` (its accessible name begins so). */
export async function tabTo(page: Page, name: string): Promise<void> {
  const passed = new Set<string>();
  for (let look = 0; look < 150; look++) {
    const { here, ahead } = await page.evaluate(focusAndAhead, name);
    if (here.startsWith(name)) return;
    passed.add(here);
    // What lies between is mostly known: the way there is pressed at once, and what has the focus then is looked at. Where that
    // leads past it, every Tab is looked at.
    for (let press = 0; press < (look < 3 ? ahead : 1); press++) await page.keyboard.press('Tab');
  }
  throw new Error(`no Tab leads to "${name}"; passed ${[...passed].map((one) => `"${one}"`).join(', ')}`);
}

/** By Tab to what is called `name`, then Enter. */
export async function pressKey(page: Page, name: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

/** What has the focus is called, and how many Tabs ahead something called `name` should be: 1 where that cannot be told. */
function focusAndAhead(name: string): { readonly here: string; readonly ahead: number } {
  const nameOf = (one: Element): string => {
    // A screen's main is called by its heading; it is a place, not a control.
    if (one.tagName === 'MAIN' || one === document.body) return '';
    const label =
      one.getAttribute('aria-label') ??
      one.querySelector(':scope > title')?.textContent ??
      (one as HTMLInputElement).labels?.[0]?.textContent;
    return (label ?? one.textContent ?? '').replace(/\s+/g, ' ').trim();
  };
  const focus = document.activeElement ?? document.body;
  const here = nameOf(focus);
  if (here.startsWith(name) || focus === document.body) return { here, ahead: 1 };
  const scope = focus.closest('dialog') ?? document;
  const after = [
    ...scope.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex]'),
  ].filter(
    (one) =>
      one.tabIndex >= 0 &&
      one.checkVisibility({ visibilityProperty: true }) &&
      !one.matches(':disabled') &&
      focus.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING,
  );
  const there = after.findIndex((one) => nameOf(one).startsWith(name));
  return { here, ahead: there < 0 ? after.length + 1 : there + 1 };
}

/** Text of the screen with all kinds of space made one. */
export const screenText = async (page: Page): Promise<string> =>
  // biome-ignore lint/performance/useDomNodeTextContent: what is seen counts, with its line breaks, not what stands in the tree
  (await page.locator('body').innerText()).replace(/\s+/g, ' ');
