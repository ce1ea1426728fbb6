import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { KitEntry } from '../../src/core/ledger/kit-ledger.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, pressKey, screenText, tabTo } from './browser.ts';
import { allDelivered } from './delivered.ts';
import { looksRight } from './looks.ts';

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

const visit = async (path: string, words: string): Promise<void> => {
  await page.goto(served.address + path);
  await page.getByText(words).first().waitFor();
};
async function entries(): Promise<KitEntry[]> {
  await allDelivered(page);
  return ((await (await fetch(`${served.address}/api/kit`)).json()) as { entries: KitEntry[] }).entries;
}
const type = async (label: string, text: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};
// biome-ignore lint/performance/useDomNodeTextContent: what is seen counts, with its line breaks
const seen = async (there: Locator) => (await there.innerText()).replace(/\s+/g, ' ');
const target = (name: string) =>
  page.getByRole('listitem').filter({ has: page.getByRole('heading', { name }) });
const shown = () => screenText(page);

it('an empty kit says what to do first, and what each target of the job needs', async () => {
  await visit('/jobs', 'New job');
  await pressKey(page, 'Job and screens');
  await pressKey(page, 'Kit');
  await page.getByText('The kit is empty').waitFor();
  await expect
    .poll(() => seen(target('Facing')))
    .toContain('To measure it you need an indicator and a square.');
  expect(await seen(target('Level across'))).toContain('To measure it you need a level.');
});

it('an indicator is added by keyboard as the shop writes its sizes', async () => {
  await pressKey(page, 'Add to the kit');
  await page.getByText('What do you add?').waitFor();
  await pressKey(page, 'Indicator');
  await page.getByText('what stands on its dial').waitFor();
  await type('Name', 'lever');
  await page.keyboard.press('Enter');
  // Enter went on to the next cell.
  await page.keyboard.type('half a tenth');
  await type('Repeats within ±', '1');
  await expect.poll(shown).toContain('Read as 1.27 µm');
  await expect.poll(shown).toMatch(/Read as ± 1 µm/);
  await type('Last checked on', '2031-03-01');
  await pressKey(page, 'Add it to the kit');
  await expect.poll(shown).toContain('checked 1 Mar 2031');
  await expect.poll(shown).toMatch(/lever indicator, one division 1\.27 µm; repeats within ± 1 µm/);
  await expect.poll(async () => (await entries()).length).toBe(1);
  expect((await entries())[0]).toMatchObject({
    kind: 'put',
    thing: {
      kind: 'indicator',
      name: 'lever',
      graduation_um: 1.27,
      repeatability_um: 0.5,
      checked: '2031-03-01',
    },
  });
});

it('what cannot be read stays and is said; what is needed is asked for; a reload loses nothing', async () => {
  await visit('/kit/new/square', 'Length of its blade');
  await type('Length of its blade', '300 mmm');
  await expect.poll(shown).toContain('I can read 300, but not “mmm”');
  await pressKey(page, 'Add it to the kit');
  await expect.poll(shown).toContain('This one is needed');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('thing-name');
  await page.keyboard.type('lever');
  await expect.poll(shown).toContain('is in the kit already');
  await page.reload();
  expect(await page.getByLabel('Length of its blade').inputValue()).toBe('300 mmm');
  expect(await page.getByLabel('Name').inputValue()).toBe('lever');
  expect((await entries()).length).toBe(1);
  await type('Name', 'granite square');
  await type('Length of its blade', '300');
  await page.getByLabel('Grade', { exact: true }).selectOption('0');
  await pressKey(page, 'Add it to the kit');
  // DIN 875 grade 0 of 300 mm: 5 + 300 / 50 = 11 µm.
  await expect.poll(shown).toMatch(/square, 300 mm; within 11 µm by DIN 875 grade 0/);
});

it('the open job’s target is held against the kit: band over doubt, what limits it, the cheapest way', async () => {
  await expect
    .poll(() => seen(target('Facing')))
    .toMatch(/Room 7 µm in 300 mm, doubt ± [\d.]+ µm in 300 mm: 0\.\d to 1/);
  const facing = await seen(target('Facing'));
  expect(facing).toContain('cannot be proven');
  expect(facing).toContain('Most of the doubt is the reference’s own error.');
  expect(facing).toMatch(/turn the square over and sweep its other side/);
  expect(facing).toContain('With lever and granite square');
  expect(await target('Facing').locator('svg[role="img"] > title').first().textContent()).toMatch(
    /^facing: room 7/,
  );
  expect(await seen(target('Level along'))).toContain('To measure it you need a level.');
});

it('a change and a taking out are undone by one press, and the undo undone', async () => {
  await pressKey(page, 'granite square');
  await page.getByText('Take it out of the kit').waitFor();
  await page.getByLabel('Grade', { exact: true }).selectOption('00');
  await pressKey(page, 'Keep the change');
  // Grade 00: 2 + 300 / 100 = 5 µm.
  await expect.poll(shown).toContain('within 5 µm by DIN 875 grade 00');
  await pressKey(page, 'Undo changed granite square');
  await expect.poll(shown).toContain('within 11 µm by DIN 875 grade 0');
  await pressKey(page, 'Bring it back: undone: changed granite square');
  await expect.poll(shown).toContain('within 5 µm by DIN 875 grade 00');
  await pressKey(page, 'granite square');
  await pressKey(page, 'Take it out of the kit');
  await expect
    .poll(() => seen(target('Facing')))
    .toContain('To measure it you need an indicator and a square.');
  await pressKey(page, 'Undo took out granite square');
  await expect.poll(() => seen(target('Facing'))).toMatch(/doubt ± /);
  // The page shows it before the shop has it: the next test counts what the shop has.
  await expect
    .poll(async () => (await entries()).slice(-2).map((one) => one.kind))
    .toEqual(['taken out', 'undone']);
});

