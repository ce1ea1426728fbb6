import type { Locator } from 'playwright-core';
import { expect, it } from 'vitest';
import { openBrowser, phone, pressKey, screenText, tabTo } from './browser.ts';
import { looksRight, runsOff } from './looks.ts';
import { opened, openWorkshop, page, served, visit } from './workshop.ts';

openWorkshop();

const outcome = () => page.getByRole('region', { name: 'What comes out' });
// biome-ignore lint/performance/useDomNodeTextContent: what is seen counts, with its line breaks
const seen = async (there: Locator) => (await there.innerText()).replace(/\s+/g, ' ');
const outcomeText = () => seen(outcome());
const type = async (label: string, text: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};

it('is found from the menu by a word, all by keyboard', async () => {
  await visit('/jobs', 'New job');
  await pressKey(page, 'Job and screens');
  await pressKey(page, 'Sums');
  await page.getByText('39 sums').waitFor();
  await type('Find a sum', 'gib push');
  await page.getByText('2 sums with “gib push”').waitFor();
  await page.reload();
  await page.getByText('2 sums with “gib push”').waitFor();
  await pressKey(page, 'Taper gib: how far to push it in');
  await page.getByText('How far must a taper gib go in to take up a clearance?').waitFor();
});

it('a word that is nowhere leaves a way back', async () => {
  await visit('/sums?find=flux+capacity', '0 sums');
  await pressKey(page, 'Show all sums');
  await page.getByText('39 sums').waitFor();
});

it('a dovetail over rolls is typed by keyboard as the shop writes; the answer has unit and doubt', async () => {
  await visit('/sums/dovetail-male', 'What must a micrometer read');
  expect(await outcomeText()).toContain('Still to type: a, width at the root');
  await type('a width at the root', '40 mm +- 4 um');
  await page.keyboard.press('Enter');
  // Enter went on to the roll.
  await page.keyboard.type('10');
  await page.keyboard.press('Enter');
  await page.keyboard.type("60° 0'");
  // x = a + D (1 + cot(A / 2)), Machinery's Handbook: 40 + 10 (1 + √3) = 67.3205 mm.
  await expect.poll(outcomeText).toMatch(/x over the rolls 67\.32\d? ?± ?0\.0\d+ mm/);
  const text = await screenText(page);
  expect(text).toMatch(/Read as 40\.000 ?± ?0\.004 mm\./);
  expect(text).toMatch(/Read as 10\.0000 ?± ?0\.0010 mm; this doubt is usual/);
  expect(text).toContain('x = a + D × (1 + cot(A / 2))');
  expect(text).toContain('Machinery’s Handbook');
});

it('a reload, another visit and the address on another phone all give back what was typed', async () => {
  await page.reload();
  await expect.poll(outcomeText).toMatch(/67\.32/);
  const address = page.url();
  expect(new URL(address).searchParams.get('root')).toBe('40 mm +- 4 um');
  await visit('/sums', '39 sums');
  await visit('/sums/dovetail-male', 'What must a micrometer read');
  await expect.poll(outcomeText).toMatch(/67\.32/);
  const other = await openBrowser(served.address);
  try {
    await other.page.goto(address);
    const there = other.page.getByLabel('a width at the root');
    expect(await there.inputValue()).toBe('40 mm +- 4 um');
    await other.page
      .getByText(/67\.32/)
      .first()
      .waitFor();
  } finally {
    await other.context.close();
  }
});

it('the working is shown and the doubt tried by drawing agrees', async () => {
  await tabTo(page, 'Show the working');
  await page.keyboard.press('Enter');
  await page.getByText(/x = 40 mm \+ 10 mm × \(1 \+ cot\(60° \/ 2\)\)/).waitFor();
  await pressKey(page, 'Try the doubt by drawing');
  const drawn = page.getByText(/By 100000 draws: 67\.32/);
  await drawn.waitFor();
  const doubtOf = (text: string) => Number(/± ?([\d.]+)/.exec(text)![1]);
  const said = doubtOf(await outcomeText());
  expect(doubtOf(await seen(drawn))).toBeGreaterThan(0.9 * said);
  expect(doubtOf(await seen(drawn))).toBeLessThan(1.1 * said);
});

it('inches and thou: what was typed keeps its meaning, and a bare number is in the cell’s unit', async () => {
  await pressKey(page, 'inches, thou');
  await expect.poll(outcomeText).toMatch(/2\.650\d* ?± ?0\.000\d+ in/);
  expect(await page.getByLabel('D diameter of each roll').inputValue()).toBe('10 mm');
  await type('D diameter of each roll', '3/8');
  // 40 mm + 9.525 mm × (1 + √3) = 66.023 mm = 2.5993 in.
  await expect.poll(outcomeText).toMatch(/2\.599\d* ?± /);
  await visit('/sums/gib?taper=1:50&clearance=half thou&units=inch', 'How far must a taper gib go in');
  // Half a thou by a taper of 1:50 is 25 thou of movement.
  await expect.poll(outcomeText).toMatch(/0\.025\d* ?± ?[\d.]+ in/);
  await pressKey(page, 'mm, µm');
  await expect.poll(outcomeText).toMatch(/goes in 0\.6 ?± ?[\d.]+ mm/);
});

