import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Rooms of core, downstairs first: each may import itself and those before it. */
const coreOrder =
  'quantity math body observe estimate rest prove kit survey print plan site parts sums gib heights axis chart order practice ledger'.split(
    ' ',
  );
/** What each floor may import besides itself. Faces meet adapters only in a file named main.ts. */
const floors: Record<string, string[]> = {
  core: [],
  contract: ['core'],
  draw: ['core'],
  shop: ['contract', 'core'],
  adapters: ['shop', 'contract', 'core'],
  faces: ['shop', 'contract', 'core', 'draw', 'machines', 'demo'],
};
const src = resolve('src');
const impure = /^(node:|react|fastify|better-sqlite3|kysely|highs|commander|zod)/;

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$/.test(name))
  .map((name) => join(src, name));

function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)].map((m) => m[1] ?? '');
}

function offence(file: string, target: string): string | undefined {
  const place = relative(src, file).split('/');
  const floor = place[0] ?? '';
  if (place.length === 1) return undefined; // src/index.ts is the library's door
  if (!target.startsWith('.')) {
    if (floor === 'core' && impure.test(target)) return `core is pure and may not import "${target}"`;
    return undefined;
  }
  const goal = relative(src, resolve(dirname(file), target)).split('/');
  const goalFloor = goal[0] ?? '';
  if (goalFloor === '..') return undefined; // machines/ and demo/ are data
  if (floor !== goalFloor) {
    const joining = floor === 'faces' && /(^|\/)main\.tsx?$/.test(file);
    if (joining && goalFloor === 'adapters') return undefined;
    if (!floors[floor]?.includes(goalFloor))
      return `${floor} may import ${floors[floor]?.join(', ') || 'nothing'}, not ${goalFloor}`;
    return undefined;
  }
  if (floor === 'core') {
    const from = coreOrder.indexOf(place[1] ?? '');
    const to = coreOrder.indexOf(goal[1] ?? '');
    if (from < 0) return `core/${place[1]} is not a room this test knows; name it in coreOrder`;
    if (to > from) return `core/${place[1]} may not import core/${goal[1]}, which is upstairs`;
  }
  if (floor === 'faces' && place[1] !== goal[1]) return `faces/${place[1]} may not import faces/${goal[1]}`;
  return undefined;
}

describe('imports point downstairs', () => {
  it('finds the sources', () => expect(files.length).toBeGreaterThan(10));
  it('no file imports from a floor or room above it', () => {
    const offences = files.flatMap((file) =>
      importsOf(file).flatMap((target) => {
        const why = offence(file, target);
        return why ? [`${relative(src, file)} → ${target}: ${why}`] : [];
      }),
    );
    expect(offences).toEqual([]);
  });
  it('sees an offender', () => {
    expect(offence(join(src, 'core/body/pad.ts'), '../plan/depth.ts')).toContain('upstairs');
    expect(offence(join(src, 'core/body/pad.ts'), 'node:fs')).toContain('pure');
    expect(offence(join(src, 'shop/steer.ts'), '../adapters/solver/highs.ts')).toContain('not adapters');
  });
});
