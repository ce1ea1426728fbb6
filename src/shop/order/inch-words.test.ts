import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { axisInput } from '../../contract/axis.ts';
import { jobFile } from '../../contract/job-file.ts';
import { foldJob } from '../../core/ledger/job.ts';
import { axesOf } from '../../core/ledger/rebuild-record.ts';
import { axis } from './axis.ts';
import { linkWords } from './heights-words.ts';
import { jobHeights } from './rebuild.ts';

const templates = readTemplates();
const lathe = foldJob(jobFile(JSON.parse(readFileSync('demo/lathe.job.json', 'utf8'))).entries);
const metricFigure = /\d\s*(mm|µm)\b/;

describe('sentences of an inch shop', () => {
  it('heights and their links have no metric figure, and mean the same: 25.4 mm is an inch', () => {
    const metric = jobHeights(lathe, templates);
    const inch = jobHeights(lathe, templates, undefined, 'inch');
    if (!metric?.ok || !inch?.ok) throw new Error('expected heights');
    expect(inch.heights.map((one) => one.um)).toEqual(metric.heights.map((one) => one.um));
    let compared = 0;
    for (const [k, height] of inch.heights.entries()) {
      expect(height.sentence).not.toMatch(metricFigure);
      const links = linkWords(height, 'inch');
      linkWords(metric.heights[k]!, 'metric').forEach((text, i) => {
        const figure = (words: string) => Number(/(\d+\.\d+)\u00a0(mm|in)/.exec(words)![1]);
        expect(links[i]).not.toMatch(metricFigure);
        // Three places of a mm beside four of an inch: each rounds by half its last place.
        expect(Math.abs(figure(links[i]!) * 25.4 - figure(text))).toBeLessThan(0.0005 + 0.00127 + 1e-9);
        compared += 1;
      });
    }
    expect(compared).toBeGreaterThan(5);
    for (const { text } of inch.warnings) expect(text).not.toMatch(metricFigure);
  });

  it('axes are told in thou over 12 in', () => {
    const [kept] = axesOf(lathe.live).values();
    const told = axis(axisInput(kept!.asked), [], templates, 'inch');
    const texts = [...told.axes, ...told.centres].map((one) => one.sentence);
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) {
      expect(text).not.toMatch(metricFigure);
      expect(text).toMatch(/thou|tenths/);
    }
  });
});
