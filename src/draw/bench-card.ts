import type { JobPlan } from '../core/ledger/entry.ts';
import type { Setup } from '../core/ledger/setup.ts';
import type { Verdict } from '../core/prove/verdict.ts';
import { placed } from './chart-row.ts';
import { paragraph } from './chart-sheet.ts';
import { drawing, group } from './drawing.ts';
import { arrow, line, rectangle } from './line.ts';
import { phone } from './map-layout.ts';
import { type ZoneFace, zoneFace } from './map-zone.ts';
import { palette } from './palette.ts';
import { pushDrawing } from './push-drawing.ts';
import { rowGauge } from './row-gauge.ts';
import { setupDrawing } from './setup/figures.ts';
import { type Shape, shape } from './shape.ts';
import { brokenLines, label } from './text.ts';

/** Breadth of the card, px; two columns of it. */
export const benchCardWidth = 760;
const column = 366;
const gap = benchCardWidth - 2 * column;
const size = 14;

const words = (text: string, weight = 450): Shape => paragraph(text, { size, weight }, column);

/** A heading over a rule, the breadth of the column. */
const heading = (text: string): Shape =>
  drawing(
    { title: text, width: column, height: 32 },
    label(0, 22, text, { size: 19, weight: 680 }),
    line([0, 30], [column, 30], palette.line, 1),
  );

/** The bed from above: which way is plus. */
export function benchFrame(): Shape {
  const at = { x: 128, y: 16, wide: 150, tall: 58 };
  return drawing(
    {
      title: 'The frame, seen from above',
      desc: 'x runs along the bed from headstock to tailstock, y across it away from you, z up.',
      width: column,
      height: 106,
    },
    rectangle(at.x, at.y, at.wide, at.tall, palette.steel, { stroke: palette.ink, 'stroke-width': 1.5 }),
    line([at.x, at.y + at.tall * 0.68], [at.x + at.wide, at.y + at.tall * 0.68], palette.ink, 1),
    label(at.x - 8, at.y + 34, 'headstock', { size, anchor: 'end' }),
    label(at.x + at.wide + 8, at.y + 34, 'tailstock', { size }),
    label(at.x + at.wide / 2, at.y - 4, 'back', { size, anchor: 'middle' }),
    arrow([at.x + 10, at.y + at.tall + 12], [at.x + 74, at.y + at.tall + 12], palette.ink, 2.5, 11),
    label(at.x + 80, at.y + at.tall + 17, '+x', { size, weight: 640 }),
    arrow([at.x + 10, at.y + at.tall + 12], [at.x + 10, at.y + 14], palette.ink, 2.5, 11),
    label(at.x + 18, at.y + 28, '+y', { size, weight: 640 }),
    label(at.x + at.wide / 2 + 38, at.y + at.tall + 17, 'you stand here', { size, fill: palette.ink2 }),
  );
}

const blues: readonly { readonly word: ZoneFace; readonly says: string }[] = [
  {
    word: { kind: 'word', word: 'burnished', seed: 'card burnished' },
    says: 'rubbed through to bright metal: it carries hardest',
  },
  { word: { kind: 'word', word: 'heavy', seed: 'card heavy' }, says: 'full of blue: it bears' },
  {
    word: { kind: 'word', word: 'faint', seed: 'card faint' },
    says: 'a touch here and there: it only just bears',
  },
  { word: { kind: 'word', word: 'none', seed: 'card none' }, says: 'bare: it does not bear' },
];

/** What each look of the blue is called, four patches with their words beside them. */
function spotting(): Shape {
  const box = { wide: 96, tall: 38, pitch: 46 };
  return drawing(
    { title: 'What the blue shows', width: column, height: blues.length * box.pitch },
    ...blues.flatMap(({ word, says }, k) => [
      group({}, zoneFace(word, { x: 1, y: k * box.pitch + 1, width: box.wide, height: box.tall }, phone)),
      ...brokenLines(says, size, column - box.wide - 14).map((text, n, all) =>
        label(box.wide + 14, k * box.pitch + box.tall / 2 + 6 + (n - (all.length - 1) / 2) * 18, text, {
          size,
        }),
      ),
    ]),
  );
}

const verdicts: readonly { readonly verdict: Verdict; readonly value: number; readonly says: string }[] = [
  { verdict: 'within', value: 0, says: 'the value and its whole doubt lie inside' },
  { verdict: 'not proven', value: 9, says: 'the doubt crosses a limit: measure better' },
  { verdict: 'outside', value: 16, says: 'wholly beyond the limit' },
];

