import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { type Opened, openBrowser, pressKey, screenText, tabTo } from './browser.ts';
import { looksRight as looks } from './looks.ts';
import { newFolder, type Served, serve } from './served.ts';

const demo = 'demo-saddle';
const flat = 'vertical of flat';
const vee = 'vertical of the V';

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

const entries = async (): Promise<Entry[]> =>
  ((await (await fetch(`${served.address}/api/jobs/${demo}`)).json()) as { entries: Entry[] }).entries;
const surveys = async () => (await entries()).filter((entry) => entry.kind === 'survey taken');
const sheet = (key: string) => page.goto(`${served.address}/job/${demo}/survey/${encodeURIComponent(key)}`);
const button = (name: string | RegExp) => page.getByRole('button', { name });
const field = (name: string | RegExp) => page.getByRole('textbox', { name, exact: typeof name === 'string' });
const says = (words: string | RegExp) => expect.poll(() => screenText(page)).toMatch(words);

/** Puts a thing into the workshop's kit. */
const put = (id: string, thing: unknown) =>
  fetch(`${served.address}/api/kit/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'put', item: id, id, at: '2031-11-25T14:00:00Z', thing }),
  });

const looksRight = (name: string) => looks(page, `survey-${name}`);

/** What is pasted, as a sheet or an instrument puts it on the clipboard. */
const paste = (text: string) =>
  page.evaluate((pasted) => {
    const data = new DataTransfer();
    data.setData('text/plain', pasted);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);

/** Worn by a few hundredths about 500 mm, level turned to mm/m, 200 mm steps: heights 0, −8, −20, −26, −24, −18, −8, −2, 0 µm. */
const steps = ['-.04', '-.06', '-.03', '+.01', '+.03', '+.05', '+.03', '+.01'];

it('nothing surveyed yet: what there is to survey, and one thing to do', async () => {
  await page.goto(`${served.address}/job/${demo}/survey`);
  await says(/No way is surveyed yet\. 4 surveys tell the bed’s form/);
  await says('Up and down, the V front flank and rear flank; not surveyed yet');
  await says('Sideways, the V');
  await says('Twist, the ways');
  await looksRight('empty');
});

it('a way is surveyed by keyboard alone: fields, cells that advance on Enter, kept', async () => {
  await page.goto(`${served.address}/job/${demo}/survey`);
  await pressKey(page, 'Up and down, flat');
  await says('Say the step, and the cells stand here');
  await tabTo(page, 'Step, mm');
  await page.keyboard.type('200');
  await tabTo(page, 'Length surveyed, mm');
  await page.keyboard.type('1500');
  await says('1500 mm is no whole number of steps of 200 mm: 7 steps make 1400 mm, 8 make 1600 mm');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('1600');
  await tabTo(page, 'Limit, µm');
  await page.keyboard.type('20');
  await tabTo(page, 'One reading repeats within ±, mm/m');
  await page.keyboard.type('.004');
  await tabTo(page, '0 to 200');
  for (const step of steps.slice(0, 4)) {
    await page.keyboard.type(step);
    await page.keyboard.press('Enter');
  }
  await says('So far: 4 of 8 readings');
  for (const step of steps.slice(4)) {
    await page.keyboard.type(step);
    await page.keyboard.press('Enter');
  }
  // Worked by hand from (1): the deepest place is 600 mm, 26 µm below the ends.
  await says(/it is hollow, −26\.0\s*±\s*1\.1 µm at 600 mm from the line through its ends/);
  await says('outside');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Keep this survey');
  await looksRight('typed');
  await page.keyboard.press('Enter');
  await says(/Kept \d\d:\d\d/);
  const [kept] = await surveys();
  expect(kept).toMatchObject({ what: 'line', of: 'flat', ways: ['flat'], from_mm: 0 });
  if (kept?.kind !== 'survey taken' || kept.input.kind !== 'angles') throw new Error('no angles were kept');
  expect(kept.input.angles_urad).toEqual([-40, -60, -30, 10, 30, 50, 30, 10]);
  expect(kept.input.reading_sd_urad).toBe(2);
  expect(kept.sheet.cells.there).toEqual(steps);
});

it('a reading is corrected, kept anew, undone, and the one before counts again', async () => {
  await sheet(flat);
  await field('600 to 800').fill('+.02');
  await says('Changed since it was kept');
  await page.reload();
  expect(await field('600 to 800').inputValue()).toBe('+.02');
  await button('Keep it anew').click();
  await says(/Kept \d\d:\d\d/);
  await expect.poll(async () => (await surveys()).length).toBe(2);
  await button('Undo this survey').click();
  await says('What you typed stays on the sheet');
  expect(await field('600 to 800').inputValue()).toBe('+.02');
  await expect.poll(async () => (await entries()).at(-1)?.kind).toBe('undone');
  await button('Back to what was kept').click();
  expect(await field('600 to 800').inputValue()).toBe('+.01');
  await says(/Kept \d\d:\d\d/);
});

it('wear is told and drawn below the stretches that the user marks as not run on', async () => {
  await sheet(flat);
  await field(/^Stretches not run on/).fill('0 to 10, 1590 to 1600');
  // Both ends stand at 0, so the line through them is the line through the ends: 26 µm are gone at 600 mm.
  await says(/Worn 26\.0?\s*±\s*\d\.\d µm deep at 600 mm from the headstock end, below what was not run on/);
  await expect
    .poll(() => page.locator('.survey-result svg text').allTextContents())
    .toContainEqual(expect.stringMatching(/^worn 26/));
  await says(/heights × \d+/);
  await looksRight('wear');
  await button('Back to what was kept').click();
});

it('what cannot be read stays as typed and says why', async () => {
  await sheet(flat);
  await field('0 to 200').fill('-.04 mmm');
  await says(/I can read .*but not “mmm”/);
  await button('Keep it anew').click();
  await says('0 to 200 mm: the reading cannot be read yet');
  expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('-.04 mmm');
  await button('Back to what was kept').click();
});

it('a missing reading is named and cannot be kept over', async () => {
  await sheet(flat);
  await field('800 to 1000').fill('');
  await button('Keep it anew').click();
  await says('800 to 1000 mm: the reading is missing. Take it: every later height hangs on it');
  await says('So far: 7 of 8 readings');
  await button('Back to what was kept').click();
});

it('a pasted column: too long, a hole in it, then taken; ten times too large is named; the paste is undone', async () => {
  await sheet(vee);
  await field('Step, mm').fill('200');
  await field('Length surveyed, mm').fill('1600');
  await field('0 to 200').focus();
  await paste(`${steps.join('\n')}\n.01`);
  await says('9 readings were pasted; from here there are 8 cells. Nothing was taken');
  await paste('-.04\n-.06\n\n.01');
  await says('Line 3 is empty: a reading is missing there');
  expect(await field('0 to 200').inputValue()).toBe('');
  const smooth = ['-.04', '-.05', '-.04', '-.02', '0', '.2', '.04', '.05'];
  await paste(['level, mm/m', ...smooth].join('\n'));
  expect(await field('1000 to 1200').inputValue()).toBe('.2');
  await says(/1000 to 1200 mm: \+200\.0 µrad stands out.*Ten times too large\? It counts as typed/);
  await looksRight('ten-times');
  await button(/^Go to 1000 to 1200/).click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('.02');
  await expect.poll(() => screenText(page)).not.toContain('stands out');
  await button('Undo the paste').click();
  expect(await field('0 to 200').inputValue()).toBe('');
});

it('mixed units in a pasted column are told cell by cell; signs swapped half way are turned by one press', async () => {
  await sheet(vee);
  await field('0 to 200').focus();
  await paste(steps.with(1, '-12.4 arcsec').join('\n'));
  await says(/200 to 400 mm: “-12.4 arcsec” has a unit of its own and was taken as −0\.060\d* mm\/m/);
  // Sloping all one way, the sign turned from 800 mm on.
  const sloping = ['.21', '.22', '.2', '.23', '-.21', '-.22', '-.2', '-.23'];
  await field('0 to 200').focus();
  await paste(sloping.join('\n'));
  await says(/800 to 1000 mm: from here on all signs look turned/);
  await button('Turn signs from 800 to 1000 mm on').click();
  await expect.poll(() => screenText(page)).not.toContain('signs look turned');
  expect(await field('800 to 1000').inputValue()).toBe('0.21');
  await button('Undo the turning of signs').click();
  expect(await field('800 to 1000').inputValue()).toBe('-.21');
});

it('a run back that does not close says by how much, and what drift goes with it', async () => {
  await sheet(vee);
  await field('0 to 200').first().focus();
  await paste(steps.join('\n'));
  await field(/^One reading repeats/).fill('.002');
  await button('And back again').click();
  await field('1400 to 1600').nth(1).focus();
  // The same steps back, 0.004 mm/m more at each reading than the one before.
  const back = steps
    .toReversed()
    .map((step, i) => String(Number((Number(step) + 0.004 * (i + 1)).toFixed(4))));
  await paste(back.join('\n'));
  await says(/The run back does not close: it ends −\d+/);
  await says(/A drift of \+2 µrad from reading to reading and a jump of \+2\.0 µrad at the turn go with it/);
  await looksRight('does-not-close');
  await button('And back again').click();
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
});

it('sideways by a straightedge: a stop left out on purpose is said, and reversal stands beside', async () => {
  await sheet('horizontal of the V');
  await field('Step, mm').fill('200');
  await field('Length surveyed, mm').fill('1600');
  await field(/^One reading repeats/).fill('1');
  for (const [k, text] of ['0', '2', '5', '', '9', '7', '4', '2', '0'].entries())
    await field(k === 0 ? '0 mm' : `${200 * k} mm`).fill(text);
  await button('Leave 600 mm out').click();
  expect(await field('600 mm').inputValue()).toBe('left out');
  await says('600 mm is missing from the row');
  await button('Straightedge turned over').click();
  await field('0 mm').nth(1).focus();
  await paste('0\n2\n5\n8\n9\n7\n4\n2\n0');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
});

it('twist from a whole pasted table with headings', async () => {
  await sheet('twist of the ways');
  await field('Step, mm').fill('400');
  await field('Length surveyed, mm').fill('1600');
  await field('0 mm').focus();
  await paste('0\n0.02\n0.05\n0.03\n0.01');
  await says(/The ways twist by 0\.05 mm\/m/);
  await field(/^One reading repeats/).fill('.004');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
});

it('all ways on one axis, and where to print: in words, as a wash, as a table', async () => {
  await page.goto(`${served.address}/job/${demo}/survey`);
  await says(/Printed at \d+ mm, turned diameters wander/);
  await says(/print here: \d+ mm/);
  expect(await page.getByRole('row').count()).toBeGreaterThan(3);
  expect(await page.getByRole('row', { name: /best/ }).count()).toBe(1);
  const before = await page.locator('.survey-table').textContent();
  await field(/^Tool above the ways/).fill('400');
  await expect.poll(() => page.locator('.survey-table').textContent()).not.toBe(before);
  await field(/^Tool above the ways/).fill('');
  await looksRight('bed');
});

it('each place in words, and how the saddle then stands: small, so many times too far out', async () => {
  const solid = () => page.getByRole('img', { name: /^The saddle printed at \d+ mm, standing at \d+ mm/ });
  await says(/standing at \d+ mm, × \d+/);
  await says(/dashed: as printed at \d+ mm/);
  const before = await solid().innerHTML();
  const box = page.getByRole('combobox', { name: 'If printed at' });
  const best = await box.inputValue();
  await box.selectOption({ index: best === '0' ? 1 : 0 });
  await says(/At \d+ mm diameters wander [\d.]+ µm \([\d.]+ µm more\), faces lean/);
  await expect.poll(() => solid().innerHTML()).not.toBe(before);
  // Where it was printed it stands as it did: nothing is tilted.
  await box.selectOption(best);
});

it('work that does not fit the bed is named beside its cell; too little allowed puts the bed first', async () => {
  await field(/works from/).fill('9000');
  await says(/Read as 9000 mm; expected \d+ mm to \d+ mm: there the whole slide stands on surveyed bed/);
  await field(/works from/).fill('');
  await field(/^Diameters may wander/).fill('0.1');
  await says(/Put the bed right first: no place is good enough/);
  await says(/you allow 0\.1 µm and 5\.0 µm/);
  await says(/Scrape the bed: the way that carries the .+ is 26\.\d µm out of straight/);
  await says(/least bad: \d+ mm/);
  await expect.poll(() => page.getByRole('cell', { name: /over$/ }).count()).toBeGreaterThan(3);
  await looksRight('bed-first');
  await field(/^Diameters may wander/).fill('-3');
  await says('expected more than 0');
  await field(/^Diameters may wander/).fill('');
  await says(/print here: \d+ mm/);
});

it('an instrument is picked from the kit: doubt and step come from it, can be typed over, and the sheet says which', async () => {
  await sheet('vertical of tailstock way');
  await says('nothing of the kit: no level or electronic level in it yet');
  // Division 20 µrad, so ± 10 µrad of reading it: sd 20/√12 = 5.77; with 3 repeating 6.51, two of them 13.0 µrad.
  const level = {
    kind: 'level',
    name: 'shop level',
    graduation_urad: 20,
    repeatability_urad: 3,
    base_mm: 200,
  };
  expect((await put('k1', level)).status).toBe(201);
  const known = { by: 'limit', limit_um: 6 };
  const straight = { kind: 'straightedge', name: 'long edge', length_mm: 1500, known };
  expect((await put('k2', straight)).status).toBe(201);
  expect(
    (await put('k3', { kind: 'indicator', name: 'lever', graduation_um: 1, repeatability_um: 0.4 })).status,
  ).toBe(201);
  await page.reload();
  await tabTo(page, 'Read with');
  await page.keyboard.type('shop level');
  await page.keyboard.press('Tab');
  await says('From “shop level” of the kit: the doubt of a reading and the step.');
  expect(await field('Step, mm').inputValue()).toBe('200');
  expect(await field(/^One reading repeats/).inputValue()).toBe('0.013');
  await field('Length surveyed, mm').fill('800');
  await field('0 to 200').focus();
  await paste('.02\n.01\n-.01\n-.02');
  await says('Tailstock way is straight within');
  await field(/^One reading repeats/).fill('.02');
  await says('Typed over what “shop level” of the kit says (± 0.013 mm/m): the doubt of a reading.');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  const kept = (await surveys()).at(-1);
  if (kept?.kind !== 'survey taken' || kept.input.kind !== 'angles') throw new Error('no angles were kept');
  expect(kept.sheet.kit).toEqual({ instrument: 'shop level' });
  expect(kept.input.reading_sd_urad).toBe(10);
  await looksRight('kit-picked');
  await page.goto(`${served.address}/job/${demo}/survey`);
  await says('level, stepped, shop level');
});

it('a straightedge of the kit: how true it is comes along, and its turned run has a card of its own', async () => {
  await sheet('vertical of long table');
  await page.getByLabel('Surveyed with').selectOption('straightedge');
  await page.getByLabel('Held against').selectOption('long edge');
  await page.getByLabel('Read with').selectOption('lever');
  // Within 6 µm and no more is known: sd 6/√3 = 3.46, two of them 6.93 µm.
  expect(await field(/^The straightedge is true/).inputValue()).toBe('6.93');
  await field('Step, mm').fill('250');
  await field('Length surveyed, mm').fill('1000');
  await button('Straightedge turned over').click();
  await says('Plus: the plunger comes out');
  await looksRight('edge-card');
  await button('Undo that').click();
  await expect.poll(() => screenText(page)).not.toContain('the plunger comes out');
});

it('a straightedge’s own sag is taken out once it is said what it stands on, said in words, and kept with the survey', async () => {
  await put('slim', {
    kind: 'straightedge',
    name: 'slim edge',
    length_mm: 1000,
    known: { by: 'limit', limit_um: 2 },
    depth_mm: 50,
    material: 'steel',
  });
  await page.reload();
  await page.getByLabel('Held against').selectOption('slim edge');
  await says(
    'From “slim edge” of the kit: how true the straightedge is, its length, its depth and what it is made of.',
  );
  // Steel 1000 × 50 mm on its ends sags 22.911 µm, 57/80 of it at a quarter (beam tables; checks/sums-sag): the way itself is 0, 3, 8, 3, 0.
  for (const [k, text] of ['0', '19.324', '30.911', '19.324', '0'].entries())
    await field(k === 0 ? '0 mm' : `${250 * k} mm`).fill(text);
  await says(/it is crowned, \+31\s*±\s*3 µm/);
  await page.locator('summary', { hasText: 'Its sag and warmth' }).click();
  await page.getByLabel('The straightedge stands on').selectOption('ends');
  await says(/it is crowned, \+8\s*±\s*4 µm/);
  await says(/Its own sag and bow are worked out and taken out: −22\.9\s*±\s*0?\.9 µm at 500 mm/);
  await field(/^Its top is warmer/).fill('0.5 ± 0.2');
  await expect.poll(() => screenText(page)).toMatch(/it is crowned, \+22\s*±\s*\d µm/);
  await field(/^Its top is warmer/).fill('');
  await field(/^Length of the straightedge/).fill('900');
  await says(
    'The straightedge lies from 50 mm to 950 mm and does not reach over the stops from 0 mm to 1000 mm',
  );
  await field(/^Length of the straightedge/).fill('1000');
  await field('Limit, µm').fill('20');
  await looksRight('edge-sag');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  await expect
    .poll(async () => (await surveys()).at(-1))
    .toMatchObject({
      of: 'long table',
      input: {
        straightedge: { length_mm: 1000, depth_mm: 50, material: 'steel', support_mm: 0, from_mm: 0 },
      },
    });
  await page.reload();
  await says(/it is crowned, \+8\s*±\s*4 µm/);
  // A kept survey's limit is one more thing that the kit must prove.
  await page.goto(`${served.address}/kit?job=${demo}`);
  await says(/Long table, straight up and down (?:cannot be proven|proven|only).*Room 20 µm, doubt/);
  await looksRight('kit-limits');
});

it('parallel: one way to another, typed by keyboard, corrected, undone; a limit is judged', async () => {
  await page.goto(`${served.address}/job/${demo}/survey`);
  await tabTo(page, 'Survey another face or line');
  await page.keyboard.type('tailstock ways');
  await button('parallel').click();
  await pressKey(page, 'Survey it');
  await says('Parallel, tailstock ways');
  await says('Does one way run parallel to the other?');
  await field('Step, mm').fill('300');
  await field('Length surveyed, mm').fill('1200');
  await field(/^One reading repeats/).fill('2');
  await field('Limit, µm').fill('15');
  await tabTo(page, '0 mm');
  for (const text of ['0', '3', '6', '9', '12']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  // 12 µm over 1.2 m: 10 µm for each metre; range ± 2 √2.
  await says(
    /Tailstock ways are parallel within 12\s*±\s*3 µm over 1200 mm; the reading climbs 10\s*±\s*2 µm\/m along the way/,
  );
  await says('Within 15 µm.');
  await looksRight('parallel');
  await field('1200 mm').fill('14');
  await says(/Not proven within 15 µm: value and doubt reach \d\S* µm beyond/);
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  expect((await surveys()).at(-1)).toMatchObject({ what: 'line', input: { kind: 'parallel', limit_um: 15 } });
  await button('Undo this survey').click();
  await expect.poll(async () => (await entries()).at(-1)?.kind).toBe('undone');
});

it('two ways from one reference: only what they differ counts', async () => {
  await sheet('parallel of both ways');
  await field('Step, mm').fill('300');
  await field('Length surveyed, mm').fill('600');
  await button('The other way too, from one reference').click();
  await field('0 mm').first().focus();
  await paste('5\t0\n9\t4\n15\t9');
  await says(/Both ways are parallel within 1 µm/);
});

it('the doubt is tried by drawing on a thread of its own, beside the propagated one', async () => {
  await sheet(flat);
  await button('Try the doubt by drawing').click();
  await page.getByRole('table', { name: 'The doubt as propagated, and by drawing' }).waitFor();
  const row = await page
    .getByRole('row', { name: /^end points/ })
    .getByRole('cell')
    .allTextContents();
  const [propagated, drawn] = row.map((text) => Number.parseFloat(text.split('±')[1]!.trim())) as [
    number,
    number,
  ];
  expect(drawn / propagated).toBeGreaterThan(0.8);
  expect(drawn / propagated).toBeLessThan(1.25);
  await looksRight('drawn');
  // Another reading: what was drawn held for the readings before.
  await field('600 to 800').fill('+.02');
  await button('Try the doubt by drawing').waitFor();
  await button('Back to what was kept').click();
});

it('a face by a grid of heights: rows fill from a pasted block, the map says where to scrape', async () => {
  await page.goto(`${served.address}/job/${demo}/survey`);
  await field(/^Survey another face/).fill('surface plate');
  await button('Survey it').click();
  await says('Flatness, surface plate');
  await field('Step along, mm').fill('200');
  await field('Length, mm').fill('800');
  await field('Step across, mm').fill('200');
  await field('Breadth, mm').fill('400');
  await field(/^A pass takes off/).fill('3');
  await field('0 mm').first().focus();
  await paste('0\t2\t3\t2\t0\n1\t4\t9\t4\t1\n0\t2\t3\t2\t0');
  await field(/^One reading repeats/).fill('1');
  // High in the middle by 9 with four corners at 0: the zone is the whole height.
  await says(/Surface plate is flat within 9\.0\s*±\s*1\.2 µm/);
  await says(/In passes of 3 µm, 3 at most/);
  await looksRight('plate');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  expect((await surveys()).at(-1)).toMatchObject({ what: 'plate', of: 'surface plate' });
});

it('a face by a level along a grid: rows and columns, what does not close is told', async () => {
  await sheet('flatness of plate by level');
  await page.getByLabel('Surveyed with').selectOption('level grid');
  await page.getByLabel('Read with').selectOption('shop level');
  expect(await field('Step along, mm').inputValue()).toBe('200');
  await field('Length, mm').fill('400');
  await field('Breadth, mm').fill('400');
  await says('Along every row from the left as you stand');
  // A bowl z = −(x/200)(2 − x/200) − (y/200)(2 − y/200), µm: steps of ∓1 µm in 200 mm are ∓5 µrad.
  const down = '-0.005';
  const up = '0.005';
  await field('0 to 200').first().focus();
  for (let line = 0; line < 6; line++)
    for (const text of [down, up]) {
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    }
  // Middle 2 µm below the corners, sides 1 µm below: by hand.
  await says(/Plate by level is flat within 2\.0?\s*±/);
  await looksRight('level-grid');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  expect((await surveys()).at(-1)).toMatchObject({
    input: {
      kind: 'grid',
      along_x_urad: [
        [-5, 5],
        [-5, 5],
        [-5, 5],
      ],
    },
  });
});

it('a face by eight lines: pasted line by line; a line too short is refused whole; undone', async () => {
  await sheet('flatness of plate by lines');
  await page.getByLabel('Surveyed with').selectOption('eight lines');
  for (const [name, text] of [
    ['Length, mm', '400'],
    ['Steps along', '2'],
    ['Breadth, mm', '300'],
    ['Steps across', '2'],
    ['Steps along a diagonal', '2'],
  ] as const)
    await field(name).fill(text);
  await field(/^One reading repeats/).fill('.002');
  await says('Walk the lines in the order of their numbers');
  await field('step 1').first().focus();
  await paste('1\n2\n3');
  await says('3 readings were pasted; from here there are 2 cells. Nothing was taken.');
  // z = 4 µm up in the middle of the diagonals, all else level: each half line climbs or falls by what lies between.
  const lines = [
    [0, 0],
    [0, 0],
    [0, 0],
    [0, 0],
    [0.02, -0.02],
    [4 / 150, -4 / 150],
    [0.016, -0.016],
    [0.016, -0.016],
  ];
  for (const [k, [first, last]] of lines.entries()) {
    await field('step 1').nth(k).focus();
    await paste(`${first}\n${last}`);
  }
  // Four corners level, the middle of the diagonals 250 mm on and 16 µrad up: 4 µm.
  await says(/Plate by lines is flat within 4\.0?\s*±/);
  await looksRight('eight-lines');
  await button('Undo the paste').click();
  expect(await field('step 1').nth(7).inputValue()).toBe('');
});

it('pivot and rock are read into words and kept with the round', async () => {
  await page.goto(`${served.address}/job/${demo}/survey`);
  await page.getByText('Pivot and rock on the master').click();
  await field(/^Pushed at the first end/).fill('71');
  await says('the part bears evenly along its length');
  await button('Keep the pivot test').click();
  for (const [name, text] of [
    ['First corner, µm', '1'],
    ['Second corner, µm', '12'],
    ['Third corner, µm', '0'],
    ['Fourth corner, µm', '12'],
    ['One reading repeats within ±, µm', '2'],
    ['Corner to corner along, mm', '480'],
    ['Corner to corner across, mm', '300'],
  ] as const)
    await field(name).fill(text);
  await says(/It rocks 12 ± 2 µm on its first and third corners/);
  await button('Keep the rock test').click();
  await says(/Kept with round \d: pivot test, rock test/);
  await looksRight('tests');
});

it('what the job is held against: a square picked from the kit, then swept on both its sides, goes into the job and back out', async () => {
  const square = {
    kind: 'square',
    name: 'granite square',
    length_mm: 300,
    known: { by: 'certificate', doubt_um: 2 },
  };
  const put = { kind: 'put', item: 'k4', id: 'k4', at: '2031-11-25T14:00:00Z', thing: square };
  const headers = { 'content-type': 'application/json' };
  await fetch(`${served.address}/api/kit/entries`, { method: 'POST', headers, body: JSON.stringify(put) });
  const face = async () => {
    const input = (await (await fetch(`${served.address}/api/jobs/${demo}/steer-input`)).json()) as {
      rounds: { sweeps: { face: string; face_slope_urad: number; face_slope_sd_urad: number }[] }[];
    };
    return input.rounds[0]!.sweeps[0]!;
  };
  const before = await face();
  await page.goto(`${served.address}/job/${demo}/survey`);
  await page.getByLabel('Which square of the kit it is').selectOption('granite square');
  await says('Square “granite square”');
  // Certificate ± 2 µm and a seat of 1 µm, common practice: √2 µm over 300 mm.
  await expect.poll(async () => (await face()).face).toBe('square “granite square”');
  expect((await face()).face_slope_sd_urad).toBeCloseTo((Math.SQRT2 / 300) * 1e3, 6);
  await page.getByText('Sweep both its sides').click();
  await says('turn the square over about its blade');
  await field(/^Last stop less first/).fill('18');
  await field(/^The same, turned over/).fill('-6');
  await field(/^Between the stops/).fill('300');
  await field(/^Either is known within/).fill('2');
  // Half the sum 6, half the difference 12, each ± 2/√2.
  await says(/the machine makes \+6\.0\s*±\s*1\.4 µm of it, the square \+12\.0\s*±\s*1\.4 µm/);
  await looksRight('references');
  await button('Take it into the job').click();
  await expect.poll(async () => (await face()).face_slope_urad).toBe(-40);
  await says('Its own slope counts as −12.0 ± 1.4 µm in 300 mm');
  for (const entry of (await entries()).filter(({ kind }) => kind === 'plan amended').reverse())
    await fetch(`${served.address}/api/jobs/${demo}/entries`, {
      method: 'POST',
      headers,
      body: JSON.stringify({ kind: 'undone', entry: entry.id, id: `u-${entry.id}`, at: entry.at }),
    });
  expect(await face()).toEqual(before);
});

it('the job file carries the surveys without a loss', async () => {
  const text = await (await fetch(`${served.address}/api/jobs/${demo}/export`)).text();
  const other = await serve();
  try {
    const send = (body: string) =>
      fetch(`${other.address}/api/import?as=copy`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      });
    expect((await send(text)).status).toBe(201);
    const again = await (await fetch(`${other.address}/api/jobs/copy/export`)).text();
    expect(again).toBe(text.replace(`"id": "${demo}"`, '"id": "copy"'));
  } finally {
    await other.stop();
  }
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
});
