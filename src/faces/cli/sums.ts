import type { Command } from 'commander';
import { BadInput } from '../../contract/refusal.ts';
import { knownSum, typedSum } from '../../contract/sum-typed.ts';
import { svgFile } from '../../draw/shape.ts';
import { sumDrawing } from '../../draw/sums/sum-drawing.ts';
import { listedSum, listSums, sumAnswer } from '../../shop/sums/sum-answer.ts';
import { about } from './about.ts';
import { type Doors, refuse, refused } from './doors.ts';
import { sumAnswerText, sumListedText, sumsListText } from './sums-text.ts';

const examples = `
Examples:
  waywright sums                                         every sum, and what it answers
  waywright sums dovetail-male                           what it wants, and its formula
  waywright sums dovetail-male root=40mm roll=10mm angle=60
  waywright sums dovetail-male root="40 mm ± 4 um" roll=10mm angle="60° 5'" --json
  waywright sums gib taper=1:50 clearance=30um
  waywright sums straightedge-sag length=1m depth=50mm support=211mm material="cast iron" --draws 100000
± is two standard deviations; root_sd=2um gives one.`;

interface Options {
  json?: boolean;
  svg?: string;
  inch?: boolean;
  draws?: string;
  seed?: string;
}

/** `waywright sums [NAME key=value …]`: the shop's sums. */
export function registerSums(program: Command, doors: Doors): void {
  program
    .command('sums')
    .description(about.sums)
    .argument('[name]', 'a sum; left out, they are listed')
    .argument('[values...]', 'key=value, with unit and doubt as you write them')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--svg <file>', 'draws the sum with its numbers')
    .option('--inch', 'bare numbers are inches and thou, and so are the answers')
    .option('--draws <count>', 'tries the doubt by so many draws as well, 1000 to 1000000')
    .option('--seed <number>', 'whole number that the draws begin with', '1')
    .addHelpText('after', examples)
    .action(async (name: string | undefined, values: readonly string[], options: Options) => {
      const system = options.inch ? 'inch' : 'metric';
      const asJson = (value: unknown): void => doors.say(JSON.stringify(value, null, 1));
      try {
        if (name === undefined)
          return options.json
            ? asJson({ sums: listSums(system) })
            : doors.say(sumsListText(listSums(system)));
        if (values.length === 0 && !options.svg) {
          const listed = listedSum(knownSum(name), system);
          return options.json ? asJson(listed) : doors.say(sumListedText(listed));
        }
        const draws = wholeOption(doors, '--draws', options.draws, 1000, 1_000_000);
        const seed = wholeOption(doors, '--seed', options.seed, -(2 ** 53), 2 ** 53);
        const asked = typedSum(
          name,
          values.map((given) => keyAndText(doors, given)),
          system,
        );
        const answer = sumAnswer(
          draws === undefined ? asked : { ...asked, monte_carlo: { seed: seed ?? 1, trials: draws } },
          system,
        );
        if (options.svg)
          await doors.writeText(
            options.svg,
            svgFile(
              sumDrawing({
                drawing: answer.drawing,
                title: answer.title,
                legend: [...answer.inputs, ...answer.results],
                width: 420,
              }),
            ),
          );
        if (options.json) asJson(answer);
        else doors.say(sumAnswerText(answer));
      } catch (failure) {
        if (failure instanceof BadInput) refuse(doors, `sums ${name ?? ''}`.trim(), failure);
        throw failure;
      }
    });
}

function keyAndText(doors: Doors, given: string): [string, string] {
  const at = given.indexOf('=');
  if (at >= 1) return [given.slice(0, at).trim(), given.slice(at + 1).trim()];
  refused(doors, `${JSON.stringify(given)}: no key; expected key=value, as roll=10mm`);
}

function wholeOption(
  doors: Doors,
  option: string,
  text: string | undefined,
  least: number,
  most: number,
): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() !== '' && Number.isInteger(value) && value >= least && value <= most) return value;
  refused(doors, `${option}: ${JSON.stringify(text)}; expected a whole number, ${least} to ${most}`);
}
