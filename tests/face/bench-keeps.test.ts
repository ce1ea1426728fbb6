import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';

const demo = 'demo-saddle';
let folder: string;
let served: Served;
let opened: Opened;
let page: Page;
beforeAll(async () => {
  folder = await newFolder();
  served = await serve({ folder });
  opened = await openBrowser(served.address);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

const port = () => Number(new URL(served.address).port);
const entries = async (): Promise<Entry[]> =>
  ((await (await fetch(`${served.address}/api/jobs/${demo}`)).json()) as { entries: Entry[] }).entries;

it('a half-typed sweep is still there after a reload, to the letter', async () => {
  await page.goto(`${served.address}/job/${demo}/measure/square/3`);
  await page.getByRole('button', { name: 'It climbed' }).click();
  await page.getByLabel('0 mm', { exact: true }).fill('0');
  await page.getByLabel('20 mm', { exact: true }).fill('-1.5');
  await page.getByLabel('40 mm', { exact: true }).fill('7 thuo');
  await page.reload();
  expect(await page.getByLabel('0 mm', { exact: true }).inputValue()).toBe('0');
  expect(await page.getByLabel('20 mm', { exact: true }).inputValue()).toBe('-1.5');
  expect(await page.getByLabel('40 mm', { exact: true }).inputValue()).toBe('7 thuo');
  expect(await page.getByRole('button', { name: 'It climbed' }).getAttribute('aria-pressed')).toBe('true');
  expect(await screenText(page)).toContain('I can read 7, but not “thuo”');
});

it('a half-tapped print is still there after a reload', async () => {
  await page.goto(`${served.address}/job/${demo}/print`);
  await page.getByRole('button', { name: 'End over end' }).click();
  await page.getByRole('button', { name: 'burnished' }).click();
  await page.locator('[data-pad="flat"][data-zone="2"]').click();
  await page.reload();
  await expect
    .poll(() => page.locator('[data-pad="flat"][data-zone="2"] > title').textContent())
    .toContain('burnished');
  expect(await screenText(page)).toContain('17 zones to go');
});

it('entries written while the shop is out of reach wait on the phone, and arrive once, in order, when it is back', async () => {
  await page.goto(`${served.address}/job/${demo}/measure/level_across/1`);
  await page.getByLabel('level across', { exact: true }).fill('-12');
  const before = (await entries()).length;
  const where = port();
  await served.kill();
  await page.getByRole('button', { name: 'Keep this level' }).click();
  await expect.poll(() => screenText(page)).toContain('1 entry on this phone');
  await page.getByRole('button', { name: 'Job and screens' }).click();
  await page.getByRole('link', { name: 'Measure' }).click();
  await page.getByRole('link', { name: 'Seat it again and repeat' }).nth(2).click();
  await page.getByLabel('level along', { exact: true }).fill('+4');
  await page.getByRole('button', { name: 'Keep this level' }).click();
  await expect.poll(() => screenText(page)).toContain('2 entries on this phone');

  served = await serve({ folder, port: where });
  await expect.poll(() => screenText(page)).toMatch(/kept \d\d:\d\d/);
  const after = await entries();
  expect(after.length).toBe(before + 2);
  const last = after
    .slice(-2)
    .map((entry) => (entry.kind === 'level read' ? entry.reading.typed : entry.kind));
  expect(last).toEqual(['-12', '+4']);
});

it('what was kept is there after the server was killed and started again, and an undo is an entry', async () => {
  const where = port();
  await served.kill();
  served = await serve({ folder, port: where });
  await page.goto(`${served.address}/job/${demo}/ledger`);
  await expect
    .poll(() => screenText(page))
    .toContain('level along: +4 µm/m, repeat 1'.replace('level', 'Level'));
  const before = await entries();
  await page.getByRole('button', { name: /Undo level along: \+4/ }).click();
  await expect.poll(() => screenText(page)).toContain('Undone: level along: +4');
  await expect.poll(async () => (await entries()).length).toBe(before.length + 1);
  await page
    .getByRole('button', { name: /Bring it back/ })
    .first()
    .click();
  await expect.poll(async () => (await entries()).at(-1)!.kind).toBe('undone');
  await expect.poll(async () => (await entries()).length).toBe(before.length + 2);
  expect(opened.complaints).toEqual([]);
});
