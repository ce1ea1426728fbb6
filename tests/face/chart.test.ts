import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, pressKey, screenText, tablet, tabTo } from './browser.ts';
import { deliveredEntries } from './delivered.ts';
import { looksRight } from './looks.ts';

const pictures = process.env.WAYWRIGHT_PICTURES;

let served: Served;
let opened: Opened;
let page: Page;
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address, tablet);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

const api = (path: string, body: unknown) =>
  fetch(`${served.address}/api/jobs/${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
const type = async (label: string, text: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};
const choose = async (label: string, words: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.type(words);
  await page.keyboard.press('Tab');
};
/** The row of a line by its name, as it is read. */
const row = async (name: string): Promise<string> =>
  // biome-ignore lint/performance/useDomNodeTextContent: what is seen counts
  (await page.locator('.chart-line', { hasText: name }).first().innerText()).replace(/\s+/g, ' ');

it('lists and charts over HTTP; what is wrong is named and nothing is half made', async () => {
  const { lists } = (await (await fetch(`${served.address}/api/charts`)).json()) as {
    lists: { id: string }[];
  };
  expect(lists.map((one) => one.id)).toEqual(['engine-lathe', 'surface-grinder', 'vertical-knee-mill']);
  const wrong = await api('demo-saddle/chart', { list: 'engine-lathe', dimensions: { centres: 5 } });
  expect(wrong.status).toBe(400);
  expect(((await wrong.json()) as { message: string }).message).toContain('100 to 12000 mm');
  expect((await api('demo-saddle/chart', { units: 'cubits' })).status).toBe(400);
  expect((await api('nobody/chart', {})).status).toBe(404);
  expect((await api('nobody/chart.pdf', {})).status).toBe(404);
});

it('is found from the menu by keyboard and shows the job’s own lines', async () => {
  await page.goto(`${served.address}/job/demo-saddle`);
  await page.getByText('Passes by zone').first().waitFor();
  await pressKey(page, 'Chart');
  await page.getByText('as this job measured it').waitFor();
  expect(await screenText(page)).toContain('Invented');
  expect(await page.locator('.chart-line').count()).toBeGreaterThan(1);
});

it('a list is chosen, its length typed; a result typed by hand is judged, whole doubt and all', async () => {
  await choose('Tests', 'Engine');
  await page.getByText('Run-out').first().waitFor();
  await type('Between centres', '60 in');
  await page.getByText('Read as 1524 mm').waitFor();
  const first = page.locator('.chart-line', { hasText: 'Front carriage way, form' }).first();
  await expect.poll(() => row('Front carriage way, form')).toContain('not measured');
  expect(await first.textContent()).toContain('convex only');
  await tabTo(page, 'Type a result of line 1');
  await page.keyboard.press('Enter');
  await type('Now, µm', '12');
  await type('Now, its doubt', '± 3');
  await expect.poll(() => row('Front carriage way, form')).toMatch(/\+12\.0 ± 3\.0 .*within/);
  // 60 in is 1524 mm between centres: 20 µm to 1000 mm and 10 for each metre begun, so the limit is 30 µm.
  expect(await row('Front carriage way, form')).toContain('0 to +30');
  await type('Now, µm', '29');
  await expect.poll(() => row('Front carriage way, form')).toMatch(/\+29\.0 ± 3\.0 .*not proven/);
  await type('Now, µm', '-12');
  await expect.poll(() => row('Front carriage way, form')).toMatch(/−12\.0 ± 3\.0 .*outside/);
});

it('a reload gives it back; what cannot be read stays and says so', async () => {
  await page.reload();
  await expect.poll(() => row('Front carriage way, form')).toMatch(/−12\.0 ± 3\.0/);
  await tabTo(page, 'Type a result of line 1');
  await page.keyboard.press('Enter');
  await type('Now, µm', '12 mmm');
  await expect.poll(() => screenText(page)).toContain('not “mmm”');
  await page.reload();
  await page.getByText('Front carriage way').first().waitFor();
  await tabTo(page, 'Type a result of line 1');
  await page.keyboard.press('Enter');
  expect(await page.getByLabel('Now, µm').inputValue()).toBe('12 mmm');
  await type('Now, µm', '12');
  await expect.poll(() => row('Front carriage way, form')).toMatch(/\+12\.0 ± 3\.0 .*within/);
});

it('what was typed in µm means the same when the screen speaks thou', async () => {
  await page.goto(`${served.address}/settings`);
  await page.getByRole('button', { name: 'thou' }).first().click();
  await page.goto(`${served.address}/job/demo-saddle/chart`);
  // 12 µm are 0.472 thou, 3 µm 0.118.
  await expect.poll(() => row('Front carriage way, form')).toMatch(/\+0\.47 ± 0\.1[12] .*within/);
  await page.goto(`${served.address}/settings`);
  await page.getByRole('button', { name: 'mm' }).first().click();
  await page.goto(`${served.address}/job/demo-saddle/chart`);
  await expect.poll(() => row('Front carriage way, form')).toMatch(/\+12\.0 ± 3\.0/);
});

const entries = (): Promise<Entry[]> => deliveredEntries(page, served.address, 'demo-saddle');

it('what was chosen and a result that is kept are in the ledger, come back anywhere, and can be undone', async () => {
  const chosen = (await entries()).findLast((one) => one.kind === 'chart set');
  expect(chosen).toMatchObject({ chart: { list: 'engine-lathe', dimensions: { centres: 1524 } } });
  await tabTo(page, 'Type a result of line 1');
  await page.keyboard.press('Enter');
  await type('As found, µm', '-41');
  await type('As found, its doubt', '3');
  await type('Measured with', 'level, stepped');
  await pressKey(page, 'Keep this result');
  await page.getByText('Kept: now').waitFor();
  await expect
    .poll(async () => (await entries()).filter((one) => one.kind === 'result taken'))
    .toMatchObject([
      { test: 'front-way-form-up', when: 'first', result: { value_um: -41, doubt_um: 3 } },
      {
        test: 'front-way-form-up',
        when: 'final',
        result: { value_um: 12, doubt_um: 3, instrument: 'level, stepped' },
      },
    ]);
  await page.evaluate(() => localStorage.clear());
  await page.reload();
  await expect.poll(() => row('Front carriage way, form')).toMatch(/−41\.0 ± 3\.0.*\+12\.0 ± 3\.0 .*within/);
  await tabTo(page, 'Type a result of line 1');
  await page.keyboard.press('Enter');
  await pressKey(page, 'Undo now');
  await expect.poll(() => row('Front carriage way, form')).toMatch(/−41\.0 ± 3\.0 .*outside/);
});

it('a test of one’s own and a limit of one’s own are looked at as they are written, kept, and judged', async () => {
  await tabTo(page, 'Own tests, own limits');
  await page.keyboard.press('Enter');
  await pressKey(page, 'Add a test');
  await page.locator('summary', { hasText: 'My own test' }).click();
  await page.getByLabel('Test', { exact: true }).fill('Top slide, play');
  await page.getByLabel('How it is measured').fill('conforms to the standard');
  await expect.poll(() => screenText(page)).toContain('no word that a standard is met');
  await page.getByLabel('How it is measured').fill('indicator on the slide, pushed and pulled by hand');
  await page.getByLabel('Limit, µm').fill('15');
  await pressKey(page, 'Keep these');
  await page.locator('.chart-line', { hasText: 'Top slide, play' }).waitFor();
  expect(await row('Top slide, play')).toContain('≤ 15');
  await pressKey(page, 'Add a limit');
  await page.locator('summary', { hasText: 'Front carriage way, form' }).first().click();
  await page.getByLabel('Limit, µm').last().fill('8');
  await pressKey(page, 'Keep these');
  await expect.poll(() => row('Front carriage way, form')).toContain('0 to +8');
  expect(await row('Front carriage way, form')).toContain("shop's own");
  if (pictures) await page.screenshot({ path: join(pictures, 'chart-own.png'), fullPage: true });
});

it('what a test is measured with is chosen from the kit, and the cheapest next measurement goes by it', async () => {
  const things = [
    { kind: 'indicator', name: 'lever dial', graduation_um: 2, repeatability_um: 0.8 },
    { kind: 'test bar', name: 'long bar', length_mm: 320, known: { by: 'limit', limit_um: 2 } },
  ];
  for (const [k, thing] of things.entries()) {
    const put = await fetch(`${served.address}/api/kit/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        id: `chart-thing-${k}`,
        at: '2031-11-26T08:00:00Z',
        kind: 'put',
        item: `t${k}`,
        thing,
      }),
    });
    expect(put.status).toBe(201);
  }
  await page.reload();
  await tabTo(page, 'Own tests, own limits');
  await page.keyboard.press('Enter');
  await pressKey(page, 'Add a test and its things');
  const item = page.locator('.machine-list', { hasText: 'What each test is measured with' });
  await item.locator('summary').first().click();
  const chosen = await item
    .getByLabel('Test', { exact: true })
    .evaluate((one: HTMLSelectElement) => one.value);
  const ways = item.getByLabel('Measured with', { exact: true });
  expect(await ways.locator('option').allInnerTexts()).toContain('Test bar, vertical: lever dial, long bar');
  await ways.selectOption({ label: 'Test bar, vertical: lever dial, long bar' });
  await item.getByLabel('Readings').fill('3');
  await pressKey(page, 'Keep these');
  await expect
    .poll(async () => {
      const { entries } = (await (await fetch(`${served.address}/api/jobs/demo-saddle`)).json()) as {
        entries: Entry[];
      };
      const set = entries.findLast((entry) => entry.kind === 'chart set');
      return set?.kind === 'chart set' ? set.chart.kit?.setups : undefined;
    })
    .toMatchObject([
      { target: chosen, method: 'test bar', instrument: 'lever dial', reference: 'long bar', readings: 3 },
    ]);
  if (pictures) await page.screenshot({ path: join(pictures, 'chart-kit.png'), fullPage: true });
});

