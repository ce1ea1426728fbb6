import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';

it('a thousand spoiled requests over every route: none ends the server, none is answered with 5xx', () => {
  // Leaves with 1 when one does; the whole run of 100,000 is `node bench/fuzz.mjs`.
  const said = execFileSync(process.execPath, ['bench/fuzz.mjs', '1000', '11'], { encoding: 'utf8' });
  expect(said).toMatch(/^1000 requests over \d{2,} routes/m);
  expect(said).toContain('5xx: 0; unanswered: 0; server stands');
});
