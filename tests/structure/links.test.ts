import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

const pages = ['README.md', 'CONTRIBUTING.md', 'CHANGELOG.md', 'docs', 'checks', 'machines'].flatMap(
  (place) => (statSync(place).isDirectory() ? readPages(place) : [place]),
);
function readPages(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .map((name) => join(folder, name));
}

/** Fenced text holds no links. */
const prose = (path: string): string => readFileSync(path, 'utf8').replace(/^```[\s\S]*?^```/gm, '');

/** Anchors of a page, as its headings are turned into them. */
const anchors = (path: string): Set<string> =>
  new Set(
    [...prose(path).matchAll(/^#{1,6} (.+)$/gm)].map(([, heading]) =>
      heading!
        .toLowerCase()
        .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
        .replace(/[^\p{L}\p{N}\s_-]/gu, '')
        .trim()
        .replace(/\s/g, '-'),
    ),
  );

describe('links in the pages', () => {
  it.each(pages)('%s', (page) => {
    const dead = [...prose(page).matchAll(/\]\(([^)\s]+)\)/g)]
      .map(([, link]) => link!)
      .filter((link) => !/^[a-z]+:/.test(link))
      .filter((link) => {
        const [file, anchor] = link.split('#') as [string, string | undefined];
        const target = file === '' ? page : normalize(join(dirname(page), file));
        if (!existsSync(target)) return true;
        return anchor !== undefined && target.endsWith('.md') && !anchors(target).has(anchor);
      });
    expect(dead).toEqual([]);
  });
  it('docs/README.md names every page of the folder', () => {
    const index = readFileSync('docs/README.md', 'utf8');
    for (const page of readPages('docs').filter((path) => !path.endsWith('README.md')))
      expect(index).toContain(`(${page.replace('docs/', '')})`);
  });
  it('every picture is one that scripts/pictures.mjs takes', () => {
    const taken = readFileSync('scripts/pictures.mjs', 'utf8');
    for (const picture of readdirSync('docs/pictures'))
      expect(taken, picture).toContain(`'${picture.replace('.png', '')}'`);
  });
});
