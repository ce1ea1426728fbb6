import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { jobFile } from '../../src/contract/job-file.ts';
import { foldJob } from '../../src/core/ledger/job.ts';
import type { SurveySheet } from '../../src/core/ledger/survey-record.ts';
import { readSheet } from '../../src/shop/survey/sheet-reading.ts';
import { surveySubjects } from '../../src/shop/survey/subjects.ts';
import { sizes } from './looks.ts';
import { button, demo, openSurveys, page, put, served, shopLevel } from './surveys.ts';

openSurveys();

/** A unit of the other system, by itself or behind a figure; expansion (µm/m/K) is a constant of a material. */
const metric = /µm(?!\/m\/K)|µrad|\bmm\b|\bmetre\b/;
/** Where a unit is chosen, all of them stand. */
const choices = '.segments';

const read = (file: string): unknown => JSON.parse(readFileSync(file, 'utf8'));
const strings = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : value !== null && typeof value === 'object'
      ? Object.values(value).flatMap(strings)
      : [];
/** What is quoted as it is published, or as somebody wrote it: the list of tests, the machine's own words, notes. */
const quoted = [read('machines/tests/engine-lathe.json'), read('demo/lathe.job.json')]
  .flatMap(strings)
  .filter((text) => metric.test(text));

/** Every text of the page with a metric unit in it, folded parts too: words, hints, names, what stands in cells. */
async function metricTexts(): Promise<string[]> {
  const all = await page.evaluate((own) => {
    const found: string[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode())
      if (!node.parentElement!.closest(`script, style, ${own}`)) found.push(node.textContent ?? '');
    for (const one of document.querySelectorAll<HTMLInputElement>('[placeholder], [aria-label], input'))
      found.push(
        one.getAttribute('placeholder') ?? '',
        one.getAttribute('aria-label') ?? '',
        one.value ?? '',
      );
    return found;
  }, choices);
  const bare = (text: string) => quoted.reduce((left, words) => left.replaceAll(words, ''), text);
  return [...new Set(all)].filter((text) => metric.test(bare(text)));
}

const saddle = foldJob(jobFile(read('demo/saddle.job.json')).entries);
const inches = { step: '8', length: '40', from: '12' };
/** Each sort of survey, with a slip or a limit for whatever is said of one. */
const sheets: Readonly<Record<string, SurveySheet>> = {
  vertical: {
    how: 'level',
    unit: 'thou/12 in',
    lengths: 'in',
    fields: { ...inches, repeat: '.1', limit: '.5', unworn: '12 to 20, 44 to 52' },
    cells: { there: ['.3', '-.1', '4 arcsec', '0', '-.4'], back: ['-.4', '.6', '.1', '0', '.4'] },
  },
  horizontal: {
    how: 'straightedge',
    unit: 'tenths',
    lengths: 'in',
    fields: { ...inches, repeat: '.5', limit: '6' },
    cells: { there: ['0', '2', '3', '40', '2', '0'] },
  },
  twist: {
    how: 'bridge level',
    unit: 'thou/12 in',
    lengths: 'in',
    fields: { ...inches, bridge: '10', repeat: '.1', limit: '.5' },
    cells: { there: ['0', '.1', '.3', '.2', '.3', '.4'] },
  },
};

/** A kit and the bed's surveys, so that screens have something to say. */
async function furnish(): Promise<void> {
  const known = { by: 'certificate', doubt_um: 2 };
  const dial = { kind: 'indicator', name: 'tenths dial', graduation_um: 2.54, repeatability_um: 1.2 };
  const edge = { kind: 'straightedge', name: 'long edge', length_mm: 1200, known };
  const square = { kind: 'square', name: 'shop square', length_mm: 200, known };
  for (const thing of [shopLevel, dial, edge, square])
    expect((await put(thing.name.replace(' ', '-'), thing)).ok).toBe(true);
  for (const [k, subject] of surveySubjects(saddle.plan).entries()) {
    const sheet = sheets[subject.kind]!;
    const { input, from_mm } = readSheet(sheet, subject);
    const taken = { what: 'line', of: subject.of, ways: subject.ways, from_mm, sheet, input };
    const answer = await fetch(`${served.address}/api/jobs/${demo}/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ kind: 'survey taken', id: `inch-${k}`, at: '2031-11-25T14:00:00Z', ...taken }),
    });
    expect(answer.status, await answer.text()).toBe(201);
  }
}

const way = (key: string): string => `/job/${demo}/survey/${encodeURIComponent(key)}`;
const lathe = '/job/demo-lathe';
const press = (name: string | RegExp) => () => button(name).first().click();
const unfold = (name: string) => () => page.locator('summary', { hasText: name }).first().click();

/** Screens, what is pressed on them first, and what must stand there before they are read. */
const screens: readonly (readonly [string, string | RegExp, ...(() => Promise<unknown>)[]])[] = [
  [`/job/${demo}`, 'Passes by zone'],
  [`/job/${demo}/survey`, 'How it will stand'],
  [way('vertical of flat'), 'The run back does not close'],
  [way('twist of the ways'), 'twist by'],
  [`/job/${demo}/parts`, 'How long it lasts'],
  ['/kit', 'tenths dial'],
  ['/sums', 'sums'],
  ['/sums/straightedge-sag', 'Show the working', press('Put in an example')],
  [`${lathe}/heights`, 'Show the working'],
  [`${lathe}/axis`, 'The free end lies', press(/as found/)],
  [`${lathe}/gib`, /Roll, diameter/, press('Measured')],
  [`${lathe}/chart`, 'from memory'],
  [`${lathe}/machine`, 'At least', press('Sizes'), unfold('Between centres')],
  [`${lathe}/machine`, /Bands it is/, press('Pads'), unfold('saddle on bed')],
];

it('the workshop in inches: no screen says a length in mm or µm but where it is quoted or chosen', async () => {
  await furnish();
  await page.goto(`${served.address}/settings`);
  await button('thou and tenths').click();
  const pictures = process.env.WAYWRIGHT_PICTURES;
  const found: Record<string, string[]> = {};
  for (const [k, [path, words, ...deeds]] of screens.entries()) {
    await page.goto(served.address + path);
    for (const deed of deeds) await deed();
    await page.getByText(words).first().waitFor();
    const texts = await metricTexts();
    if (texts.length > 0) found[`${k} ${path}`] = texts;
    if (!pictures) continue;
    mkdirSync(pictures, { recursive: true });
    for (const [kind, viewport] of sizes) {
      await page.setViewportSize(viewport);
      await page.screenshot({ path: join(pictures, `inch-${k}-${kind}.png`), fullPage: true });
    }
  }
  expect(found).toEqual({});
});
