import { needs } from '../../core/kit/doubt-of.ts';
import { type Kit, quantityOf, type SetUp } from '../../core/kit/kit.ts';
import { clean } from '../../core/quantity/unit.ts';
import type { LineShown } from './line-shown.ts';

/** A set-up of the kit for one line of a chart, as the chart's file has it. */
export type KitSetup = SetUp & { readonly target: string };

/** One way a line can be measured with things of the kit. */
export interface KitWay {
  /** Tells ways of one line apart. */
  readonly key: string;
  /** "Square sweep: lever dial, granite square". */
  readonly words: string;
  readonly setup: KitSetup;
}

/** What is asked of a line that a set-up is chosen for. */
type Asked = Pick<LineShown, 'id' | 'kind' | 'over_mm'>;

const methodWords: Record<SetUp['method'], string> = {
  'square sweep': 'Square sweep',
  level: 'Level, set down',
  'level walk': 'Level walk',
  'straightedge sweep': 'Along the straightedge',
  'test bar': 'Test bar',
  'plate print': 'Print on the plate',
  'height by blocks': 'Height from gauge blocks',
  'level twist': 'Level across two ways',
  'carried indicator': 'Indicator from one way to the other',
  'plate heights': 'Indicator over the plate',
};

/** Thickness of a spotting film before anything is known of it, µm: common practice. */
const usualFilm_um = 3;
/** Length of a way whose line names none, mm. */
const usualLength_mm = 300;

/** Words of a set-up: its method, and what it is measured with. */
export function setupWords(setup: SetUp): string {
  const things = [
    'instrument' in setup ? setup.instrument : undefined,
    'reference' in setup ? setup.reference : undefined,
  ].filter((one) => one !== undefined);
  const plane = 'plane' in setup ? `, ${setup.plane}` : '';
  return `${methodWords[setup.method]}${plane}: ${things.join(', ')}`;
}

/** The things and method of a set-up, whatever its numbers are. */
export const wayKey = (setup: SetUp): string =>
  JSON.stringify([
    setup.method,
    'instrument' in setup ? setup.instrument : '',
    'reference' in setup ? setup.reference : '',
    'plane' in setup ? setup.plane : '',
  ]);

/** Every way the kit can measure a line: a slope by what reads slopes, a size by what reads heights. */
export function kitWays(kit: Kit, line: Asked): KitWay[] {
  const { id, kind, over_mm = usualLength_mm } = line;
  const dials = (method: SetUp['method']) =>
    kit.instruments.filter((one) => (needs[method].instruments as readonly string[]).includes(one.kind));
  const held = (method: SetUp['method']) =>
    kit.references.filter((one) => one.kind === needs[method].reference);
  // Only a line has one set-up, so its id names it too.
  const both = { name: id.slice(0, 80), target: id };
  const pairs = (method: SetUp['method']) =>
    held(method).flatMap((reference) =>
      dials(method).map((dial) => ({
        ...both,
        instrument: dial.name,
        reference: reference.name,
        length_mm: clean(Math.min(over_mm, reference.length_mm)),
      })),
    );
  const planes = ['vertical', 'horizontal'] as const;
  const all: KitSetup[] = [
    ...pairs('square sweep').map(
      (one): KitSetup => ({
        method: 'square sweep',
        ...one,
        points: 11,
        sweeps: 1,
        seats: 1,
        turned_over: false,
      }),
    ),
    ...pairs('test bar').flatMap((one) =>
      planes.map(
        (plane): KitSetup => ({
          method: 'test bar',
          ...one,
          readings: 1,
          turned_half: false,
          plane,
          sag_taken_out: false,
        }),
      ),
    ),
    ...dials('level').map(
      (one): KitSetup => ({ method: 'level', ...both, instrument: one.name, readings: 1, turned: false }),
    ),
    ...pairs('straightedge sweep').flatMap((one) =>
      planes.map(
        (plane): KitSetup => ({
          method: 'straightedge sweep',
          ...one,
          sweeps: 1,
          seats: 1,
          turned_over: false,
          plane,
          sag_taken_out: false,
        }),
      ),
    ),
    ...dials('level walk').map(
      (one): KitSetup => ({
        method: 'level walk',
        ...both,
        instrument: one.name,
        length_mm: over_mm,
        runs: 1,
      }),
    ),
    ...held('plate print').map(
      (one): KitSetup => ({
        method: 'plate print',
        ...both,
        reference: one.name,
        film_um: usualFilm_um,
        prints: 1,
      }),
    ),
  ];
  return all
    .filter((setup) => (quantityOf(setup) === 'slope') === (kind === 'slope'))
    .map((setup) => ({ key: wayKey(setup), words: setupWords(setup), setup }));
}

/** A number of a set-up that can be changed, and what it is. */
export interface SetupNumber {
  readonly key: 'length_mm' | 'points' | 'sweeps' | 'seats' | 'readings' | 'runs' | 'film_um' | 'prints';
  readonly label: string;
  readonly unit?: 'mm' | 'um';
}

const numbers: readonly SetupNumber[] = [
  { key: 'length_mm', label: 'Length', unit: 'mm' },
  { key: 'points', label: 'Places along it' },
  { key: 'sweeps', label: 'Sweeps' },
  { key: 'seats', label: 'Times it is set down' },
  { key: 'readings', label: 'Readings' },
  { key: 'runs', label: 'Runs' },
  { key: 'film_um', label: 'Film', unit: 'um' },
  { key: 'prints', label: 'Prints' },
];

/** The numbers that a set-up has. */
export const setupNumbers = (setup: SetUp): readonly SetupNumber[] =>
  numbers.filter(({ key }) => key in setup);

/** What of a set-up is yes or no: the reference turned over and the like. */
export const setupTurns = (
  setup: SetUp,
): readonly {
  readonly key: 'turned_over' | 'turned' | 'turned_half' | 'sag_taken_out';
  readonly label: string;
}[] =>
  (
    [
      { key: 'turned_over', label: 'Reference turned over too' },
      { key: 'turned', label: 'Turned end for end too' },
      { key: 'turned_half', label: 'Spindle turned half round too' },
      { key: 'sag_taken_out', label: 'Sag taken out' },
    ] as const
  ).filter(({ key }) => key in setup);
