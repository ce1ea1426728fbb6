import { execFileSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import type { SteerAnswer } from '../../src/core/plan/answer.ts';
import { type PracticeRecord, slipsMade } from '../../src/core/practice/record.ts';
import { practiceTruth } from '../../src/core/practice/replay.ts';
import { newFolder } from '../server/served.ts';
import { phone, screenText } from './browser.ts';
import { allDelivered, deliveredEntries } from './delivered.ts';
import { looksRight, runsOff } from './looks.ts';
import { expectPasses, mapFigures } from './map-shown.ts';
import { opened, openWorkshop, page, served } from './workshop.ts';

openWorkshop();

const jobId = () => decodeURIComponent(/\/job\/([^/]+)/.exec(page.url())![1]!);
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

const look = (name: string) => looksRight(page, name);

const entries = (): Promise<Entry[]> => deliveredEntries(page, served.address, jobId());

/** The command line's plan for the job, from its exported file, taken into a workshop of its own. */
async function commandLine(): Promise<SteerAnswer> {
  await allDelivered(page);
  const folder = await newFolder();
  const file = join(folder, 'practice.waywright.json');
  await writeFile(file, await (await fetch(`${served.address}/api/jobs/${jobId()}/export`)).text());
  const run = (...args: string[]) =>
    execFileSync(process.execPath, ['dist/faces/cli/main.js', ...args], {
      encoding: 'utf8',
      env: { ...process.env, WAYWRIGHT_DATA: folder },
    });
  run('job', 'import', file);
  const input = join(folder, 'steer-input.json');
  await writeFile(input, run('job', 'steer-input', jobId()));
  return JSON.parse(run('steer', input, '--json')) as SteerAnswer;
}

async function expectPlanAsOnCommandLine(): Promise<SteerAnswer> {
  const answer = await commandLine();
  expect(answer.ok).toBe(true);
  if (answer.plan.action === 'spot') await button('Passes').click();
  await expectPasses(page, answer);
  return answer;
}

/** One set-up after the other, as on metal: the push test is answered from the drawing of it. */
async function measureCardByCard(name?: string): Promise<void> {
  await page.getByRole('link', { name: /^Set up the sweep/ }).click();
  const drawn = page.getByRole('img', { name: 'The push test, before and after' });
  await drawn.waitFor();
  if (name) await look(`${name}-sweep`);
  const shows = (await drawn.locator('text').allTextContents()).find((text) => /^[+−]\d/.test(text))!;
  if (shows.startsWith('+')) await button('It climbed').click();
  else {
    await button('It fell').click();
    await button('Turn its signs').click();
  }
  await button('Read the indicator').click();
  await expect.poll(() => page.getByLabel('0 mm', { exact: true }).inputValue()).toBe('0');
  await button('Keep this sweep').click();
  for (let level = 0; level < 2; level++) {
    await page.getByRole('link', { name: /^Read the level/ }).click();
    await button('Read the level').click();
    await button('Keep this level').click();
  }
}

async function measureAtOnce(name?: string): Promise<void> {
  await page.goto(`${served.address}/job/${jobId()}/measure`);
  await button('Read every set-up').waitFor();
  if (name) await look(`${name}-measure`);
  await button('Read every set-up').click();
  await page.getByRole('link', { name: 'Enter the print' }).click();
}

/** On a narrow phone eight zones need more than the screen: they stay a thumb wide, the map is swiped along and the page is not. */
async function narrow(): Promise<void> {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByText('swipe it along').waitFor();
  const widths = await page.evaluate(() =>
    [...document.querySelectorAll('[data-zone]')].map(
      (one) => one.querySelector('rect')!.getBoundingClientRect().width,
    ),
  );
  expect(Math.min(...widths)).toBeGreaterThanOrEqual(47.5);
  expect(await runsOff(page)).toBeLessThanOrEqual(0);
  await page.setViewportSize(phone);
}

async function blueIt(words: boolean, name?: string): Promise<void> {
  await button(/Front to back/).click();
  await button('Blue and print it').click();
  await button('Take it as seen').waitFor();
  if (words) {
    await button(/^heavy/).click();
    await page.locator('[data-pad="flat"][data-zone="2"]').click();
    expect((await mapFigures(page)).flat![2]).toBe('heavy');
  }
  if (name) {
    await narrow();
    await look(`${name}-print`);
  }
  await button('Take it as seen').click();
  await expect.poll(() => screenText(page)).toContain('All zones said');
  await button('Keep this print').click();
}

async function scrapeAll(answer: SteerAnswer, name?: string): Promise<void> {
  await page.getByRole('link', { name: /^(Start pass 1|Spot the blue)/ }).click();
  const passes = Math.max(...answer.plan.zones.map((zone) => zone.passes_now));
  for (let pass = 1; pass <= passes; pass++) {
    await button(`Pass ${pass} done`).waitFor();
    if (name && pass === 1) await look(`${name}-scrape`);
    await button(`Pass ${pass} done`).click();
  }
  await button(/^Set it back: start round/).click();
}

it('three rounds on a practice machine by clicking; the plan is the command line’s, the truth stays hidden until asked', async () => {
  await page.goto(`${served.address}/jobs`);
  await page.getByRole('link', { name: 'Practise on a simulated machine' }).click();
  await button('Begin to practise').waitFor();
  await page.getByLabel('Machine’s number').fill('twelve');
  await button('Begin to practise').click();
  expect(await screenText(page)).toContain('“twelve” is no machine’s number');
  await page.getByLabel('Machine’s number').fill('1207');
  await look('new');
  await button('Begin to practise').click();
  await expect.poll(() => screenText(page)).toContain('No readings in this round');
  expect(await screenText(page)).toContain('practice');
  await look('begun');

  await measureCardByCard('round1');
  await page.getByRole('link', { name: /^Enter the print/ }).click();
  await blueIt(true, 'round1');
  const first = await expectPlanAsOnCommandLine();
  expect(first.plan.action).toBe('scrape');
  await look('round1-bench');
  expect(await screenText(page)).not.toContain('Told and true');
  const hidden = await fetch(`${served.address}/api/jobs/${jobId()}/practice/truth`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  expect(hidden.status).toBe(409);
  await scrapeAll(first, 'round1');

  await expect.poll(() => screenText(page)).toContain('round 2');
  await measureAtOnce('round2');
  await blueIt(false);
  const second = await expectPlanAsOnCommandLine();
  // The machine was scraped: its facing is not where it was.
  const facing = (answer: SteerAnswer) =>
    answer.estimate.features.find((one) => one.name === 'facing')!.value;
  expect(Math.abs(facing(second) - facing(first))).toBeGreaterThan(5);
  await scrapeAll(second);

  await expect.poll(() => screenText(page)).toContain('round 3');
  await measureAtOnce();
  await blueIt(false);
  await expectPlanAsOnCommandLine();
  await button('Show the truth').click();
  await button('Look at it').click();
  await expect.poll(() => screenText(page)).toContain('Told and true, round 3');
  await expect.poll(() => screenText(page)).toContain('Nothing went wrong on purpose so far');
  await look('round3-bench');
  expect((await entries()).map((entry) => entry.kind)).toContain('truth shown');
  await page.goto(`${served.address}/job/${jobId()}/truth`);
  await expect.poll(() => screenText(page)).toContain('Practice machine 1207');
  await look('truth');
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
});

it('a reload and an undo find the same machine', async () => {
  const read = async (): Promise<unknown> =>
    (
      await fetch(`${served.address}/api/jobs/${jobId()}/practice/measure`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ round: 3 }),
      })
    ).json();
  const before = await read();
  const last = (await entries()).findLast((entry) => entry.kind === 'print read')!;
  await fetch(`${served.address}/api/jobs/${jobId()}/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'undone', entry: last.id, id: 'undo-print', at: new Date().toISOString() }),
  });
  await page.reload();
  expect(await read()).toEqual(before);
});

it('what a practice machine cannot be asked is refused in words', async () => {
  const ask = async (path: string, body: unknown) => {
    const response = await fetch(`${served.address}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    return [response.status, ((await response.json()) as { message: string }).message] as const;
  };
  const here = `/api/jobs/${jobId()}/practice`;
  expect(await ask(`${here}/measure`, { round: 9 })).toEqual([400, expect.stringContaining('at most 3')]);
  expect(await ask(`${here}/print`, { round: 1.5 })).toEqual([400, expect.stringContaining('round')]);
  expect(await ask('/api/jobs/demo-saddle/practice/measure', { round: 1 })).toEqual([
    409,
    expect.stringContaining('real part'),
  ]);
  expect((await ask('/api/jobs/nobody/practice/truth', {}))[0]).toBe(404);
  const asked = { id: 'p', at: '2031-11-25T14:00:00Z', title: 'P', slide: 'V and flat', material: 'liner' };
  expect(await ask('/api/practice', { ...asked, level: 'usual', seed: -1, slips: [] })).toEqual([
    400,
    expect.stringContaining('seed'),
  ]);
});

