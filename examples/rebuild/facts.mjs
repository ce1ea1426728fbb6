// What is invented about each machine beyond the program's own data: its age, as somebody would find it.
const wearOfSaddle = {
  name: 'wear and clean-up of the saddle',
  joint: 'saddle-on-bed',
  when: 'found',
  off_um: { 'front flank': 310, 'rear flank': 330, flat: 460 },
  sd_um: 5,
};
const linerOfSaddle = {
  joint: 'saddle-on-bed',
  pads: ['front flank', 'rear flank', 'flat'],
  brings: 'half nut over lead screw',
  sheet_mm: 1.6,
};

export const facts = {
  'engine-lathe': {
    seed: 4190,
    title: 'Invented engine lathe',
    class: 'ordinary',
    // How long the ways are that a level is stepped along, where it is not the bed's 1000 mm.
    ways_mm: {
      'bed-head': 400,
      'tail-base': 400,
      'saddle-top': 500,
      'cross-bottom': 400,
      'cross-top': 400,
    },
    // What is known of the heights when the saddle is lined, and when the tailstock is set up on a shim of 0.16 mm.
    heights: {
      'saddle-liner': {
        measured: {
          'half nut over lead screw': { um: -470, sd_um: 8 },
          'tailstock over spindle axis': { um: -61, sd_um: 6 },
        },
        changes: [wearOfSaddle],
        liners: [linerOfSaddle],
      },
      'tail-body': {
        measured: {
          'half nut over lead screw': { um: -470, sd_um: 8 },
          // Over the middle of its base, measured anew: the barrel droops, so its end stands lower.
          'tailstock over spindle axis': { um: -30, sd_um: 3 },
        },
        changes: [
          wearOfSaddle,
          {
            name: 'shim under the whole of the body',
            joint: 'tail-on-bed',
            when: 'planned',
            on_um: {
              'front, headstock end': 160,
              'front, tailstock end': 160,
              'back, headstock end': 160,
              'back, tailstock end': 160,
            },
            sd_um: 2,
          },
        ],
        liners: [linerOfSaddle],
      },
    },
    // How high a part stands on what was put under it before it is scraped to height, µm.
    stands_um: { 'tail-body': 108 },
  },
  'vertical-knee-mill': {
    seed: 902,
    title: 'Invented knee mill',
    class: 'ordinary',
    ways_mm: { 'column-flats': 700, 'knee-top': 500, 'saddle-top': 500 },
    heights: {
      'knee-back': {
        measured: {
          'cross nut over cross screw': { um: 12, sd_um: 5 },
          'table screw over table nut': { um: -9, sd_um: 5 },
        },
      },
    },
  },
  'surface-grinder': {
    seed: 77,
    title: 'Invented surface grinder',
    class: 'ordinary',
    ways_mm: { usual: 600, 'base-cross': 500, 'saddle-top': 500, 'column-ways': 500 },
  },
};
