import { summary } from './clock.mjs';

/** From the touch to the frame that answers it, as the browser itself counts it (event timing, in steps of 8 ms). */
async function listens(page) {
  await page.evaluate(() => {
    window.heard = [];
    new PerformanceObserver((list) => {
      for (const { interactionId, duration } of list.getEntries())
        if (interactionId > 0) window.heard.push(duration);
    }).observe({ type: 'event', durationThreshold: 16, buffered: false });
  });
}

/** How long the page may still work after a tap before the next one, ms. */
const rest_ms = 300;

/**
 * Taps in turn, the longest answer of each: the finger going down, coming up and the click are told apart by the browser.
 * What answers in less than 16 ms it does not tell, and counts as 16.
 * @param before  what is done before each tap and not timed
 */
async function answers(page, acts, runs, before = async () => undefined) {
  await listens(page);
  const times = [];
  for (let k = 0; k < runs; k++) {
    await before(k);
    await page.waitForTimeout(rest_ms);
    await page.evaluate(() => {
      window.heard.length = 0;
    });
    await acts[k % acts.length]();
    await page.waitForTimeout(rest_ms);
    times.push(Math.max(16, ...(await page.evaluate(() => window.heard))));
  }
  return summary(times);
}

/** A tap with a finger in the middle of what is there, as the browser's own tools send it: no helper runs in the page meanwhile. */
const finger =
  (page, selector, which = () => 0) =>
  async () => {
    const place = page.locator(selector).nth(which());
    await place.evaluate((there) => there.scrollIntoView({ block: 'center' }));
    const box = await place.boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  };

const button = (name) => `button:text-is("${name}")`;

/** A bare button on a bare page: what a tap costs with nothing of ours behind it. */
export async function bareButton(page, runs) {
  await page.setContent(
    '<button id="b" style="width:200px;height:60px" onclick="this.textContent = Math.random()">tap</button>',
  );
  return answers(page, [finger(page, '#b')], runs);
}

/** The taps a day at the machine is made of, on the demo's job at `bench`: what is tapped, and its times. */
export async function dailyTaps(page, bench, runs) {
  const at = async (place, selector) => {
    await page.goto(`${bench}${place}`);
    await page.locator(selector).first().waitFor();
    await page.waitForLoadState('networkidle');
  };
  const zones = '[data-pad][data-zone]';
  const turnedSo = 'button:has-text("End over end")';
  const rows = [];
  const told = (what, times) => rows.push({ what, times });

  await at('', zones);
  told(
    'turns the map',
    await answers(page, [finger(page, button('Depth')), finger(page, button('Passes'))], 2 * runs),
  );
  told(
    'opens the menu, or closes it',
    await answers(page, [finger(page, 'header.top > button'), finger(page, button('Close'))], 2 * runs),
  );
  told(
    'goes from the bench to the passes',
    await answers(page, [finger(page, 'a.go')], runs, async () => {
      if (!page.url().endsWith('/scrape')) return;
      await page.goBack();
      await page.locator(button('Depth')).waitFor();
    }),
  );

  await at('/scrape', turnedSo);
  await page.locator(turnedSo).click();
  await page.locator('.tally').waitFor();
  told(
    'ticks off a pass, or takes it back',
    await answers(page, [finger(page, 'button.go'), finger(page, 'button.third:has-text("Undo")')], 2 * runs),
  );

  await at('/print', zones);
  let zone = 0;
  const next = finger(page, zones, () => zone++ % 8);
  told('chooses a zone of the print', await answers(page, [next], 2 * runs));

  await at('/measure', '.setup-line a.choice');
  await page.locator('.setup-line a.choice').first().click();
  await page.locator('.cells input').first().waitFor();
  await page.locator('.cells input').first().focus();
  let key = 0;
  const types = async () => {
    await page.keyboard.press(['1', '2', 'Enter'][key++ % 3]);
  };
  told('a key of a reading', await answers(page, [types], 3 * runs));
  return rows;
}

/**
 * The longest time the page could not answer while a plan was made anew, ms: another device's entry comes in, the server plans, the
 * page shows it. A message to itself comes back late by as much as the page was busy.
 * @param again  has the plan made anew
 */
export async function longestTask(page, again, runs) {
  await page.evaluate(() => {
    const { port1, port2 } = new MessageChannel();
    let last = performance.now();
    window.longest = 0;
    port1.onmessage = () => {
      const now = performance.now();
      window.longest = Math.max(window.longest, now - last);
      last = now;
      setTimeout(() => port2.postMessage(0), 1);
    };
    port2.postMessage(0);
  });
  const times = [];
  for (let k = 0; k < runs; k++) {
    await page.waitForTimeout(rest_ms);
    await page.evaluate(() => {
      window.longest = 0;
    });
    const answered = page.waitForResponse((one) => one.url().endsWith('/answer') && one.ok());
    await again(k);
    await answered;
    await page.waitForTimeout(2 * rest_ms);
    times.push(await page.evaluate(() => window.longest));
  }
  return summary(times);
}
