import { expect, it } from 'vitest';
import { phone } from './browser.ts';
import { runsOff } from './looks.ts';
import { demo, screens } from './screens.ts';
import { opened, openWorkshop, page, served, visit } from './workshop.ts';

openWorkshop();

/** Bars that stay while the page scrolls, at its foot or head, and take more than a third of the screen's height. */
const hogs = (): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('#bench *')].flatMap((one) => {
      const { position, bottom } = getComputedStyle(one);
      const stays = position === 'fixed' || (position === 'sticky' && bottom !== 'auto');
      const { height } = one.getBoundingClientRect();
      return stays && height > innerHeight / 3 ? [`${one.className} ${height} of ${innerHeight} px`] : [];
    }),
  );

const more: typeof screens = [
  ['/job/demo-lathe/order', 'All steps, in order'],
  ['/job/demo-lathe/heights', 'Heights'],
  ['/whole', 'Which machine?'],
  ['/workshop', 'Where everything is kept'],
  ['/share', 'this machine only'],
];

it.each([...screens, ...more])(
  '%s on a phone on its side, and with letters twice as large: nothing runs off, and what stays leaves room',
  async (path, words) => {
    // As a phone's own size of letters reaches a page: by the root's.
    const letters = (size: string) =>
      page.evaluate((to) => {
        document.documentElement.style.fontSize = to;
      }, size);
    await visit(path, words);
    const size = () =>
      page.evaluate(() => Number.parseFloat(getComputedStyle(document.querySelector('h1')!).fontSize));
    const small = await size();
    await page.setViewportSize({ width: phone.height, height: phone.width });
    await expect.poll(() => runsOff(page)).toBeLessThanOrEqual(0);
    expect(await hogs()).toEqual([]);
    await page.setViewportSize(phone);
    await letters('200%');
    await expect.poll(() => runsOff(page)).toBeLessThanOrEqual(0);
    expect(await hogs()).toEqual([]);
    expect(await size()).toBeCloseTo(2 * small);
  },
);

it('a browser of 2021, without what the language was given since, walks the bench', async () => {
  await page.addInitScript(() => {
    const lacks = (holder: object, names: readonly string[]) => {
      for (const name of names) Reflect.deleteProperty(holder, name);
    };
    const since2022 = ['at', 'findLast', 'findLastIndex', 'toReversed', 'toSorted', 'toSpliced', 'with'];
    for (const holder of [Array.prototype, Object.getPrototypeOf(Int8Array.prototype), String.prototype])
      lacks(holder, since2022);
    lacks(Object, ['hasOwn', 'groupBy']);
    lacks(Promise, ['withResolvers']);
    lacks(AbortSignal, ['timeout', 'any']);
    // Missing too wherever the page does not come over an enciphered line, which is how a phone reaches the shop.
    lacks(Crypto.prototype, ['randomUUID', 'subtle']);
    lacks(globalThis, ['structuredClone', 'requestIdleCallback', 'scheduler']);
  });
  for (const [path, words] of [
    [demo, 'Passes by zone'],
    [`${demo}/measure/square/1`, 'Push the plunger'],
    [`${demo}/chart`, 'as this job measured it'],
    [`${demo}/ledger`, 'newest first'],
    [`${demo}/parts`, 'How long it lasts'],
    ['/job/demo-lathe/order', 'All steps, in order'],
    ['/sums/level-turned', 'Put in an example'],
  ] as const)
    await visit(path, words);
  await page.getByRole('button', { name: 'Put in an example' }).click();
  await page.locator('.sum-outcome .num').first().waitFor();
  await visit(`${demo}/print`, 'Which way did you turn it?');
  await page.getByRole('button', { name: 'End over end' }).click();
  await page.getByText('Keep this print').waitFor();
  await visit(`${demo}/scrape`, 'Strokes this way');
  expect(opened.complaints).toEqual([]);
});

it('the built script has no syntax that a phone of 2021 cannot read', async () => {
  const sources: string[] = [];
  const html = await (await fetch(served.address)).text();
  for (const [, path] of html.matchAll(/"(\/assets\/[^"]+\.js)"/g))
    sources.push(await (await fetch(served.address + path)).text());
  expect(sources.length).toBeGreaterThan(0);
  // Lookbehind, the flag v, static blocks: browsers of 2021 refuse the whole file for one of them.
  for (const source of sources)
    expect(source).not.toMatch(/\(\?<[=!]|static\s*\{|\/[dgimsuy]*v[dgimsuy]*\.test/);
});
