import { expect, it } from 'vitest';
import { screenText, tabTo } from './browser.ts';
import {
  button,
  demo,
  entries,
  field,
  looksRight,
  openSurveys,
  page,
  paste,
  put,
  says,
  served,
  sheet,
  shopLevel,
  surveys,
} from './surveys.ts';

openSurveys();

it('an instrument is picked from the kit: doubt and step come from it, can be typed over, and the sheet says which', async () => {
  await sheet('vertical of tailstock way');
  await says('nothing of the kit: no level or electronic level in it yet');
  // Division 20 µrad, so ± 10 µrad of reading it: sd 20/√12 = 5.77; with 3 repeating 6.51, two of them 13.0 µrad.
  expect((await put('k1', shopLevel)).status).toBe(201);
  const known = { by: 'limit', limit_um: 6 };
  const straight = { kind: 'straightedge', name: 'long edge', length_mm: 1500, known };
  expect((await put('k2', straight)).status).toBe(201);
  expect(
    (await put('k3', { kind: 'indicator', name: 'lever', graduation_um: 1, repeatability_um: 0.4 })).status,
  ).toBe(201);
  await page.reload();
  // The kit comes after the sheet: what is not offered yet cannot be chosen by its letters.
  await expect.poll(() => page.getByLabel('Read with').textContent()).toContain('shop level');
  await tabTo(page, 'Read with');
  await page.keyboard.type('shop level');
  await page.keyboard.press('Tab');
  await says('From “shop level” of the kit: the doubt of a reading and the step.');
  expect(await field('Step, mm').inputValue()).toBe('200');
  expect(await field(/^One reading repeats/).inputValue()).toBe('0.013');
  await field('Length surveyed, mm').fill('800');
  await field('0 to 200').focus();
  await paste('.02\n.01\n-.01\n-.02');
  await says('Tailstock way is straight within');
  await field(/^One reading repeats/).fill('.02');
  await says('Typed over what “shop level” of the kit says (± 0.013 mm/m): the doubt of a reading.');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  const kept = (await surveys()).at(-1);
  if (kept?.kind !== 'survey taken' || kept.input.kind !== 'angles') throw new Error('no angles were kept');
  expect(kept.sheet.kit).toEqual({ instrument: 'shop level' });
  expect(kept.input.reading_sd_urad).toBe(10);
  await looksRight('kit-picked');
  await page.goto(`${served.address}/job/${demo}/survey`);
  await says('level, stepped, shop level');
});

it('a straightedge of the kit: how true it is comes along, and its turned run has a card of its own', async () => {
  await sheet('vertical of long table');
  await page.getByLabel('Surveyed with').selectOption('straightedge');
  await page.getByLabel('Held against').selectOption('long edge');
  await page.getByLabel('Read with').selectOption('lever');
  // Within 6 µm and no more is known: sd 6/√3 = 3.46, two of them 6.93 µm.
  expect(await field(/^The straightedge is true/).inputValue()).toBe('6.93');
  await field('Step, mm').fill('250');
  await field('Length surveyed, mm').fill('1000');
  await button('Straightedge turned over').click();
  await says('Plus: the plunger comes out');
  await looksRight('edge-card');
  await button('Undo that').click();
  await expect.poll(() => screenText(page)).not.toContain('the plunger comes out');
});

