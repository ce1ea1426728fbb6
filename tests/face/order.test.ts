import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, pressKey, screenText, tabTo } from './browser.ts';
import { allDelivered } from './delivered.ts';
import { looksRight as looks } from './looks.ts';

let served: Served;
let opened: Opened;
let page: Page;
let job = '';
beforeAll(async () => {
  served = await serve({ folder: await newFolder() });
  opened = await openBrowser(served.address);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

const says = (words: string | RegExp) => expect.poll(() => screenText(page)).toMatch(words);
const visit = (path: string) => page.goto(`${served.address}/job/${job}${path}`);
const type = async (name: string, text: string) => {
  await tabTo(page, name);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};
const status = (title: string) =>
  page
    .locator(`ol .order-row:has(b:text-is(${JSON.stringify(title)})) [data-status]`)
    .getAttribute('data-status');

const looksRight = (name: string) => looks(page, `order-${name}`);

async function entries(): Promise<Entry[]> {
  await allDelivered(page);
  const { entries } = (await (await fetch(`${served.address}/api/jobs/${job}`)).json()) as {
    entries: Entry[];
  };
  return entries;
}

it('a whole machine is begun by keyboard, with its own sizes', async () => {
  await page.goto(`${served.address}/new`);
  await page.getByText('What lies on your bench?').waitFor();
  await pressKey(page, 'A whole machine');
  await says('Which machine?');
  await looksRight('whole');
  await pressKey(page, 'Engine lathe');
  await says('Measure these on the machine');
  await type('Name of the job', 'Invented lathe');
  await type('Between centres', '5 mm');
  await says('does not fit this machine; expected 200 to 12000 mm');
  await type('Between centres', '30 in');
  await looksRight('whole-sizes');
  await pressKey(page, 'Begin this machine');
  await says('0 of 27 steps stand');
  job = decodeURIComponent(/job\/([^/]+)/.exec(page.url())![1]!);
  const made = (await entries()).find((one) => one.kind === 'machine set');
  expect(made?.kind === 'machine set' && made.machine.dimensions[0]!.value).toBe(762);
});

it('only the survey is ready; a step that waits says for what', async () => {
  await expect.poll(() => status('Survey, before anything is taken apart')).toBe('ready');
  expect(await status('Headstock to the bed')).toBe('waits');
  await says('as found comes first: the feet change it');
  await looksRight('order-begun');
});

it('a step is begun and done with hours and a note, and undone again', async () => {
  await pressKey(page, 'Survey, before anything');
  await says('What is measured now decides');
  await pressKey(page, 'Begin this step');
  await says('under way');
  await type('Hours spent', 'two');
  await says('I cannot read “two” as hours');
  await pressKey(page, 'Done');
  expect((await entries()).filter((one) => one.kind === 'step told').length).toBe(1);
  await type('Hours spent', '7:30');
  await says('Read as 7.5 h');
  await tabTo(page, 'Note');
  await page.keyboard.type('tailstock ways least worn');
  await looksRight('step');
  await pressKey(page, 'Done');
  await says('tailstock ways least worn');
  await expect
    .poll(async () => (await entries()).at(-1))
    .toMatchObject({ kind: 'step told', step: 'survey', what: 'done', hours: 7.5 });
  await pressKey(page, 'Undo done');
  await says('under way');
  await pressKey(page, 'Done');
  await says('stands');
});

it('a reference scraped again marks what stood on it, says why, and proving gives it back', async () => {
  for (const step of ['support', 'bed-datum', 'bed-flat', 'bed-v']) {
    await visit(`/order/${step}`);
    await pressKey(page, 'Done');
    await says('stands');
  }
  await visit('/order/bed-flat');
  await says('If metal comes off here again, to be re-proven: Carriage V');
  await pressKey(page, 'Done again, metal came off');
  await says('Written: Done again');
  await visit('/order/bed-v');
  await says(/To be re-proven, because.*“Carriage flat” was done again/);
  await looksRight('step-again');
  await visit('/order');
  await expect.poll(() => status('Carriage V, both flanks')).toBe('to be re-proven');
  await looksRight('order-again');
  await pressKey(page, 'Carriage V');
  await pressKey(page, 'Proven again, nothing changed');
  await visit('/order');
  await expect.poll(() => status('Carriage V, both flanks')).toBe('done');
});

it('every step has a place to go: its own bench, or screens; each bench with the step’s set-ups', async () => {
  await visit('/order/headstock');
  await pressKey(page, 'Bench');
  await says('Headstock on bed, round 1');
  expect(page.url()).not.toContain(job);
  await pressKey(page, 'Job and screens');
  await page.getByRole('dialog').waitFor();
  await page.getByRole('dialog').getByRole('link', { name: 'Measure', exact: true }).click();
  await says('Each set-up tells one thing');
  await visit('/order/headstock');
  await says('Headstock on bed: round 1');
  await visit('/order/saddle-bottom');
  await pressKey(page, 'Bench');
  await expect.poll(() => page.url()).toBe(`${served.address}/job/${job}`);
  await visit('/order/bearings');
  await says('Test bar, turned half round');
});

it('offline, a step is written on the phone and the order follows at once', async () => {
  await visit('/order/bearings');
  await says('Spindle bearings');
  await opened.context.setOffline(true);
  await pressKey(page, 'Begin this step');
  await says('under way');
  await opened.context.setOffline(false);
  await expect.poll(async () => (await entries()).at(-1)).toMatchObject({ step: 'bearings', what: 'begun' });
});

it('heights: wear is typed, told link by link, a liner worked out, kept; a face that cannot be read says why', async () => {
  await visit('/heights');
  await says('nothing is known of it but the drawing');
  await pressKey(page, 'Add wear, a cut or a shim');
  await page.locator('summary', { hasText: 'wear as found' }).click();
  for (const pad of ['front flank', 'rear flank', 'flat']) {
    await type(pad, '0.12 mm');
    await says('Read as');
  }
  await says(/comes to stand [\d.]+ mm too low/);
  await type('flat', '12 mmm');
  await says('not “mmm”');
  await type('flat', '0.15 mm');
  await pressKey(page, 'Add a liner');
  await says(/Sheet [\d.]+ mm, bond line 0.10 mm/);
  await looksRight('heights');
  await pressKey(page, 'Keep these heights');
  await expect
    .poll(async () => (await entries()).at(-1))
    .toMatchObject({ kind: 'heights set', heights: { changes: [{ off_um: { flat: 150 } }] } });
});

it('axes: a bar that droops is said so, its sag taken out, kept under its name', async () => {
  await visit('/axis');
  await pressKey(page, 'Spindle');
  await page.locator('summary', { hasText: 'On the top' }).click();
  await type('Near the bore', '1');
  await type('At the free end', '-22');
  await says(/The top: The free end lies low, .*sag, .*is taken out/);
  await type('Stands out', '100 mm');
  await says(/expected at least 320/);
  await type('Stands out', '320 mm');
  await says('The free end lies low');
  await looksRight('axis');
  await pressKey(page, 'Keep this');
  await expect
    .poll(async () => (await entries()).at(-1))
    .toMatchObject({
      kind: 'axis taken',
      of: 'spindle',
      asked: { readings: [{ near: [1, 0], far: [-22, 0] }, {}] },
    });
  await pressKey(page, 'All axes');
  await says('Kept');
  await pressKey(page, 'Centres, height');
  await type('As first fitted', '-40');
  await type('Bars exchanged', '-20');
  await says(/tailstock’s centre stands lower than the spindle’s/);
  await page.getByLabel('Read with').selectOption('swung indicator');
  await type('On top', '50');
  await type('Underneath', '-10');
  await type('Bracket reads too much', '24');
  await says(
    /stands higher than the spindle’s, 18\s*±\s*3 µm; the bracket’s sag, 12 µm of height, is taken out/,
  );
  await looksRight('swung');
  await page.getByLabel('Plane').selectOption('sideways');
  await says(/nearer to you than the spindle’s, 30/);
});

it('a gib: over rolls and its taper by keyboard, sentences and working at once, kept under its step', async () => {
  await visit('/order/cross-gib');
  await pressKey(page, 'Gibs and dovetails');
  await says('Choose below what was measured');
  await pressKey(page, 'Measured Dovetail over rolls');
  await type('2, over the rolls', '100.03');
  await type('3, over the rolls', '100.06 mm');
  await says(/wider/i);
  expect(await page.locator('.wrong').count()).toBe(0);
  // Left, a cell shows what is kept to the last figure.
  await expect.poll(() => page.getByLabel('2, over the rolls').inputValue()).toMatch(/^100\.03/);
  await pressKey(page, 'Measured Gib, its taper');
  await says(/1 in 60|1:60/);
  await pressKey(page, 'Show the working');
  await looksRight('gib');
  await pressKey(page, 'Keep this');
  await expect
    .poll(async () => (await entries()).at(-1))
    .toMatchObject({
      kind: 'gib taken',
      of: 'cross-gib',
      asked: { rolls: { read_mm: [100, 100.03, 100.06] } },
    });
});

it('the machine is edited: a step’s title by its cell, a short name with all that refers to it, an error named by the place’s own name, kept as an entry', async () => {
  await visit('/machine');
  await says('This is your own copy');
  await page.getByRole('button', { name: 'Ways' }).click();
  await page.locator('summary', { hasText: 'bed: feet, as they are set' }).click();
  const short = page.getByLabel('Short name').locator('visible=true');
  await short.fill('bed-flat');
  await says('Another way is “bed-flat” already; it stays “bed-feet”.');
  await short.fill('feet');
  await says('It hangs together');
  await pressKey(page, 'Take out bed: feet, as they are set');
  await says(/Step “Bed on its feet, twist out”, makes 1: "feet"; expected one of the ways/);
  await looksRight('machine-wrong');
  await pressKey(page, 'Drop what I changed');
  await says('Nothing is changed');
  await short.fill('feet');
  await page.getByRole('button', { name: 'Steps', exact: true }).click();
  await page.locator('summary', { hasText: 'Wipers, oil, adjustments' }).click();
  await page.getByLabel('Title', { exact: true }).locator('visible=true').fill('Wipers, oil and shims');
  await says('It hangs together');
  for (const room of ['Steps', 'Sizes', 'Pads', 'Text']) {
    await page.getByRole('button', { name: room, exact: true }).click();
    if (room !== 'Text') await page.locator('.machine-item > summary').first().click();
    await looksRight(`machine-${room.toLowerCase()}`);
  }
  await pressKey(page, 'Keep this machine');
  await says('Wipers, oil and shims');
  const last = (await entries()).at(-1)!;
  if (last.kind !== 'machine set') throw new Error(`the last entry is ${last.kind}`);
  expect(last.machine.ways[0]!.id).toBe('feet');
  expect(last.machine.steps.filter(({ makes }) => makes.includes('feet')).map(({ id }) => id)).toEqual([
    'support',
  ]);
});

it('one’s own machine from scratch, saved as a file', async () => {
  await page.goto(`${served.address}/whole`);
  await pressKey(page, 'My own, from scratch');
  await page.getByText('What does its first slide lie on?').waitFor();
  await page.locator('section .choice').first().click();
  await pressKey(page, 'Begin this machine');
  await says('0 of 2 steps stand');
  job = decodeURIComponent(/job\/([^/]+)/.exec(page.url())![1]!);
  await visit('/machine');
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  const text = page.getByLabel('The machine as JSON');
  const whole = await text.inputValue();
  await text.fill(whole.replace('"bodies": [', '"bodies": '));
  await says(/line \d+/);
  await text.fill(whole);
  await says('Nothing is changed');
  const coming = page.waitForEvent('download');
  await pressKey(page, 'Save as a file');
  const file = await coming;
  expect(JSON.parse(await readFile(await file.path(), 'utf8')).steps.length).toBe(2);
});

it('nothing was asked of elsewhere, and the browser complained of nothing', () => {
  expect(opened.strangers).toEqual([]);
  expect(opened.complaints).toEqual([]);
});
