import { axisInput } from '../../contract/axis.ts';
import { axis } from '../../shop/order/axis.ts';
import { registerSheet } from './sheet-verb.ts';

/** `waywright axis FILE`. */
export const registerAxis = registerSheet({
  verb: 'axis',
  example: `
Example:
  waywright axis headstock.json          axis against the travel, and which pad of the headstock to scrape
  waywright axis headstock.json --json   the same as one JSON document
The file's shape is in docs/contract.md.`,
  read: axisInput,
  answer: axis,
  sentences: (answer) => [
    ...answer.axes.map((one) => `${one.side}: ${one.sentence}`),
    ...(answer.pads ?? []).map((one) => one.sentence),
    ...answer.centres.map((one) => one.sentence),
  ],
});