it('the chart of a whole machine shows what its benches measured, and leads there', async () => {
  await page.goto(`${served.address}/job/demo-lathe/chart`);
  await page.locator('.chart-line').first().waitFor();
  const link = page.locator('.chart-line a', { hasText: 'job demo-saddle' }).first();
  expect(await link.textContent()).toMatch(/^bench of “.+”, job demo-saddle, rounds 1 and \d$/);
  if (pictures) await page.screenshot({ path: join(pictures, 'chart-whole.png'), fullPage: true });
  await link.focus();
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/job\/demo-saddle/);
  await page.goto(`${served.address}/job/demo-saddle/chart`);
  await page.locator('.chart-line').first().waitFor();
});

it('the cheapest next measurement leads to its line', async () => {
  const list = page.locator('.chart-remaining button');
  const minutes = (await list.allInnerTexts()).flatMap((one) => /about (\d+) min/.exec(one)?.[1] ?? []);
  expect(minutes.length).toBeGreaterThan(3);
  expect(minutes.map(Number)).toEqual(minutes.map(Number).toSorted((a, b) => a - b));
  await list.first().focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY');
});

it('the PDF comes down as a file, A4 and letter', async () => {
  for (const [words, box] of [
    ['A4', '[0 0 595.27'],
    ['letter', '[0 0 612'],
  ] as const) {
    await pressKey(page, words);
    const coming = page.waitForEvent('download');
    await pressKey(page, 'Make the PDF');
    const file = await coming;
    expect(file.suggestedFilename()).toBe('demo-saddle-chart.pdf');
    const text = (await readFile(await file.path())).toString('latin1');
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text).toContain(`/MediaBox ${box}`);
  }
  await page.getByText('handed to the browser').waitFor();
});

it('axe finds nothing, a thumb hits everything, nothing runs off, in both themes and sizes', async () => {
  await looksRight(page, 'chart', async () => {
    await page.goto(`${served.address}/job/demo-saddle/chart`);
    await page.locator('.chart-line', { hasText: 'Front carriage way' }).first().waitFor();
    await page.locator('.chart-line summary').first().click();
    await page.locator('summary', { hasText: 'Own tests, own limits' }).click();
  });
  expect(opened.strangers).toEqual([]);
  expect(opened.complaints).toEqual([]);
});
