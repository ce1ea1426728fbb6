import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { networkAddresses } from '../../src/faces/server/share/own-names.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';

const job = 'demo-saddle';
/** As a phone reaches it; a machine on no network cannot be shared. */
const [lan] = networkAddresses();
let served: Served;
let owner: Opened;
let phone: Opened;
let folder: string;
let shared: string;
beforeAll(async () => {
  folder = await newFolder();
  served = await serve({ folder, words: ['--share'] });
  shared = served.address.replace('127.0.0.1', lan ?? '127.0.0.1');
  owner = await openBrowser(served.address);
  phone = await openBrowser(shared);
});
afterAll(async () => {
  await phone?.context.close();
  await owner?.context.close();
  await served?.stop();
});

const entries = async () =>
  (
    (await (await fetch(`${served.address}/api/jobs/${job}`)).json()) as {
      entries: { id: string; kind: string; text?: string; entry?: string; reading?: { typed: string } }[];
    }
  ).entries;

const note = (text: string, more: object = {}) =>
  fetch(`${served.address}/api/jobs/${job}/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      kind: 'note',
      text,
      id: crypto.randomUUID(),
      at: new Date().toISOString(),
      ...more,
    }),
  });

it.runIf(lan)('a phone sees nothing until it is let in by the code that the owner’s page shows', async () => {
  await phone.page.goto(`${shared}/job/${job}`);
  await expect.poll(() => screenText(phone.page)).toContain('has not been let into the workshop');
  expect(await screenText(phone.page)).not.toContain('Saddle');

  await owner.page.goto(`${served.address}/share`);
  await owner.page.getByRole('button', { name: 'Let a device in' }).click();
  const code = await owner.page.locator('.invitation .code').textContent();
  expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
  expect(await owner.page.locator('svg.qr').count()).toBeGreaterThan(0);

  await phone.page.goto(`${shared}/join`);
  await phone.page.getByLabel('Code').fill(code!.toLowerCase());
  await phone.page.getByLabel('Name of this device').fill('<img src=x onerror=alert(1)>');
  await phone.page.getByRole('button', { name: 'Come in' }).click();
  await phone.page.waitForURL(/\/jobs$/);
  await expect.poll(() => screenText(phone.page)).toContain('Saddle of the long lathe');
  // The name is shown as text, whatever it is.
  await expect
    .poll(() => screenText(owner.page))
    .toContain('<img src=x onerror=alert(1)>, may look and write');
});

it.runIf(lan)('each sees at once what the other enters', async () => {
  await phone.page.goto(`${shared}/job/${job}/ledger`);
  await owner.page.goto(`${served.address}/job/${job}/ledger`);
  await expect.poll(() => screenText(phone.page)).toContain('newest first');
  await expect.poll(() => screenText(owner.page)).toContain('newest first');
  await phone.page
    .getByRole('button', { name: /^Undo / })
    .first()
    .click();
  await expect.poll(() => screenText(owner.page)).toContain('Undone');
  const before = (await entries()).length;
  await owner.page
    .getByRole('button', { name: /Bring it back/ })
    .first()
    .click();
  await expect.poll(async () => (await entries()).length).toBe(before + 1);
  await expect.poll(() => screenText(phone.page)).toContain('Undone: Undone');
});

it.runIf(lan)('what another process writes is seen too, without a reload', async () => {
  const { openSqlite } = await import('../../src/adapters/store/sqlite.ts');
  const store = await openSqlite(`${folder}/workshop.db`);
  await store.append(job, {
    kind: 'note',
    text: 'by another program',
    id: 'another-program',
    at: new Date().toISOString(),
  });
  await store.close();
  await expect.poll(() => screenText(phone.page)).toContain('By another program');
});

it.runIf(lan)(
  'two who measured the same without knowing of each other are told, and a person chooses; nothing is overwritten',
  async () => {
    await owner.page.goto(`${served.address}/job/${job}/measure/level_across/7`);
    await phone.page.goto(`${shared}/job/${job}/measure/level_across/7`);
    await owner.page.getByLabel('level across', { exact: true }).fill('-31');
    await phone.page.getByLabel('level across', { exact: true }).fill('+42');
    await phone.context.setOffline(true);
    await phone.page.getByRole('button', { name: 'Keep this level' }).click();
    await expect.poll(() => screenText(phone.page)).toContain('1 entry on this phone');
    await owner.page.getByRole('button', { name: 'Keep this level' }).click();
    await expect.poll(async () => (await entries()).some((one) => one.reading?.typed === '-31')).toBe(true);
    await phone.context.setOffline(false);
    await expect.poll(async () => (await entries()).some((one) => one.reading?.typed === '+42')).toBe(true);

    await owner.page.goto(`${served.address}/job/${job}`);
    await expect.poll(() => screenText(owner.page)).toContain('each without knowing of the other');
    const before = await entries();
    await owner.page.getByRole('button', { name: /This one stands.*−31/ }).click();
    await expect.poll(() => screenText(owner.page)).not.toContain('each without knowing of the other');
    await expect.poll(async () => (await entries()).length).toBe(before.length + 1);
    const after = await entries();
    // Both are in the ledger still, and the choice is an entry of its own.
    expect(after.slice(0, before.length)).toEqual(before);
    expect(after.at(-1)).toMatchObject({
      kind: 'undone',
      entry: before.find((one) => one.reading?.typed === '+42')!.id,
    });
  },
);

it.runIf(lan)('a device that is removed is out at once, its open page too', async () => {
  await phone.page.goto(`${shared}/job/${job}/ledger`);
  await expect.poll(() => screenText(phone.page)).toContain('newest first');
  await owner.page.goto(`${served.address}/share`);
  await owner.page
    .getByRole('button', { name: /^Remove/ })
    .first()
    .click();
  await owner.page.getByRole('button', { name: 'Yes, out at once' }).click();
  await expect.poll(() => screenText(owner.page)).toContain('None besides this machine');
  await note('not for the phone any more');
  await new Promise((later) => setTimeout(later, 1_500));
  expect(await screenText(phone.page)).not.toContain('not for the phone any more');
  expect(await phone.page.evaluate(() => fetch('/api/jobs').then((answer) => answer.status))).toBe(401);
  expect(phone.strangers).toEqual([]);
  expect(owner.complaints).toEqual([]);
  expect(readFileSync(`${folder}/devices.jsonl`, 'utf8')).toContain('"removed"');
});
