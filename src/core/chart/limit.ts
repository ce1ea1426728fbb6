/** Which side of zero is permitted: only plus, only minus, both, or nothing but a size (run-out, straightness without a direction). */
export type Sense = 'plus' | 'minus' | 'either' | 'size';

/** A limit that grows in steps with the machine. */
export interface LimitStep {
  /** Up to and with this size of the machine, mm. */
  readonly up_to_mm: number;
  readonly um: number;
}

/** How far a thing may be out, as it is stated: a number, or steps over a size of the machine. */
export interface Limit {
  readonly sense: Sense;
  /** The most, µm, as a size: the sense says which way. Left out when there are steps. */
  readonly um?: number;
  /** The least, where zero is not good enough (a facing that must be concave by some µm). Only for plus and minus. */
  readonly least_um?: number;
  /** The length it is stated for: measured over another one, it is scaled in proportion. Left out: it is not scaled. */
  readonly over_mm?: number;
  readonly steps?: readonly LimitStep[];
  /** Beyond the last step: so much more for each such length, begun ones counting whole. Left out: the last step stays. */
  readonly further?: { readonly per_mm: number; readonly um: number };
  readonly most_um?: number;
}

/** What a scaled limit is held to. */
export interface Scaling {
  /** No scaled limit is tighter than this, µm. */
  readonly floor_um: number;
  /** Scaled limits are rounded to this, µm; 0: not at all. */
  readonly round_um: number;
}

/** The band a value must lie in, µm; a side that is left out is open. */
export interface LimitBand {
  readonly low?: number;
  readonly high?: number;
}

/** What is left by binary fractions must not decide a rounding. */
const clean = (value: number): number => Number(value.toPrecision(12));

/**
 * A stated limit for another length.
 *
 *     T = max(floor, round(T₀ · L / L₀)),   halves to the tighter side
 *
 * On its own length it stays as stated, rounded nowhere.
 *
 * @param um      as stated, µm, above 0
 * @param stated_mm, length_mm  above 0
 * @example scaledLimit(20, 300, 200, { floor_um: 5, round_um: 2 })     // 13.33 → 14
 */
export function scaledLimit(um: number, stated_mm: number, length_mm: number, scaling: Scaling): number {
  if (!(stated_mm > 0 && length_mm > 0))
    throw new RangeError(`lengths ${stated_mm} and ${length_mm}; expected both above 0`);
  if (stated_mm === length_mm) return um;
  const whole = clean((um * length_mm) / stated_mm);
  if (scaling.round_um === 0) return Math.max(scaling.floor_um, whole);
  const steps = Math.ceil(clean(whole / scaling.round_um) - 0.5);
  return Math.max(scaling.floor_um, clean(steps * scaling.round_um));
}

/** The limit of a machine of this size, µm: the first step that reaches it, or the last one and what is added further on. */
function stepped(limit: Limit, steps: readonly LimitStep[], size_mm: number): number {
  const step = steps.find((one) => size_mm <= one.up_to_mm);
  if (step) return step.um;
  const last = steps.at(-1)!;
  const more = limit.further
    ? Math.ceil(clean((size_mm - last.up_to_mm) / limit.further.per_mm)) * limit.further.um
    : 0;
  return Math.min(limit.most_um ?? Infinity, last.um + more);
}

/**
 * The band of a limit on one machine.
 *
 * @param length_mm  what it is measured over; left out: the length it is stated for
 * @param size_mm    the machine's size that the steps go by
 * @throws RangeError  steps without a size, or neither a number nor steps
 */
export function bandOf(limit: Limit, scaling: Scaling, length_mm?: number, size_mm?: number): LimitBand {
  const { sense, steps, over_mm } = limit;
  if (steps?.length && size_mm === undefined)
    throw new RangeError('a limit in steps; expected the machine’s size they go by');
  const stated = steps?.length ? stepped(limit, steps, size_mm!) : limit.um;
  if (stated === undefined) throw new RangeError('a limit without a number; expected um or steps');
  const sized = (um: number): number =>
    over_mm === undefined || length_mm === undefined || um === 0
      ? um
      : scaledLimit(um, over_mm, length_mm, scaling);
  const most = Math.min(sized(stated), limit.most_um ?? Infinity);
  // The nearer end is not held to the floor: lifting it would ask for more than was stated.
  const least = over_mm && length_mm ? ((limit.least_um ?? 0) * length_mm) / over_mm : (limit.least_um ?? 0);
  switch (sense) {
    case 'plus':
      return { low: clean(least), high: most };
    case 'minus':
      return { low: -most, high: least === 0 ? 0 : -clean(least) };
    case 'either':
      return { low: -most, high: most };
    case 'size':
      return { high: most };
  }
}
