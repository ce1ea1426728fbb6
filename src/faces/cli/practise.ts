import type { Command } from 'commander';
import { slipKinds } from '../../core/practice/record.ts';
import { practiceMaterials, practiceSlides } from '../../core/practice/slides.ts';
import { practise } from '../../shop/practise/practise.ts';
import { practiseSlides } from '../../shop/practise/practise-slides.ts';
import { about } from './about.ts';
import { type Doors, refused } from './doors.ts';
import { practiseTable, practiseText } from './practise-text.ts';

const example = `
Examples:
  waywright practise --auto 20
  waywright practise --auto 40 --slide "four-pad base" --material iron
  waywright practise --auto 20 --fault "sweep reversed" --json
  waywright practise --auto 20 --slide all --slips 20`;

/** Every practice slide, as one table. */
const everySlide = 'all';

interface Options {
  readonly auto: string;
  readonly slide: string;
  readonly material: string;
  readonly seed: string;
  readonly rounds: string;
  readonly fault?: string;
  readonly slips?: string;
  readonly json?: boolean;
}

const listed = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

/** `waywright practise --auto N`: the tool against simulated machines. */
export function registerPractise(program: Command, doors: Doors): void {
  const oneOf = <T extends string>(option: string, given: string, names: readonly T[]): T => {
    const found = names.find((name) => name === given);
    if (found !== undefined) return found;
    refused(doors, `${option}: ${JSON.stringify(given)}; expected one of ${listed(names)}`);
  };
  const whole = (option: string, given: string, most: number): number => {
    const found = Number(given);
    if (given.trim() !== '' && Number.isInteger(found) && found >= 1 && found <= most) return found;
    refused(doors, `${option}: ${JSON.stringify(given)}; expected a whole number from 1 to ${most}`);
  };
  program
    .command('practise')
    .description(about.practise)
    .requiredOption('--auto <n>', 'so many machines, the tool deciding')
    .option('--slide <name>', `one of ${listed([...Object.keys(practiceSlides), everySlide])}`, 'V and flat')
    .option('--material <name>', `one of ${listed(practiceMaterials)}`, 'liner')
    .option('--seed <n>', 'of the first machine; the same seed makes the same machine', '1')
    .option('--rounds <n>', 'give up after so many', '25')
    .option('--fault <kind>', `make this mistake in one of the first three rounds: ${listed(slipKinds)}`)
    .option('--slips <n>', 'with --slide all: so many machines more for each kind of mistake')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .addHelpText('after', example)
    .action(async (options: Options) => {
      const ask = {
        material: oneOf('--material', options.material, practiceMaterials),
        machines: whole('--auto', options.auto, 10000),
        seed: whole('--seed', options.seed, 1e6),
        most_rounds: whole('--rounds', options.rounds, 200),
      };
      const slide = oneOf('--slide', options.slide, [...Object.keys(practiceSlides), everySlide]);
      const fault = options.fault === undefined ? {} : { fault: oneOf('--fault', options.fault, slipKinds) };
      const slips = options.slips === undefined ? 0 : whole('--slips', options.slips, 10000);
      const only = slide === everySlide ? 'fault' : 'slips';
      if (options[only] !== undefined) {
        const instead = only === 'fault' ? 'one slide, or --slips with all of them' : '--slide all';
        refused(doors, `--${only}: ${JSON.stringify(options[only])}; expected with ${instead}`);
      }
      if (slide === everySlide) {
        const slides = Object.keys(practiceSlides);
        doors.progress?.(`${slides[0]}: practising. Ctrl+C stops.`);
        const all = await practiseSlides(ask, slips, doors.solve, ({ clean }) => {
          const next = slides[slides.indexOf(clean.slide) + 1];
          doors.progress?.(
            next === undefined ? '' : `${clean.slide} is done; ${next}: practising. Ctrl+C stops.`,
          );
        });
        doors.say(options.json ? JSON.stringify(all, null, 1) : practiseTable(all));
        return;
      }
      doors.progress?.(`0 of ${ask.machines} machines. Ctrl+C stops.`);
      const report = await practise({ ...ask, ...fault, slide }, doors.solve, (_, done) =>
        doors.progress?.(done === ask.machines ? '' : `${done} of ${ask.machines} machines. Ctrl+C stops.`),
      );
      doors.say(options.json ? JSON.stringify(report, null, 1) : practiseText(report));
    });
}
