import { BadInput } from '../contract/refusal.ts';
import type { PlayFound, PlayRead } from '../core/gib/gib-play.ts';
import type { Template } from '../core/ledger/template.ts';
import type { SteerInput } from '../core/observe/round.ts';
import type { Machine } from '../core/order/machine.ts';
import { benchPlan } from './order/bench-plan.ts';

/** The set-ups that a gib's bench reads its play with. */
const ends = ['thick_end', 'thin_end'] as const;
type End = (typeof ends)[number];
const isEnd = (id: string): id is End => ends.some((end) => end === id);

/** Steps of a machine whose bench reads the play at both ends of a gib. */
const gibSteps = (machine: Machine, templates: readonly Template[]): string[] =>
  machine.steps
    .filter((step) => {
      const slide = machine.slides.find((one) => one.id === step.bench?.slide);
      const setups = templates.find((one) => one.id === slide?.template)?.setups ?? [];
      return ends.every((end) => setups.some((setup) => setup.id === end && setup.kind === 'height'));
    })
    .map((step) => step.id);

/**
 * The plays at both ends as one round of the gib's own face; what may come off it is what its travel makes good.
 * @throws BadInput  a machine or step that there is not, or a step that is not a gib's
 */
export function gibSteer(
  scrape: {
    readonly machine: string;
    readonly step: string;
    readonly dimensions: Readonly<Record<string, number>>;
  },
  read: PlayRead,
  play: PlayFound,
  machines: readonly Machine[],
  templates: readonly Template[],
): SteerInput {
  const refuse = (path: string, found: string, among: readonly string[]) =>
    new BadInput([{ path, found: JSON.stringify(found), expected: `one of ${among.join(', ')}` }]);
  const machine = machines.find((one) => one.id === scrape.machine);
  const withGibs = machines.filter((one) => gibSteps(one, templates).length > 0).map((one) => one.id);
  if (!machine || !withGibs.includes(machine.id)) throw refuse('scrape.machine', scrape.machine, withGibs);
  if (!gibSteps(machine, templates).includes(scrape.step))
    throw refuse('scrape.step', scrape.step, gibSteps(machine, templates));
  const left_um =
    read.in_left_mm === undefined ? undefined : Math.max(0, read.in_left_mm * read.taper * 1000);
  const plan = benchPlan(machine, scrape.step, templates, scrape.dimensions)!;
  // Square to the gib, back to straight across, as the set-ups of the template read.
  const across = Math.sin((read.angle_deg * Math.PI) / 180);
  const by = { thick_end: play.thick_um / across, thin_end: play.thin_um / across };
  const { features, targets, passes, sink, film_um } = plan;
  // Faces that nothing may come off only carry; the others are the gib's.
  const pads = plan.slide.pads.map((pad) =>
    left_um === undefined || pad.stock_um === 0
      ? pad
      : { ...pad, stock_um: Math.min(left_um, pad.stock_um ?? Infinity) },
  );
  return {
    slide: { ...plan.slide, pads },
    features,
    targets,
    passes,
    ...(sink ? { sink } : {}),
    ...(film_um === undefined ? {} : { film_um }),
    rounds: [
      {
        sweeps: [],
        levels: [],
        heights: plan.setups.flatMap((setup) =>
          setup.kind === 'height' && isEnd(setup.id)
            ? [
                {
                  name: setup.name,
                  at_mm: setup.at_mm,
                  direction: setup.direction,
                  reading_um: by[setup.id],
                  sd_um: play.sd_um / across,
                },
              ]
            : [],
        ),
      },
    ],
  };
}
