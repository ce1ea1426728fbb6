// Takes the pictures of docs/pictures from the built workshop with its demo job. Usage: npm run build && node scripts/pictures.mjs
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const pictures = [
  { name: 'bench-tablet', path: '/job/demo-saddle', width: 1180, height: 820, colorScheme: 'light' },
  { name: 'bench-phone', path: '/job/demo-saddle', width: 390, height: 844, colorScheme: 'light' },
  { name: 'bench-phone-dark', path: '/job/demo-saddle', width: 390, height: 844, colorScheme: 'dark' },
  {
    name: 'sweep-tablet',
    path: '/job/demo-saddle/measure/square/1',
    width: 1180,
    height: 820,
    colorScheme: 'light',
  },
];
const executablePath = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (path) => path && existsSync(path),
);
const folder = mkdtempSync(join(tmpdir(), 'waywright-pictures-'));
const server = spawn(process.execPath, ['dist/faces/server/main.js'], {
  env: { ...process.env, WAYWRIGHT_DATA: folder, PORT: '0' },
});
const address = await new Promise((found, failed) => {
  server.stdout.on('data', (said) => {
    const at = /Waywright is at (http:\S+)/.exec(String(said));
    if (at) found(at[1]);
  });
  server.once('exit', (code) => failed(new Error(`the server ended with ${code}`)));
});
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
mkdirSync('docs/pictures', { recursive: true });
for (const { name, path, width, height, colorScheme } of pictures) {
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme,
    reducedMotion: 'reduce',
    timezoneId: 'UTC',
  });
  await page.goto(address + path);
  await page.locator('.foot').waitFor();
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: join('docs/pictures', `${name}.png`) });
  console.log(`docs/pictures/${name}.png`);
  await page.close();
}
await browser.close();
server.kill();
