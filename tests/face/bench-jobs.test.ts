import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { screenText } from './browser.ts';
import { opened, openWorkshop, page, served } from './workshop.ts';

openWorkshop();

it('the workshop opens on the demo job, which says that it is invented', async () => {
  await page.goto(served.address);
  await page.waitForURL(/\/job\/demo-saddle$/);
  // The address changes before the job is drawn.
  await expect.poll(() => screenText(page)).toMatch(/Saddle, round \d+ demo/);
});

it('a job exported from its ledger opens again as a job file, entry for entry', async () => {
  await page.goto(`${served.address}/job/demo-saddle/ledger`);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Export this job' }).click(),
  ]);
  const exported = JSON.parse(await readText(await download.createReadStream())) as {
    id: string;
    entries: unknown[];
  };
  const file = join(served.folder, 'copy.json');
  await writeFile(file, JSON.stringify({ ...exported, id: 'a-copy' }));
  await page.goto(`${served.address}/jobs`);
  await page.getByLabel('Job file').setInputFiles(file);
  await page.waitForURL(/\/job\/a-copy$/);
  const copy = (await (await fetch(`${served.address}/api/jobs/a-copy`)).json()) as { entries: unknown[] };
  expect(copy.entries).toEqual(exported.entries);
});

it('a file that is no job is refused in words, and nothing is taken from it', async () => {
  const file = join(served.folder, 'no-job.json');
  await page.goto(`${served.address}/jobs`);
  await writeFile(file, '{"id": 7}');
  await page.getByLabel('Job file').setInputFiles(file);
  await expect.poll(() => screenText(page)).toContain('no-job.json was not taken:');
  await writeFile(file, 'not json');
  await page.getByLabel('Job file').setInputFiles(file);
  await expect
    .poll(() => screenText(page))
    .toContain('no-job.json is neither JSON nor a ZIP file. Nothing was taken from it.');
});

it('inches are offered everywhere, and change what is shown and nothing else', async () => {
  await page.goto(`${served.address}/job/demo-saddle`);
  await expect.poll(() => screenText(page)).toContain('µm in 300 mm');
  await page.getByRole('button', { name: 'Job and screens' }).click();
  await page.getByRole('button', { name: 'thou, tenths' }).click();
  await page.keyboard.press('Escape');
  await expect.poll(() => screenText(page)).toContain('thou in 12 in');
  expect(await screenText(page)).not.toContain('µm in 300 mm');
});

it('the left-handed switch moves the menu and leaves the primary button where it is', async () => {
  await page.goto(`${served.address}/jobs`);
  const menu = async () => (await page.getByRole('button', { name: 'Job and screens' }).boundingBox())!.x;
  const button = async () => page.getByRole('link', { name: 'New job' }).boundingBox();
  const [menuBefore, buttonBefore] = [await menu(), await button()];
  await page.goto(`${served.address}/settings`);
  await page.getByRole('button', { name: 'the left thumb' }).click();
  await page.goto(`${served.address}/jobs`);
  expect(await menu()).toBeGreaterThan(menuBefore + 200);
  expect(await button()).toEqual(buttonBefore);
  expect(opened.complaints).toEqual([]);
});

async function readText(stream: AsyncIterable<Buffer | string>): Promise<string> {
  let text = '';
  for await (const chunk of stream) text += chunk.toString();
  return text;
}

it('limits of a new job that do not go together are told at their field, in its words; then the first turn asks for a mark', async () => {
  await page.goto(`${served.address}/new`);
  await page.getByRole('button', { name: /Lathe saddle on an inverted V and a flat/ }).click();
  const most = page.getByLabel(/Facing: most fall/);
  await most.fill('3 µm');
  await page.getByRole('button', { name: 'Begin this job' }).click();
  await expect.poll(() => screenText(page)).toContain('One or more dimensions do not go together yet.');
  expect(await most.getAttribute('aria-invalid')).toBe('true');
  expect(await most.evaluate((field) => field === document.activeElement)).toBe(true);
  const told = await screenText(page);
  expect(told).toMatch(/3 µm; expected more than 6/);
  expect(told).not.toMatch(/facing_high|dimensions\./);
  await most.fill('20 µm');
  await page.getByRole('button', { name: 'Begin this job' }).click();
  await page.waitForURL(/\/job\/[^/]+$/);
  await page.goto(`${page.url()}/print`);
  await expect.poll(() => screenText(page)).toContain('No mark on it yet?');
  expect(await screenText(page)).not.toContain('as last time');
});
