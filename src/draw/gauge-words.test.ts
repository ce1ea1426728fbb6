import { describe, expect, it } from 'vitest';
import { jawThick } from './gauge-row.ts';
import { rowWords } from './gauge-words.ts';
import type { Stretch } from './keep-clear.ts';
import { textWidth } from './text.ts';

const room: Stretch = [40, 356];
const row = { kind: 'forecast', label: 'R2', value: 0, doubt: 20, text: 'forecast −2 ± 20' } as const;
const width = textWidth(row.text, 15);

describe('the value of a forecast that is wider than the band', () => {
  it('is never written through a jaw while there is room beside it', () => {
    let under = 0;
    for (let low = 60; low < 330; low += 10)
      for (let high = low + 20; high < 340; high += 15)
        for (let x = 50; x < 350; x += 25) {
          const jaws: Stretch[] = [
            [low - jawThick - 3, low + 3],
            [high - 3, high + jawThick + 3],
          ];
          const place = { x, half: 150, y: 40, height: 17, left: room[0], right: room[1] };
          const words = rowWords(
            { row, place },
            { title: '', width: 358, band: {}, rows: [] },
            room,
            jaws,
            low,
            high,
          )!;
          if (words.under) under += 1;
          const meets = ([a, b]: Stretch) => words.at < b && a < words.at + width;
          const gaps: Stretch[] = [
            [room[0], jaws[0]![0]],
            [jaws[0]![1], jaws[1]![0]],
            [jaws[1]![1], room[1]],
          ];
          if (gaps.some(([a, b]) => b - a >= width))
            expect(jaws.some(meets), `${low} ${high} ${x}`).toBe(false);
        }
    expect(under).toBeGreaterThan(100);
  });
});
