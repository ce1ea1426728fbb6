import { describe, expect, it } from 'vitest';
import type { Doors } from './doors.ts';
import { run } from './run.ts';
import { registerServe } from './serve.ts';

/** Says how the verb left, what it complained of, and with what the server was started, if it was. */
async function served(...words: string[]) {
  const started: { words: readonly string[]; port: string | undefined }[] = [];
  const err: string[] = [];
  const doors = { say: () => undefined, complain: (line: string) => err.push(line) } as unknown as Doors;
  const verb = registerServe(async (given, port) => {
    started.push({ words: given, port });
    return 0;
  });
  return { code: await run(['serve', ...words], doors, [verb], '0'), err: err.join('\n'), started };
}

describe('waywright serve', () => {
  it('hands its words to the server', async () => {
    const { code, started } = await served('--share', '--cert', 'c.pem', '--key', 'k.pem', '--port', '7200');
    expect(code).toBe(0);
    expect(started).toEqual([{ words: ['--share', '--cert', 'c.pem', '--key', 'k.pem'], port: '7200' }]);
  });

  it.each(['abc', '65536', '-1', '1e3', ''])(
    'a port of %j is named, and nothing is started',
    async (port) => {
      const { code, err, started } = await served(`--port=${port}`);
      expect(code).toBe(2);
      expect(err).toContain('--port');
      expect(err).toContain('a whole number from 0 to 65535');
      expect(started).toEqual([]);
    },
  );

  it('a certificate without its key, or a key without its certificate, is told', async () => {
    const alone = await served('--cert', 'c.pem');
    expect([alone.code, alone.started]).toEqual([2, []]);
    expect(alone.err).toContain('--key');
    const other = await served('--key', 'k.pem');
    expect([other.code, other.started]).toEqual([2, []]);
    expect(other.err).toContain('--cert');
  });
});
