import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, phone, tabTo } from './browser.ts';
import { typist } from './keyboard.ts';

let served: Served;
let opened: Opened;
let page: Page;
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address, phone);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

/** An invented saddle, as its owner measures it; mm and degrees. */
const sizes = [
  ['Length of the bearing faces', '420'],
  ['Front flank, width', '40'],
  ['Rear flank, width', '40'],
  ['Front flank, slope', '45'],
  ['Rear flank, slope', '45'],
  ['From the V to the flat', '240'],
  ['Flat, width', '50'],
  ['Length of the sweep', '200'],
] as const;

it('one’s own saddle at phone size by keyboard alone: begun, measured, blued, spotted, proven, signed, its PDF in hand', async () => {
  const { press, type, column, says, pdf } = typist(page, 'saddle');
  await page.goto(served.address);
  await says('Passes by zone');
  await press('Job and screens', 'Jobs New job');
  await press('New job', 'What lies on your bench?');
  await expect.poll(() => page.title()).toBe('New job · Waywright');
  await press('Lathe saddle on', 'Measure these on the machine');
  await type('Name of the job', 'My saddle');
  await press('PTFE-bronze liner', 'PTFE-bronze');
  for (const [label, text] of sizes) await type(label, text);
  await press('Begin this job', 'Start with the sweep');

  /** A sweep that climbs to `at_200` µm, levels that read nothing, and the blue in words, zone after zone. */
  const measured = async (at_200: number, blue: string, then: string | RegExp) => {
    await press('Set up the sweep', 'Are the cross ways square');
    await press('It climbed', '0 of 11');
    const stops = Array.from({ length: 11 }, (_, k) => ((at_200 * k) / 10).toFixed(1));
    await column('0 mm', stops);
    await press('Keep this sweep', 'Read the level');
    for (const level of ['level across', 'level along']) {
      await press('Read the level', 'end for end');
      await column(level, ['0']);
      await press('Keep this level', level === 'level across' ? 'Read the level' : 'Enter the print');
    }
    await press('Enter the print', 'Which way did you turn it');
    await press('End over end', '18 zones to go');
    await tabTo(page, 'Flat, zone 6');
    for (let zone = 0; zone < 18; zone++) await page.keyboard.press(blue[zone % blue.length]!);
    await says('All zones said');
    await press('Keep this print', then);
  };
  // In line, not yet proven, and a third of its zones barely touch: only the blue comes off.
  await measured(2, 'hhf', 'scrape only the blue');
  await press('Spot the blue', 'Spot 1 of 3');
  await press('Pass 1 done', 'Spot 2 of 3');
  await press('Pass 2 done', 'Spot 3 of 3');
  await press('Pass 3 done', '3 passes made');
  // A second Enter on what was the button of the last pass does nothing.
  await page.keyboard.press('Enter');
  await press('Set it back', 'No readings in this round');
  await measured(8.7, 'h', 'All 4 limits are proven');
  await press('Sign the lines', 'The lines are signed');
  await press('Chart, on screen', 'Of 3 lines 3 are within');
  const { begins, bytes } = await pdf();
  expect(begins).toBe('%PDF-1.7');
  expect(bytes).toBeGreaterThan(10_000);
  expect([opened.complaints, opened.strangers]).toEqual([[], []]);
});
