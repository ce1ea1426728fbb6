import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { SteerAnswer } from '../../src/core/plan/answer.ts';

/** Figures of the map's zones by pad, minus end of the travel first, as they stand on the screen. */
export const mapFigures = (page: Page): Promise<Record<string, string[]>> =>
  page.evaluate(() => {
    const figures: Record<string, string[]> = {};
    for (const zone of document.querySelectorAll('[data-pad][data-zone]')) {
      const pad = zone.getAttribute('data-pad')!;
      figures[pad] ??= [];
      const text = [...zone.querySelectorAll('text')].map((one) => one.textContent).join('');
      figures[pad][Number(zone.getAttribute('data-zone'))] = text;
    }
    return figures;
  });

/** The map comes to show the passes of `answer`, to be made now. */
export async function expectPasses(page: Page, answer: SteerAnswer): Promise<void> {
  const expected: Record<string, string[]> = {};
  for (const zone of answer.plan.zones) {
    expected[zone.pad] ??= [];
    expected[zone.pad]![zone.zone] = String(zone.passes_now);
  }
  await expect.poll(() => mapFigures(page)).toEqual(expected);
}
