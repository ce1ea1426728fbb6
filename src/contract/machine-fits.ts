import { measured } from '../core/ledger/measure.ts';
import { buildPlan, type Template } from '../core/ledger/template.ts';
import type { Machine, MachineSlide } from '../core/order/machine.ts';
import { makers, orderedSteps } from '../core/order/needs.ts';
import { sums } from '../core/sums/sums.ts';
import { madeBlockFaults } from './made-block.ts';

const sumNames: readonly string[] = sums.map((sum) => sum.name);

interface MachineFault {
  readonly path: (string | number)[];
  readonly found: unknown;
  readonly expected: string;
}

/** Collects what the shape alone cannot tell. */
class Faults {
  readonly all: MachineFault[] = [];
  add(path: (string | number)[], found: unknown, expected: string): void {
    this.all.push({ path, found, expected });
  }
  oneOf(path: (string | number)[], found: string, among: readonly string[], what: string): void {
    if (!among.includes(found)) this.add(path, found, `${what}: ${among.join(', ') || 'none is given'}`);
  }
  unlike(path: string, ids: readonly string[], key: string): void {
    ids.forEach((one, k) => {
      if (ids.indexOf(one) !== k) this.add([path, k, key], one, 'another one: this stands here already');
    });
  }
}

/** The machine's dimensions at their values. */
const sizes = (machine: Pick<Machine, 'dimensions'>): Record<string, number> =>
  Object.fromEntries(machine.dimensions.map(({ key, value }) => [key, value]));

function checkBodies(machine: Machine, faults: Faults): void {
  const bodies = machine.bodies.map((body) => body.id);
  faults.unlike('bodies', bodies, 'id');
  faults.unlike(
    'ways',
    machine.ways.map((way) => way.id),
    'id',
  );
  faults.unlike(
    'slides',
    machine.slides.map((slide) => slide.id),
    'id',
  );
  faults.unlike(
    'steps',
    machine.steps.map((step) => step.id),
    'id',
  );
  faults.unlike(
    'dimensions',
    machine.dimensions.map((dimension) => dimension.key),
    'key',
  );
  machine.ways.forEach((way, k) => {
    faults.oneOf(['ways', k, 'body'], way.body, bodies, 'one of the bodies');
  });
  machine.dimensions.forEach(({ value, low, high }, k) => {
    if (!(low <= value && value <= high))
      faults.add(['dimensions', k, 'value'], value, `from ${low} to ${high}`);
  });
  machine.slides.forEach((slide, k) => {
    faults.oneOf(['slides', k, 'moves'], slide.moves, bodies, 'one of the bodies');
    faults.oneOf(['slides', k, 'on'], slide.on, bodies, 'one of the bodies');
    if (slide.moves === slide.on)
      faults.add(['slides', k, 'on'], slide.on, 'another body than the one that moves');
  });
}

/** Names, dimensions and set-ups of each slide against its template. */
function checkSlide(
  slide: MachineSlide,
  k: number,
  machine: Machine,
  templates: readonly Template[] | undefined,
  faults: Faults,
): void {
  if (!templates) return;
  const template = templates.find((one) => one.id === slide.template);
  if (!template) {
    const ids = templates.map((one) => one.id);
    faults.oneOf(['slides', k, 'template'], slide.template, ids, 'one of the slide templates');
    return;
  }
  const features = template.features.map((feature) => feature.name);
  slide.targets?.forEach((target, i) => {
    faults.oneOf(
      ['slides', k, 'targets', i, 'feature'],
      target.feature,
      features,
      'a feature of the template',
    );
  });
  slide.words?.forEach((one, i) => {
    faults.oneOf(['slides', k, 'words', i, 'feature'], one.feature, features, 'a feature of the template');
  });
  slide.setups?.forEach((setup, i) => {
    const ids = template.setups.map((one) => one.id);
    faults.oneOf(['slides', k, 'setups', i, 'id'], setup.id, ids, 'a set-up of the template');
  });
  if (slide.makes === 'as the template' && !template.makes)
    faults.add(['slides', k, 'makes'], slide.makes, `what it makes: ${slide.template} says nothing of it`);
  else if (slide.makes !== undefined && slide.makes !== 'as the template') {
    for (const { path, found, expected } of madeBlockFaults(slide.makes, template.places.travel))
      faults.add(['slides', k, 'makes', ...path], found, expected);
    for (const place of ['size_mm', 'middle_mm'] as const)
      slide.makes[place].forEach((value, i) => {
        readMeasure(['slides', k, 'makes', place, i], value, machine, faults);
      });
  }
  const path = ['slides', k, 'dimensions'];
  const answers: Record<string, number | string> = {};
  for (const [name, value] of Object.entries(slide.dimensions ?? {})) {
    if (name === 'surface') answers[name] = value;
    else {
      const got = readMeasure([...path, name], value, machine, faults);
      if (got === undefined) return;
      answers[name] = got;
    }
  }
  const built = buildPlan(template, answers, machine.title);
  if (built.ok)
    checkPads(
      slide,
      k,
      built.plan.slide.pads.map((pad) => pad.name),
      faults,
    );
  else
    for (const refusal of built.refusals)
      faults.add([...path, refusal.key], answers[refusal.key], refusal.expected);
}

