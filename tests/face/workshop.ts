import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser } from './browser.ts';

/** The workshop of a test file, and the browser that looks at it; there once its first test begins. */
export let served: Served;
export let opened: Opened;
export let page: Page;

/** Serves a workshop with its demo to all tests of a file, and opens a browser on it, at phone size. */
export function openWorkshop(): void {
  beforeAll(async () => {
    served = await serve();
    opened = await openBrowser(served.address);
    page = opened.page;
  });
  afterAll(async () => {
    await opened?.context.close();
    await served?.stop();
  });
}

/** Goes to an address of it, and waits for words that stand there. */
export async function visit(path: string, words: string): Promise<void> {
  await page.goto(served.address + path);
  await page.getByText(words).first().waitFor();
}
