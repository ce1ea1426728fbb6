import { Matrix, solve } from 'ml-matrix';
import { settling } from '../dist/core/body/settle.js';
import { zonesOf } from '../dist/core/body/slide.js';
import { estimateSlide } from '../dist/core/estimate/estimate-slide.js';
import { levelRow } from '../dist/core/observe/level.js';
import { faceColumn, sweepRows } from '../dist/core/observe/sweep.js';
import { timed } from './clock.mjs';
import { benchInputs } from './slide.mjs';

/** Rounds known: the time grows with them, and with the other beliefs carried when rounds contradict. */
const histories = [1, 4, 6];

/**
 * The same readings in one dense least squares, all rounds at once: unknown are the first round's zone heights, the square's
 * error, a constant for each sweep and the removal of a pass; a wide prior, sweeps, levels, and each print as a height.
 */
function denseBatch(input) {
  const zones = zonesOf(input.slide);
  const { rows: zoneRows, response } = settling(input.slide);
  const n = zones.length;
  const unknowns = n + 2 + input.rounds.length;
  const A = [];
  const b = [];
  const add = (row, value, sd) => {
    A.push(row.map((part) => part / sd));
    b.push(value / sd);
  };
  const blank = () => new Array(unknowns).fill(0);
  const made = new Array(n).fill(0);
  const pass = n + 1;
  for (let z = 0; z < n; z++) {
    const row = blank();
    row[z] = 1;
    add(row, 0, 50);
  }
  const prior = blank();
  prior[pass] = 1;
  add(prior, 10, 3);
  // A row over the pose as a row over heights and removal: pose = response · (h + removal · passes so far).
  const overHeights = (poseRow) => {
    const row = blank();
    for (let z = 0; z < n; z++) {
      row[z] = poseRow.reduce((sum, part, j) => sum + part * response[j][z], 0);
      row[pass] += row[z] * made[z];
    }
    return row;
  };
  input.rounds.forEach((round, r) => {
    for (const sweep of round.sweeps) {
      const column = faceColumn(sweep);
      sweepRows(sweep).forEach((poseRow, i) => {
        const row = overHeights(poseRow);
        row[n] = column[i];
        row[n + 2 + r] = 1;
        add(row, sweep.readings_um[i], sweep.reading_sd_um);
      });
    }
    for (const level of round.levels) add(overHeights(levelRow(level)), level.reading_urad, level.sd_urad);
    zones.forEach((_, z) => {
      const row = overHeights(zoneRows[z]);
      row[z] += 1;
      row[pass] += made[z];
      const share = round.print[zones[z].pad.name][zones[z].index];
      add(row, 3 - 4 * (share - 0.5), 4);
    });
    if (round.scraped)
      zones.forEach((zone, z) => {
        made[z] += round.scraped.passes[zone.pad.name][zone.index];
      });
  });
  return solve(new Matrix(A), Matrix.columnVector(b)).to1DArray();
}

export async function estimateTiming(quick) {
  const seconds = quick ? 0.2 : 2;
  const timings = [];
  for (const rounds of histories) {
    const inputs = await benchInputs(rounds);
    let turn = 0;
    const ours = () => estimateSlide(inputs[turn++ % inputs.length]);
    const theirs = () => denseBatch(inputs[turn++ % inputs.length]);
    timings.push({
      what: `estimate, ${rounds} round${rounds === 1 ? '' : 's'} of sweep, levels and print`,
      aim: 'under 5 ms',
      times: await timed(ours, { seconds }),
      reference: { name: 'one dense least squares (ml-matrix, QR)', times: await timed(theirs, { seconds }) },
    });
  }
  return timings;
}
