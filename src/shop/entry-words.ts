import { readHinge } from '../core/kit/hinge.ts';
import { readRock } from '../core/kit/rock.ts';
import type { Entry, JobPlan } from '../core/ledger/entry.ts';
import { surveyKey } from '../core/ledger/survey-record.ts';
import { signed } from '../core/quantity/show.ts';
import { counted } from './phrase.ts';

/** A reading as it was typed, its minus as long as its plus: a hyphen is too easily passed over. */
const asTyped = (text: string): string => text.replace(/^-/, '−');

/** A bare figure says no unit: then what it was taken as stands behind it, for 0.01 may be mm/m or µm/m. */
function readAs({ typed, value }: { readonly typed: string; readonly value: number }, unit: string): string {
  if (!/^[-+−.\d\s]+$/.test(typed)) return asTyped(typed);
  const taken = `${signed(value)} ${unit}`;
  return Number(typed.replace('−', '-')) === value ? taken : `${asTyped(typed)}, taken as ${taken}`;
}

/** What an entry says, as a line of the ledger. */
export function entryWords(entry: Entry, plan: Pick<JobPlan, 'setups'>, all: readonly Entry[]): string {
  const setup = (id: string) => plan.setups.find((one) => one.id === id)?.name ?? id;
  switch (entry.kind) {
    case 'job made':
      return `Job made: ${entry.plan.title}`;
    case 'plan amended':
      return `Job amended: ${Object.keys(entry.change).join(', ')}`;
    case 'sweep taken':
      return `${setup(entry.setup)}: ${counted(entry.readings.length, 'reading')}${again(entry.repeat)}`;
    case 'level read':
    case 'height read': {
      const read = readAs(entry.reading, entry.kind === 'level read' ? 'µm/m' : 'µm');
      return `${setup(entry.setup)}: ${read}${again(entry.repeat)}`;
    }
    case 'bar read':
      return `${setup(entry.setup)}: test bar turned half round, ${entry.reading.side}${again(entry.repeat)}`;
    case 'print read':
      return `Print of ${Object.keys(entry.share).join(', ')}`;
    case 'print photographed':
      return `Photo of ${entry.pad}: ${entry.density_per_25mm.toFixed(0)} spots in a 25 mm square, ${entry.bearing_pct.toFixed(0)} % bears`;
    case 'part turned over':
      return `Part turned ${entry.how}`;
    case 'pass made':
      return `${entry.spot ? 'Spotting pass' : 'Pass'} ${entry.pass} on ${counted(zonesIn(entry.zones), 'zone')}`;
    case 'round closed':
      return `Set back: round ${entry.round} closed`;
    case 'cause settled':
      return `${entry.cause}: ${entry.answer}`;
    case 'survey taken':
      return `Survey: ${surveyKey(entry)}`;
    case 'hinge tested':
      return `Pivot test: ${readHinge(entry.test).text}`;
    case 'rock tested':
      return `Rock test: ${readRock(entry.test).text}`;
    case 'practice begun':
      return `Practice machine ${entry.seed}: ${entry.slide}, ${entry.material}, ${entry.level}`;
    case 'truth shown':
      return 'The truth was looked at';
    case 'machine set':
      return `Machine: ${entry.machine.title}, ${counted(entry.machine.steps.length, 'step')}`;
    case 'step told': {
      const title = stepTitle(entry.step, all);
      const hours = entry.hours === undefined ? '' : `, ${entry.hours} h`;
      return `${title}: ${stepWhat[entry.what]}${hours}${entry.note === undefined ? '' : `. ${entry.note}`}`;
    }
    case 'bench opened':
      return `Bench opened for ${stepTitle(entry.step, all)}`;
    case 'bench of':
      return `This is the bench of a step: ${entry.step}`;
    case 'heights set':
      return `Heights: ${counted((entry.heights.changes ?? []).length, 'change')}, ${counted((entry.heights.liners ?? []).length, 'liner')}`;
    case 'axis taken':
      return `Axis: ${entry.of}`;
    case 'gib taken':
      return `Gib: ${stepTitle(entry.of, all)}`;
    case 'chart set':
      return `Chart put together${entry.chart.list === undefined ? '' : `: tests of ${entry.chart.list}`}`;
    case 'result taken':
      return `Chart, ${entry.test}, ${entry.when === 'first' ? 'as found' : 'final'}: ${entry.result.value_um} µm${entry.result.doubt_um === undefined ? ', doubt not told' : ` ± ${entry.result.doubt_um} µm`}`;
    case 'stop signed':
      return entry.note === undefined ? 'Lines signed' : `Lines signed: ${entry.note}`;
    case 'note':
      return entry.text;
    case 'undone': {
      const struck = all.find((one) => one.id === entry.entry);
      return struck ? `Undone: ${entryWords(struck, plan, all)}` : 'Undone';
    }
  }
}

const stepWhat = {
  begun: 'begun',
  done: 'done',
  proven: 'proven once more, nothing changed',
  reopened: 'open again',
  worked: 'worked on',
} as const;

/** A step's title as the machine in the ledger has it. */
function stepTitle(step: string, all: readonly Entry[]): string {
  const set = all.findLast((one) => one.kind === 'machine set');
  const its = set?.kind === 'machine set' ? set.machine.steps.find((one) => one.id === step) : undefined;
  return its ? `“${its.title}”` : step;
}

const again = (repeat: number | undefined): string => (repeat ? `, repeat ${repeat}` : '');

const zonesIn = (zones: Readonly<Record<string, readonly number[]>>): number =>
  Object.values(zones)
    .flat()
    .filter((made) => made > 0).length;
