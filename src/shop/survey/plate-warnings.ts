import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { PlateSurvey } from '../../core/survey/plate.ts';
import { eightLines, type PlateInput } from '../../core/survey/plate-input.ts';
import { heightSuspects, missingPlaces } from '../../core/survey/surface-suspect.ts';
import { suspects } from '../../core/survey/suspect.ts';
import type { TablePlaces } from './line.ts';
import type { SurveyWarning } from './line-warnings.ts';
import { suspectText } from './suspect-words.ts';

const closingSds = 3;
const shownPlaces = 5;

export function plateWarnings(
  input: PlateInput,
  found: PlateSurvey,
  table: TablePlaces | undefined,
  system: UnitSystem = 'metric',
): SurveyWarning[] {
  const unknown: SurveyWarning[] = found.sd_um
    ? []
    : [
        {
          code: 'no doubt',
          text: `No doubt is known: no sd of a reading (${input.kind === 'points' ? 'reading_sd_um' : 'reading_sd_urad'}) was given, so nothing can be proven.`,
        },
      ];
  return [
    ...(input.kind === 'points'
      ? pointWarnings(input.points, table, system)
      : angleWarnings(input, found, system)),
    ...(table?.otherUnits ?? []).map(({ line, typed, taken, key }) => ({
      code: 'mixed units',
      text: `Line ${line}: “${typed}” has a unit of its own and was taken as ${taken}; other cells of ${key} take the heading's.`,
      path: `line ${line}`,
    })),
    ...unknown,
  ];
}

/** A place without its unit, where another follows with it. */
const bare = (place: string): string => place.replace(/\smm$/, '');

function pointWarnings(
  points: Extract<PlateInput, { kind: 'points' }>['points'],
  table: TablePlaces | undefined,
  system: UnitSystem,
): SurveyWarning[] {
  const { place } = told(system);
  const slips = heightSuspects(points).map((one) => {
    const { x_mm, y_mm } = points[one.index]!;
    return {
      code: one.code,
      text: suspectText(
        one,
        `Point ${one.index + 1}, at x ${bare(place(x_mm))} y ${place(y_mm)}`,
        'size',
        system,
      ),
      path: table ? `line ${table.lines[one.index]}` : `points[${one.index}].z_um`,
    };
  });
  const missing = missingPlaces(points);
  if (missing.length === 0) return slips;
  const named = missing
    .slice(0, shownPlaces)
    .map(({ x_mm, y_mm }) => `x ${bare(place(x_mm))} y ${place(y_mm)}`);
  const more = missing.length > shownPlaces ? ` and ${missing.length - shownPlaces} more` : '';
  return [
    ...slips,
    {
      code: 'station missing',
      text: `The points lie on a grid that lacks ${named.join('; ')}${more}. Flatness is that of the points that are there.`,
    },
  ];
}

function angleWarnings(
  input: Exclude<PlateInput, { kind: 'points' }>,
  found: PlateSurvey,
  system: UnitSystem,
): SurveyWarning[] {
  const words = told(system);
  const lines: [string, readonly number[]][] =
    input.kind === 'grid'
      ? [
          ...input.along_x_urad.map((angles, k): [string, readonly number[]] => [
            `along_x_urad[${k}]`,
            angles,
          ]),
          ...input.along_y_urad.map((angles, k): [string, readonly number[]] => [
            `along_y_urad[${k}]`,
            angles,
          ]),
        ]
      : eightLines.map((name): [string, readonly number[]] => [`lines_urad.${name}`, input.lines_urad[name]]);
  const slips: SurveyWarning[] = lines.flatMap(([key, angles]) =>
    suspects([...angles.keys()], angles).map((one) => ({
      code: one.code,
      text: suspectText(one, `${key}, step ${one.index + 1}`, 'angle', system),
      path: `${key}[${one.index}]`,
    })),
  );
  const misfits = found.surface.misfits
    .filter((one) => !slips.some((slip) => slip.path === one.path))
    .map((one) => ({
      code: 'does not fit',
      text: `${one.path} fits the others worst: it is ${words.angle(one.off_urad, { decimals: 1 })} off what the steps round it lead to, ${one.sds.toFixed(0)} times the scatter. Take it again. It counts as typed.`,
      path: one.path,
    }));
  const open = found.surface.closures.filter(
    (one) => one.sd_um !== undefined && Math.abs(one.closing_um) > closingSds * one.sd_um,
  );
  const closures = open.map((one) => ({
    code: 'does not close',
    text: `${one.name} does not close: it ends ${words.size(one.closing_um, { sd: one.sd_um! })} from where it should.`,
    path: one.name,
  }));
  return [...slips, ...misfits, ...closures];
}
