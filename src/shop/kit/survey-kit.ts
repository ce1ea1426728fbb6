import { usualRatio } from '../../core/kit/can-prove.ts';
import type { Kit, KitTarget, SetUp } from '../../core/kit/kit.ts';
import type { TakenSurvey } from '../../core/ledger/survey-record.ts';
import { sayLength } from '../../core/quantity/length.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import type { PlateInput } from '../../core/survey/plate-input.ts';
import type { JobTargetKit } from './job-kit.ts';
import { kitReport } from './kit-report.ts';

/** A limit that a kept survey is held to: what it is of, the limit as a target, every way of the kit to it, what it needs else. */
interface Limit {
  readonly feature: string;
  readonly target: Omit<KitTarget, 'name'>;
  readonly ways: readonly Way[];
  readonly needs: string;
}

interface Way {
  readonly setup: SetUp;
  readonly by: readonly string[];
}

/**
 * For every limit that a kept survey is held to (straightness, twist, parallelism, flatness): what the kit has for it is tried, once
 * each, and the way of least doubt is told.
 */
export function surveyKit(
  surveys: Iterable<TakenSurvey>,
  kit: Kit,
  system: UnitSystem,
): readonly JobTargetKit[] {
  return [...surveys].flatMap((survey): JobTargetKit[] => {
    const limit = limitOf(survey, kit, system);
    if (!limit) return [];
    const { feature, ways, needs } = limit;
    const target = { name: survey.of, ...limit.target };
    const tried = ways.map((way) => ({
      way,
      proof: kitReport(
        { kit, targets: [target], setups: [{ target: target.name, setup: way.setup }], wanted: usualRatio },
        system,
      ).proofs[0]!,
    }));
    const best = tried.sort((a, b) => a.proof.doubt - b.proof.doubt)[0];
    if (!best) return [{ can: 'not told', feature, why: needs }];
    const { way, proof } = best;
    return [{ can: proof.can, feature, setup: way.setup.name, by: way.by, proof }];
  });
}

function limitOf(survey: TakenSurvey, kit: Kit, system: UnitSystem): Limit | undefined {
  const { of, input } = survey;
  switch (input.kind) {
    case 'angles':
    case 'heights': {
      if (input.limit_um === undefined) return undefined;
      const plane = input.direction ?? 'vertical';
      return {
        feature: `${of}, straight ${plane === 'vertical' ? 'up and down' : 'sideways'}`,
        target: { high: input.limit_um, unit: 'um' },
        ways: straightWays(lengthOf(input), plane, kit),
        needs: missing(lengthOf(input), plane, system),
      };
    }
    case 'twist':
      return input.limit_urad === undefined
        ? undefined
        : {
            feature: `${of}, twist`,
            target: { high: input.limit_urad, unit: 'urad' },
            ways: kit.instruments.flatMap((one) =>
              one.kind === 'level' || one.kind === 'electronic level'
                ? [
                    {
                      setup: {
                        method: 'level twist',
                        name: 'level across, on a bridge',
                        instrument: one.name,
                        readings: 1,
                      } as const,
                      by: [one.name],
                    },
                  ]
                : [],
            ),
            needs: 'To survey it you need a level.',
          };
    case 'parallel':
      return input.limit_um === undefined
        ? undefined
        : {
            feature: `${of}, parallel`,
            target: { high: input.limit_um, unit: 'um' },
            ways: dialsOf(kit).map((dial) => ({
              setup: {
                method: 'carried indicator',
                name: 'indicator from one way to the other',
                instrument: dial.name,
                sweeps: 1,
              },
              by: [dial.name],
            })),
            needs: 'To survey it you need an indicator.',
          };
    case 'points':
    case 'grid':
    case 'eight lines': {
      if (input.limit_um === undefined) return undefined;
      const [long, broad] = sidesOf(input);
      return {
        feature: `${of}, flat`,
        target: { high: input.limit_um, unit: 'um' },
        ways: flatWays(long, broad, kit),
        needs: `To survey it you need a level, or a surface plate of ${sayLength(long, system).text} by ${sayLength(broad, system).text}.`,
      };
    }
  }
}

