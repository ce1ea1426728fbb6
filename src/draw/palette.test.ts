import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { palette } from './palette.ts';

it('drawings on paper have the colours of the light theme on the screen', () => {
  const css = readFileSync(new URL('../faces/web/look/tokens.css', import.meta.url), 'utf8');
  const light = css.slice(css.indexOf(':root'), css.indexOf('@media'));
  for (const value of Object.values(palette)) {
    const [, name, colour] = /^var\((--[\w-]+), (#[0-9a-f]{6})\)$/.exec(value) ?? [];
    const stated = new RegExp(`${name}:\\s*(#[0-9a-fA-F]{6})`).exec(light)?.[1];
    expect([name, stated?.toLowerCase()]).toEqual([name, colour]);
  }
});