/** The three words of a verdict, each with its pin between the jaws. */
function judged(): Shape {
  const pitch = 40;
  return drawing(
    { title: 'Within, not proven, outside', width: column, height: verdicts.length * pitch },
    ...verdicts.flatMap(({ verdict, value, says }, k) => [
      placed(
        rowGauge({
          title: verdict,
          width: 100,
          height: 34,
          band: { low: -10, high: 10 },
          domain: [-22, 22],
          now: { value, doubt: 4, verdict },
        }),
        0,
        k * pitch,
      ),
      label(112, k * pitch + 14, verdict, { size, weight: 660 }),
      label(112, k * pitch + 31, says, { size, weight: 450 }),
    ]),
  );
}

const cautions = [
  'Castings crush and tip: rated lifting gear, and blocks under it before you reach.',
  'Scraper edges are razors: push away from you, guard the edge laid down, eye protection.',
  'Power off and locked before hand work.',
  'Solvents, blue, epoxy, hardener: read the sheet, gloves, air, oily rags in a closed bin.',
  'Old paint can hold lead, old linings asbestos: untested, treat them so.',
  'Limits are geometry, no safety rating. Your local rules and the licensed trades decide.',
];

/** Blocks one below the other, each with the space above it. */
function columnOf(
  x: number,
  top: number,
  blocks: readonly (readonly [number, Shape])[],
): { shapes: Shape[]; foot: number } {
  let y = top;
  const shapes = blocks.map(([above, block]) => {
    y += above;
    const here = placed(block, x, y);
    y += Number(block.attributes.height);
    return here;
  });
  return { shapes, foot: y };
}

/**
 * The bench card: signs, the push test, what the blue is called, the words of a verdict and the cautions, on one sheet to hang up.
 * @param plan  a lathe saddle's: its square set-up is drawn
 */
export function benchCard(
  plan: Pick<JobPlan, 'slide' | 'places'> & { readonly setups: readonly Setup[] },
): Shape {
  const { slide, places } = plan;
  const square = plan.setups.find((one) => one.kind === 'sweep');
  const title = 'Bench card';
  const first = columnOf(0, 46, [
    [0, heading('Signs')],
    [12, benchFrame()],
    [
      4,
      words(
        'An indicator is plus when its plunger is pushed in. What it rides on, what it touches and which way the plunger points decide the rest.',
      ),
    ],
    ...(square
      ? ([
          [6, setupDrawing({ setup: square, slide, places, width: column })],
          [2, words('Square, winding in: climbs is concave (plus), falls is convex (minus).', 560)],
        ] as const)
      : []),
    [
      2,
      words(
        'A level is plus when the end it is laid toward is high. Read it on the bed first and take that off.',
      ),
    ],
    [14, heading('The push test')],
    [8, pushDrawing({ shows: '+12', width: column })],
    [
      4,
      words(
        'Climbs: it counts as the card says. Falls: say so; the readings stay as typed, and each sign is turned in the sum.',
      ),
    ],
  ]);
  const second = columnOf(column + gap, 46, [
    [0, heading('What the blue is called')],
    [10, spotting()],
    [10, heading('Three words')],
    [10, judged()],
    [2, words('± is two standard deviations: the truth lies inside it 19 times in 20.')],
    [12, heading('Round by round')],
    [8, words('1 Square true to the bed. Sweep, level, blue, print.')],
    [0, words('2 Alignment out: scrape whole zones, as many passes as the map says.')],
    [0, words('3 Alignment in: spot the blue only. Both proven: stop.')],
    [
      4,
      words(
        'Alarm? Look in this order: sweep read backwards, wrong side touched, wrong flank, part flipped when the map was read, reference moved.',
      ),
    ],
    [12, heading('Cautions')],
    [8, words(cautions[0]!)],
    ...cautions.slice(1).map((text) => [2, words(text)] as const),
  ]);
  const height = Math.max(first.foot, second.foot) + 2;
  return drawing(
    {
      title,
      desc: 'Signs, the push test, what the blue is called, the words of a verdict and cautions.',
      width: benchCardWidth,
      height,
    },
    label(0, 28, title, { size: 28, weight: 680 }),
    shape('g', {}, ...first.shapes, ...second.shapes),
  );
}