/** New names for the template's pads: of pads that it has, and no two alike. */
function checkPads(slide: MachineSlide, k: number, pads: readonly string[], faults: Faults): void {
  const called = pads.map((pad) => slide.pads?.[pad] ?? pad);
  for (const [pad, name] of Object.entries(slide.pads ?? {})) {
    const path = ['slides', k, 'pads', pad];
    faults.oneOf(path, pad, pads, 'a pad of the template');
    if (called.filter((one) => one === name).length > 1)
      faults.add(path, name, 'a name that no other pad of the slide has');
  }
}

function readMeasure(
  path: (string | number)[],
  value: number | string,
  machine: Machine,
  faults: Faults,
): number | undefined {
  try {
    return measured(value, sizes(machine));
  } catch (fault) {
    if (!(fault instanceof RangeError)) throw fault;
    faults.add(path, value, `a sum over the machine's dimensions: ${fault.message}`);
    return undefined;
  }
}

function checkSteps(machine: Machine, templates: readonly Template[] | undefined, faults: Faults): void {
  const ways = machine.ways.map((way) => way.id);
  const steps = machine.steps.map((step) => step.id);
  const made = makers(machine);
  machine.steps.forEach((step, k) => {
    step.makes.forEach((way, i) => {
      faults.oneOf(['steps', k, 'makes', i], way, ways, 'one of the ways');
      const first = machine.steps.find((one) => one.makes.includes(way))!;
      if (first !== step || step.makes.indexOf(way) !== i)
        faults.add(['steps', k, 'makes', i], way, `a way that no other step makes; "${first.id}" makes it`);
    });
    if (step.makes.length > 0 && step.from.length === 0)
      faults.add(
        ['steps', k, 'from'],
        step.from,
        'what its ways are made true from: a finished way or a master',
      );
    step.from.forEach((basis, i) => {
      if (!('way' in basis)) return;
      const path = ['steps', k, 'from', i, 'way'];
      faults.oneOf(path, basis.way, ways, 'one of the ways');
      const way = machine.ways.find((one) => one.id === basis.way);
      if (step.makes.includes(basis.way))
        faults.add(path, basis.way, 'a way that this step does not make itself');
      else if (way && way.as_found === undefined && !made.has(basis.way))
        faults.add(path, basis.way, 'a way that a step makes, or one with `as_found`: why it may be trusted');
    });
    step.after?.forEach((one, i) => {
      faults.oneOf(['steps', k, 'after', i, 'step'], one.step, steps, 'one of the steps');
      if (one.step === step.id) faults.add(['steps', k, 'after', i, 'step'], one.step, 'another step');
    });
    step.opens?.forEach((place, i) => {
      const path = ['steps', k, 'opens', i, 'sum'];
      if (place.screen === 'sum' && place.sum === undefined) faults.add(path, undefined, 'the name of a sum');
      if (place.sum === undefined) return;
      if (place.screen !== 'sum') faults.add(path, place.sum, 'it with the screen "sum" only');
      else if (!sumNames.includes(place.sum)) faults.add(path, place.sum, 'a sum of the program, see Sums');
    });
    if (step.bench) checkBench(step.bench, k, machine, templates, faults);
  });
  if (faults.all.length > 0) return;
  const ordered = orderedSteps(machine);
  if (!ordered.ok)
    faults.add(['steps'], ordered.ring.join(' → '), 'steps that do not wait for each other in a ring');
}

