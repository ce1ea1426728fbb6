import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { openZip } from '../../adapters/archive/zip-read.ts';
import { zipOf } from '../../adapters/archive/zip-write.ts';
import { readTemplates } from '../../adapters/file/templates.ts';
import { photoFolder } from '../../adapters/photo/folder.ts';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { openSqlite } from '../../adapters/store/sqlite.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import type { Doors } from './doors.ts';
import { registerJob } from './job.ts';
import { run } from './run.ts';
import { registerSteer } from './steer.ts';

const demoText = readFileSync('demo/saddle.job.json', 'utf8');
const entries: number = JSON.parse(demoText).entries.length;

// Jobs with photos have a test of their own; here no file is an archive.
const archiveDoors: ArchiveDoors = {
  photos: async () => photoFolder(join(workshop, '..', 'photos')),
  packed: zipOf,
  open: openZip,
  isArchive: async () => false,
  writePieces: async () => undefined,
};

let workshop: string;
let files: Map<string, string>;
beforeEach(() => {
  workshop = join(mkdtempSync(join(tmpdir(), 'waywright-cli-')), 'workshop.db');
  files = new Map([['demo.json', demoText]]);
});

/** Runs the command line on a workshop and files of its own. */
async function waywright(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const doors: Doors = {
    readText: async (file) => {
      const text = files.get(file);
      if (text === undefined) throw new Error(`no file ${file}`);
      return text;
    },
    writeText: async (file, text) => void files.set(file, text),
    say: (line) => out.push(line),
    complain: (line) => err.push(line),
    solve: solveWithHighs,
    withStore: async (work) => {
      const store = await openSqlite(workshop);
      try {
        return await work(store);
      } finally {
        await store.close();
      }
    },
    templates: () => readTemplates(),
    now: () => '2031-11-25T14:32:00Z',
  };
  const code = await run(words, doors, [registerJob(archiveDoors), registerSteer], '0');
  return { code, out: out.join('\n'), err: err.join('\n') };
}

describe('waywright job', () => {
  it('says what to do in an empty workshop', async () => {
    expect((await waywright('job', 'list')).out).toContain('waywright job new');
    expect(JSON.parse((await waywright('job', 'list', '--json')).out)).toEqual({ jobs: [] });
  });

  it('makes a job from a template and the user’s dimensions', async () => {
    const made = await waywright(
      ...['job', 'new', '--template', 'lathe-saddle', '--title', 'Ours', '--id', 'ours'],
      ...['--set', 'length=512', '--json'],
    );
    expect([made.code, made.err]).toEqual([0, '']);
    expect(JSON.parse(made.out)).toEqual({ id: 'ours', entries: 1, again: false });
    const shown = JSON.parse((await waywright('job', 'show', 'ours', '--json')).out);
    expect(shown.plan.title).toBe('Ours');
    expect(shown.plan.slide.pads[0].length_mm).toBe(512);
    expect(shown.answer).toEqual({ seq: 1, rounds: [] });
    expect((await waywright('job', 'list')).out).toMatch(/ours +Ours +1 +1/);
  });

  it('names what it cannot take, leaves with 2, and writes nothing', async () => {
    const asked = async (...words: string[]) => {
      const { code, out, err } = await waywright('job', 'new', '--title', 'Ours', ...words);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    expect(await asked('--template', 'spaceship')).toMatch(
      /template: "spaceship"; expected one of .*"lathe-saddle"/,
    );
    expect(await asked('--template', 'lathe-saddle', '--set', 'length')).toContain('expected key=value');
    expect(await asked('--template', 'lathe-saddle', '--set', 'length=long')).toContain(
      'dimensions.length: "long"',
    );
    expect(await asked('--template', 'lathe-saddle', '--set', 'wings=2')).toContain('dimensions.wings');
    expect(await asked('--template', 'lathe-saddle', '--id', 'my saddle')).toContain('id: "my saddle"');
    expect(await asked()).toContain('--template');
    expect(JSON.parse((await waywright('job', 'list', '--json')).out).jobs).toEqual([]);
  });

  it('import and export give the same bytes; twice is once; another id when asked', async () => {
    expect((await waywright('job', 'import', 'demo.json')).out).toContain(`${entries} entries`);
    expect((await waywright('job', 'import', 'demo.json')).out).toContain('was kept already');
    await waywright('job', 'export', 'demo-saddle', '--out', 'out.json');
    expect(files.get('out.json')).toBe(demoText);
    expect(`${(await waywright('job', 'export', 'demo-saddle')).out}\n`).toBe(demoText);
    expect((await waywright('job', 'import', 'demo.json', '--as', 'second')).code).toBe(0);
    const { jobs } = JSON.parse((await waywright('job', 'list', '--json')).out);
    expect(jobs.map((job: { id: string }) => job.id)).toEqual(['demo-saddle', 'second']);
  });

  it('refuses a different job under the same id, and a file that does not fit, by name', async () => {
    await waywright('job', 'import', 'demo.json');
    const file = JSON.parse(demoText);
    file.entries[1].at = '2031-01-01T00:00:00Z';
    files.set('other.json', JSON.stringify(file));
    const other = await waywright('job', 'import', 'other.json');
    expect([other.code, other.out]).toEqual([2, '']);
    expect(other.err).toContain('"demo-saddle" with other entries');
    file.entries[3].seq = 77;
    files.set('gap.json', JSON.stringify(file));
    expect((await waywright('job', 'import', 'gap.json')).err).toContain(
      'gap.json: entries[3].seq: 77; expected 4',
    );
    files.set('torn.json', demoText.slice(0, 900));
    const torn = await waywright('job', 'import', 'torn.json');
    expect([torn.code, torn.err]).toEqual([
      2,
      expect.stringMatching(/^torn\.json: line \d+: .*; expected JSON$/),
    ]);
    await waywright('job', 'export', 'demo-saddle', '--out', 'out.json');
    expect(files.get('out.json')).toBe(demoText);
  });

  it('steer on a job’s rounds answers as the job does', async () => {
    await waywright('job', 'import', 'demo.json');
    files.set('rounds.json', (await waywright('job', 'steer-input', 'demo-saddle')).out);
    const steered = await waywright('steer', 'rounds.json', '--json');
    const shown = await waywright('job', 'show', 'demo-saddle', '--json');
    expect([steered.code, shown.code]).toEqual([0, 0]);
    expect(JSON.parse(shown.out).answer.steer).toEqual(JSON.parse(steered.out));
  });

  it('shows a person where the job stands, that it is invented, and every number with its doubt', async () => {
    await waywright('job', 'import', 'demo.json');
    const { code, out } = await waywright('job', 'show', 'demo-saddle');
    expect(code).toBe(0);
    expect(out).toContain('Invented');
    expect(out).toContain(`round 4, ${entries} entries`);
    expect(out).toContain('±');
  });

  it.each(['show', 'export', 'steer-input'])('%s of a job that is not there leaves with 2', async (verb) => {
    const { code, out, err } = await waywright('job', verb, 'nothing');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('id: "nothing"; expected a job of this workshop');
  });

  it.each(['list', 'new', 'show', 'export', 'import', 'steer-input'])(
    '%s --help tells its words',
    async (verb) => {
      const { code, out } = await waywright('job', verb, '--help');
      expect(code).toBe(0);
      expect(out).toContain(`waywright job ${verb}`);
      expect(out).toContain('Example');
    },
  );
});
