import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import type { Doors } from './doors.ts';
import { registerOrder } from './order.ts';
import { run } from './run.ts';

async function said(words: readonly string[], file?: unknown) {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    readText: async (name: string) =>
      name === 'heights.json'
        ? JSON.stringify(heightsFile)
        : typeof file === 'string'
          ? file
          : JSON.stringify(file),
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    templates: () => readTemplates(),
  } as unknown as Doors;
  const code = await run(
    ['order', ...words],
    doors,
    [registerOrder({ machines: () => readWholeMachines() })],
    '0',
  );
  return { code, out: out.join('\n'), err: err.join('\n') };
}

const heightsFile = {
  machine: 'engine-lathe',
  measured: { 'half nut over lead screw': { um: -470, sd_um: 8 } },
  liners: [
    {
      joint: 'saddle-on-bed',
      pads: ['front flank', 'rear flank', 'flat'],
      brings: 'half nut over lead screw',
      sheet_mm: 1.6,
    },
  ],
};

describe('waywright order', () => {
  it('at first only the survey is ready; every other step waits, with what for and why', async () => {
    const { code, out } = await said(['engine-lathe']);
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Engine lathe: 0 of 27 steps stand\. Next: “Survey, before anything is taken apart”\./,
    );
    expect(out).toContain('waits: needs “Carriage V, both flanks”: bed, carriage V, both flanks (template)');
    expect(out).toMatch(/Spent 0\.0 h; left \d{3} ± \d{3} h, at 1\.00 times the usual hours\./);
    const json = JSON.parse((await said(['engine-lathe', '--json'])).out);
    expect(json.ready).toEqual(['survey']);
    expect(json.steps.every((step: { hours_left: number }) => step.hours_left > 0)).toBe(true);
  });

  it('shows how the hours come about when asked: pace by hand from one step done at 16 h for 8', async () => {
    const { out } = await said(['engine-lathe', '--done', 'survey=16', '--working']);
    // ln 2 / 0.4² over 1/0.5² + 1/0.4²: exp(4.332/10.25) = 1.526.
    expect(out).toMatch(/survey 16\/8: 1\.526/);
    expect(out).toContain('left at support');
    const { working, forecast } = JSON.parse(
      (await said(['engine-lathe', '--done', 'survey=16', '--working', '--json'])).out,
    );
    expect(forecast.pace.times).toBeCloseTo(Math.exp(Math.LN2 / 0.16 / (1 / 0.25 + 1 / 0.16)), 9);
    expect(working).toHaveLength(28);
  });

  it('a support set again takes back what was scraped on it, and says through what', async () => {
    const { out } = await said([
      'engine-lathe',
      '--done',
      'survey=9,support,bed-datum,bed-flat,again:support',
    ]);
    const json = JSON.parse(
      (await said(['engine-lathe', '--json', '--done', 'survey=9,support,bed-datum,bed-flat,again:support']))
        .out,
    );
    const by = Object.fromEntries(json.steps.map((step: { id: string }) => [step.id, step]));
    expect([by['bed-datum'].status, by['bed-flat'].status, by.survey.status]).toEqual([
      'to be re-proven',
      'to be re-proven',
      'done',
    ]);
    expect(json.ready).toContain('bed-datum');
    expect(json.ready).not.toContain('bed-flat');
    expect(out).toContain('to be re-proven: “Bed on its feet, twist out” was done again');
    expect(by.survey.hours_spent).toBe(9);
  });

  it('one step by itself opens with its slide, set-ups, targets and cautions', async () => {
    const { out } = await said(['engine-lathe', '--step', 'tail-body']);
    expect(out).toContain('Bench: tailstock on bed, template four-pad-base');
    expect(out).toContain('spindle height: 0.0 to +30.0 µm; plus: high');
    expect(out).toContain('test bar: 0.0 to +20.0 µm in 300 mm; plus: free end high');
    expect(out).toContain('tailstock height: How high does the tailstock stand against the spindle?');
    const { plan } = JSON.parse((await said(['engine-lathe', '--step', 'headstock', '--json'])).out);
    expect(plan.features.map((one: { name: string }) => one.name)).toEqual(['test bar', 'level across']);
    expect(plan.setups.map((one: { id: string }) => one.id)).toEqual(['bar', 'level_across']);
    expect(plan.cautions[0]).toContain('crush');
  });

  it('heights give the bench of a step its sink limits and what liner may come off', async () => {
    const words = ['engine-lathe', '--step', 'saddle-bottom', '--heights', 'heights.json', '--json'];
    const { plan } = JSON.parse((await said(words)).out);
    expect(plan.slide.pads.map((pad: { stock_um: number }) => pad.stock_um)).toEqual([800, 800, 800]);
    const nut = plan.sink.find((one: { name: string }) => one.name === 'half nut over lead screw');
    // 0.1 mm of allowance square to each face and the band of 80 µm below the aim, less the doubt of the bond.
    expect(nut.most_um).toBeGreaterThan(60);
    expect(nut.most_um).toBeLessThan(260);
    expect((await said(words.slice(0, 5))).out).toContain('half nut over lead screw: ');
  });

  it('one’s own file: a machine, or what was done to one of the program’s', async () => {
    const { code, out } = await said(['job.json', '--json'], {
      machine: 'surface-grinder',
      deeds: [
        { step: 'survey', what: 'done', hours: 4.5 },
        { step: 'table-bottom', what: 'worked', hours: 12 },
      ],
    });
    expect(code).toBe(0);
    const json = JSON.parse(out);
    expect(json.forecast.spent).toBe(16.5);
    expect(json.ready).toContain('table-bottom');
    const own = {
      id: 'mine',
      title: 'Mine',
      description: 'One face.',
      dimensions: [],
      bodies: [{ id: 'a', name: 'a' }],
      ways: [{ id: 'face', body: 'a', name: 'face' }],
      slides: [],
      steps: [
        {
          id: 'scrape',
          title: 'Scrape',
          reason: 'It is worn.',
          makes: ['face'],
          from: [{ master: 'plate', why: 'flat' }],
          proofs: [],
          cautions: [],
          hours: { likely: 5 },
        },
      ],
    };
    expect((await said(['own.json', '--done', 'scrape'], own)).out).toContain(
      'every step is done and stands',
    );
  });

  it('what cannot be taken is named, with what is expected; nothing is said on standard output', async () => {
    const unknown = await said(['lathe']);
    expect([unknown.code, unknown.out]).toEqual([2, '']);
    expect(unknown.err).toContain('one of engine-lathe, surface-grinder, vertical-knee-mill');
    const words = await said([
      'engine-lathe',
      '--done',
      'survey,bed,twice:survey,support=long,worked:survey,',
    ]);
    expect(words.code).toBe(2);
    expect(words.err).toContain('--done, word 2: "bed"; expected one of survey, support');
    expect(words.err).toContain('--done, word 3: "twice:survey"');
    expect(words.err).toContain('--done, word 4: "support=long"; expected hours from 0 to 10000');
    expect(words.err).toContain('--done, word 5: "worked:survey"; expected the hours worked');
    expect(words.err).toContain('--done, word 6: nothing; expected a step');
    expect((await said(['engine-lathe', '--step', 'x'])).err).toContain(
      '--step: "x"; expected one of survey',
    );
    expect(
      (await said(['job.json'], { machine: 'engine-lathe', deeds: [{ step: 'x', what: 'done' }] })).err,
    ).toContain('job.json: deeds[0].step: "x"; expected one of survey');
    expect((await said(['job.json'], '{')).err).toContain('job.json: line 1: the text breaks off');
    expect((await said(['job.json'], { id: 'x' })).code).toBe(2);
  });
});
