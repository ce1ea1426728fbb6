// Writes docs/drawings/*.svg, drawn by src/draw, readable on light and on dark. Usage: npm run build && node scripts/drawings.mjs
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { plannedJob, templateInput } from '../dist/contract/template.js';
import { benchFrame } from '../dist/draw/bench-card.js';
import { pushDrawing } from '../dist/draw/push-drawing.js';
import { setupDrawing } from '../dist/draw/setup/figures.js';
import { svgText } from '../dist/draw/shape.js';

const tokens = readFileSync('src/faces/web/look/tokens.css', 'utf8');
/** Colours of the first block behind a line, as declarations. */
const colours = (from) =>
  [
    ...tokens
      .slice(tokens.indexOf(from))
      .split('}')[0]
      .matchAll(/--[a-z0-9-]+: #[0-9a-f]{6};/g),
  ]
    .map(([one]) => one)
    .join(' ');
const themed = `<style>svg { ${colours(':root {')} } @media (prefers-color-scheme: dark) { svg { ${colours(':root:not(')} } }</style><rect x="-10" y="-8" width="100%" height="100%" fill="var(--paper)"/>`;

const plan = plannedJob(
  templateInput(JSON.parse(readFileSync('machines/lathe-saddle.json', 'utf8'))),
  {},
  'saddle',
);
const setup = (id) => setupDrawing({ ...plan, setup: plan.setups.find((one) => one.id === id), width: 420 });
const drawings = {
  frame: benchFrame(),
  square: setup('square'),
  'level-across': setup('level_across'),
  'level-along': setup('level_along'),
  'push-climbs': pushDrawing({ shows: '+12', width: 366 }),
  'push-falls': pushDrawing({ shows: '−12', width: 366 }),
};
mkdirSync('docs/drawings', { recursive: true });
for (const [name, drawing] of Object.entries(drawings)) {
  const { width, height } = drawing.attributes;
  const roomy = {
    ...drawing,
    attributes: {
      ...drawing.attributes,
      width: width + 20,
      height: height + 16,
      viewBox: `-10 -8 ${width + 20} ${height + 16}`,
    },
  };
  // Behind the title, so that the figure keeps its name.
  writeFileSync(`docs/drawings/${name}.svg`, `${svgText(roomy).replace('</title>', `</title>${themed}`)}\n`);
  console.log(`docs/drawings/${name}.svg`);
}
