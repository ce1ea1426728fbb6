// Whole machines
import { readdirSync, readFileSync } from 'node:fs';
import {
  axis,
  axisInput,
  gib,
  gibInput,
  heights,
  heightsAsk,
  machineInput,
  order,
  orderFile,
  parts,
  partsInput,
  templateInput,
} from 'waywright';

const all = (folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => JSON.parse(readFileSync(`${folder}/${file}`, 'utf8')));

// templateInput, machineInput: the forms of slides and the machines that come with the program; one of your own is read the same way
const templates = all('machines').map(templateInput);
const machines = all('machines/whole').map((value) => machineInput(value, templates));
console.log(templates.length, machines.map((machine) => machine.title).join(', '));

// orderFile, order: what is ready first, after the survey is done
const file = orderFile(
  { machine: 'engine-lathe', deeds: [{ step: 'survey', what: 'proven', hours: 6 }] },
  machines,
  (value) => machineInput(value, templates),
);
const { steps } = order(file.machine, file.deeds);
console.log(
  steps
    .filter((step) => step.status === 'ready')
    .map((step) => step.title)
    .join('; '),
);

// heightsAsk, heights: the liner that brings a half nut back to its lead screw
const ask = heightsAsk(
  {
    machine: 'engine-lathe',
    changes: [
      {
        name: 'wear',
        joint: 'saddle-on-bed',
        when: 'found',
        off_um: { 'front flank': 310, 'rear flank': 330, flat: 460 },
        sd_um: 5,
      },
    ],
    liners: [
      {
        joint: 'saddle-on-bed',
        pads: ['front flank', 'rear flank', 'flat'],
        brings: 'half nut over lead screw',
        sheet_mm: 1.6,
      },
    ],
  },
  machines,
  templates,
);
console.log(heights(ask).ok);

// axisInput, axis: a spindle from a test bar turned half round
const lies = axis(
  axisInput({
    bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320, reading_sd_um: 1 },
    readings: [{ side: 'top', near: [1, -3], far: [9, -21] }],
    bands: { up: { low_um: 0, high_um: 20, over_mm: 300 } },
  }),
  machines,
  templates,
);
console.log(lies.axes[0].slope_urad.toFixed(1));

// gibInput, gib: a dovetail over rolls at both ends
const dovetail = gib(
  gibInput({
    angle_deg: 60,
    rolls: { kind: 'male', roll_mm: 10, stations_mm: [0, 150, 300], read_mm: [67.3205, 67.3285, 67.3365] },
  }),
  machines,
  templates,
);
console.log(dovetail.rolls.wider_um.toFixed(1));

// partsInput, parts: what a lathe turns whose saddle goes away from the operator by 1 µm every 100 mm
const turned = parts(
  partsInput({
    lathe: {
      travel: {
        stations_mm: [0, 150, 300],
        shift_um: [
          [0, 0, 0],
          [0, -1.5, 0],
          [0, -3, 0],
        ],
      },
      tool_mm: [0, -60, 150],
      turned: [{ name: 'bar', radius_mm: 20, from_mm: 0, to_mm: 300 }],
    },
  }),
);
console.log(turned.ok, turned.turned[0].text);