it('sizes shown in inches to be changed, and kept unchanged, do not move', async () => {
  const before = (await entries()).length;
  await visit('/kit', 'granite square');
  await pressKey(page, 'lever');
  await page.getByText('what stands on its dial').waitFor();
  await pressKey(page, 'inches, thou');
  await expect.poll(() => page.getByLabel('One division is').inputValue()).toMatch(/thou|µm/);
  await pressKey(page, 'Keep the change');
  await expect.poll(async () => (await entries()).length).toBe(before + 1);
  expect((await entries()).at(-1)).toMatchObject({ thing: { graduation_um: 1.27, repeatability_um: 0.5 } });
  await expect.poll(shown).toMatch(/one division 0\.5 tenths/);
  await visit('/kit/new/level', 'One division is');
  await pressKey(page, 'mm, µm');
});

it('what is added while the shop is out of reach waits on the phone, is counted in, and arrives once', async () => {
  const before = (await entries()).length;
  await visit('/kit/new/level', 'One division is');
  await type('Name', 'shop level');
  await type('One division is', '0.02 mm/m');
  await type('Repeats within ±', '8');
  await type('Length of the base', '200');
  const where = Number(new URL(served.address).port);
  await served.kill();
  await pressKey(page, 'Add it to the kit');
  await expect.poll(shown).toContain('1 entry on this phone');
  await expect.poll(shown).toContain('shop level');
  served = await serve({ folder, port: where });
  await expect.poll(async () => (await entries()).length).toBe(before + 1);
  await expect.poll(shown).toMatch(/kept \d\d:\d\d|all kept/);
  expect((await entries()).at(-1)).toMatchObject({
    thing: { name: 'shop level', graduation_urad: 20, base_mm: 200 },
  });
});

it('is exported whole, and taken in elsewhere as it was; twice changes nothing, another entry under an id is refused', async () => {
  const file = await (await fetch(`${served.address}/api/kit/export`)).text();
  const other = await serve();
  try {
    const take = async (body: string) =>
      (
        await fetch(`${other.address}/api/kit/import`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
        })
      ).status;
    expect(await take(file)).toBe(201);
    expect(await take(file)).toBe(200);
    expect(await (await fetch(`${other.address}/api/kit/export`)).text()).toBe(file);
    expect(await take(file.replace('"name": "lever"', '"name": "another"'))).toBe(409);
    expect(await take('{"format": "waywright-kit", "version": 1}')).toBe(400);
    expect(await (await fetch(`${other.address}/api/kit/export`)).text()).toBe(file);
  } finally {
    await other.stop();
  }
});

it('the server refuses a thing that cannot be, by its field', async () => {
  const send = async (thing: unknown) => {
    const answer = await fetch(`${served.address}/api/kit/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ kind: 'put', item: 'i', id: 'e', at: '2031-11-25T14:00:00Z', thing }),
    });
    return { status: answer.status, text: await answer.text() };
  };
  const before = await entries();
  const bad = await send({ kind: 'indicator', name: 'x', graduation_um: -1, repeatability_um: 0 });
  expect(bad.status).toBe(400);
  expect(bad.text).toContain('graduation_um');
  const grade = { by: 'grade', standard: 'DIN 875', grade: '7' };
  expect((await send({ kind: 'square', name: 'x', length_mm: 300, known: grade })).text).toContain(
    'known.grade',
  );
  expect(await entries()).toEqual(before);
});

it('a screen that does not come says so, is asked for again, and comes', async () => {
  const other = await openBrowser(served.address);
  try {
    await other.page.route('**/assets/rooms-*.js', (route) => route.abort());
    await other.page.goto(`${served.address}/kit`);
    await other.page.getByText('this screen was not on this phone yet').waitFor();
    await other.page.unroute('**/assets/rooms-*.js');
    await other.page.getByText('What the workshop measures with').waitFor();
  } finally {
    await other.context.close();
  }
});

it('a kit that cannot be fetched says so and that nothing is lost', async () => {
  const other = await openBrowser(served.address);
  try {
    await other.page.route('**/api/kit', (route) => route.abort());
    await other.page.goto(`${served.address}/kit`);
    await other.page.getByText('The shop’s file is out of reach. Nothing is lost').waitFor();
  } finally {
    await other.context.close();
  }
});

it.each([
  ['/kit', 'shop level'],
  ['/kit/new', 'What do you add?'],
  ['/kit/new/test%20bar', 'Made of'],
  ['/kit/new/nothing', 'There is no such kind'],
])('%s looks right in both themes and sizes', (path, words) =>
  looksRight(page, path.slice(1), () => visit(path, words)),
);

it('nothing was complained of', () => {
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
});
