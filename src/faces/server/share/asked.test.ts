import { expect, it } from 'vitest';
import { askedHelp, askedOf } from './asked.ts';

it('a port of one’s own, help, and what it is not', () => {
  expect(askedOf([])).toEqual({ share: false });
  expect(askedOf(['--port', '8080', '--share'])).toEqual({ share: true, port: 8080 });
  expect(askedOf(['--help']).help).toBe(true);
  for (const typed of ['x', '70000', '-1', '80.5', ''])
    expect(() => askedOf([`--port=${typed}`])).toThrow(
      `--port: ${JSON.stringify(typed)}; expected a whole number`,
    );
  expect(() => askedOf(['--prot', '8080'])).toThrow('expected --port NUMBER');
});

it('the help names every word that is understood', () => {
  for (const word of ['--port', '--share', '--cert', '--key', 'WAYWRIGHT_DATA'])
    expect(askedHelp).toContain(word);
});
