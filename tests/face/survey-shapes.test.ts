import { expect, it } from 'vitest';
import { pressKey, tabTo } from './browser.ts';
import {
  button,
  demo,
  entries,
  field,
  looksRight,
  openSurveys,
  page,
  paste,
  put,
  says,
  served,
  sheet,
  shopLevel,
  surveys,
} from './surveys.ts';

openSurveys();

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
  expect((await put('k1', shopLevel)).status).toBe(201);
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
