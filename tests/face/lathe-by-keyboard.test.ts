import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ChartReport } from '../../src/shop/chart/chart-report.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, tablet } from './browser.ts';
import { typist } from './keyboard.ts';

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

/** To the shop’s file as another hand would write it: what an invented, finished lathe reads on the chart’s lines. */
async function writeResults(job: string): Promise<number> {
  const send = async (path: string, body: unknown) => {
    const answer = await fetch(`${served.address}/api/jobs/${job}/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    expect(answer.ok, path).toBe(true);
    return answer.json();
  };
  const { report } = (await send('chart', {})) as { report: ChartReport };
  const lines = report.groups.flatMap((group) => group.lines).filter((line) => !line.id.startsWith('job:'));
  // The first two are typed by hand.
  for (const line of lines.slice(2)) {
    const low = line.low ?? 0;
    const width = (line.high ?? 0) - low;
    const result = { value_um: low + 0.5 * width, doubt_um: 0.15 * Math.abs(width) };
    const entry = { kind: 'result taken', test: line.id, when: 'final', result };
    await send('entries', { ...entry, id: `by-hand-${line.number}`, at: '2031-11-25T14:32:00+01:00' });
  }
  return lines.length;
}

it('a lathe from an empty start to its final chart and PDF by keyboard alone', async () => {
  const { press, type, column, says, pdf } = typist(page, 'lathe');
  await page.goto(served.address);
  await says('Passes by zone');
  await press('Job and screens', 'Jobs New job');
  await press('A whole machine', 'Which machine?');
  await press('Engine lathe', 'Measure these on the machine');
  await type('Name of the job', 'Invented lathe');
  await type('Between centres', '1000');
  await press('Begin this machine', '0 of 27 steps stand');
  const job = decodeURIComponent(/job\/([^/]+)/.exec(page.url())![1]!);

  // As found: an axis swept, kept, and come back from.
  await press('Survey, before anything', 'What is measured now decides');
  await press('Axes', 'turned half round and read again');
  await press('Spindle', 'Stands out');
  await press('On the top', 'Near the bore');
  for (const [label, text] of [
    ['Near the bore', '1'],
    ['Near the bore, turned', '-3'],
    ['At the free end', '-22'],
    ['At the free end, turned', '-54'],
  ] as const)
    await type(label, text);
  await says(/The top: The free end lies low, .*sag, .*outside/);
  // 107 µrad low, aimed 25 µrad high: 132 µrad over the 380 mm from pad to pad.
  await says(/take more off these pads.*front, headstock end 50 ± \d µm; back, headstock end 50 ± \d µm/);
  await press('Keep this', 'Kept in the ledger');
  await press('Take it to the Bench: Headstock', 'Along the top of the test bar: kept');
  await press('Read the level', 'end for end');
  await column('level across', ['0']);
  await press('Keep this level', 'Test bar comes out free end low');
  await says('Passes by zone');
  const passes = async (pad: string) => {
    const figures = await page.locator(`[data-pad="${pad}"][data-zone] text`).allTextContents();
    return figures.reduce((sum, figure) => sum + Number(figure), 0);
  };
  expect(await passes('front, headstock end')).toBeGreaterThan(10 + (await passes('front, tailstock end')));
  await press('Order', '0 of 27');

  // Every step, one leading to the next.
  await press('Survey, before anything', 'What is measured now decides');
  for (let step = 1; step <= 27; step++) {
    await press('Done', 'Written: Done');
    if (step < 27) await press('Next: ', 'Made true from');
  }
  await press('All steps stand', 'every step is done and stands');

  // The headstock’s bench has lines of its own: its level holds, and its bar hangs until those pads are scraped.
  const within = (await writeResults(job)) - 1;
  await press('Chart', `${within} are within, 1 outside`);
  for (const line of [1, 2]) {
    await press(`Type a result of line ${line}`, 'Measured with');
    await type('Now,', '5');
    await type('Now, its doubt', '1');
    await press('Keep this result', `${within + line} are within, 1 outside`);
  }
  const { begins, bytes } = await pdf();
  expect(begins).toBe('%PDF-1.7');
  expect(bytes).toBeGreaterThan(20_000);
  expect([opened.complaints, opened.strangers]).toEqual([[], []]);
});
