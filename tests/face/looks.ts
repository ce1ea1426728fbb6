import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { phone, tablet } from './browser.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds serious on the page as it stands. */
export async function axeFinds(page: Page): Promise<string[]> {
  // The page's policy forbids scripts from elsewhere; the test speaks to the page from the browser's side.
  await page.evaluate(axeSource);
  const { violations } = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"] })',
  )) as AxeResults;
  return violations
    .filter((one) => one.impact === 'serious' || one.impact === 'critical')
    .map((one) => `${one.id}: ${one.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
}

/** Things to touch that are smaller than a thumb needs: 48 × 48 px. A file's input is touched by its label. */
export const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement | SVGElement>(
        'button, a[href], [role="button"], summary, label, input:not([hidden], [type="file"])',
      ),
    ]
      .filter((one) => one.getClientRects().length > 0)
      .flatMap((one) => {
        const { width, height } = one.getBoundingClientRect();
        return width < 47.5 || height < 47.5
          ? [
              `${one.tagName} "${(one.textContent ?? '').trim().slice(0, 40)}" ${Math.round(width)} × ${Math.round(height)}`,
            ]
          : [];
      }),
  );

/** How far the page runs off its side, px. */
export const runsOff = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Axe in both themes, thumbs and edges, in the size of a phone and of a tablet, a picture of each in `folder`; then the phone again. */
export async function looksRight(page: Page, folder: string, name: string): Promise<void> {
  for (const [kind, viewport] of [
    ['phone', phone],
    ['tablet', tablet],
  ] as const) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axeFinds(page), `${name}, ${kind}, ${colorScheme}`).toEqual([]);
      await page.screenshot({ path: join(folder, `${name}-${kind}-${colorScheme}.png`), fullPage: true });
    }
    expect(await tooSmall(page), `${name}, ${kind}`).toEqual([]);
    expect(await runsOff(page), `${name}, ${kind}`).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize(phone);
}
