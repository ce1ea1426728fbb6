import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import { applied, surfaceToPhoto } from '../../src/core/print/homography.ts';
import type { PlaceMm } from '../../src/core/print/picture.ts';
import { type PadPhoto, padPhoto, paintedPad } from '../fixture/pad-photo.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, pressKey, screenText, tabTo } from './browser.ts';
import { deliveredEntries } from './delivered.ts';
import { looksRight } from './looks.ts';

// The photo comes from tests/printed, which shares nothing with the reader, so where its places lie is known exactly.
const demo = 'demo-saddle';
const pad = 'flat';
const size = { length_mm: 480, width_mm: 60 };
const whole_mm2 = size.length_mm * size.width_mm;
/** A patch with a dent, in the picture's own mm; its area by the shoelace formula, worked by hand: 60 × 35 less the triangle 60 × 15 / 2. */
const corners: readonly PlaceMm[] = [
  { x: 300, y: 10 },
  { x: 360, y: 10 },
  { x: 360, y: 45 },
  { x: 330, y: 30 },
  { x: 300, y: 45 },
];
const area_mm2 = 60 * 35 - (60 * 15) / 2;

let served: Served;
let opened: Opened;
let page: Page;
let photo: PadPhoto;
beforeAll(async () => {
  photo = await padPhoto(paintedPad(size, 5), 12, 5);
  served = await serve();
  opened = await openBrowser(served.address);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
  if (process.env.SHOTS) console.log('SHOTS', served.folder);
});

const entries = (): Promise<Entry[]> => deliveredEntries(page, served.address, demo);

