import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';

const job = 'demo-saddle';
let folder: string;
let served: Served;
let phone: Opened;
beforeAll(async () => {
  folder = await newFolder();
  served = await serve({ folder });
  phone = await openBrowser(served.address, undefined, { keepsPage: true });
});
afterAll(async () => {
  await phone?.context.close();
  await served?.stop();
});

interface Row {
  readonly id: string;
  readonly kind: string;
  readonly seq: number;
  readonly reading?: { readonly typed: string };
  readonly written?: { readonly on: string; readonly knowing: number };
}
const entries = async () =>
  ((await (await fetch(`${served.address}/api/jobs/${job}`)).json()) as { entries: Row[] }).entries;

it('the page opens without the shop, from this build’s own files and nothing of the API', async () => {
  const { page } = phone;
  await page.goto(`${served.address}/job/${job}`);
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await expect.poll(() => screenText(page)).toContain('Saddle, round');
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const all = await Promise.all(
      names.map(async (name) => (await (await caches.open(name)).keys()).map((one) => one.url)),
    );
    return all.flat();
  });
  expect(kept.length).toBeGreaterThan(20);
  for (const url of kept) expect(new URL(url).pathname).toMatch(/^\/$|^\/icon\.svg$|^\/assets\//);

  const port = Number(new URL(served.address).port);
  await served.kill();
  await page.goto(`${served.address}/job/${job}/measure`);
  await expect.poll(() => screenText(page)).toContain('Saddle, round');
  await page.reload();
  await expect.poll(() => screenText(page)).toContain('Saddle, round');
  expect(
    await page.evaluate(() =>
      fetch('/api/jobs').then(
        () => 'answered',
        () => 'out of reach',
      ),
    ),
  ).toBe('out of reach');
  served = await serve({ folder, port });
});

it('sixty entries taken while the network comes and goes arrive once each, in order: 0 lost, 0 doubled', async () => {
  const { page, context } = phone;
  const before = (await entries()).length;
  await page.goto(`${served.address}/job/${job}/measure/level_across/9`);
  await expect.poll(() => page.getByLabel('level across', { exact: true }).count()).toBe(1);
  // Answers are cut off after the shop has written: the entry is sent again, and must not be doubled.
  let cut = 0;
  await context.route('**/api/jobs/*/entries', async (route) => {
    if (++cut % 12 === 0) {
      await route.fetch();
      await route.abort('connectionreset');
    } else await route.continue();
  });
  const wrote: string[] = [];
  for (let k = 0; k < 60; k++) {
    if (k % 30 === 10) await context.setOffline(true);
    if (k % 30 === 25) await context.setOffline(false);
    wrote.push(
      await page.evaluate((n) => {
        // As the outbox lays an entry down; another page of the phone delivers it.
        const id = `offline-${String(n).padStart(4, '0')}`;
        const order = `${String(Date.now()).padStart(14, '0')}-${String(n).padStart(6, '0')}`;
        const entry = { kind: 'note', text: `offline ${n}`, id, at: new Date().toISOString() };
        localStorage.setItem(
          `waywright/outbox/${order}-${id}`,
          JSON.stringify({ job: 'demo-saddle', entry }),
        );
        return id;
      }, k),
    );
  }
  await context.setOffline(false);
  await page.evaluate(() => dispatchEvent(new Event('online')));
  const arrived = async () => (await entries()).slice(before).map((entry) => entry.id);
  await expect.poll(async () => (await arrived()).length, { timeout: 90_000, interval: 500 }).toBe(60);
  expect(await arrived()).toEqual(wrote);
  expect(cut).toBeGreaterThan(60);
  await context.unroute('**/api/jobs/*/entries');
  await expect
    .poll(() =>
      page.evaluate(() => Object.keys(localStorage).filter((key) => /outbox|refused/.test(key)).length),
    )
    .toBe(0);
});

it('readings typed and kept while out of reach, with the page opened anew in between, arrive when it is back', async () => {
  const { page, context } = phone;
  const before = (await entries()).length;
  await page.goto(`${served.address}/job/${job}/measure/level_across/11`);
  await page.getByLabel('level across', { exact: true }).fill('-17');
  await context.setOffline(true);
  await page.getByRole('button', { name: 'Keep this level' }).click();
  await expect.poll(() => screenText(page)).toContain('1 entry on this phone');
  await page.goto(`${served.address}/job/${job}/measure/level_across/12`);
  await page.getByLabel('level across', { exact: true }).fill('+18');
  await page.getByRole('button', { name: 'Keep this level' }).click();
  await expect.poll(() => screenText(page)).toContain('2 entries on this phone');
  await context.setOffline(false);
  await expect.poll(async () => (await entries()).length).toBe(before + 2);
  const rows = (await entries()).slice(before);
  expect(rows.map((entry) => entry.reading?.typed)).toEqual(['-17', '+18']);
  expect(rows[0]!.written).toEqual({ on: expect.stringMatching(/^[0-9a-f]{8}$/), knowing: before });
});

it('a photo taken while out of reach reaches the shop when it is back, though its screen was left', async () => {
  const { page, context } = phone;
  const jpeg = await sharp({
    create: { width: 900, height: 700, channels: 3, background: { r: 40, g: 60, b: 90 } },
  })
    .jpeg()
    .toBuffer();
  const hash = createHash('sha256').update(jpeg).digest('hex');
  await page.goto(`${served.address}/job/${job}/photo/flat`);
  const lie = page.getByRole('button', { name: 'End over end' });
  const file = page.getByText('Choose a file');
  await lie.or(file).first().waitFor();
  if (await lie.isVisible()) await lie.click();
  await file.waitFor();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  await page
    .locator('.beside input[type="file"]')
    .setInputFiles({ name: 'print.jpg', mimeType: 'image/jpeg', buffer: jpeg });
  await expect.poll(() => screenText(page)).toMatch(/on this phone|out of reach/);
  await page.goto(`${served.address}/job/${job}/measure`);
  await expect.poll(() => screenText(page)).toContain('Saddle, round');
  expect((await fetch(`${served.address}/api/photos/${hash}`)).status).toBe(404);
  await context.setOffline(false);
  await expect.poll(async () => (await fetch(`${served.address}/api/photos/${hash}`)).status).toBe(200);
  expect(phone.strangers).toEqual([]);
});
