import type { Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { opened, openWorkshop, page, served } from './workshop.ts';

// Every screen that asks something of the shop says so while it waits, and why when it does not come, and that nothing is lost.
const rooms =
  'measure survey parts chart print scrape ledger truth order heights axis gib machine photo/flat';
const asking = [
  '/jobs',
  '/new',
  '/whole',
  '/share',
  '/workshop',
  '/kit',
  '/kit/thing/none',
  '/job/demo-saddle',
  '/job/demo-saddle/measure/square',
  ...rooms.split(' ').map((room) => `/job/demo-saddle/${room}`),
];
/** These ask nothing before they are used. */
const free = ['/settings', '/signs', '/sums', '/practise', '/join', '/kit/new', '/nowhere'];

openWorkshop();

/** A page that has asked nothing yet, and whose every question to the shop is answered so. */
async function answering(so: (route: Route) => unknown): Promise<void> {
  // Nothing asked before may be answered now: it would be remembered.
  await page.goto('about:blank');
  await page.unrouteAll({ behavior: 'ignoreErrors' });
  await page.goto(`${served.address}/signs`);
  await page.route(
    ({ pathname }) => pathname.startsWith('/api/'),
    (route) => void so(route),
  );
}

/** To a screen as a link leads there: the page is not loaded anew. */
const lead = (to: string) =>
  page.evaluate((path) => {
    history.pushState(null, '', path);
    dispatchEvent(new PopStateEvent('popstate'));
  }, to);

/** What the screen's own part says, also what is to appear in a moment. */
const said = () => page.evaluate(() => document.querySelector('main')?.textContent ?? '');

describe('every screen speaks', () => {
  it('while the shop has not answered', async () => {
    await answering(() => undefined);
    for (const path of asking) {
      await lead(path);
      await expect.poll(said, { message: path }).toContain('Asking the shop for');
    }
  });

  it('when the shop fails', async () => {
    await answering((route) =>
      route.fulfill({ status: 503, json: { code: 'busy', message: 'the file is held by another program' } }),
    );
    for (const path of asking) {
      await lead(path);
      await expect
        .poll(said, { message: path, timeout: 20_000 })
        .toMatch(/cannot give out .+ now: the file is held by another program. Nothing is lost/);
    }
  });

  it('when the shop is out of reach; and it comes by itself when the shop is back', async () => {
    await answering((route) => route.abort('connectionrefused'));
    // The rooms of a job wait behind one door: shown above to be so, one of them is enough.
    for (const path of asking.filter((one) => !one.startsWith('/job/demo-saddle/'))) {
      await lead(path);
      await expect
        .poll(said, { message: path, timeout: 20_000 })
        .toContain('The shop’s file is out of reach. Nothing is lost');
    }
    for (const path of free) {
      await lead(path);
      await expect.poll(said, { message: path }).not.toBe('');
    }
    await lead('/jobs');
    await expect.poll(said, { timeout: 20_000 }).toContain('out of reach');
    await page.unrouteAll({ behavior: 'ignoreErrors' });
    await expect.poll(said, { timeout: 20_000 }).toContain('Saddle of the long lathe');
    expect(opened.complaints).toEqual([]);
  });

  it('an address that leads nowhere leads on', async () => {
    for (const path of ['/nowhere', '/job/none']) {
      await lead(path);
      await page.getByRole('link', { name: 'All jobs' }).waitFor();
    }
  });
});
