import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Alarm } from '../../src/core/estimate/cause.ts';
import type { Entry } from '../../src/core/ledger/entry.ts';
import type { SteerAnswer } from '../../src/core/plan/answer.ts';
import type { NoAnswer } from '../../src/core/plan/problem.ts';
import type { JobAnswer } from '../../src/shop/answer-job.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, phone, screenText, tablet } from './browser.ts';
import { axeFinds } from './looks.ts';

// The screens of states that a job comes to rarely, shown from answers given to the page in the server's place: the
// values are those of the look's invented job, µm in 300 mm turned into µrad.
const bench = '/job/demo-saddle';
let served: Served;
let opened: Opened;
let page: Page;
let real: JobAnswer;
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address);
  page = opened.page;
  real = (await (await fetch(`${served.address}/api/jobs/demo-saddle/answer`)).json()) as JobAnswer;
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});
beforeEach(async () => {
  await page.unroute('**/answer');
});

const inSpan = (um: number) => (um * 1000) / 300;
const features = (values: readonly (readonly [number, number])[]) =>
  steerOf(real).estimate.features.map((feature, i) => ({
    ...feature,
    value: inSpan(values[i]![0]),
    sd: inSpan(values[i]![1]) / 2,
  }));
function steerOf(answer: JobAnswer): SteerAnswer {
  if (!answer.steer?.ok) throw new Error('the demo job has no plan');
  return answer.steer;
}
const withSteer = (steer: SteerAnswer | NoAnswer): JobAnswer => ({ ...real, steer });
const proven = () => {
  const steer = steerOf(real);
  return {
    ...steer,
    warnings: [],
    estimate: {
      ...steer.estimate,
      features: features([
        [11.3, 2.8],
        [0.1, 2.0],
        [-1.8, 2.1],
      ]),
    },
  };
};

async function show(answer: JobAnswer): Promise<void> {
  await page.route('**/answer', (route) => route.fulfill({ json: answer }));
  await page.goto(served.address + bench);
}

async function serious(): Promise<string[]> {
  const found: string[] = [];
  for (const size of [phone, tablet])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme });
      found.push(...(await axeFinds(page)));
    }
  await page.setViewportSize(phone);
  return found;
}

const alarm: Alarm = {
  round: 3,
  feature: 'facing',
  before: { value: inSpan(-15.3), sd: inSpan(2.15) },
  asked: { value: inSpan(10.9), sd: inSpan(5) },
  found: { value: inSpan(-46.7), sd: inSpan(2.35) },
  chance: 1e-9,
  causes: [
    {
      round: 3,
      cause: { kind: 'map end for end' },
      log_odds: 40,
      would_read: { value: inSpan(-41.4), sd: inSpan(5) },
    },
    {
      round: 3,
      cause: { kind: 'sweep reversed', sweep: 'cross ways against the square' },
      log_odds: 2,
      would_read: { value: inSpan(-10.9), sd: inSpan(5) },
    },
    { round: 3, cause: { kind: 'reference moved', face: 'square' }, log_odds: 1 },
  ],
};

describe('the states of the bench', () => {
  it('stop: one word, the limits, and one button that signs', async () => {
    const steer = proven();
    await show(
      withSteer({
        ...steer,
        plan: {
          ...steer.plan,
          action: 'stop',
          alignment: { verdict: 'proven', chance: 0.97, targets: [] },
          bearing: { verdict: 'proven', share: 0.82, least_zone: 0.52 },
        },
      }),
    );
    await expect.poll(() => screenText(page)).toContain('Stop. All 4 limits are proven.');
    expect(await screenText(page)).toContain(
      'Facing comes out concave, 11 µm in 300 mm, as wanted. Leave it.',
    );
    expect(await page.getByRole('button', { name: 'Sign the lines' }).count()).toBe(1);
    expect(await serious()).toEqual([]);
  });

  it('spot: the bearing leads, and only the blue is to be scraped', async () => {
    const steer = proven();
    await show(
      withSteer({
        ...steer,
        plan: {
          ...steer.plan,
          action: 'spot',
          alignment: { verdict: 'proven', chance: 0.97, targets: [] },
          bearing: { verdict: 'not proven', share: 0.61, least_zone: 0.04 },
          zones: steer.plan.zones.map((zone, i) => ({
            ...zone,
            passes: i % 5 ? 1 : 0,
            passes_now: i % 5 ? 1 : 0,
          })),
        },
      }),
    );
    await expect.poll(() => screenText(page)).toContain('Bearing is thin: scrape only the blue.');
    expect(await screenText(page)).toContain('61 % bearing thinnest zone 4 %');
    expect(await page.getByRole('link', { name: 'Spot the blue, once over' }).count()).toBe(1);
    expect(await serious()).toEqual([]);
  });

  it('no answer: which limit binds and by how much', async () => {
    await show(
      withSteer({
        ok: false,
        why: 'limits',
        limits: [{ kind: 'stock', name: 'front flank', short: 6.2, unit: 'um' }],
        text: 'stock of pad "front flank" is short by 6.2 µm',
      }),
    );
    await expect.poll(() => screenText(page)).toContain('Scraping cannot reach this.');
    expect(await screenText(page)).toContain('stock is short by 6.2 µm');
    expect(await serious()).toEqual([]);
  });

  it('alarm: nothing is lost, one question at a time, and no scraping before it is settled', async () => {
    await show(withSteer({ ...steerOf(real), alarm }));
    await expect
      .poll(() => screenText(page))
      .toContain('It went the wrong way. Put the scraper down. Nothing is lost.');
    expect(await screenText(page)).toContain(
      'Asked for +26, facing moved −31 ± 6 µm in 300 mm. That is not chance.',
    );
    expect(await screenText(page)).toMatch(/Map read end for end would read −41 ± 10 fits/);
    expect(await serious()).toEqual([]);
    await page.goto(`${served.address}${bench}/scrape`);
    await page.waitForURL(/demo-saddle$/);
    await page.getByRole('button', { name: 'I cannot tell' }).click();
    await expect.poll(() => screenText(page)).toContain('read two stops. Which way does the number go?');
  });

  it('a yes at the alarm puts the record right by entries, and each can be undone', async () => {
    await show(withSteer({ ...steerOf(real), alarm }));
    const ledger = async () =>
      ((await (await fetch(`${served.address}/api/jobs/demo-saddle`)).json()) as { entries: Entry[] })
        .entries;
    await page.getByRole('button', { name: 'The other way' }).click();
    await expect
      .poll(async () => (await ledger()).slice(-3).map((entry) => entry.kind))
      .toEqual(['cause settled', 'undone', 'sweep taken']);
    const last = (await ledger()).at(-1)!;
    expect(last).toMatchObject({ kind: 'sweep taken', round: 4, record: { push: 'fell' } });
    // Settled: the plan is back on the screen.
    await expect.poll(() => screenText(page)).toContain('Passes by zone');
    expect(opened.complaints).toEqual([]);
  });
});