function checkBench(
  bench: NonNullable<Machine['steps'][number]['bench']>,
  k: number,
  machine: Machine,
  templates: readonly Template[] | undefined,
  faults: Faults,
): void {
  const slides = machine.slides.map((slide) => slide.id);
  faults.oneOf(['steps', k, 'bench', 'slide'], bench.slide, slides, 'one of the slides');
  const slide = machine.slides.find((one) => one.id === bench.slide);
  const template = templates?.find((one) => one.id === slide?.template);
  if (!template) return;
  bench.setups?.forEach((setup, i) => {
    const ids = template.setups.map((one) => one.id);
    faults.oneOf(['steps', k, 'bench', 'setups', i], setup, ids, 'a set-up of the template');
  });
  bench.features?.forEach((feature, i) => {
    const names = template.targets.map((one) => one.feature);
    faults.oneOf(['steps', k, 'bench', 'features', i], feature, names, 'a feature with a target');
  });
}

function checkHeights(machine: Machine, faults: Faults): void {
  const { heights } = machine;
  if (!heights) return;
  const bodies = machine.bodies.map((body) => body.id);
  const places = heights.places.map((place) => place.name);
  const at = (path: (string | number)[], place: readonly (number | string)[]) => {
    place.forEach((part, i) => {
      readMeasure([...path, i], part, machine, faults);
    });
  };
  heights.places.forEach((place, k) => {
    faults.oneOf(['heights', 'places', k, 'body'], place.body, bodies, 'one of the bodies');
    at(['heights', 'places', k, 'at_mm'], place.at_mm);
  });
  heights.joints.forEach((joint, k) => {
    const slides = machine.slides.map((slide) => slide.id);
    faults.oneOf(['heights', 'joints', k, 'slide'], joint.slide, slides, 'one of the slides');
    at(['heights', 'joints', k, 'origin_mm'], joint.origin_mm);
    const moves = (id: string) => machine.slides.find((slide) => slide.id === id)?.moves;
    const other = heights.joints.findIndex((one) => moves(one.slide) === moves(joint.slide));
    if (other !== k)
      faults.add(['heights', 'joints', k, 'slide'], joint.slide, 'one joint for each body that moves');
  });
  heights.heights.forEach((height, k) => {
    faults.oneOf(['heights', 'heights', k, 'from'], height.from, places, 'one of the places');
    faults.oneOf(['heights', 'heights', k, 'to'], height.to, places, 'one of the places');
    if (!(height.low_um < height.high_um))
      faults.add(['heights', 'heights', k, 'high_um'], height.high_um, `more than ${height.low_um}`);
    if (!(height.low_um <= height.aim_um && height.aim_um <= height.high_um))
      faults.add(
        ['heights', 'heights', k, 'aim_um'],
        height.aim_um,
        `from ${height.low_um} to ${height.high_um}`,
      );
  });
  const rides = new Map(
    heights.joints.flatMap(({ slide }) =>
      machine.slides.filter((one) => one.id === slide).map((one) => [one.moves, one.on]),
    ),
  );
  for (const start of rides.keys()) {
    const seen = [start];
    for (let on = rides.get(start); on !== undefined; on = rides.get(on)) {
      if (seen.includes(on)) {
        faults.add(['heights', 'joints'], [...seen, on].join(' on '), 'bodies that do not carry themselves');
        return;
      }
      seen.push(on);
    }
  }
}

/**
 * What a machine's shape alone cannot tell: names that point nowhere, rings of steps, dimensions that do not fit.
 * @param templates  left out: slides are not held to their templates
 */
export function machineFaults(machine: Machine, templates?: readonly Template[]): readonly MachineFault[] {
  const faults = new Faults();
  checkBodies(machine, faults);
  machine.slides.forEach((slide, k) => {
    checkSlide(slide, k, machine, templates, faults);
  });
  checkSteps(machine, templates, faults);
  checkHeights(machine, faults);
  return faults.all;
}