const dialsOf = (kit: Kit) => kit.instruments.filter((one) => one.kind === 'indicator');

/** The sides of a surveyed face, mm, the longer one first. */
function sidesOf(input: PlateInput): readonly [number, number] {
  const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const sides =
    input.kind === 'points'
      ? [span(input.points.map((one) => one.x_mm)), span(input.points.map((one) => one.y_mm))]
      : input.kind === 'grid'
        ? [
            (input.along_x_urad[0]?.length ?? 0) * input.step_x_mm,
            (input.along_y_urad[0]?.length ?? 0) * input.step_y_mm,
          ]
        : [input.lines_urad.front.length * input.step_x_mm, input.lines_urad.left.length * input.step_y_mm];
  const [long, broad] = sides.toSorted((a, b) => b - a);
  return [long!, broad!];
}

/** A film of blue as it is usually spread for the last prints, µm: common practice. */
const usualFilm_um = 3;

/**
 * A level or mirror stepped over the face, its doubt that of the longest line alone, the diagonal: other lines only better it; an
 * indicator over a plate that is as large, and a print on it.
 */
function flatWays(long_mm: number, broad_mm: number, kit: Kit): Way[] {
  const walks = kit.instruments.flatMap((one): Way[] =>
    one.kind === 'indicator'
      ? []
      : [
          {
            setup: {
              method: 'level walk',
              name: `${one.kind}, stepped over the face`,
              instrument: one.name,
              length_mm: Math.hypot(long_mm, broad_mm),
              runs: 1,
            },
            by: [one.name],
          },
        ],
  );
  const plates = kit.references.filter(
    (one) =>
      one.kind === 'plate' &&
      Math.max(one.length_mm, one.width_mm ?? 0) >= long_mm &&
      Math.min(one.length_mm, one.width_mm ?? 0) >= broad_mm,
  );
  return [
    ...walks,
    ...plates.flatMap((plate): Way[] => [
      {
        setup: {
          method: 'plate print',
          name: 'print on the plate',
          reference: plate.name,
          film_um: usualFilm_um,
          prints: 1,
        },
        by: [plate.name],
      },
      ...dialsOf(kit).map(
        (dial): Way => ({
          setup: {
            method: 'plate heights',
            name: 'indicator over the plate',
            instrument: dial.name,
            reference: plate.name,
            sweeps: 1,
          },
          by: [dial.name, plate.name],
        }),
      ),
    ]),
  ];
}

const lengthOf = (input: LineInput): number =>
  input.kind === 'angles'
    ? input.step_mm * input.angles_urad.length
    : input.stations_mm.at(-1)! - input.stations_mm[0]!;

/** A mirror tells both planes, a level the upright one only. */
function straightWays(length_mm: number, plane: 'vertical' | 'horizontal', kit: Kit): Way[] {
  const walks = kit.instruments.flatMap((one) =>
    one.kind === 'autocollimator' || (plane === 'vertical' && one.kind !== 'indicator')
      ? [
          {
            setup: {
              method: 'level walk',
              name: `${one.kind}, stepped`,
              instrument: one.name,
              length_mm,
              runs: 1,
            } as const,
            by: [one.name],
          },
        ]
      : [],
  );
  const dials = dialsOf(kit);
  const edges = kit.references.filter((one) => one.kind === 'straightedge' && one.length_mm >= length_mm);
  const sweeps = edges.flatMap((edge) =>
    dials.map((dial) => ({
      setup: {
        method: 'straightedge sweep',
        name: 'indicator over a straightedge',
        instrument: dial.name,
        reference: edge.name,
        length_mm,
        sweeps: 1,
        seats: 1,
        turned_over: false,
        plane,
        sag_taken_out: false,
      } as const,
      by: [dial.name, edge.name],
    })),
  );
  return [...walks, ...sweeps];
}

function missing(length_mm: number, plane: 'vertical' | 'horizontal', system: UnitSystem): string {
  const steps = plane === 'vertical' ? 'a level' : 'an autocollimator';
  return `To survey it you need ${steps}, or an indicator and a straightedge of ${sayLength(length_mm, system).text}.`;
}
