import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { summary } from './clock.mjs';

/** A phone some years old: a sixth of this machine's processor, 4G as browsers' own tools throttle it. */
const slow = { cpu: 6, latency_ms: 60, bytes_per_s: (9e6 * 0.9) / 8 };

const chromiumPath = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (path) => path && existsSync(path),
);

/** The built server on a workshop of its own, with the demo. */
async function served() {
  const folder = mkdtempSync(join(tmpdir(), 'waywright-page-bench-'));
  const server = spawn(process.execPath, ['dist/faces/server/main.js'], {
    env: { ...process.env, WAYWRIGHT_DATA: folder, PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  const address = await new Promise((found, failed) => {
    server.once('exit', (code) => failed(new Error(`the server ended with ${code}: ${said}`)));
    server.stdout.on('data', (chunk) => {
      said += chunk;
      const at = /Waywright is at (http\S+)/.exec(said);
      if (at) found(at[1]);
    });
  });
  const stop = () =>
    new Promise((done) => {
      server.once('exit', () => {
        rmSync(folder, { recursive: true, force: true });
        done();
      });
      server.kill('SIGTERM');
    });
  return { address, stop };
}

/** A browser with nothing in its memory, throttled. */
async function phone() {
  const profile = mkdtempSync(join(tmpdir(), 'waywright-page-bench-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath,
    headless: true,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
    reducedMotion: 'reduce',
  });
  const page = context.pages()[0];
  const tools = await context.newCDPSession(page);
  await tools.send('Network.enable');
  await tools.send('Network.setCacheDisabled', { cacheDisabled: true });
  await tools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: slow.latency_ms,
    downloadThroughput: slow.bytes_per_s,
    uploadThroughput: slow.bytes_per_s,
  });
  await tools.send('Emulation.setCPUThrottlingRate', { rate: slow.cpu });
  const close = async () => {
    await context.close();
    rmSync(profile, { recursive: true, force: true });
  };
  return { page, tools, close };
}

/** Time until a thing stands on the page, from the call for its address, ms. */
async function opens(page, address, selector) {
  const start = performance.now();
  await page.goto(address, { waitUntil: 'commit' });
  await page.locator(selector).first().waitFor();
  return performance.now() - start;
}

/** Script that came over the wire for the page at `address`, as compressed, bytes. */
async function scriptOf(page, tools, address, selector) {
  const scripts = new Set();
  let bytes = 0;
  const onResponse = ({ requestId, type }) => type === 'Script' && scripts.add(requestId);
  const onDone = ({ requestId, encodedDataLength }) => {
    if (scripts.has(requestId)) bytes += encodedDataLength;
  };
  tools.on('Network.responseReceived', onResponse);
  tools.on('Network.loadingFinished', onDone);
  await opens(page, address, selector);
  await page.waitForLoadState('networkidle');
  tools.off('Network.responseReceived', onResponse);
  tools.off('Network.loadingFinished', onDone);
  return bytes;
}

/** From each tap to the frame that answers it, as the browser itself counts it (event timing: to 8 ms), ms. */
async function taps(page, name, selectors, runs) {
  await page.evaluate(() => {
    window.heard = [];
    new PerformanceObserver((list) => {
      for (const one of list.getEntries())
        if (one.name === 'click') window.heard.push(one.processingEnd - one.startTime, one.duration);
    }).observe({ type: 'event', durationThreshold: 16, buffered: false });
  });
  const times = [];
  for (let k = 0; k < runs; k++) {
    const before = await page.evaluate(() => window.heard.length);
    await page
      .locator(selectors[k % selectors.length])
      .first()
      .click();
    // Answers under 16 ms are not told by the browser: they count as 16.
    await page.waitForTimeout(250);
    const heard = await page.evaluate((from) => window.heard.slice(from), before);
    times.push(heard.length ? heard[1] : 16);
  }
  return { what: name, ...summary(times) };
}

export async function pageTiming(quick) {
  if (!chromiumPath) {
    console.error('bench: no Chromium here, so the page is not timed; set CHROMIUM to its path');
    return [];
  }
  const { address, stop } = await served();
  const { page, tools, close } = await phone();
  const runs = quick ? 3 : 9;
  try {
    const bench = `${address}/job/demo-saddle`;
    const passes = '[data-pad][data-zone]';
    const script = await scriptOf(page, tools, bench, passes);
    const ours = [];
    const bare = [];
    for (let k = 0; k < runs; k++) {
      bare.push(await opens(page, `${address}/api/health`, 'body'));
      ours.push(await opens(page, bench, passes));
    }
    const segment = (name) => `button:text-is("${name}"), label:text-is("${name}")`;
    const turned = await taps(page, 'map', [segment('Depth'), segment('Passes')], 2 * runs);
    await page.setContent(
      '<button id="b" style="width:200px;height:60px" onclick="this.textContent = Math.random()">tap</button>',
    );
    const button = await taps(page, 'button', ['#b'], 2 * runs);
    const slowly = `processor ÷ ${slow.cpu}, 4G`;
    return [
      {
        what: `first load of the Bench, ${slowly}`,
        aim: '',
        times: summary(ours),
        reference: { name: 'one line of text from the same server', times: summary(bare) },
      },
      { what: '  its script, compressed', aim: 'under 250 kB', unit: 'kB', times: { median: script / 1000 } },
      {
        what: `a tap that turns the map, ${slowly}`,
        aim: 'under 50 ms',
        times: turned,
        reference: { name: 'a bare button on a bare page', times: button },
      },
    ];
  } finally {
    await close();
    await stop();
  }
}
