import { z } from 'zod';
import type { Slide } from '../core/body/slide.ts';
import type { Chain, Change } from '../core/heights/chain.ts';
import type { LinerAsk } from '../core/heights/liner.ts';
import type { Template } from '../core/ledger/template.ts';
import type { Machine } from '../core/order/machine.ts';
import { BadInput, checked, type Issue, pathText, quoted } from './refusal.ts';
import { finite, name, notNegative, place, slideSchema } from './slide.ts';
import { answersSchema, plannedJob } from './template.ts';

const um = z.number().min(-1e5).max(1e5);
const thick_mm = z.number().min(0).max(50);
const perPad_um = z.record(z.string(), z.number().min(0).max(1e5));

const changeSchema = z
  .strictObject({
    name,
    joint: name,
    when: z.enum(['found', 'planned']),
    off_um: perPad_um.optional(),
    on_um: perPad_um.optional(),
    sd_um: notNegative.optional(),
  })
  .refine((change) => (change.off_um === undefined) !== (change.on_um === undefined), {
    error: 'either `off_um` (worn or taken off) or `on_um` (liner, shim), by pad',
  });

const linerSchema = z.strictObject({
  joint: name,
  pads: z.array(name).min(1),
  brings: name,
  sheet_mm: z.number().min(0.1).max(20).optional(),
  bond_mm: thick_mm.optional(),
  bond_sd_mm: thick_mm.optional(),
  machining_mm: thick_mm.optional(),
  scraping_mm: thick_mm.optional(),
  least_mm: thick_mm.optional(),
  groove_mm: thick_mm.optional(),
  wall_mm: z.number().min(0.5).max(500).optional(),
});

const known = {
  changes: z.array(changeSchema).max(200).optional(),
  liners: z.array(linerSchema).max(20).optional(),
};

export const heightsOnMachine = z.strictObject({
  machine: name,
  dimensions: z.record(z.string(), finite).optional(),
  measured: z.record(z.string(), z.strictObject({ um, sd_um: notNegative })).optional(),
  ...known,
});

/** What a job keeps of its machine's heights: changes, liners, and heights as measured; the machine is the job's own. */
export const heightsKept = heightsOnMachine.omit({ machine: true, dimensions: true });

const jointSchema = z
  .strictObject({
    name,
    moves: name,
    on: name,
    slide: slideSchema.optional(),
    template: name.optional(),
    dimensions: answersSchema.optional(),
    origin_mm: place,
    travel: z.enum(['x', 'y']),
  })
  .refine((joint) => (joint.slide === undefined) !== (joint.template === undefined), {
    error: 'either `slide` with its pads, or `template` with its dimensions',
  });

export const heightsOfChain = z.strictObject({
  places: z.array(z.strictObject({ name, body: name, at_mm: place })).min(2),
  joints: z.array(jointSchema).min(1),
  heights: z
    .array(
      z.strictObject({
        name,
        from: name,
        to: name,
        low_um: um,
        high_um: um,
        aim_um: um,
        why: z.string().max(600).optional(),
        rack_deg: z.number().min(10).max(30).optional(),
        measured: z.strictObject({ um, sd_um: notNegative }).optional(),
      }),
    )
    .min(1),
  ...known,
});

/** Usual bond line, its doubt, and what is left on for scraping, mm; common practice. */
const usual = { bond_mm: 0.1, bond_sd_mm: 0.025, machining_mm: 0, scraping_mm: 0.1 } as const;

type OnMachine = z.output<typeof heightsOnMachine>;
type OwnChain = z.output<typeof heightsOfChain>;

/** What is known of a machine's heights beyond its file. */
export interface KnownHeights {
  readonly dimensions: Readonly<Record<string, number>>;
  readonly measured: Readonly<Record<string, { readonly um: number; readonly sd_um: number }>>;
}

/** What `heights` needs of the program to read its file. */
export interface HeightsDesk {
  readonly templates: readonly Template[];
  readonly machines: readonly Machine[];
  /** The chain of a machine, changes left out; undefined where it has no heights. */
  readonly chainOf: (machine: Machine, known: KnownHeights) => Chain | undefined;
}

/** Gathers what is wrong, and refuses all of it at once. */
class Wrong {
  private readonly issues: Issue[] = [];
  add(path: readonly (string | number)[], found: unknown, expected: string): void {
    this.issues.push({ path: pathText(path), found: quoted(found), expected });
  }
  among(path: readonly (string | number)[], found: string, names: readonly string[]): boolean {
    if (names.includes(found)) return true;
    this.add(path, found, `one of ${names.join(', ') || 'none'}`);
    return false;
  }
  refuse(): void {
    if (this.issues.length > 0) throw new BadInput(this.issues);
  }
}

/**
 * `heights`' input, see docs/contract.md: a machine of the program by its id, or a chain of one's own.
 * @throws BadInput
 */
export function heightsInput(
  value: unknown,
  desk: HeightsDesk,
): { readonly chain: Chain; readonly liners: readonly LinerAsk[] } {
  const named = value !== null && typeof value === 'object' && 'machine' in value;
  const written = named ? checked(heightsOnMachine, value) : checked(heightsOfChain, value);
  const chain = 'machine' in written ? machineChain(written, desk) : chainOfOwn(written, desk.templates);
  checkNames(written, chain);
  return {
    chain: { ...chain, changes: (written.changes ?? []).map(changeOf) },
    liners: (written.liners ?? []).map((liner): LinerAsk => ({ ...usual, ...given(liner) })),
  };
}

