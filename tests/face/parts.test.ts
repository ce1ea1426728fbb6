import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, phone, pressKey, screenText, tablet, tabTo } from './browser.ts';
import { looksRight as looks } from './looks.ts';

const demo = 'demo-saddle';

let served: Served;
let opened: Opened;
let page: Page;
beforeAll(async () => {
  served = await serve({ folder: await newFolder() });
  opened = await openBrowser(served.address);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

const parts = () => page.goto(`${served.address}/job/${demo}/parts`);
const says = (words: string | RegExp) => expect.poll(() => screenText(page)).toMatch(words);
const silent = (words: string) => expect.poll(() => screenText(page)).not.toContain(words);
const type = async (name: string, text: string) => {
  await tabTo(page, name);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};
const field = (name: string | RegExp) => page.getByRole('textbox', { name });

const looksRight = (name: string) => looks(page, `parts-${name}`);

async function entries(job = demo): Promise<Entry[]> {
  const answer = await fetch(`${served.address}/api/jobs/${job}`);
  return ((await answer.json()) as { entries: Entry[] }).entries;
}

/** A number on the screen, by the words before it: value and, where one is shown, ± . */
async function number(label: string): Promise<{ value: number; doubt?: number }> {
  const row = page.locator('.parts-numbers > div', { hasText: label }).first();
  const text = ((await row.locator('.num').textContent()) ?? '').replace(/\s+/g, ' ').replace('−', '-');
  const [, value, doubt] = /^([+-]?[\d.]+)(?: ?± ?([\d.]+))?/.exec(text)!;
  return { value: Number(value), ...(doubt === undefined ? {} : { doubt: Number(doubt) }) };
}

it('faces now and as planned: in words, with ±, drawn with how much too tall', async () => {
  await page.goto(`${served.address}/job/${demo}`);
  await page.setViewportSize(tablet);
  await pressKey(page, 'Parts');
  await page.setViewportSize(phone);
  await says(/Faces come out (flat|convex) now/);
  await says(/heights × \d+/);
  const { features } = (
    (await (await fetch(`${served.address}/api/jobs/${demo}/answer`)).json()) as {
      steer: { estimate: { features: { name: string; value: number; sd: number }[] } };
    }
  ).steer.estimate;
  const facing = features.find(({ name }) => name === 'facing')!;
  // µm = mm × µrad / 1000 over the radius of 100 mm that is taken; ± is two sd.
  const now = await number('Face now');
  expect(now.value).toBeCloseTo(facing.value / 10, 0);
  expect(now.doubt).toBeCloseTo((2 * facing.sd) / 10, 0);
  await type('Radius you face', '200');
  await expect.poll(async () => (await number('Face now')).value).toBeCloseTo(facing.value / 5, 0);
  await looksRight('faces');
});

it('taper from a spindle’s slope by keyboard: 20 µrad over 300 mm is 12 µm of diameter', async () => {
  await parts();
  await says('Type the spindle’s slope, or survey the bed first');
  await says('The bed is taken as straight');
  const before = await number('Face now');
  await type('Spindle’s slope, plus: free end away', '20 +- 5');
  await says(/the diameter grows 12 ?± ?3 µm toward the tailstock/);
  await says(/Read as \+6\.0 ?± ?1\.5 µm in 300 mm/);
  expect(await number('Taper')).toEqual({ value: 12, doubt: 3 });
  // The same slope takes 20 µrad off the face: 4 µm over 200 mm.
  await expect.poll(async () => (await number('Face now')).value - before.value).toBeCloseTo(-4, 0);
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('parts-spindle-up');
});

it('what is typed stands after a reload, and keeps its meaning in inches', async () => {
  await page.reload();
  await says(/the diameter grows 12/);
  expect(await field(/free end away/).inputValue()).toBe('20 +- 5');
  await pressKey(page, 'Job and screens');
  await page.getByRole('button', { name: 'thou, tenths' }).click();
  await page.keyboard.press('Escape');
  // 12 µm is 4.7 tenths.
  await says(/the diameter grows 4\.7 ?± ?1\.2 tenths toward the tailstock/);
  await says(/Faces come out convex now: \d[\d.]* ?± ?[\d.]+ (thou|tenths) over 7\.87 in/);
  await silent(' µm');
  await pressKey(page, 'Job and screens');
  await page.getByRole('button', { name: 'mm, µm' }).click();
  await page.keyboard.press('Escape');
  await says(/the diameter grows 12 ?± ?3 µm/);
});

it('what cannot be read stays as typed and says why; nothing else is lost', async () => {
  await type('Diameter you turn', 'wide');
  await says(/cannot read “wide”/);
  await says('Told once the cells can be read. Nothing typed is lost');
  expect(await field(/^Diameter/).inputValue()).toBe('wide');
  await says(/Faces come out convex/);
  await looksRight('wrong');
  await type('Diameter you turn', '0.1');
  await says(/Read as 0\.1000 mm; expected at least 0\.5 mm and at most 5000 mm/);
  await type('Diameter you turn', '40');
  await says(/the diameter grows 12/);
});

it('wear: from where the plan brings it, how long it stays in its band', async () => {
  await type('Facing in a year', '-5 +- 2');
  await says(/Facing reaches \+6 µm in 300 mm after [\d.]+ years?\./);
  await says(/Between (now|[\d.]+ years?) and [\d.]+ years?, 19 times in 20/);
  await says(
    /Begins as planned, \+[\d.]+ ?± ?[\d.]+ µm in 300 mm; band \+6 µm in 300 mm to \+20 µm in 300 mm/,
  );
  await page.getByRole('button', { name: '1000 h of work' }).click();
  await says(/Facing reaches \+6 µm in 300 mm after \d+ h\./);
  await type('Facing in 1000 h', '0');
  await says('Facing does not wear');
  await type('Facing in 1000 h', '-5 +- 6');
  await says('there is no latest');
  await looksRight('wear');
});

it('on the surveyed bed: printed in one place, the diameter along the bed with its doubt', async () => {
  for (const [key, cells] of [
    ['vertical of flat', ['-.04', '-.06', '-.03', '+.01', '+.03', '+.05', '+.03', '+.01']],
    ['vertical of the V', ['-.05', '-.07', '-.04', '+.02', '+.04', '+.05', '+.03', '+.02']],
  ] as const) {
    await page.goto(`${served.address}/job/${demo}/survey/${encodeURIComponent(key)}`);
    await field('Step, mm').fill('200');
    await field('Length surveyed, mm').fill('1600');
    await field(/^One reading repeats/).fill('.004');
    for (const [k, text] of cells.entries()) await field(`${200 * k} to ${200 * (k + 1)}`).fill(text);
    await page.getByRole('button', { name: 'Keep this survey' }).click();
    await says(/Kept \d\d:\d\d/);
  }
  const surveys = async () => (await entries()).filter(({ kind }) => kind === 'survey taken').length;
  await expect.poll(surveys).toBe(2);
  await parts();
  await says(/Over [\d.]+ mm the diameter \w+/);
  await silent('The bed is taken as straight');
  await says('saddle along the bed');
  await says(/taken as [\d.]+ µm when left empty/);
  const there = await number('Cylindricity');
  expect(there.doubt).toBeGreaterThan(0);
  const drawn = () => page.getByRole('img', { name: /turned diameter/ }).innerHTML();
  const middle = await drawn();
  // Another place of printing carries the bed's form in another way.
  await type('Printed at', '300');
  await expect.poll(drawn).not.toBe(middle);
  await type('Saddle works from', '9000');
  await says(/Read as 9000\.0000 mm; expected at least/);
  await page.keyboard.press('Control+A');
  await page.keyboard.press('Delete');
  await says(/Over [\d.]+ mm the diameter \w+/);
  await type('Saddle works to', '250');
  await type('Saddle works from', '400');
  await says('is expected more than where the saddle’s work begins');
  await page.keyboard.press('Control+A');
  await page.keyboard.press('Delete');
  await type('Saddle works to', '1200');
  await says(/Over 960 mm the diameter \w+/);
  // The spindle's own doubt aside, a doubt ten times as large is ten times as wide, as far as a figure of it tells.
  await type('Spindle’s slope, plus: free end away', '0');
  await type('One surveyed height', '20');
  await says('Read as 20 µm');
  const wide = (await number('Cylindricity')).doubt!;
  await type('One surveyed height', '2');
  await expect.poll(async () => (await number('Cylindricity')).doubt).toBeLessThan(wide / 5);
  await looksRight('bed');
});

it('a job not measured yet says what to do first; one that is no lathe tells of wear alone', async () => {
  const made = async (change: (entry: Entry) => Entry, id: string) => {
    const file = JSON.parse(await (await fetch(`${served.address}/api/jobs/${demo}/export`)).text());
    file.entries = [change(file.entries[0])];
    file.id = id;
    const answer = await fetch(`${served.address}/api/import?as=${id}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(file),
    });
    expect(answer.status).toBe(201);
    await page.goto(`${served.address}/job/${id}/parts`);
  };
  await made((entry) => entry, 'fresh');
  await says('How faces come out is not known yet. Sweep the cross ways first');
  await says('Begins from its aim');
  await looksRight('empty');
  await pressKey(page, 'Sweep the cross ways');
  await expect.poll(() => page.url()).toContain('/job/fresh/measure');
  await made((entry) => {
    if (entry.kind !== 'job made') throw new Error('the first entry makes the job');
    return { ...entry, plan: { ...entry.plan, words: [] } };
  }, 'other');
  await says(/This screen tells how long each feature stays in its band/);
  await silent('Turned diameters');
  await says('What the machine of the saddle makes is not known');
  await looksRight('no-lathe');
});

it('a mill: a block by the machine’s own file, square and parallel, by the size that is typed', async () => {
  const send = (path: string, body: object) =>
    fetch(`${served.address}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ at: '2031-11-25T14:32:00+01:00', ...body }),
    });
  const begun = await send('/api/jobs', {
    id: 'mill',
    template: 'dovetail-two-flats',
    title: 'Mill saddle',
    dimensions: {},
  });
  expect(begun.status).toBe(201);
  await page.goto(`${served.address}/job/mill/parts`);
  await says('How a block comes out is not known yet');
  await looksRight('block-empty');
  // 200 mm of sweep in 10 steps; the square reads 12 µm more at its end, the levels +30 and 0 µrad.
  const reading = (value: number) => ({ typed: `${value}`, value });
  const taken = [
    {
      kind: 'sweep taken',
      setup: 'square',
      readings: Array.from({ length: 11 }, (_, i) => reading(1.2 * i)),
    },
    { kind: 'level read', setup: 'level_across', reading: reading(0) },
    { kind: 'level read', setup: 'level_along', reading: reading(30) },
  ];
  for (const [k, deed] of taken.entries())
    expect(
      (await send('/api/jobs/mill/entries', { id: `m${k}`, round: 1, record: { push: 'climbed' }, ...deed }))
        .status,
    ).toBe(201);
  await page.reload();
  // Level along reads plus with your end high: more comes off there, so the top is thicker at the column; 30 µrad over 100 mm are 3 µm.
  await says(/The top comes out of parallel to the table by 3\.0 ?± ?1\.0 µm, thicker toward the column/);
  const corner = await number('Side toward the column to end on your left');
  expect(Math.abs(corner.value)).toBeGreaterThan(12);
  expect(Math.abs(corner.value)).toBeLessThan(24);
  await says(/heights × \d+/);
  await says('the knee and the table are taken as true');
  await type('Block, toward the column', '200');
  await says(/out of parallel to the table by 6 ?± ?2 µm/);
  await type('Block, high', 'tall');
  await says(/cannot read “tall”/);
  await says('Told once the cells can be read. Nothing typed is lost');
  await type('Block, high', '60');
  await says(/out of parallel to the table by 6/);
  await looksRight('block');
});

it('is fetched when asked for, without the checks of the server in it, and nothing went wrong', async () => {
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
  await page.goto(`${served.address}/signs`);
  const fetched = () =>
    page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name.split('/').at(-1)!));
  expect((await fetched()).some((name) => /^parts-.*\.js$/.test(name))).toBe(false);
  await parts();
  await says('Turned diameters');
  const scripts = (await fetched()).filter((name) => name.endsWith('.js'));
  expect(scripts.some((name) => /^parts-/.test(name))).toBe(true);
  for (const script of scripts) {
    const text = await (await fetch(`${served.address}/assets/${script}`)).text();
    expect(text.includes('ZodError'), script).toBe(false);
  }
});
