// Surveys
import { readFileSync } from 'node:fs';
import {
  along,
  alongInput,
  alongSentence,
  line,
  lineFromTable,
  lineInput,
  lineSentence,
  lineZone,
  planeZone,
  plate,
  plateFromTable,
  plateInput,
  plateSentence,
  site,
  siteInput,
} from 'waywright';

// lineInput, line, lineSentence: a level of 0.01 mm/m a division, stepped six times along a way
const way = line(lineInput({ kind: 'angles', step_mm: 200, angles_urad: [30, 60, -30, -10, -30, 40] }));
console.log(way.endpoint_um.map((um) => um.toFixed(1)).join(' '));
console.log(lineSentence(way));

// lineFromTable: the same from columns pasted out of a sheet
const pasted = lineFromTable('station_mm,height_um\n0,0\n200,4\n400,14\n600,6\n800,2\n1000,-6\n1200,0');
console.log(line(pasted.input).straightness_um.minimum_zone.toFixed(4));

// lineZone: the exact minimum zone, without the rest
console.log(lineZone([0, 200, 400, 600], [0, 9, 4, 0]).width_um);

// plateInput, plate, plateSentence: a surface of nine points
const heights = [0, 15, 7, -12, 20, 4, 5, -10, 2];
const points = heights.map((z_um, k) => ({ x_mm: 100 * (k % 3), y_mm: -100 * Math.floor(k / 3), z_um }));
const flat = plate(plateInput({ kind: 'points', points }));
console.log(flat.flatness_um.minimum_zone, plateSentence(flat));

// plateFromTable: from columns
const rows = points.map(({ x_mm, y_mm, z_um }) => `${x_mm},${y_mm},${z_um}`);
console.log(
  plate(plateFromTable(`x_mm,y_mm,z_um\n${rows.join('\n')}`).input).flatness_um.least_squares.toFixed(3),
);

// planeZone: the exact minimum zone of points, without the rest
const lists = { x_mm: points.map((at) => at.x_mm), y_mm: points.map((at) => at.y_mm), z_um: heights };
console.log(planeZone(lists).width_um);

// alongInput, along, alongSentence: one way against another, by a level across both
console.log(
  alongSentence(
    along(alongInput({ kind: 'twist', stations_mm: [0, 250, 500, 750], tilts_urad: [0, 10, 25, 30] })),
  ),
);

// siteInput, site: where along a worn bed to print
const { input } = JSON.parse(readFileSync('checks/data/cases/site-1.json', 'utf8'));
const where = site(siteInput(input));
console.log(where.ok, where.best);