it('a straightedge’s own sag is taken out once it is said what it stands on, said in words, and kept with the survey', async () => {
  await put('slim', {
    kind: 'straightedge',
    name: 'slim edge',
    length_mm: 1000,
    known: { by: 'limit', limit_um: 2 },
    depth_mm: 50,
    material: 'steel',
  });
  await page.reload();
  await page.getByLabel('Held against').selectOption('slim edge');
  await says(
    'From “slim edge” of the kit: how true the straightedge is, its length, its depth and what it is made of.',
  );
  // Steel 1000 × 50 mm on its ends sags 22.911 µm, 57/80 of it at a quarter (beam tables; checks/sums-sag): the way itself is 0, 3, 8, 3, 0.
  for (const [k, text] of ['0', '19.324', '30.911', '19.324', '0'].entries())
    await field(k === 0 ? '0 mm' : `${250 * k} mm`).fill(text);
  await says(/it is crowned, \+31\s*±\s*3 µm/);
  await page.locator('summary', { hasText: 'Its sag and warmth' }).click();
  await page.getByLabel('The straightedge stands on').selectOption('ends');
  await says(/it is crowned, \+8\s*±\s*4 µm/);
  await says(/Its own sag and bow are worked out and taken out: −22\.9\s*±\s*0?\.9 µm at 500 mm/);
  await field(/^Its top is warmer/).fill('0.5 ± 0.2');
  await expect.poll(() => screenText(page)).toMatch(/it is crowned, \+22\s*±\s*\d µm/);
  await field(/^Its top is warmer/).fill('');
  await field(/^Length of the straightedge/).fill('900');
  await says(
    'The straightedge lies from 50 mm to 950 mm and does not reach over the stops from 0 mm to 1000 mm',
  );
  await field(/^Length of the straightedge/).fill('1000');
  await field('Limit, µm').fill('20');
  await looksRight('edge-sag');
  await button('Keep this survey').click();
  await says(/Kept \d\d:\d\d/);
  await expect
    .poll(async () => (await surveys()).at(-1))
    .toMatchObject({
      of: 'long table',
      input: {
        straightedge: { length_mm: 1000, depth_mm: 50, material: 'steel', support_mm: 0, from_mm: 0 },
      },
    });
  await page.reload();
  await says(/it is crowned, \+8\s*±\s*4 µm/);
  // A kept survey's limit is one more thing that the kit must prove.
  await page.goto(`${served.address}/kit?job=${demo}`);
  await says(/Long table, straight up and down (?:cannot be proven|proven|only).*Room 20 µm, doubt/);
  await looksRight('kit-limits');
});

it('what the job is held against: a square picked from the kit, then swept on both its sides, goes into the job and back out', async () => {
  const square = {
    kind: 'square',
    name: 'granite square',
    length_mm: 300,
    known: { by: 'certificate', doubt_um: 2 },
  };
  const put = { kind: 'put', item: 'k4', id: 'k4', at: '2031-11-25T14:00:00Z', thing: square };
  const headers = { 'content-type': 'application/json' };
  await fetch(`${served.address}/api/kit/entries`, { method: 'POST', headers, body: JSON.stringify(put) });
  const face = async () => {
    const input = (await (await fetch(`${served.address}/api/jobs/${demo}/steer-input`)).json()) as {
      rounds: { sweeps: { face: string; face_slope_urad: number; face_slope_sd_urad: number }[] }[];
    };
    return input.rounds[0]!.sweeps[0]!;
  };
  const before = await face();
  await page.goto(`${served.address}/job/${demo}/survey`);
  await page.getByLabel('Which square of the kit it is').selectOption('granite square');
  await says('Square “granite square”');
  // Certificate ± 2 µm and a seat of 1 µm, common practice: √2 µm over 300 mm.
  await expect.poll(async () => (await face()).face).toBe('square “granite square”');
  expect((await face()).face_slope_sd_urad).toBeCloseTo((Math.SQRT2 / 300) * 1e3, 6);
  await page.getByText('Sweep both its sides').click();
  await says('turn the square over about its blade');
  await field(/^Last stop less first/).fill('18');
  await field(/^The same, turned over/).fill('-6');
  await field(/^Between the stops/).fill('300');
  await field(/^Either is known within/).fill('2');
  // Half the sum 6, half the difference 12, each ± 2/√2.
  await says(/the machine makes \+6\.0\s*±\s*1\.4 µm of it, the square \+12\.0\s*±\s*1\.4 µm/);
  await looksRight('references');
  await button('Take it into the job').click();
  await expect.poll(async () => (await face()).face_slope_urad).toBe(-40);
  await says('Its own slope counts as −12.0 ± 1.4 µm in 300 mm');
  for (const entry of (await entries()).filter(({ kind }) => kind === 'plan amended').reverse())
    await fetch(`${served.address}/api/jobs/${demo}/entries`, {
      method: 'POST',
      headers,
      body: JSON.stringify({ kind: 'undone', entry: entry.id, id: `u-${entry.id}`, at: entry.at }),
    });
  expect(await face()).toEqual(before);
});
