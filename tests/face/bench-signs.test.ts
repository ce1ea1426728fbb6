import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText, tablet } from './browser.ts';
import { looksRight } from './looks.ts';

const demo = 'demo-saddle';
// The look's invented sweep: the number falls, facing comes out convex.
const falling = ['0.0', '-1.5', '-2.5', '-3.5', '-4.0', '-4.5', '-9.0', '-6.5', '-9.5', '-11.5', '-14.0'];
let served: Served;
let opened: Opened;
let page: Page;
let repeat = 10;
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address, tablet);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});
beforeEach(async () => {
  repeat += 1;
  await page.goto(`${served.address}/job/${demo}/measure/square/${repeat}`);
});

const cell = (mm: number) => page.getByLabel(`${mm} mm`, { exact: true });
const paste = (mm: number, text: string) =>
  cell(mm).evaluate((input, pasted) => {
    const data = new DataTransfer();
    data.setData('text', pasted);
    input.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);
const values = async () => Promise.all(Array.from({ length: 11 }, (_, i) => cell(20 * i).inputValue()));

it('a push that fell stops the card until its signs are turned, and then turns every sign in the sum', async () => {
  await page.getByRole('button', { name: 'It fell' }).click();
  expect(await screenText(page)).toContain(
    'This indicator counts the other way, so every sign would be wrong.',
  );
  await page.getByRole('button', { name: 'Push again' }).click();
  expect(await screenText(page)).toContain('What did the number do?');
  await page.getByRole('button', { name: 'It fell' }).click();
  await page.getByRole('button', { name: 'Turn its signs' }).click();
  await paste(0, falling.join('\n'));
  await expect
    .poll(() => screenText(page))
    .toContain('with its signs turned, facing comes out concave, +19 ± 5 µm in 300 mm, by this sweep alone.');
  await page.getByRole('button', { name: 'Keep this sweep' }).click();
  await page.waitForURL(/\/job\/demo-saddle$/);
  await expect.poll(() => screenText(page)).toMatch(/kept \d\d:\d\d/);
  const job = (await (await fetch(`${served.address}/api/jobs/${demo}`)).json()) as { entries: Entry[] };
  const kept = job.entries.at(-1)!;
  expect(kept).toMatchObject({ kind: 'sweep taken', repeat, record: { push: 'fell' } });
  // The ledger holds the signs as the instrument showed them; the sum turns them.
  expect(kept.kind === 'sweep taken' && kept.readings.map((reading) => reading.value)).toEqual(
    falling.map(Number),
  );
  const input = (await (await fetch(`${served.address}/api/jobs/${demo}/steer-input`)).json()) as {
    rounds: { sweeps: { readings_um: number[] }[] }[];
  };
  expect(input.rounds.at(-1)!.sweeps.at(-1)!.readings_um).toEqual(falling.map((text) => -Number(text) + 0));
});

it('the same column on an indicator that climbed is convex', async () => {
  await page.getByRole('button', { name: 'It climbed' }).click();
  await paste(0, falling.join('\r\n'));
  expect(await values()).toEqual(falling);
  await expect
    .poll(() => screenText(page))
    .toContain('The number falls along the sweep: facing comes out convex, −19 ± 5 µm in 300 mm');
});

it('swept from the other side: drawing, words and sum turn together, and the ledger says so', async () => {
  const drawn = () => page.locator('.draw').innerHTML();
  const before = await drawn();
  await page.getByRole('button', { name: 'on the other side' }).click();
  await expect
    .poll(() => screenText(page))
    .toContain('From the other side signs mean the opposite: climbing is convex');
  expect(await screenText(page)).toContain('It points toward the tailstock end.');
  expect(await drawn()).not.toBe(before);
  await page.getByRole('button', { name: 'It climbed' }).click();
  await paste(0, falling.join('\n'));
  await expect
    .poll(() => screenText(page))
    .toContain('The number falls along the sweep: facing comes out concave, +19 ± 5 µm in 300 mm');
  await looksRight(page, 'other side');
  await page.setViewportSize(tablet);
  await page.getByRole('button', { name: 'Keep this sweep' }).click();
  await page.waitForURL(/\/job\/demo-saddle$/);
  await expect.poll(() => screenText(page)).toMatch(/kept \d\d:\d\d/);
  const job = (await (await fetch(`${served.address}/api/jobs/${demo}`)).json()) as { entries: Entry[] };
  expect(job.entries.at(-1)).toMatchObject({ kind: 'sweep taken', repeat, record: { other_side: true } });
  const input = (await (await fetch(`${served.address}/api/jobs/${demo}/steer-input`)).json()) as {
    rounds: { sweeps: { plunger: number[]; readings_um: number[]; face: string }[] }[];
  };
  const sweep = input.rounds.at(-1)!.sweeps.at(-1)!;
  expect(sweep.plunger[0]).toBe(1);
  expect(sweep.readings_um).toEqual(falling.map(Number));
  expect(sweep.face).toMatch(/opposite face$/);
});

it('a column that does not fit or cannot be read changes no cell, and says why', async () => {
  await cell(0).fill('4');
  await paste(20, '1\n2\n3\n4\n5\n6\n7\n8\n9\n10\n11\n12');
  await expect
    .poll(() => screenText(page))
    .toContain('12 readings were pasted; from here there are 10 stops.');
  await paste(20, '1\n\n3');
  await expect.poll(() => screenText(page)).toContain('Line 2 is empty');
  expect(await values()).toEqual(['4', ...Array(10).fill('')]);
});

it('a reading off the line is a question with two answers', async () => {
  await page.getByRole('button', { name: 'It climbed' }).click();
  await paste(0, falling.map((text, i) => (i === 7 ? '+6.5' : text)).join('\n'));
  await expect.poll(() => screenText(page)).toContain('off the line of the rest. Was it −6.5?');
  await page.getByRole('button', { name: 'Keep this sweep' }).click();
  expect(await screenText(page)).toContain('Answer the question about 140 mm.');
  await page.getByRole('button', { name: 'It was −6.5' }).click();
  expect(await cell(140).inputValue()).toBe('−6.5');
  expect(await screenText(page)).not.toContain('off the line of the rest');
});

it('what cannot be read stays as typed, is told in words, and loses nothing else', async () => {
  await paste(0, falling.join('\n'));
  await cell(140).fill('7 thuo');
  await expect.poll(() => screenText(page)).toContain('140 mm: I can read 7, but not “thuo”. Write');
  expect(await cell(140).getAttribute('aria-invalid')).toBe('true');
  expect((await values()).filter((text) => text !== '7 thuo')).toEqual(falling.filter((_, i) => i !== 7));
  await cell(140).fill('half thou');
  await expect.poll(() => screenText(page)).toContain('+12.7 µm is +5 tenths');
});

it('another unit for bare numbers changes no reading that is written already', async () => {
  await page.getByRole('button', { name: 'It climbed' }).click();
  await paste(0, falling.join('\n'));
  const before = /−19 ± 5 µm in 300 mm/;
  await expect.poll(() => screenText(page)).toMatch(before);
  await page.getByRole('button', { name: 'mm', exact: true }).click();
  expect(await screenText(page)).toMatch(before);
  expect(opened.complaints).toEqual([]);
});

it('mm typed where µm are asked are asked about before they make worn ways look flat', async () => {
  await page.getByRole('button', { name: 'It climbed' }).click();
  await paste(0, falling.map((um) => String(Number(um) / 1000)).join('\n'));
  await page.getByRole('button', { name: 'Keep this sweep' }).click();
  await expect.poll(() => screenText(page)).toContain('Say first which unit these readings are in.');
  expect(await screenText(page)).toContain('finer than an indicator shows. Were they read in mm?');
  await page.getByRole('button', { name: 'They are mm' }).click();
  await expect.poll(() => screenText(page)).toContain('facing comes out convex, −19 ± 5 µm in 300 mm');
  expect(await screenText(page)).not.toContain('Were they read in');
  await page.goto(`${served.address}/job/${demo}/measure/level_across/${repeat}`);
  await page.getByLabel('level across', { exact: true }).fill('0.02');
  await page.getByRole('button', { name: 'Keep this level' }).click();
  await expect.poll(() => screenText(page)).toContain('Say first which unit the reading is in.');
  await page.getByRole('button', { name: 'It is mm/m' }).click();
  await expect.poll(() => screenText(page)).toContain('+0.02 mm/m is');
});