it('what cannot be read stays, says what is expected, and the rest is not lost', async () => {
  await visit('/sums/dovetail-male?root=40&roll=10&angle=60&units=metric', 'What must a micrometer read');
  await type('D diameter of each roll', '10 mmm');
  await expect.poll(() => screenText(page)).toContain('I can read 10, but not “mmm”. Write 350 mm');
  const cell = page.getByLabel('D diameter of each roll');
  expect(await cell.inputValue()).toBe('10 mmm');
  expect(await cell.getAttribute('aria-invalid')).toBe('true');
  const ground = () => cell.evaluate((one) => getComputedStyle(one).backgroundColor);
  expect(await ground()).toBe('rgb(247, 224, 210)');
  expect(await outcomeText()).toContain('One cell cannot be taken: D');
  expect(await screenText(page)).toContain('Read as 40.0000 mm');
  await type('A angle between flank and flat', '200');
  await expect.poll(() => screenText(page)).toContain('above 0° and below 180°');
  await page.reload();
  expect(await page.getByLabel('D diameter of each roll').inputValue()).toBe('10 mmm');
  await type('D diameter of each roll', '10');
  await type('A angle between flank and flat', '60');
  await expect.poll(outcomeText).toMatch(/67\.32/);
});

it('a value outside its limits and one at odds with another are told from the unreadable', async () => {
  await visit('/sums/dovetail-male?root=40&roll=-10&angle=60&units=metric', 'What must a micrometer read');
  await expect.poll(() => screenText(page)).toMatch(/Read as −10(\.0*)? mm; expected above 0/);
  await visit(
    '/sums/dovetail-angle?units=metric&small=10&large=5&over_small=60&over_large=70',
    'What is the angle',
  );
  await expect.poll(() => screenText(page)).toContain('expected rolls larger than the small ones');
});

it('an example fills the empty cells only; clearing can be taken back', async () => {
  await visit('/sums/facing?diameter=250&units=metric', 'How hollow does a lathe face');
  await pressKey(page, 'Fill the rest with an example');
  expect(await page.getByLabel('D diameter of the disc').inputValue()).toBe('250');
  await expect.poll(outcomeText).toMatch(/f the middle lies deeper.* µm.*\+ concave/);
  await pressKey(page, 'Clear all');
  await expect.poll(outcomeText).toContain('Still to type');
  await pressKey(page, 'Bring back what was typed');
  expect(await page.getByLabel('D diameter of the disc').inputValue()).toBe('250');
});

it('a material fills in what it knows', async () => {
  await visit(
    '/sums/straightedge-sag?length=1000&depth=60&support=220&units=metric',
    'How far does a straightedge sag',
  );
  const steel = await outcomeText();
  await page.getByLabel('What it is made of').selectOption('granite');
  await expect.poll(outcomeText).not.toBe(steel);
  expect(await screenText(page)).toContain('taken as 60');
});

it('a name that is not there leads to the list', async () => {
  await visit('/sums/perpetual-motion', 'There is no sum called');
  await pressKey(page, 'All sums');
  await page.getByText('39 sums').waitFor();
});

it.each([
  ['/sums', '39 sums'],
  ['/sums/dovetail-male?root=40&roll=10&angle=60', 'Show the working'],
  ['/sums/support-points?length=1000&depth=60', 'Show the working'],
  ['/sums/facing?square=12 um in 300 mm&diameter=3OO', 'cannot be taken'],
])('%s looks right in both themes and sizes', (path, words) =>
  looksRight(page, path.slice(1), () => visit(path, words)),
);

it('every sum opens with its drawing and answers its own example', async () => {
  await page.setViewportSize(phone);
  await visit('/sums', '39 sums');
  const links = await page
    .locator('a[href^="/sums/"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('href')!));
  expect(links.length).toBe(39);
  // What was typed in the tests before is kept; this one begins on a clean phone.
  await page.evaluate(() => localStorage.clear());
  for (const link of links) {
    await page.goto(served.address + link);
    await page.locator('.sum-above svg title').waitFor({ state: 'attached' });
    await page.getByRole('button', { name: /^(Put in|Fill the rest)/ }).click();
    await page.getByText('Show the working').waitFor();
    expect(await runsOff(page), link).toBeLessThanOrEqual(0);
    expect(await outcomeText(), link).toMatch(/\d/);
    expect(await outcomeText(), link).not.toMatch(/NaN|undefined|Infinity/);
  }
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
});
