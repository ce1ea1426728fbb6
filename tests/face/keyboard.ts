import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { pressKey, screenText, tabTo } from './browser.ts';

/** With a folder here, what each screen looks like is left in it, in the order they were come to. */
const pictures = process.env.WAYWRIGHT_PICTURES;

/** Where the focus is: on nothing, or behind the foot, the keyboard is lost. */
const focusNow = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const focus = document.activeElement;
    if (!focus || focus === document.body) return 'nowhere';
    const foot = document.querySelector('.foot');
    const isBehind =
      foot &&
      !foot.contains(focus) &&
      !focus.closest('dialog') &&
      focus.tagName !== 'MAIN' &&
      focus.getBoundingClientRect().bottom > foot.getBoundingClientRect().top + 1;
    return isBehind ? `behind the foot: ${focus.outerHTML.slice(0, 120)}` : 'in sight';
  });

/** Somebody at the keyboard: Tab, Enter and typing, and nothing else. */
export function typist(page: Page, name: string) {
  let shots = 0;
  const says = (words: string | RegExp) => expect.poll(() => screenText(page)).toMatch(words);
  const inSight = (after: string) => expect.poll(() => focusNow(page), { message: after }).toBe('in sight');
  return {
    says,
    /** Presses what is so called; the screen that comes says so, and has the focus. */
    async press(control: string, then: string | RegExp): Promise<void> {
      await pressKey(page, control);
      await says(then);
      await inSight(`after ${control}`);
      if (!pictures) return;
      mkdirSync(pictures, { recursive: true });
      await page.screenshot({ path: join(pictures, `${name}-${String(++shots).padStart(2, '0')}.png`) });
    },
    async type(label: string, text: string): Promise<void> {
      await tabTo(page, label);
      await inSight(`at ${label}`);
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
    },
    /** Into cells that move on by themselves. */
    async column(first: string, texts: readonly string[]): Promise<void> {
      await tabTo(page, first);
      for (const text of texts) {
        await page.keyboard.type(text);
        await page.keyboard.press('Enter');
      }
    },
    /** The chart as a PDF, its first bytes and how long it is. */
    async pdf(): Promise<{ readonly begins: string; readonly bytes: number }> {
      const coming = page.waitForEvent('download');
      await pressKey(page, 'Make the PDF');
      const bytes = await readFile(await (await coming).path());
      await says('Made and handed to the browser');
      return { begins: bytes.subarray(0, 8).toString('latin1'), bytes: bytes.length };
    },
  };
}