async function choose(file: { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  await page.goto(`${served.address}/job/${demo}/photo/${pad}`);
  const lie = page.getByRole('button', { name: 'End over end' });
  const way = page.getByText('Choose a file');
  await lie.or(way).first().waitFor();
  if (await lie.isVisible()) await lie.click();
  await way.waitFor();
  await page.locator('.beside input[type="file"]').setInputFiles(file);
}

/** A tap on a place of the picture, as the photo lies on the screen. */
async function tap(place: PlaceMm): Promise<void> {
  const stage = page.locator('.stage').first();
  const at = applied(surfaceToPhoto(photo.corners, size), place);
  const frame = (await stage.boundingBox())!;
  const image = (await stage.locator('img').boundingBox())!;
  const scale = image.width / 4000;
  await stage.click({
    position: { x: image.x - frame.x + (at.x + 0.5) * scale, y: image.y - frame.y + (at.y + 0.5) * scale },
  });
}

async function netArea(): Promise<number> {
  await page.getByText('Reading it again').waitFor({ state: 'hidden' });
  await page.getByText(/Net area .* of 28\s800\smm²/).waitFor();
  const [, net] = /Net area ([\d ]+) mm² of 28 800 mm²/.exec(await screenText(page))!;
  return Number(net!.replace(/ /g, ''));
}
const leftOut = async () => whole_mm2 - (await netArea());

describe('a patch is marked over the photo', () => {
  it('by taps round it; half of it outlives a reload; its first corner closes it', async () => {
    await choose({ name: 'print.jpg', mimeType: 'image/jpeg', buffer: photo.jpeg });
    await page.getByRole('button', { name: 'Read the print' }).click();
    await page.getByText('How evenly').waitFor();
    await page.getByRole('button', { name: 'Mark a groove, hole or patch' }).click();
    await page.getByRole('button', { name: 'Closer' }).click();
    await page.getByRole('button', { name: 'A patch' }).click();
    await tap(corners[0]!);
    await tap(corners[1]!);
    await page.getByText('Tap the patch’s third corner').waitFor();
    await page.screenshot({ path: join(served.folder, 'patch-half.png'), fullPage: true });
    await page.reload();
    await page.getByText('Tap the patch’s third corner').waitFor();
    await page.getByRole('button', { name: 'Closer' }).click();
    for (const corner of corners.slice(2)) await tap(corner);
    await page.getByText('its first one to close it').waitFor();
    await tap(corners[0]!);
    await page.getByText('Pick a mark to move or size it').waitFor();
    expect(await page.locator('.mark-list').textContent()).toMatch(/5 corners, 1\s\d{3}\smm²/);
    expect(Math.abs((await leftOut()) - area_mm2) / area_mm2).toBeLessThan(0.03);
    await looksRight(page, 'photo-patch');
  });

  it('a corner follows the thumb under a loupe, and one step back undoes the drag', async () => {
    await page.getByRole('button', { name: 'Closer' }).click();
    const grip = page.getByRole('button', { name: 'Corner 4 of patch 1' });
    await grip.evaluate((one) => one.scrollIntoView({ block: 'center', inline: 'center' }));
    const before = await leftOut();
    const { x, y } = (await grip.boundingBox())!;
    await page.mouse.move(x + 24, y + 24);
    await page.mouse.down();
    await page.mouse.move(x + 24, y + 24 + 30, { steps: 5 });
    const loupe = (await page.locator('.loupe.beside-thumb').boundingBox())!;
    const seen = (await page.locator('.runs-on').first().boundingBox())!;
    expect(loupe.x).toBeGreaterThanOrEqual(seen.x);
    expect(loupe.x + loupe.width).toBeLessThanOrEqual(seen.x + seen.width);
    expect(x + 48 < loupe.x || x > loupe.x + loupe.width).toBe(true);
    await page.screenshot({ path: join(served.folder, 'patch-loupe.png') });
    await page.mouse.up();
    await page.locator('.loupe').waitFor({ state: 'detached' });
    // The dent fills: 60 mm wide, so 30 px at 120 px a 25 mm square take some 190 mm² more.
    await expect.poll(leftOut).toBeGreaterThan(before + 120);
    await page.getByRole('button', { name: 'Undo the last step' }).click();
    await expect.poll(leftOut).toBe(before);
  });

  it('by keyboard alone: put in the middle, a corner moved, put in, taken out, and all of it undone', async () => {
    await pressKey(page, 'A patch');
    await pressKey(page, 'Put it in the middle');
    await page.getByText('4 corners, 900').waitFor();
    await pressKey(page, 'Close the patch');
    await tabTo(page, 'Corner 2 of patch 2');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.getByText('Undo the last step').waitFor();
    expect(await page.locator('.mark-list').textContent()).not.toContain('4 corners, 900');
    await pressKey(page, 'Put one in after corner 2');
    await page.getByText('5 corners').nth(1).waitFor();
    await pressKey(page, 'Take out corner 3');
    await page.getByText('Corner 3 taken out').waitFor();
    for (const _ of [1, 2, 3]) await pressKey(page, 'Undo the last step');
    expect((await page.locator('.mark-list').textContent())!.replace(/\s/g, ' ')).toContain(
      '4 corners, 900 mm²',
    );
    await pressKey(page, 'Take away patch 2');
    expect(await page.locator('.mark-list li').count()).toBe(1);
  });

  it('sides that would cross are refused in words', async () => {
    await page.getByRole('button', { name: 'A patch' }).click();
    for (const [x, y] of [
      [390, 12],
      [430, 12],
      [430, 45],
      [400, 4],
    ])
      await tap({ x: x!, y: y! });
    await page.getByText('sides would cross there').waitFor();
    await page.getByRole('button', { name: 'Close the patch' }).click();
    await page.getByRole('button', { name: 'Take away patch 2' }).click();
  });

  it('goes into the round with the print, and is left out of its shares', async () => {
    await page.getByRole('button', { name: 'Done marking' }).click();
    await page.getByText('1 patch is left out').waitFor();
    await looksRight(page, 'photo-patch-read');
    await pressKey(page, 'Use this print');
    await page.getByText('All 6 zones from a photo').waitFor();
    await expect.poll(async () => (await entries()).at(-1)?.kind).toBe('print photographed');
    const taken = (await entries()).at(-1);
    if (taken?.kind !== 'print photographed') throw new Error('no photo in the ledger');
    const [mark] = taken.exclusions ?? [];
    if (mark?.type !== 'polygon') throw new Error('another mark');
    // Turned end over end: x and y on the pad run against the picture's.
    mark.points.forEach(({ x, y }, k) => {
      const meant = { x: size.length_mm - corners[k]!.x, y: size.width_mm - corners[k]!.y };
      expect(Math.hypot(x - meant.x, y - meant.y)).toBeLessThan(1);
    });
  });
});

it('the page asks phones for a JPEG, and turns into one what it can show and the shop cannot unpack', async () => {
  // Chromium knows AVIF and no HEIC: the shop is made to refuse the one as it refuses the other.
  const avif = await sharp(photo.jpeg).resize(1200).avif({ quality: 80 }).toBuffer();
  const sent: string[] = [];
  await page.route('**/api/photos', async (route) => {
    const type = route.request().headers()['content-type'] ?? '';
    sent.push(type);
    if (type !== 'image/avif') return route.continue();
    const issues = [{ path: 'photo', found: 'a HEIC or HEIF photo', expected: 'the photo as JPEG' }];
    await route.fulfill({ status: 400, json: { code: 'bad input', message: 'photo: a HEIC', issues } });
  });
  await choose({ name: 'print.avif', mimeType: 'image/avif', buffer: avif });
  await page.getByText(/Photo kept/).waitFor();
  expect(sent).toEqual(['image/avif', 'image/jpeg']);
  await page.getByRole('button', { name: 'Take another photo' }).click();
  const ways = page.locator('input[type="file"]');
  expect(await ways.evaluateAll((all) => all.map((one) => one.getAttribute('accept')))).toEqual([
    'image/jpeg,image/png,image/webp,image/tiff,.jpg,.jpeg,.png,.webp,.tif,.tiff',
    'image/jpeg',
  ]);
  // Bytes that only begin so are refused in words.
  const none = Buffer.concat([avif.subarray(0, 40), Buffer.alloc(400)]);
  await ways.first().setInputFiles({ name: 'a.heic', mimeType: 'image/heic', buffer: none });
  await page.getByText(/HEIC or HEIF photo, which cannot be unpacked here.*most compatible/).waitFor();
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
});
