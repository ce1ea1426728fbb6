import { slope } from '../body/displacement.ts';
import { canProve, type Proof, roomOf } from '../kit/can-prove.ts';
import { type Kit, type KitTarget, quantityOf, type SetUp } from '../kit/kit.ts';
import type { ChartLine } from './chart-line.ts';
import { toLimit } from './settle.ts';

/** A measurement that would settle a line. */
export interface NextMeasurement {
  readonly line: string;
  /** About how long it takes, minutes: common practice. */
  readonly minutes: number;
  /** What to do, when the kit's own set-up was bettered. */
  readonly how?: readonly string[];
}

/** What the kit says about settling a line: the target in the set-up's unit. */
export interface KitProof {
  readonly line: string;
  readonly proof: Proof;
}

/** A line's band in the unit of a set-up: µrad where it measures a slope. Undefined when the two do not fit, or a side is open. */
export function kitTarget(line: ChartLine, setup: SetUp): KitTarget | undefined {
  const { low, high } = line.band;
  if (high === undefined) return undefined;
  const isSlope = quantityOf(setup) === 'slope';
  if (isSlope !== (line.kind === 'slope')) return undefined;
  if (isSlope && (line.over_mm === undefined || low === undefined)) return undefined;
  const sized = (um: number): number => (isSlope ? slope(um, line.over_mm!) : um);
  return {
    name: line.id,
    high: sized(high),
    unit: isSlope ? 'urad' : 'um',
    ...(low === undefined ? {} : { low: sized(low) }),
  };
}

/**
 * Whether the kit can settle a line where its value lies, and the least time that does: the doubt must come below the
 * distance to the nearest limit; for a line never measured, to what is usual (four to one).
 */
export function kitProof(line: ChartLine, setup: SetUp, kit: Kit): KitProof | undefined {
  const target = kitTarget(line, setup);
  if (!target) return undefined;
  const reach = line.now && toLimit(line.now.value_um, line.band);
  const wanted =
    reach === undefined || !(reach > 0)
      ? undefined
      : roomOf(target) / (target.unit === 'urad' ? slope(reach, line.over_mm!) : reach);
  return { line: line.id, proof: canProve(target, setup, kit, wanted) };
}

/**
 * What is still to be proven, the cheapest first. Lines that no measurement can settle stand last, without a time.
 * @param proofs  what the kit says of some of them
 */
export function nextMeasurements(
  lines: readonly ChartLine[],
  proofs: readonly KitProof[] = [],
): NextMeasurement[] {
  return lines
    .flatMap((line): NextMeasurement[] => {
      const how = line.settle;
      if (!how) return [];
      const better = proofs.find((one) => one.line === line.id)?.proof.cheapest;
      if (how.by === 'more readings')
        return [
          better && better.minutes < how.more * line.minutes
            ? { line: line.id, minutes: better.minutes, how: better.how }
            : { line: line.id, minutes: how.more * line.minutes },
        ];
      if (how.by === 'less doubt' && better)
        return [{ line: line.id, minutes: better.minutes, how: better.how }];
      if (how.by !== 'first measurement') return [];
      // The set-up as chosen is not sure enough for this limit: what betters it takes its time too.
      return [
        better
          ? { line: line.id, minutes: line.minutes + better.minutes, how: better.how }
          : { line: line.id, minutes: line.minutes },
      ];
    })
    .sort((a, b) => a.minutes - b.minutes);
}
