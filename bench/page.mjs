import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { summary } from './clock.mjs';
import { bareButton, dailyTaps, longestTask } from './taps.mjs';

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
    hasTouch: true,
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

/** Script that comes over the wire until the page at `address` stands, as compressed, bytes. */
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
  tools.off('Network.responseReceived', onResponse);
  tools.off('Network.loadingFinished', onDone);
  return bytes;
}

/** Has the plan made anew: another device's entry, the last sweep of the round once more. */
async function sweptAgain(address) {
  const job = `${address}/api/jobs/demo-saddle`;
  const { entries } = await (await fetch(job)).json();
  const { seq: _seq, ...sweep } = entries.findLast(({ kind }) => kind === 'sweep taken');
  return async (k) => {
    const { status } = await fetch(`${job}/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...sweep, id: `swept-again-${k}` }),
    });
    if (status !== 201) throw new Error(`the sweep was answered with ${status}`);
  };
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
    const busy = await longestTask(page, await sweptAgain(address), runs);
    const tapped = await dailyTaps(page, bench, runs);
    const button = await bareButton(page, runs);
    const slowly = `processor ÷ ${slow.cpu}, 4G`;
    return [
      {
        what: `first load of the Bench, ${slowly}`,
        aim: '',
        times: summary(ours),
        reference: { name: 'one line of text from the same server', times: summary(bare) },
      },
      { what: '  its script, compressed', aim: 'under 250 kB', unit: 'kB', times: { median: script / 1000 } },
      ...tapped.map(({ what, times }) => ({
        what: `a tap: ${what}, ${slowly}`,
        aim: 'under 50 ms',
        times,
        reference: { name: 'a bare button on a bare page', times: button },
      })),
      { what: `longest time busy while a plan is made, ${slowly}`, aim: '', times: busy },
    ];
  } finally {
    await close();
    await stop();
  }
}
