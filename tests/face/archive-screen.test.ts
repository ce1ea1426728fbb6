import { readFile } from 'node:fs/promises';
import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob, noisePhoto, sha256 } from '../fixture/job-photos.ts';
import { printedPhoto } from '../fixture/printed-photo.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';
import { looksRight } from './looks.ts';

const { id } = demoJob();

let from: Served;
let to: Served;
let here: Opened;
let there: Opened;
beforeAll(async () => {
  [from, to] = [await serve(), await serve()];
  [here, there] = [await openBrowser(from.address), await openBrowser(to.address)];
});
afterAll(async () => {
  await here?.context.close();
  await there?.context.close();
  await from?.stop();
  await to?.stop();
});

it('a job goes by its buttons from one workshop to another with its photo, by its hash', async () => {
  const photo = await printedPhoto();
  const type = { 'content-type': 'image/jpeg' };
  const sent = await fetch(`${from.address}/api/photos`, {
    method: 'POST',
    headers: type,
    body: new Uint8Array(photo),
  });
  const { hash } = (await sent.json()) as { hash: string };
  expect(hash).toBe(sha256(photo));
  const corner = (x: number, y: number) => ({ x, y });
  const written = await fetch(`${from.address}/api/jobs/${id}/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      kind: 'print photographed',
      id: 'photo-1',
      at: '2031-11-25T16:00:00Z',
      round: 4,
      pad: 'flat',
      photo: hash,
      corners: [corner(100, 100), corner(800, 100), corner(800, 400), corner(100, 400)],
      size: { length_mm: 480, width_mm: 60 },
      shares: [0.2, 0.2, 0.2, 0.2, 0.2, 0.2],
      density_per_25mm: 12,
      bearing_pct: 20,
      confidence: 0.9,
      warnings: [],
    }),
  });
  expect(written.status).toBe(201);

  await here.page.goto(`${from.address}/job/${id}/ledger`);
  const button = here.page.getByRole('button', { name: /Export with its 1 photo, 0\.\d\sMB/ });
  await button.waitFor();
  await here.page.getByText('Export without photos').waitFor();
  await looksRight(here.page, 'ledger-export');
  const [download] = await Promise.all([here.page.waitForEvent('download'), button.click()]);
  expect(download.suggestedFilename()).toBe(`${id}.waywright.zip`);
  const zip = await readFile(await download.path());

  const { page } = there;
  await page.goto(`${to.address}/jobs`);
  const input = page.locator('input[aria-label="Job file"]');
  const file = (name: string, buffer: Buffer) => ({ name, mimeType: 'application/zip', buffer });
  const files = unzipSync(zip);
  const spoiled = Buffer.from(zipSync({ ...files, [`photos/${hash}.jpeg`]: noisePhoto(500) }));
  await input.setInputFiles(file('spoiled.zip', spoiled));
  await page.getByText(/spoiled\.zip was not taken: photos\/[0-9a-f]{64}: bytes whose SHA-256/).waitFor();
  expect(await screenText(page)).toContain(hash);
  expect((await fetch(`${to.address}/api/photos/${hash}`)).status).toBe(404);

  // Without its photo the job is taken, and what is lacking is said.
  await input.setInputFiles(file('bare.zip', Buffer.from(zipSync({ 'job.json': files['job.json']! }))));
  await page.getByText(/The job is in\. 1 photo is neither in the file nor here/).waitFor();
  await looksRight(page, 'jobs-import');
  await page.goto(`${to.address}/job/${id}/ledger`);
  await page.getByText('1 photo of this job is not in this workshop').waitFor();

  await page.goto(`${to.address}/jobs`);
  await input.setInputFiles(file('whole.zip', zip));
  await page.waitForURL(`**/job/${id}`);
  const shown = await fetch(`${to.address}/api/photos/${hash}`);
  expect(sha256(new Uint8Array(await shown.arrayBuffer()))).toBe(hash);
  expect([...here.complaints, ...here.strangers, ...there.complaints, ...there.strangers]).toEqual([]);
});
