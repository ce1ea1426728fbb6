import { expect, it } from 'vitest';
import { phone } from './browser.ts';
import { axeFinds, looksRight, runsOff } from './looks.ts';
import { demo, screens } from './screens.ts';
import { opened, openWorkshop, page, visit } from './workshop.ts';

openWorkshop();

/** Says how the part lies, so that the screens after it can be looked at. */
async function lift(): Promise<void> {
  await visit(`${demo}/print`, 'Which way did you turn it?');
  await page.getByRole('button', { name: 'End over end' }).click();
  await page.getByText('Keep this print').waitFor();
}

it.each(screens)(
  '%s: axe finds nothing serious in either theme, a thumb hits everything, nothing runs off the side',
  (path, words) => looksRight(page, path.slice(1), () => visit(path, words)),
);

it('the same once the part is lifted: its print, and its first pass', async () => {
  await lift();
  await looksRight(page, 'lifted-print', () => visit(`${demo}/print`, 'Keep this print'));
  await looksRight(page, 'lifted-scrape', () => visit(`${demo}/scrape`, 'Strokes this way'));
});

it.each([
  [demo, 'Passes by zone', true],
  [`${demo}/chart`, 'as this job measured it', true],
  [`${demo}/survey/${encodeURIComponent('vertical of flat')}`, 'Say the step', true],
  ['/job/demo-lathe/order', 'All steps, in order', true],
  ['/signs', 'The push test', false],
])(
  '%s on paper, from the dark theme: black on white, the day on it, nothing to press, nothing off its side',
  async (path, words, ofJob) => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    await visit(path, words);
    const seen = await page.evaluate(() => {
      const { color, backgroundColor } = getComputedStyle(document.body);
      const pressed = [...document.querySelectorAll<HTMLElement>('button, .go, .foot a, .top a')]
        .filter((one) => one.getClientRects().length > 0 && !one.matches('[aria-expanded]'))
        .map((one) => one.textContent);
      return { color, backgroundColor, pressed };
    });
    expect(seen).toEqual({ color: 'rgb(0, 0, 0)', backgroundColor: 'rgb(255, 255, 255)', pressed: [] });
    const head = await page.locator('.on-paper').textContent();
    expect(head).toMatch(ofJob ? /^(Saddle of the long lathe|The long lathe) · .*printed / : /^printed /);
    expect(head).toContain(String(new Date().getFullYear()));
    // As wide as A4 is between its margins: 182 mm at 96 px an inch.
    await page.setViewportSize({ width: 688, height: 1000 });
    expect(await runsOff(page)).toBeLessThanOrEqual(0);
    await page.setViewportSize(phone);
    await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
  },
);

it('the switch of the theme wins over the device', async () => {
  await page.emulateMedia({ colorScheme: 'light' });
  await visit('/settings', 'Light or dark');
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await paper();
  await page.getByRole('button', { name: 'dark', exact: true }).click();
  expect(await paper()).not.toBe(light);
  await page.getByRole('button', { name: 'as the phone' }).click();
  expect(await paper()).toBe(light);
});

it('the menu opens and closes by keyboard and gives the focus back', async () => {
  await visit('/jobs', 'New job');
  await page.getByRole('button', { name: 'Job and screens' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  expect(await axeFinds(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
    .toBe('Job and screens');
});

it('a map is heard zone by zone, and a screen come to by a tap that leaves the focus nowhere has it', async () => {
  await visit(demo, 'Passes by zone');
  const map = page.getByRole('group', { name: 'Passes by zone' });
  await map
    .getByRole('img', { name: /^Front flank, zone 1 of 6 from the headstock end: \d+ pass(es)?$/ })
    .waitFor();
  expect(await map.getByRole('img').count()).toBe(18);
  // A finger on glass, unlike a mouse, need not focus what it presses.
  await page.evaluate(() => document.querySelector<HTMLElement>('.foot a')!.click());
  await expect
    .poll(() => page.evaluate(() => [location.pathname, document.activeElement?.tagName]))
    .toEqual([`${demo}/scrape`, 'MAIN']);
});

it('the first load of script is under 250 kB as it crosses the network, and nothing comes from elsewhere', async () => {
  const scripts: string[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script') scripts.push(response.url());
  });
  await visit(demo, 'Passes by zone');
  expect(scripts.length).toBeGreaterThan(0);
  let bytes = 0;
  for (const address of scripts) {
    const { headers } = await fetch(address, { headers: { 'accept-encoding': 'gzip' } });
    bytes += Number(headers.get('content-length'));
    if (Number(headers.get('content-length')) > 2000) expect(headers.get('content-encoding')).toBe('gzip');
    expect(headers.get('cache-control')).toContain('immutable');
  }
  expect(bytes).toBeGreaterThan(20_000);
  expect(bytes).toBeLessThan(250_000);
  expect(opened.strangers).toEqual([]);
  expect(opened.complaints).toEqual([]);
});
