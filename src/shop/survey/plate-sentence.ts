import { sayLength } from '../../core/quantity/length.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { decisionSentence, sayWidth } from './line-sentence.ts';
import type { PlateAnswer } from './plate.ts';

/** How many of the points lie in the upper or lower third of the zone decides the word. */
function shapeOf(answer: PlateAnswer): string {
  const { pattern } = answer;
  if (pattern === '3-1') return 'low in the middle of three high places';
  if (pattern === '1-3') return 'high in the middle of three low places';
  if (pattern === '2-1') return 'hollow along a line';
  if (pattern === '1-2') return 'crowned along a line';
  return 'two high and two low places across from each other: twisted or saddled';
}

/** The result as one would say it: how flat, what shape holds it, how far it can be trusted. */
export function plateSentence(answer: PlateAnswer, system: UnitSystem = 'metric'): string {
  const xs = answer.points.map((point) => point.x_mm);
  const ys = answer.points.map((point) => point.y_mm);
  const across = (values: readonly number[]) => {
    let [low, high] = [Infinity, -Infinity];
    for (const value of values) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return sayLength(high - low, system).text;
  };
  const width = sayWidth(answer.flatness_um.minimum_zone, system, answer.sd?.minimum_zone);
  const name = answer.name ?? 'The surface';
  return `${name} is flat within ${width} over ${across(xs)} × ${across(ys)} (minimum zone): ${shapeOf(answer)}.${decisionSentence(answer.decision, system)}`;
}