it('signs turned on purpose in the first round: the second one’s alarm asks, and the truth names the slip', async () => {
  const record = (seed: number): PracticeRecord => ({
    slide: 'V and flat',
    material: 'liner',
    level: 'hard',
    seed,
    slips: ['sweep reversed'],
  });
  // Far enough out that a turned sign cannot pass for a good plan.
  const seed = [...Array(200).keys()].find(
    (one) =>
      slipsMade(record(one), [])[0]!.round === 0 &&
      Math.abs(practiceTruth(record(one), []).rounds[0]!.features.facing!) > 150,
  )!;
  const at = new Date().toISOString();
  await fetch(`${served.address}/api/practice`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...record(seed), id: 'turned', title: 'Turned', at }),
  });
  await page.goto(`${served.address}/job/turned`);
  await measureAtOnce();
  await blueIt(false);
  await scrapeAll(await commandLine());
  await expect.poll(() => screenText(page)).toContain('round 2');
  await measureAtOnce();
  await page.goto(`${served.address}/job/turned`);
  await expect.poll(() => screenText(page)).toContain('Put the scraper down');
  await button('Show the truth').click();
  await button('Look at it').click();
  await expect
    .poll(() => screenText(page))
    .toContain('In round 1 the sweep was read with every sign turned.');
  await look('turned-alarm');
  expect(opened.complaints).toEqual([]);
});
