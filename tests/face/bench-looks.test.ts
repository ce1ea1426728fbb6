import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { gzipSync } from 'node:zlib';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openBrowser, phone, tablet } from './browser.ts';
import { type Served, serve } from './served.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const demo = '/job/demo-saddle';
/** Every screen, with what must stand on it before it is looked at. */
const screens: readonly (readonly [string, string])[] = [
  [demo, 'Passes by zone'],
  [`${demo}/measure`, 'Each set-up tells one thing'],
  [`${demo}/measure/square/1`, 'Push the plunger'],
  [`${demo}/measure/level_across/1`, 'Keep this level'],
  [`${demo}/print`, 'Which way did you turn it?'],
  [`${demo}/ledger`, 'newest first'],
  ['/jobs', 'New job'],
  ['/new', 'What lies on your bench?'],
  ['/practise', 'What goes wrong on purpose'],
  ['/settings', 'Light or dark'],
  ['/signs', 'The push test'],
];

let served: Served;
let opened: Opened;
let page: Page;
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

async function visit(path: string, words: string): Promise<void> {
  await page.goto(served.address + path);
  await page.getByText(words).first().waitFor();
}

/** Says how the part lies, so that the screens after it can be looked at. */
async function lift(): Promise<void> {
  await visit(`${demo}/print`, 'Which way did you turn it?');
  await page.getByRole('button', { name: 'End over end' }).click();
  await page.getByText('Keep this print').waitFor();
}

async function axe(): Promise<string[]> {
  // The page's policy forbids scripts from elsewhere; the test speaks to the page from the browser's side.
  await page.evaluate(axeSource);
  const { violations } = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"] })',
  )) as AxeResults;
  return violations
    .filter((one) => one.impact === 'serious' || one.impact === 'critical')
    .map((one) => `${one.id}: ${one.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
}

/** Things to touch that are smaller than a thumb needs: 48 × 48 px. */
const small = () =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement | SVGElement>(
        'button, a[href], [role="button"], summary, input:not([hidden])',
      ),
    ]
      .filter((one) => one.getClientRects().length > 0)
      .flatMap((one) => {
        const target = one.matches('.cell input') ? one.closest('.cell')! : one;
        const { width, height } = target.getBoundingClientRect();
        return width < 47.5 || height < 47.5
          ? [
              `${one.tagName} "${(one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40)}" ${Math.round(width)} × ${Math.round(height)}`,
            ]
          : [];
      }),
  );

const wider = () =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

const sizes = [
  ['phone', phone],
  ['tablet', tablet],
] as const;

async function looksRight(path: string, words: string, size: (typeof sizes)[number][1]): Promise<void> {
  await page.setViewportSize(size);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await visit(path, words);
    expect(await axe()).toEqual([]);
  }
  expect(await small()).toEqual([]);
  expect(await wider()).toBeLessThanOrEqual(0);
}

describe.each(sizes)('on a %s', (_, size) => {
  it.each(screens)(
    '%s: axe finds nothing serious in either theme, a thumb hits everything, nothing runs off the side',
    (path, words) => looksRight(path, words, size),
  );
});

it('the same once the part is lifted: its print, and its first pass', async () => {
  await lift();
  for (const [, size] of sizes) {
    await looksRight(`${demo}/print`, 'Keep this print', size);
    await looksRight(`${demo}/scrape`, 'Strokes this way', size);
  }
});

it('the switch of the theme wins over the device', async () => {
  await page.emulateMedia({ colorScheme: 'light' });
  await visit('/settings', 'Light or dark');
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await paper();
  await page.getByRole('button', { name: 'dark', exact: true }).click();
  expect(await paper()).not.toBe(light);
  await page.getByRole('button', { name: 'as the phone' }).click();
  expect(await paper()).toBe(light);
});

it('the menu opens and closes by keyboard and gives the focus back', async () => {
  await visit('/jobs', 'New job');
  await page.getByRole('button', { name: 'Job and screens' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  expect(await axe()).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
    .toBe('Job and screens');
});

it('the first load of script is under 250 kB compressed, and nothing comes from elsewhere', async () => {
  const scripts: string[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script') scripts.push(response.url());
  });
  await visit(demo, 'Passes by zone');
  expect(scripts.length).toBeGreaterThan(0);
  let bytes = 0;
  for (const address of scripts)
    bytes += gzipSync(Buffer.from(await (await fetch(address)).arrayBuffer())).length;
  expect(bytes).toBeGreaterThan(20_000);
  expect(bytes).toBeLessThan(250_000);
  expect(opened.strangers).toEqual([]);
  expect(opened.complaints).toEqual([]);
});
