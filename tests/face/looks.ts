import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { phone, tablet } from './browser.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** With a folder here, what the screens look like is left in it. */
const pictures = process.env.WAYWRIGHT_PICTURES;

/** The two screens that everything is looked at on. */
export const sizes = [
  ['phone', phone],
  ['tablet', tablet],
] as const;

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

/** Things to touch that are smaller than a thumb needs: 48 × 48 px. A cell is touched anywhere on it, a box and a file's input by their label. */
const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement | SVGElement>(
        'button, a[href], [role="button"], summary, select, label:has(input[type="file"]), input:not([hidden], [type="file"])',
      ),
    ]
      .filter((one) => one.getClientRects().length > 0)
      .flatMap((one) => {
        const holder = one.matches('.cell input')
          ? '.cell'
          : one.matches('[type="checkbox"], [type="radio"]')
            ? 'label'
            : undefined;
        const target = (holder && one.closest(holder)) || one;
        const { width, height } = target.getBoundingClientRect();
        const name = (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40);
        return width < 47.5 || height < 47.5
          ? [`${one.tagName} "${name}" ${Math.round(width)} × ${Math.round(height)}`]
          : [];
      }),
  );

/** How far the page runs off its side, px. */
export const runsOff = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/**
 * Axe in both themes, thumbs and edges, in the size of a phone and of a tablet, a picture of each where one is asked for; then the
 * phone again.
 *
 * @param visit  goes to the screen anew for each look; left out, it is looked at as it stands
 */
export async function looksRight(page: Page, name: string, visit?: () => Promise<void>): Promise<void> {
  for (const [kind, viewport] of sizes) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      await visit?.();
      expect(await axeFinds(page), `${name}, ${kind}, ${colorScheme}`).toEqual([]);
      if (pictures) {
        mkdirSync(pictures, { recursive: true });
        const file = `${name.replace(/[^\w-]+/g, '-')}-${kind}-${colorScheme}.png`;
        await page.screenshot({ path: join(pictures, file), fullPage: true });
      }
    }
    expect(await tooSmall(page), `${name}, ${kind}`).toEqual([]);
    expect(await runsOff(page), `${name}, ${kind}`).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize(phone);
}
