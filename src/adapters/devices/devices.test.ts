import { appendFileSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Cluster, newCluster } from '../../../tests/fixture/cluster.ts';
import type { DeviceLog } from '../../shop/share/devices.ts';
import { Fault } from '../../shop/store.ts';
import { openPostgres } from '../store/postgres.ts';
import { deviceDesk, invitationLasts_ms } from './desk.ts';
import { deviceFile } from './device-file.ts';
import { deviceTable } from './device-table.ts';

const newFile = () => join(mkdtempSync(join(tmpdir(), 'waywright-devices-')), 'devices.jsonl');
const key = (figure: string) => figure.repeat(64);
const phone = { name: 'Phone', role: 'writer', keySha256: key('a') } as const;

let cluster: Cluster;
const opened: { close: () => Promise<void> }[] = [];
beforeAll(async () => {
  cluster = await newCluster();
}, 60_000);
afterAll(async () => {
  for (const one of opened) await one.close();
  await cluster?.stop();
});

/** A workshop of each kind, and how a server more gets at its devices. */
const kinds: readonly [string, () => Promise<() => DeviceLog>][] = [
  [
    'beside a file',
    async () => {
      const file = newFile();
      return () => deviceFile(file);
    },
  ],
  [
    'in a database',
    async () => {
      const url = await cluster.database();
      await (await openPostgres(url)).close();
      return () => {
        const table = deviceTable(url);
        opened.push(table);
        return table;
      };
    },
  ],
];

describe.each(kinds)('devices %s, two servers', (_, place) => {
  it('what one lets in is in at the other and after a restart, what one takes away is out at the other', async () => {
    const server = await place();
    const one = deviceDesk(server()).devices;
    const other = deviceDesk(server()).devices;
    const made = await one.letIn(phone);
    await other.fresh();
    expect(other.holding(key('a'))).toEqual(made);
    expect(await one.remove(made.id)).toBe(true);
    await other.fresh();
    expect(other.holding(key('a'))).toBeUndefined();
    expect(other.list()).toEqual([]);
    expect(await other.remove(made.id)).toBe(false);
  });

  it('an invitation made at one is honoured at the other, and lets in one device however many come at once', async () => {
    const server = await place();
    const [one, two, three] = [server(), server(), server()].map((log) => deviceDesk(log).invitations);
    const { secret, code } = await one!.make('reader');
    const answers = await Promise.all([two!.take(secret), three!.take(code), one!.take(code)]);
    expect(answers.toSorted()).toEqual(['not known', 'not known', 'reader']);
    expect(await two!.take(secret)).toBe('not known');
  });

  it('guesses at one and the other together close every open invitation', async () => {
    const server = await place();
    const [one, two] = [server(), server()].map((log) => deviceDesk(log).invitations);
    const { code } = await one!.make('writer');
    for (let k = 0; k < 5; k++) {
      expect(await one!.take(`0000-000${k}`)).toBe('not known');
      expect(await two!.take(`0000-100${k}`)).toBe(k < 4 ? 'not known' : 'closed');
    }
    expect(await one!.take(code)).toBe('closed');
    const again = await two!.make('writer');
    expect(await one!.take(again.code)).toBe('writer');
  });

  it('an invitation ends; neither its secret nor its code is kept', async () => {
    const server = await place();
    let now = Date.parse('2031-11-25T14:00:00Z');
    const { make, take } = deviceDesk(server(), () => now).invitations;
    const { secret, code } = await make('writer');
    const kept = JSON.stringify(await server().news());
    expect(kept).not.toContain(secret);
    expect(kept).not.toContain(code.replace('-', ''));
    now += invitationLasts_ms + 1;
    expect(await take(secret)).toBe('not known');
  });

  it('says when a device was here last, to ten minutes', async () => {
    const server = await place();
    let now = Date.parse('2031-11-25T14:00:00Z');
    const { devices } = deviceDesk(server(), () => now);
    await devices.letIn(phone);
    const seen = async () => {
      await devices.saw(devices.holding(key('a'))!);
      return devices.list()[0]!.seen;
    };
    now += 60_000;
    expect(await seen()).toBe('2031-11-25T14:00:00.000Z');
    now += 600_000;
    expect(await seen()).toBe('2031-11-25T14:11:00.000Z');
    expect(await seen()).toBe('2031-11-25T14:11:00.000Z');
    now += 600_000;
    await seen();
    const { devices: other } = deviceDesk(server());
    await other.fresh();
    expect(other.list()[0]!.seen).toBe('2031-11-25T14:21:00.000Z');
  });
});

describe('the file of devices', () => {
  const listed = async (file: string) => {
    const { devices } = deviceDesk(deviceFile(file));
    await devices.fresh();
    return devices;
  };

  it('is for its owner’s eyes only', async () => {
    const file = newFile();
    await (await listed(file)).letIn(phone);
    expect(statSync(file).mode & 0o077).toBe(0);
  });

  it('a line torn by a crash was never acknowledged, and what is written after it counts', async () => {
    const file = newFile();
    const made = await (await listed(file)).letIn(phone);
    appendFileSync(file, '{"kind":"let in","id":"0123');
    const again = await listed(file);
    expect(again.list()).toHaveLength(1);
    expect(await again.remove(made.id)).toBe(true);
    expect(again.list()).toEqual([]);
    expect((await listed(file)).list()).toEqual([]);
  });

  it('a line that cannot be read lets nobody in, since it might be one that keeps somebody out', async () => {
    const file = newFile();
    await (await listed(file)).letIn(phone);
    writeFileSync(file, `${readFileSync(file, 'utf8')}{"kind":"remowed"}\n`);
    await expect(listed(file)).rejects.toThrow(Fault);
  });

  it('taken away, it lets nobody in any more, and a new one counts from its beginning', async () => {
    const file = newFile();
    const devices = await listed(file);
    await devices.letIn(phone);
    rmSync(file);
    await devices.fresh();
    expect(devices.list()).toEqual([]);
    await devices.letIn({ ...phone, name: 'Another' });
    expect(devices.list().map(({ name }) => name)).toEqual(['Another']);
  });
});
