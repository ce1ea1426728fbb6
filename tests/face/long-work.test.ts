import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';

// Long work says what it does and can be stopped: the request ends with it, and the shop works for it no longer (gone.test.ts).
let served: Served;
let opened: Opened;
let page: Page;
const ended: string[] = [];
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address);
  page = opened.page;
  page.on('requestfailed', (request) => ended.push(new URL(request.url()).pathname));
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});
const says = (words: string) => expect.poll(() => screenText(page)).toContain(words);
/** The shop never answers there. */
const hang = (path: string) => page.route(`**${path}`, () => undefined);
const stop = () => page.getByRole('button', { name: 'Stop', exact: true }).click();

it('a photo on its way is stopped, and sent after all', async () => {
  await page.goto(`${served.address}/job/demo-saddle/photo/flat`);
  await page.getByRole('button', { name: 'End over end' }).click();
  await hang('/api/photos');
  await page
    .locator('.beside input[type="file"]')
    .setInputFiles({ name: 'p.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(200_000, 7) });
  await says('On its way to the shop’s file.');
  await stop();
  await says('Stopped. The shop has not kept this photo');
  await expect.poll(() => ended).toContain('/api/photos');
  await page.unroute('**/api/photos');
  await page.getByRole('button', { name: 'Send it after all' }).click();
  // It is no photo: the shop says so now that it has it.
  await says('Not kept');
  await page.getByText('Choose a file').waitFor();
});

it('a PDF in the making is stopped, and none is handed over', async () => {
  await page.goto(`${served.address}/job/demo-saddle/chart`);
  await hang('/api/jobs/demo-saddle/chart.pdf');
  await page.getByRole('button', { name: 'Make the PDF' }).click();
  await says('The PDF is being made');
  await stop();
  await says('Stopped. No PDF was made.');
  await expect.poll(() => ended).toContain('/api/jobs/demo-saddle/chart.pdf');
});

it('a job’s file on its way in is stopped', async () => {
  await page.goto(`${served.address}/jobs`);
  await hang('/api/archives');
  const zip = Buffer.concat([Buffer.from('PK'), Buffer.alloc(100_000, 1)]);
  await page
    .getByLabel('Job file')
    .setInputFiles({ name: 'job.zip', mimeType: 'application/zip', buffer: zip });
  await says('Taking in job.zip.');
  await stop();
  await says('Stopped. If job.zip is not in the list above, nothing of it was taken.');
  await expect.poll(() => ended).toContain('/api/archives');
  expect(opened.complaints).toEqual([]);
});