/** Without the keys that were left out. */
const given = <T extends object>(one: T) =>
  Object.fromEntries(Object.entries(one).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };

function changeOf({ off_um, on_um, sd_um = 0, ...change }: z.output<typeof changeSchema>): Change {
  const sign = on_um ? 1 : -1;
  const thickness_um = Object.fromEntries(
    Object.entries(on_um ?? off_um!).map(([pad, um]) => [pad, sign * um + 0]),
  );
  return { ...change, thickness_um, sd_um };
}

function machineChain(written: OnMachine, desk: HeightsDesk): Chain {
  const wrong = new Wrong();
  const machine = desk.machines.find((one) => one.id === written.machine);
  wrong.among(
    ['machine'],
    written.machine,
    desk.machines.filter((one) => one.heights).map((one) => one.id),
  );
  const { dimensions = {}, measured = {} } = written;
  for (const [key, size] of Object.entries(dimensions)) {
    const its = machine?.dimensions.find((one) => one.key === key);
    if (machine && !its)
      wrong.among(
        ['dimensions', key],
        key,
        machine.dimensions.map((one) => one.key),
      );
    if (its && !(its.low <= size && size <= its.high))
      wrong.add(['dimensions', key], size, `${its.label}: from ${its.low} to ${its.high}`);
  }
  wrong.refuse();
  const chain = desk.chainOf(machine!, { dimensions, measured })!;
  for (const name of Object.keys(measured))
    wrong.among(
      ['measured', name],
      name,
      chain.heights.map((one) => one.name),
    );
  wrong.refuse();
  return chain;
}

function chainOfOwn(written: OwnChain, templates: readonly Template[]): Chain {
  const wrong = new Wrong();
  const places = written.places.map((place) => place.name);
  const bodies = written.joints.flatMap((joint) => [joint.moves, joint.on]);
  const twice = (path: string, names: readonly string[], key: string) => {
    names.forEach((one, k) => {
      if (names.indexOf(one) !== k) wrong.add([path, k, key], one, 'another one: this stands here already');
    });
  };
  twice('places', places, 'name');
  twice(
    'joints',
    written.joints.map((joint) => joint.name),
    'name',
  );
  twice(
    'joints',
    written.joints.map((joint) => joint.moves),
    'moves',
  );
  twice(
    'heights',
    written.heights.map((height) => height.name),
    'name',
  );
  written.places.forEach((place, k) => {
    wrong.among(['places', k, 'body'], place.body, bodies);
  });
  written.heights.forEach((height, k) => {
    wrong.among(['heights', k, 'from'], height.from, places);
    wrong.among(['heights', k, 'to'], height.to, places);
    if (!(height.low_um < height.high_um))
      wrong.add(['heights', k, 'high_um'], height.high_um, `more than ${height.low_um}`);
    else if (!(height.low_um <= height.aim_um && height.aim_um <= height.high_um))
      wrong.add(['heights', k, 'aim_um'], height.aim_um, `from ${height.low_um} to ${height.high_um}`);
  });
  ringOf(written.joints, wrong);
  wrong.refuse();
  const joints = written.joints.map((joint, k) => {
    const { slide, template, dimensions = {}, ...rest } = joint;
    if (slide) return { ...rest, slide: slide as Slide };
    const its = templates.find((one) => one.id === template);
    if (!its) {
      wrong.among(
        ['joints', k, 'template'],
        template!,
        templates.map((one) => one.id),
      );
      wrong.refuse();
    }
    return { ...rest, slide: plannedJob(its!, dimensions, joint.name, `joints[${k}].dimensions`).slide };
  });
  return {
    places: written.places,
    joints,
    heights: written.heights.map(given) as Chain['heights'],
    changes: [],
  };
}

function ringOf(joints: OwnChain['joints'], wrong: Wrong): void {
  const on = new Map(joints.map((joint) => [joint.moves, joint.on]));
  for (const start of on.keys()) {
    const seen = [start];
    for (let at = on.get(start); at !== undefined; at = on.get(at)) {
      if (seen.includes(at)) {
        wrong.add(['joints'], [...seen, at].join(' on '), 'bodies that do not carry themselves');
        return;
      }
      seen.push(at);
    }
  }
}

/** Joints, pads and heights that changes and liners name. */
function checkNames(written: OnMachine | OwnChain, chain: Chain): void {
  const wrong = new Wrong();
  const joints = chain.joints.map((joint) => joint.name);
  const padsOf = (joint: string): string[] =>
    chain.joints.find((one) => one.name === joint)?.slide.pads.map((pad) => pad.name) ?? [];
  written.changes?.forEach((change, k) => {
    if (!wrong.among(['changes', k, 'joint'], change.joint, joints)) return;
    const [key, pads] = change.off_um ? ['off_um', change.off_um] : ['on_um', change.on_um!];
    for (const pad of Object.keys(pads))
      wrong.among(['changes', k, key as string, pad], pad, padsOf(change.joint));
  });
  written.liners?.forEach((liner, k) => {
    wrong.among(
      ['liners', k, 'brings'],
      liner.brings,
      chain.heights.map((one) => one.name),
    );
    if (!wrong.among(['liners', k, 'joint'], liner.joint, joints)) return;
    liner.pads.forEach((pad, i) => {
      wrong.among(['liners', k, 'pads', i], pad, padsOf(liner.joint));
    });
  });
  wrong.refuse();
}
