import { chromium } from 'playwright-core';
import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
const folder = mkdtempSync('/tmp/lk-');
const p = spawn(process.execPath, ['dist/faces/server/main.js'], { env: { ...process.env, WAYWRIGHT_DATA: folder, PORT: '0' } });
const address = await new Promise((ok) => { let s=''; p.stdout.on('data', (c) => { s += c; const m=/Waywright is at (\S+)/.exec(s); if (m) ok(m[1]); }); });
const c = await chromium.launchPersistentContext(mkdtempSync('/tmp/lkp-'), { executablePath: '/usr/bin/chromium', headless: true, args: ['--no-sandbox','--disable-gpu'], viewport: {width:390,height:844}, serviceWorkers:'block', reducedMotion:'reduce', colorScheme:'light' });
const page = c.pages()[0];
const jobs = (await (await fetch(address + '/api/jobs')).json()).jobs;
console.log(jobs.map((j) => j.id + ' ' + j.title));
const list = ['/jobs','/new','/practise','/kit','/sums','/signs','/settings','/share','/workshop','/job/demo-saddle','/job/demo-saddle/scrape','/job/demo-saddle/print','/job/demo-saddle/measure','/job/demo-saddle/ledger','/job/demo-saddle/survey','/job/demo-saddle/chart','/job/demo-saddle/parts'];
const reb = jobs.find((j) => /rebuild|lathe/i.test(j.id) && j.id !== 'demo-saddle');
if (reb) for (const s of ['/order','/heights','/axis','/gib','/chart','/machine','/survey']) list.push('/job/' + reb.id + s);
for (const [k, v] of [['phone',{width:390,height:844}],['tablet',{width:1180,height:820}]]) {
  await page.setViewportSize(v);
  for (const a of list) { await page.goto(address + a); await page.waitForTimeout(1800); await page.screenshot({ path: `/tmp/ww/look/${k}${a.replace(/\W+/g,'-')}.png`, fullPage: true }); }
}
await c.close(); p.kill();
