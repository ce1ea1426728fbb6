import type { Machine, Step } from './machine.ts';

/** One step needs another: because it is made from a way that the other makes, or because the other only comes first. */
export interface Need {
  readonly step: string;
  readonly kind: 'rests on' | 'comes after';
  /** The way it rests on. */
  readonly way?: string;
  readonly why: string;
}

type Steps = Pick<Machine, 'steps'>;

/** Which step makes each way. */
export const makers = (machine: Steps): Map<string, string> =>
  new Map(machine.steps.flatMap((step) => step.makes.map((way) => [way, step.id] as const)));

/** What each step needs, by step. Ways that no step makes need nothing: they are trusted as found. */
export function needsOf(machine: Steps): Map<string, readonly Need[]> {
  const maker = makers(machine);
  return new Map(
    machine.steps.map((step) => [
      step.id,
      [
        ...step.from.flatMap((basis): Need[] => {
          const made = 'way' in basis ? maker.get(basis.way) : undefined;
          return made === undefined || !('way' in basis)
            ? []
            : [{ step: made, kind: 'rests on', way: basis.way, why: basis.why }];
        }),
        ...(step.after ?? []).map((one): Need => ({ ...one, kind: 'comes after' })),
      ],
    ]),
  );
}

/** Every step behind all that it needs, or a ring of steps that wait for each other. */
export type Ordered =
  | { readonly ok: true; readonly order: readonly string[] }
  | { readonly ok: false; readonly ring: readonly string[] };

/** Steps in an order in which they can be done; of those that could come next, the one written first. */
export function orderedSteps(machine: Steps): Ordered {
  const needs = needsOf(machine);
  const order: string[] = [];
  const left = new Set(machine.steps.map((step) => step.id));
  for (;;) {
    const next = machine.steps.find(
      ({ id }) => left.has(id) && needs.get(id)!.every((need) => !left.has(need.step)),
    );
    if (!next) break;
    left.delete(next.id);
    order.push(next.id);
  }
  return left.size === 0 ? { ok: true, order } : { ok: false, ring: ringAmong(left, needs) };
}

/** Walks from need to need among steps that all wait, until one comes round again. */
function ringAmong(left: ReadonlySet<string>, needs: ReadonlyMap<string, readonly Need[]>): string[] {
  const walked: string[] = [];
  let at = [...left][0]!;
  while (!walked.includes(at)) {
    walked.push(at);
    at = needs.get(at)!.find((need) => left.has(need.step))!.step;
  }
  return [...walked.slice(walked.indexOf(at)), at];
}

/** Steps that stand on a step, directly or through others: what its ways, scraped again, take with them. */
export function standingOn(machine: Steps, id: string): Set<string> {
  const needs = needsOf(machine);
  const found = new Set<string>();
  const look = [id];
  for (let at = look.pop(); at !== undefined; at = look.pop())
    for (const [step, its] of needs)
      if (!found.has(step) && its.some((need) => need.kind === 'rests on' && need.step === at)) {
        found.add(step);
        look.push(step);
      }
  return found;
}

export const stepOf = (machine: Steps, id: string): Step | undefined =>
  machine.steps.find((step) => step.id === id);
