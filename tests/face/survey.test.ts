import { expect, it } from 'vitest';
import { serve } from '../server/served.ts';
import { pressKey, screenText, tabTo } from './browser.ts';
import {
  button,
  demo,
  entries,
  field,
  looksRight,
  opened,
  openSurveys,
  page,
  paste,
  says,
  served,
  sheet,
  surveys,
} from './surveys.ts';

const flat = 'vertical of flat';
const vee = 'vertical of the V';
/** Worn by a few hundredths about 500 mm, level turned to mm/m, 200 mm steps: heights 0, −8, −20, −26, −24, −18, −8, −2, 0 µm. */
const steps = ['-.04', '-.06', '-.03', '+.01', '+.03', '+.05', '+.03', '+.01'];

openSurveys();

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
