import type {
  Machine,
  MachineBody,
  MachineDimension,
  MachineSlide,
  MachineWay,
  Step,
} from '../../core/order/machine.ts';

/** Small letters, figures and - from a name: "Carriage flat, rear" → "carriage-flat-rear"; another one when it is taken. */
export function idFrom(name: string, taken: readonly string[], separator = '-'): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, separator)
    .replace(new RegExp(`^[${separator}0-9]+|${separator}+$`, 'g'), '')
    .slice(0, 40);
  const base = plain === '' ? 'new' : plain;
  for (let k = 1; ; k++) {
    const id = k === 1 ? base : `${base}${separator}${k}`;
    if (!taken.includes(id)) return id;
  }
}

export const blankBody = (machine: Machine): MachineBody => ({
  id: idFrom(
    'new body',
    machine.bodies.map((one) => one.id),
  ),
  name: 'New body',
});

export const blankWay = (machine: Machine): MachineWay => ({
  id: idFrom(
    'new way',
    machine.ways.map((one) => one.id),
  ),
  body: machine.bodies[0]?.id ?? '',
  name: 'new way',
});

export const blankDimension = (machine: Machine): MachineDimension => ({
  key: idFrom(
    'new size',
    machine.dimensions.map((one) => one.key),
    '_',
  ),
  label: 'New size',
  unit: 'mm',
  value: 100,
  low: 10,
  high: 10_000,
  where: 'Say where it is measured.',
});

export const blankStep = (machine: Machine): Step => ({
  id: idFrom(
    'new step',
    machine.steps.map((one) => one.id),
  ),
  title: 'New step',
  reason: 'Say why it is done, and why here.',
  makes: [],
  from: [],
  proofs: [],
  cautions: [],
  hours: { likely: 4 },
});

export const blankSlide = (machine: Machine, template: string): MachineSlide => ({
  id: idFrom(
    'new slide',
    machine.slides.map((one) => one.id),
  ),
  name: 'new slide',
  moves: machine.bodies[1]?.id ?? '',
  on: machine.bodies[0]?.id ?? '',
  template,
});

/** The least machine that there can be: one body on another, one step that scrapes it. What one's own grows from. */
export const scratchMachine = (template: string, title: string): Machine => ({
  id: idFrom(title, []),
  title,
  description: 'My own machine.',
  dimensions: [],
  bodies: [
    { id: 'bed', name: 'bed' },
    { id: 'saddle', name: 'saddle' },
  ],
  ways: [
    { id: 'bed-ways', body: 'bed', name: 'ways', as_found: 'say why they may be trusted as they are' },
    { id: 'saddle-underside', body: 'saddle', name: 'underside' },
  ],
  slides: [{ id: 'saddle-on-bed', name: 'saddle on bed', moves: 'saddle', on: 'bed', template }],
  steps: [
    {
      id: 'survey',
      title: 'Survey, before anything is taken apart',
      reason: 'What is measured now cannot be measured later.',
      makes: [],
      from: [],
      opens: [{ screen: 'survey', what: 'wear and form of the ways' }],
      proofs: [],
      cautions: ['Isolate and lock off power before any hand work; follow your local rules.'],
      hours: { likely: 4 },
    },
    {
      id: 'saddle-underside',
      title: 'Saddle underside to the bed',
      reason: 'It carries everything above it.',
      makes: ['saddle-underside'],
      from: [{ way: 'bed-ways', why: 'it is printed on them' }],
      after: [{ step: 'survey', why: 'as found comes first' }],
      bench: { slide: 'saddle-on-bed' },
      proofs: [{ what: 'bearing and alignment', with: 'print, level and square' }],
      cautions: [
        'Castings crush: rated lifting gear, block before you reach under; follow your local rules.',
      ],
      hours: { likely: 20 },
    },
  ],
});

const listed = (one: unknown, keys: readonly string[]): boolean =>
  one !== null &&
  typeof one === 'object' &&
  keys.every((key) => Array.isArray((one as Record<string, unknown>)[key]));

/** Whether something written by hand has a machine's lists, so that they can be shown as lists; what is in them may still be wrong. */
export function isListed(value: unknown): value is Machine {
  if (!listed(value, ['dimensions', 'bodies', 'ways', 'slides', 'steps'])) return false;
  const { dimensions, bodies, ways, slides, steps } = value as Record<string, unknown[]>;
  const things = [dimensions, bodies, ways, slides].flat();
  return (
    things.every((one) => one !== null && typeof one === 'object') &&
    steps!.every(
      (one) =>
        listed(one, ['makes', 'from', 'proofs', 'cautions']) &&
        typeof (one as Step).hours === 'object' &&
        (one as Step).hours !== null,
    )
  );
}

/** A list with the item at `from` put at `to`; out of range, the list as it is. */
export function moved<T>(list: readonly T[], from: number, to: number): readonly T[] {
  if (from < 0 || to < 0 || from >= list.length || to >= list.length) return list;
  const rest = [...list];
  const [one] = rest.splice(from, 1);
  rest.splice(to, 0, one as T);
  return rest;
}

const rooms: Readonly<Record<string, string>> = {
  dimensions: 'Size',
  bodies: 'Body',
  ways: 'Way',
  slides: 'Slide',
  steps: 'Step',
  heights: 'Heights',
  own_tests: 'Own test',
  limits: 'Own limit of',
  left_out: 'Left out',
};
const fields: Readonly<Record<string, string>> = {
  from: 'made from',
  after: 'comes after',
  makes: 'makes',
  proofs: 'proof',
  cautions: 'caution',
  opens: 'opens',
  as_found: 'trusted as found',
  moves: 'what moves',
  on: 'what it lies on',
  template: 'slide template',
  targets: 'target',
  setups: 'set-up',
};

type Named = Readonly<Record<string, unknown>> | undefined;

/** Where in a machine, or in a chart that is put together, a refusal points, in words: `steps[3].from[1].way` → "Step “Carriage flat”, made from 2, way". */
export function placeWords(machine: unknown, path: string): string {
  const match = /^(\w+)\[(\d+)\]\.?(.*)$/.exec(path);
  const [, room = '', at = '', rest = ''] = match ?? [];
  const known = rooms[room];
  if (!match || known === undefined) return path === '' ? 'The machine' : path.replaceAll('_', ' ');
  const list = (machine as Readonly<Record<string, unknown>> | undefined)?.[room];
  const item: Named = Array.isArray(list) ? (list[Number(at)] as Named) : undefined;
  const name = item?.title ?? item?.name ?? item?.label ?? item?.id ?? item?.key ?? item?.test;
  const inside = rest
    .split('.')
    .filter(Boolean)
    .map((part) => {
      const [, word = part, index] = /^(\w+)\[(\d+)\]$/.exec(part) ?? [];
      const called = fields[word] ?? word.replaceAll('_', ' ');
      return index === undefined ? called : `${called} ${Number(index) + 1}`;
    });
  const head = typeof name === 'string' ? `${known} “${name}”` : `${known} ${Number(at) + 1}`;
  return [head, ...inside].join(', ');
}
