import type { Locator, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../src/core/ledger/entry.ts';
import type { SteerInput } from '../../src/core/observe/round.ts';
import { bearsFromBlue } from '../../src/core/print/cover.ts';
import { applied, surfaceToPhoto } from '../../src/core/print/homography.ts';
import type { Corners, PlacePx } from '../../src/core/print/picture.ts';
import type { JobAnswer } from '../../src/shop/answer-job.ts';
import { type PadPhoto, padPhoto, paintedPad, surePlaces, trueShares } from '../fixture/pad-photo.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, phone, pressKey, screenText, tablet, tabTo } from './browser.ts';
import { deliveredEntries } from './delivered.ts';
import { looksRight as looks } from './looks.ts';

// The pictures come from tests/printed, which shares nothing with the reader: what they show is known exactly.
/** As the plan counts a zone that a photo tells of. */
const bears = (blue: number | null) => (blue === null ? null : bearsFromBlue(blue));
const demo = 'demo-saddle';
const pad = 'flat';
const size = { length_mm: 480, width_mm: 60 };
const round = 4;

let served: Served;
let opened: Opened;
let page: Page;
let now: PadPhoto;
let small: PadPhoto;
beforeAll(async () => {
  const surface = paintedPad(size, 7);
  now = await padPhoto(surface, 12, 7);
  small = await padPhoto(surface, 2, 8);
  served = await serve();
  opened = await openBrowser(served.address);
  page = opened.page;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

const photoAddress = () => `${served.address}/job/${demo}/photo/${pad}`;
const fileOf = ({ jpeg }: PadPhoto, name = 'print.jpg') => ({ name, mimeType: 'image/jpeg', buffer: jpeg });
const choose = async (photo: PadPhoto) =>
  page.locator('.beside input[type="file"]').setInputFiles(fileOf(photo));
const entries = (): Promise<Entry[]> => deliveredEntries(page, served.address, demo);

/** Where the corners stand, as the grips tell it: from the headstock end, operator's side, round. */
async function cornersOnScreen(): Promise<PlacePx[]> {
  const grips = page.locator('.grip');
  await grips.first().waitFor();
  return grips.evaluateAll((all) =>
    all.map((grip) => {
      const [, x, y] = /(-?\d+) across, (-?\d+) down/.exec(grip.getAttribute('aria-description') ?? '') ?? [];
      return { x: Number(x), y: Number(y) };
    }),
  );
}

/** Turned end over end, the headstock end lies at the right and the operator's side nearest: the other way round than in the picture. */
const asItLies = ([a, b, c, d]: Corners): PlacePx[] => [c, d, a, b];
const farthest = (found: readonly PlacePx[], truth: readonly PlacePx[]): number =>
  Math.max(...found.map((p, k) => Math.hypot(p.x - truth[k]!.x, p.y - truth[k]!.y)));

async function toCorners(photo: PadPhoto): Promise<void> {
  await page.goto(photoAddress());
  const lie = page.getByRole('button', { name: 'End over end' });
  const file = page.getByText('Choose a file');
  await lie.or(file).first().waitFor();
  if (await lie.isVisible()) await lie.click();
  await file.waitFor();
  await choose(photo);
  await page.locator('.grip').first().waitFor();
}
async function toReading(): Promise<void> {
  await page.getByRole('button', { name: 'Read the print' }).click();
  await page.getByText('How evenly').waitFor();
}

const looksRight = (name: string) => looks(page, `photo-${name}`);

describe('corners', () => {
  it('are found by themselves, named as the part lies, and are still there after a reload', async () => {
    await page.goto(photoAddress());
    await page.getByRole('button', { name: 'End over end' }).click();
    await page.getByText('Choose a file').waitFor();
    await looksRight('choose');
    await choose(now);
    await page.getByText('Corners found by the outline').waitFor();
    expect(farthest(await cornersOnScreen(), asItLies(now.corners))).toBeLessThan(12);
    await looksRight('corners');
    const before = await cornersOnScreen();
    await page.reload();
    expect(await cornersOnScreen()).toEqual(before);
  });

  it('move by arrow keys, by ten with Shift, and by buttons', async () => {
    const [first] = await cornersOnScreen();
    await tabTo(page, 'Corner at the headstock end, operator');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Shift+ArrowUp');
    expect((await cornersOnScreen())[0]).toEqual({ x: first!.x - 1, y: first!.y - 10 });
    await page.getByRole('button', { name: '10 px' }).click();
    await page.getByRole('button', { name: 'down by 10' }).click();
    await page.getByRole('button', { name: '1 px', exact: true }).click();
    await page.getByRole('button', { name: 'right by 1' }).click();
    expect((await cornersOnScreen())[0]).toEqual(first);
  });

  it('drag with a loupe that is not under the thumb, and snap to the edge near where they are let go', async () => {
    const truth = asItLies(now.corners);
    const grip = page.getByRole('button', { name: 'Corner at the headstock end, operator' });
    const middle = await middleOf(grip);
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x + 4, middle.y + 3, { steps: 3 });
    const loupe = (await page.locator('.loupe.beside-thumb').boundingBox())!;
    const thumb = { x: middle.x + 4, y: middle.y + 3 };
    const isBeside = thumb.x + 24 < loupe.x || thumb.x - 24 > loupe.x + loupe.width;
    expect(isBeside).toBe(true);
    expect(farthest(await cornersOnScreen(), truth)).toBeGreaterThan(25);
    await page.mouse.up();
    await page.getByText('Snapped to the edge near by').waitFor();
    expect(farthest(await cornersOnScreen(), truth)).toBeLessThan(12);
    await page.getByRole('button', { name: 'Put it back where I let go' }).click();
    expect(farthest(await cornersOnScreen(), truth)).toBeGreaterThan(25);
  });

  it('turn round for a part seen from the other end, and swap sides for one seen in a mirror', async () => {
    const [a, b, c, d] = await cornersOnScreen();
    await page.getByRole('button', { name: 'Turn the corners round' }).click();
    expect(await cornersOnScreen()).toEqual([c, d, a, b]);
    await page.getByRole('button', { name: 'Swap the sides' }).click();
    expect(await cornersOnScreen()).toEqual([b, a, d, c]);
  });
});

const middleOf = async (place: Locator): Promise<PlacePx> => {
  await place.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await place.boundingBox())!;
  return { x: x + width / 2, y: y + height / 2 };
};

describe('a photo that cannot be taken, or not yet', () => {
  it('is refused with the reason and what to do', async () => {
    await page.getByRole('button', { name: 'Take another photo' }).click();
    await page.locator('.beside input[type="file"]').setInputFiles({
      name: 'print.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('a note, not a photo'),
    });
    await page.getByText('Not kept:').waitFor();
    expect(await screenText(page)).toMatch(/Not kept: .*it takes .*Nothing else is lost\. Take it again/);
  });

  it('waits on the phone while the shop is out of reach, over a reload too, and is then sent by itself', async () => {
    await page.route('**/api/photos', (route) => route.abort());
    await choose(now);
    await page.getByText('waits on this phone').waitFor();
    await page.reload();
    await page.getByText('waits on this phone').waitFor();
    await page.unroute('**/api/photos');
    await page.getByText('Corners found').waitFor();
    await page.getByRole('button', { name: 'Take another photo' }).click();
  });

  it('is to be taken again where it shows too little, and says why', async () => {
    await toCorners(small);
    await toReading();
    expect(await screenText(page)).toMatch(/Take it again: [\d.]+ pixels a mm: spots run together/);
    await page.getByRole('button', { name: 'Take it again' }).click();
    await page.getByText('Choose a file').waitFor();
  });
});

describe('from file to plan', () => {
  let hash: string;
  it('reads the print: sentence, numbers, zones', async () => {
    // What the round before looked like: the same face from a worse photo, and fewer zones known.
    const sent = await fetch(`${served.address}/api/photos`, {
      method: 'POST',
      headers: { 'content-type': 'image/jpeg' },
      body: new Uint8Array(small.jpeg),
    });
    ({ hash } = (await sent.json()) as { hash: string });
    const written = await fetch(`${served.address}/api/jobs/${demo}/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        id: 'photo-of-round-3',
        at: '2031-11-25T14:32:00+01:00',
        kind: 'print photographed',
        round: round - 1,
        pad,
        photo: hash,
        corners: asItLies(small.corners),
        size,
        shares: [0.05, 0.1, null, 0.3, 0.3, 0.35],
        density_per_25mm: 9,
        bearing_pct: 22,
        confidence: 0.4,
        warnings: ['low resolution'],
      }),
    });
    expect(written.status).toBe(201);
    await toCorners(now);
    await toReading();
    const text = await screenText(page);
    const [, bears, spots] =
      /Bears on (\d+) %\. (\d+) spots a 25 mm square\. Richest at the tailstock end/.exec(text)!;
    const { bearing_pct, net_mm2, spots: all } = now.surface.truth;
    expect(Math.abs(Number(bears) - bearing_pct)).toBeLessThan(2);
    expect(Math.abs(Number(spots) - (625 * all.length) / net_mm2)).toBeLessThan(1.5);
    expect(text).toContain('The photo is sound.');
    expect(text).toContain('points more at the tailstock end than at the headstock end');
  });

  it('draws it over the photo as it lies there: blue where it touches, nothing where it is bare', async () => {
    await page.setViewportSize(tablet);
    const stage = page.locator('.stage').first();
    const picture = await sharp(await stage.screenshot())
      .raw()
      .toBuffer({ resolveWithObject: true });
    const frame = (await stage.boundingBox())!;
    const image = (await stage.locator('img').boundingBox())!;
    const toPhoto = surfaceToPhoto(now.corners, size);
    const scale = image.width / 4000;
    const blue = (place: { x: number; y: number }) => {
      const { x, y } = applied(toPhoto, place);
      const px = Math.round(image.x - frame.x + (x + 0.5) * scale - 0.5);
      const py = Math.round(image.y - frame.y + (y + 0.5) * scale - 0.5);
      const at = (py * picture.info.width + px) * picture.info.channels;
      return picture.data[at + 2]! - picture.data[at]!;
    };
    const share = (touches: 0 | 1, clear_mm: number) => {
      const places = surePlaces(now.surface, touches, clear_mm);
      expect(places.length).toBeGreaterThan(50);
      return places.filter((place) => blue(place) > 90).length / places.length;
    };
    expect(share(1, 0.9)).toBeGreaterThan(0.85);
    expect(share(0, 1.6)).toBeLessThan(0.05);
    await page.setViewportSize(phone);
  });

  it('stands beside the last round’s photo and the last plan, and looks right', async () => {
    await page.getByText('Against the plan of round 3').waitFor();
    const text = await screenText(page);
    expect(text).toMatch(/The print agrees with the last plan in \d of 6 zones|as the last plan said/);
    expect(text).toContain('Since round 3');
    expect(text).toContain('Round by round');
    // The foretold print and the seen one; the last round's, this one's and the difference.
    await expect.poll(() => page.locator('.side-by-side .stage').count()).toBe(5);
    await page
      .getByRole('img', { name: /that the last plan foretold/ })
      .first()
      .waitFor();
    await looksRight('reading');
    await page.getByRole('button', { name: 'Squares' }).first().click();
    await page.getByRole('button', { name: 'Squares' }).last().click();
    await looksRight('squares');
  });

  it('is still there after a reload, in inches too', async () => {
    await page.evaluate(() =>
      localStorage.setItem('waywright/settings', JSON.stringify({ units: 'inch', lastJob: 'demo-saddle' })),
    );
    await page.reload();
    await page.getByText('How evenly').waitFor();
    expect(await screenText(page)).toContain('spots a square inch');
    await page.evaluate(() => localStorage.removeItem('waywright/settings'));
    await page.reload();
    await page.getByText('How evenly').waitFor();
  });

  it('goes into the round by keyboard, in place of what was tapped, and the plan is made from it', async () => {
    const before = (await (await fetch(`${served.address}/api/jobs/${demo}/answer`)).json()) as JobAnswer;
    await pressKey(page, 'Use this print');
    await page.getByText('All 6 zones from a photo').waitFor();
    await looksRight('print');
    const taken = (await entries()).findLast((entry) => entry.kind === 'print photographed');
    expect(taken).toMatchObject({ round, pad, size, warnings: [] });
    if (taken?.kind !== 'print photographed') throw new Error('no photo in the ledger');
    // From the headstock end, which is at the far end of the picture.
    const truth = trueShares(now.surface, 6).toReversed();
    taken.shares.forEach((share, z) => {
      expect(Math.abs(share! - truth[z]!)).toBeLessThan(0.03);
    });
    const input = (await (
      await fetch(`${served.address}/api/jobs/${demo}/steer-input`)
    ).json()) as SteerInput;
    expect(input.rounds.at(-1)!.print![pad]).toEqual(taken.shares.map(bears));
    const after = (await (await fetch(`${served.address}/api/jobs/${demo}/answer`)).json()) as JobAnswer;
    if (!before.steer?.ok || !after.steer?.ok) throw new Error('the demo job has no plan');
    expect(after.seq).toBeGreaterThan(before.seq);
    expect(after.steer.plan.bearing.share).not.toBeCloseTo(before.steer.plan.bearing.share!, 3);
    expect(after.steer.plan.bearing.least_zone).toBeLessThanOrEqual(Math.min(...truth) + 0.03);
  });

  it('a tap after it counts for its zone alone', async () => {
    await page.getByRole('button', { name: 'none' }).click();
    await page.locator(`[data-pad="${pad}"][data-zone="2"]`).click();
    await page.getByRole('button', { name: 'Keep this print' }).click();
    await expect.poll(async () => (await entries()).at(-1)?.kind).toBe('print read');
    const all = await entries();
    const photo = all.findLast((entry) => entry.kind === 'print photographed');
    const tapped = all.at(-1);
    if (tapped?.kind !== 'print read' || photo?.kind !== 'print photographed') throw new Error('not kept');
    expect(tapped.share).toEqual({ [pad]: photo.shares.map((share, z) => (z === 2 ? 0 : bears(share))) });
    await page.goto(`${served.address}/job/${demo}/print`);
    await page.getByText('From a photo: zones 1, 2, 4, 5, 6').waitFor();
  });

  it('nothing of it is fetched before it is asked for, and nothing from elsewhere', async () => {
    const scripts: string[] = [];
    page.on('request', (request) => {
      if (request.resourceType() === 'script') scripts.push(request.url());
    });
    await page.goto(`${served.address}/job/${demo}`);
    await page.getByText('Passes by zone').or(page.getByText('Print, % blue')).first().waitFor();
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.filter((address) => /\/photo-/.test(address))).toEqual([]);
    expect(opened.strangers).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
