import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';

/** Waits until the workshop has all that this page wrote: a page goes on at once and delivers meanwhile. */
export const allDelivered = (page: Page): Promise<void> =>
  expect
    .poll(() =>
      page.evaluate(
        () => Object.keys(localStorage).filter((key) => key.startsWith('waywright/outbox/')).length,
      ),
    )
    .toBe(0);

/** A job's entries in the workshop at `address`, what the page wrote so far among them. */
export async function deliveredEntries(page: Page, address: string, job: string): Promise<Entry[]> {
  await allDelivered(page);
  const answer = await fetch(`${address}/api/jobs/${job}`);
  return ((await answer.json()) as { entries: Entry[] }).entries;
}
