import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';
import { deliveredEntries } from './delivered.ts';
import { looksRight as looks } from './looks.ts';

/** The demo job's surveys in a browser on a server of their own, for every test of a file. */
export const demo = 'demo-saddle';

export let served: Served;
export let opened: Opened;
export let page: Page;

/** Opens both before the file's tests and closes them after; nothing may have been complained of, nothing fetched from elsewhere. */
export function openSurveys(): void {
  beforeAll(async () => {
    served = await serve({ folder: await newFolder() });
    opened = await openBrowser(served.address);
    page = opened.page;
  });
  afterAll(async () => {
    await opened?.context.close();
    await served?.stop();
    expect(opened.complaints).toEqual([]);
    expect(opened.strangers).toEqual([]);
  });
}

export const entries = (): Promise<Entry[]> => deliveredEntries(page, served.address, demo);
export const surveys = async () => (await entries()).filter((entry) => entry.kind === 'survey taken');
export const sheet = (key: string) =>
  page.goto(`${served.address}/job/${demo}/survey/${encodeURIComponent(key)}`);
export const button = (name: string | RegExp) => page.getByRole('button', { name });
export const field = (name: string | RegExp) =>
  page.getByRole('textbox', { name, exact: typeof name === 'string' });
export const says = (words: string | RegExp) => expect.poll(() => screenText(page)).toMatch(words);

/** Puts a thing into the workshop's kit. */
export const put = (id: string, thing: unknown) =>
  fetch(`${served.address}/api/kit/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'put', item: id, id, at: '2031-11-25T14:00:00Z', thing }),
  });

export const looksRight = (name: string) => looks(page, `survey-${name}`);

/** What is pasted, as a sheet or an instrument puts it on the clipboard. */
export const paste = (text: string) =>
  page.evaluate((pasted) => {
    const data = new DataTransfer();
    data.setData('text/plain', pasted);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);

/** A level of the kit: division 20 µrad, feet 200 mm apart. */
export const shopLevel = {
  kind: 'level',
  name: 'shop level',
  graduation_urad: 20,
  repeatability_urad: 3,
  base_mm: 200,
};
