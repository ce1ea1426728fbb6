import { execFileSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { SteerAnswer } from '../../src/core/plan/answer.ts';
import { pressKey, screenText, tabTo } from './browser.ts';
import { allDelivered } from './delivered.ts';
import { expectPasses } from './map-shown.ts';
import { opened, openWorkshop, page, served } from './workshop.ts';

openWorkshop();

const jobId = () => decodeURIComponent(/\/job\/([^/]+)/.exec(page.url())![1]!);

/** The command line's answer for the job as the server exports it. */
async function commandLine(): Promise<SteerAnswer> {
  const input = await (await fetch(`${served.address}/api/jobs/${jobId()}/steer-input`)).text();
  const file = join(served.folder, 'steer-input.json');
  await writeFile(file, input);
  const out = execFileSync(process.execPath, ['dist/faces/cli/main.js', 'steer', file, '--json'], {
    encoding: 'utf8',
  });
  return JSON.parse(out) as SteerAnswer;
}

async function sweepByKeyboard(readings: readonly string[]): Promise<void> {
  await pressKey(page, 'Set up the sweep');
  await pressKey(page, 'It climbed');
  await tabTo(page, '0 mm');
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
  await expect.poll(() => screenText(page)).toContain('by this sweep alone');
  // Enter in the last cell leads to the button that keeps the sweep.
  await pressKey(page, 'Keep this sweep');
}

async function levelByKeyboard(name: string, reading: string): Promise<void> {
  await pressKey(page, 'Read the level');
  await tabTo(page, name);
  await page.keyboard.type(reading);
  await page.keyboard.press('Enter');
  await pressKey(page, 'Keep this level');
}

async function printByKeyboard(words: string): Promise<void> {
  await pressKey(page, 'Enter the print');
  // Asked each time the part is lifted.
  await pressKey(page, 'Front to back');
  const first = page.locator('[data-zone][tabindex="0"]');
  await tabTo(page, (await first.locator('> title').textContent()) ?? 'a zone');
  for (const word of words) await page.keyboard.press(word);
  await expect.poll(() => screenText(page)).toContain('All zones said');
  await pressKey(page, 'Keep this print');
}

async function expectPlanAsOnCommandLine(): Promise<SteerAnswer> {
  await allDelivered(page);
  const answer = await commandLine();
  expect(answer.ok).toBe(true);
  await expectPasses(page, answer);
  return answer;
}

it('a new job from a template, two rounds by keyboard alone, and the plan is the command line’s', async () => {
  await page.goto(`${served.address}/new`);
  await pressKey(page, 'Lathe saddle on an inverted V and a flat');
  await tabTo(page, 'Name of the job');
  await page.keyboard.type('Saddle of the small lathe');
  await tabTo(page, 'Length of the bearing faces');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('390');
  await tabTo(page, 'From the V to the flat');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('250');
  await pressKey(page, 'Begin this job');
  await expect
    .poll(() => screenText(page))
    .toContain('No readings in this round. Start with the sweep, 11 readings');

  await sweepByKeyboard(['0', '-1.5', '-2.5', '-3.5', '-6', '-6.5', '-9', '-8.5', '-11.5', '-12.5', '-14']);
  await levelByKeyboard('level across', '15');
  await levelByKeyboard('level along', '-11');
  await printByKeyboard('hhfnnbhhfbbfnhhhfn');
  const first = await expectPlanAsOnCommandLine();
  expect(first.plan.action).toBe('scrape');
  expect(await screenText(page)).toContain('Facing comes out convex');

  await pressKey(page, 'Start pass 1 of');
  const passes = Math.max(...first.plan.zones.map((zone) => zone.passes_now));
  for (let pass = 1; pass <= passes; pass++) await pressKey(page, `Pass ${pass} done`);
  await pressKey(page, 'Set it back: start round 2');

  await sweepByKeyboard(['0', '0', '+.5', '-1', '-0.5', '0.5', '-1', '-.5', '-1.5', '-1', '-2']);
  await levelByKeyboard('level across', '6');
  await levelByKeyboard('level along', '-3');
  await printByKeyboard('hhhfnbhhfhhfhhhhff');
  const second = await expectPlanAsOnCommandLine();
  expect(second.estimate.features.map((feature) => feature.name)).toEqual([
    'facing',
    'level across',
    'level along',
  ]);
  expect(opened.complaints).toEqual([]);
  expect(opened.strangers).toEqual([]);
});
