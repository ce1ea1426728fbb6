import type { WrittenParts, WrittenPoses } from './parts-schema.ts';

type Path = readonly (string | number)[];
/** Says what does not fit: where, what was found, what is expected. */
export type Refuse = (path: Path, found: unknown, expected: string) => void;

/** Doubt of a survey takes a rest for each height at each position: a few seconds of them. */
const mostRests = 300_000;

/** What a schema cannot see: that the parts of a `parts` input fit each other. */
export function partsFits(input: WrittenParts, refuse: Refuse): void {
  if (!(input.lathe || input.mill || input.wear)) refuse([], {}, '"lathe", "mill" or "wear", at least one');
  if (input.lathe) latheFits(input.lathe, refuse);
  if (input.mill) millFits(input.mill, refuse);
  input.wear?.features.forEach((feature, k) => {
    if (!(feature.low < feature.high))
      refuse(['wear', 'features', k, 'high'], feature.high, `more than low (${feature.low})`);
  });
  const names = input.wear?.features.map((one) => one.name) ?? [];
  names.forEach((name, k) => {
    if (names.indexOf(name) !== k) refuse(['wear', 'features', k, 'name'], name, 'a name that is not taken');
  });
}

function latheFits(lathe: NonNullable<WrittenParts['lathe']>, refuse: Refuse): void {
  const at = (...path: (string | number)[]): Path => ['lathe', ...path];
  const { travel, on_bed, cross, turned = [], faced = [] } = lathe;
  if ((travel === undefined) === (on_bed === undefined)) {
    refuse(at(), Object.keys(lathe), 'either "travel" or "on_bed"');
    return;
  }
  if (travel) posesFit(travel, at('travel'), refuse);
  if (travel && !lathe.tool_mm) refuse(at('tool_mm'), undefined, 'the tool’s point in the saddle’s frame');
  if (cross) posesFit(cross, at('cross'), refuse);
  if (!turned.length && !faced.length)
    refuse(at(), Object.keys(lathe), 'at least one part in "turned" or "faced"');
  const stations = travel?.stations_mm ?? on_bed!.site.positions_mm;
  if (on_bed) {
    if (on_bed.site.slide.free !== 'x')
      refuse(at('on_bed', 'site', 'slide', 'free'), on_bed.site.slide.free, '"x", a lathe’s saddle');
    if (stations.length < 2) refuse(at('on_bed', 'site', 'positions_mm'), stations, 'two places or more');
    stations.forEach((place, k) => {
      if (k > 0 && place <= stations[k - 1]!)
        refuse(
          at('on_bed', 'site', 'positions_mm', k),
          place,
          `more than the one before (${stations[k - 1]})`,
        );
    });
    const rests = on_bed.site.bed.ways.length * on_bed.site.bed.stations_mm.length * stations.length;
    if (on_bed.height_sd_um && rests > mostRests)
      refuse(
        at('on_bed', 'height_sd_um'),
        on_bed.height_sd_um,
        `fewer stations or positions for a doubt: ways × stations × positions are ${rests}, at most ${mostRests}`,
      );
    if (!on_bed.site.candidates_mm.includes(on_bed.printed_mm))
      refuse(at('on_bed', 'printed_mm'), on_bed.printed_mm, 'one of site.candidates_mm');
  }
  const [first, last] = [stations[0]!, stations.at(-1)!];
  const along = `${first} to ${last}, the travel`;
  turned.forEach((one, k) => {
    const path = (key: string) => at('turned', k, key);
    if (one.from_mm < first || one.from_mm > last) refuse(path('from_mm'), one.from_mm, along);
    if (one.to_mm < first || one.to_mm > last) refuse(path('to_mm'), one.to_mm, along);
    if (one.to_mm <= one.from_mm) refuse(path('to_mm'), one.to_mm, `more than from_mm (${one.from_mm})`);
    if (Math.abs(one.tool_high_mm ?? 0) >= one.radius_mm)
      refuse(path('tool_high_mm'), one.tool_high_mm, `less than the radius (${one.radius_mm})`);
  });
  faced.forEach((one, k) => {
    const path = (key: string) => at('faced', k, key);
    const { inner_mm = 0 } = one;
    if (one.at_mm < first || one.at_mm > last) refuse(path('at_mm'), one.at_mm, along);
    if (inner_mm >= one.rim_mm) refuse(path('inner_mm'), inner_mm, `less than rim_mm (${one.rim_mm})`);
    if (one.beside !== undefined && !turned.some((other) => other.name === one.beside))
      refuse(path('beside'), one.beside, 'the name of a turned part');
    const radii = cross?.stations_mm;
    if (radii && (inner_mm < radii[0]! || one.rim_mm > radii.at(-1)!))
      refuse(
        path('rim_mm'),
        [one.rim_mm, inner_mm],
        `${radii[0]} to ${radii.at(-1)}, the cross slide’s stations`,
      );
  });
  const names = [...turned, ...faced].map((one) => one.name);
  names.forEach((name, k) => {
    if (names.indexOf(name) === k) return;
    const isFace = k >= turned.length;
    refuse(
      at(isFace ? 'faced' : 'turned', isFace ? k - turned.length : k, 'name'),
      name,
      'a name that is not taken',
    );
  });
}

function millFits(mill: NonNullable<WrittenParts['mill']>, refuse: Refuse): void {
  const axes = mill.carriages.map((one) => one.along);
  mill.carriages.forEach((carriage, k) => {
    posesFit(carriage, ['mill', 'carriages', k], refuse);
    if (axes.indexOf(carriage.along) !== k)
      refuse(['mill', 'carriages', k, 'along'], carriage.along, 'one carriage for an axis');
  });
  mill.blocks.forEach((block, k) => {
    block.faces.forEach((face, f) => {
      const path = ['mill', 'blocks', k, 'faces', f];
      if (block.faces.indexOf(face) !== f) refuse(path, face, 'each face once');
      if (!axes.some((axis) => axis !== face[1]))
        refuse(path, face, `a face that travel ${axes.join(', ')} sweeps`);
    });
    for (const carriage of mill.carriages) {
      const i = 'xyz'.indexOf(carriage.along);
      const ends = [-0.5, 0.5].map((end) => {
        const off = block.middle_mm[i]! + end * block.size_mm[i]! - mill.tool_mm[i]!;
        return carriage.carries === 'tool' ? off : -off;
      });
      const [first, last] = [carriage.stations_mm[0]!, carriage.stations_mm.at(-1)!];
      if (Math.min(...ends) < first - 1e-6 || Math.max(...ends) > last + 1e-6)
        refuse(
          ['mill', 'blocks', k, 'size_mm', i],
          block.size_mm[i],
          `a block that ${carriage.name} reaches: it would go to ${Math.min(...ends)} and ${Math.max(...ends)}, its stations are ${first} to ${last}`,
        );
    }
  });
}

function posesFit(poses: WrittenPoses, path: Path, refuse: Refuse): void {
  const many = poses.stations_mm.length;
  poses.stations_mm.forEach((at, k) => {
    if (k > 0 && at <= poses.stations_mm[k - 1]!)
      refuse([...path, 'stations_mm', k], at, `more than the one before (${poses.stations_mm[k - 1]})`);
  });
  if (!poses.shift_um && !poses.turn_urad)
    refuse([...path, 'shift_um'], undefined, '"shift_um", "turn_urad" or both');
  for (const key of ['shift_um', 'turn_urad', 'shift_sd_um', 'turn_sd_urad'] as const) {
    const rows = poses[key];
    if (rows && rows.length !== many)
      refuse([...path, key], `${rows.length} rows`, `${many} rows, one for each station`);
  }
  if (poses.common_covariance)
    covarianceFits(poses.common_covariance, 6, [...path, 'common_covariance'], refuse);
  if (poses.covariance) covarianceFits(poses.covariance, 6 * many, [...path, 'covariance'], refuse);
}

/** Square, symmetric, nothing below 0 on its diagonal and no correlation beyond 1. */
function covarianceFits(
  matrix: readonly (readonly number[])[],
  size: number,
  path: Path,
  refuse: Refuse,
): void {
  const uneven = matrix.findIndex((row) => row.length !== size);
  if (matrix.length !== size || uneven >= 0) {
    const found =
      matrix.length !== size ? `${matrix.length} rows` : `${matrix[uneven]!.length} numbers in row ${uneven}`;
    refuse(path, found, `${size} rows of ${size} numbers`);
    return;
  }
  const wrong = wrongEntry(matrix);
  if (wrong) refuse([...path, wrong.row, wrong.column], matrix[wrong.row]![wrong.column], wrong.expected);
}

/** The first entry that no covariance has. */
function wrongEntry(matrix: readonly (readonly number[])[]) {
  for (const [row, line] of matrix.entries()) {
    if (line[row]! < 0) return { row, column: row, expected: 'a variance, 0 or above' };
    for (let column = 0; column < row; column++) {
      const most = Math.sqrt(line[row]! * matrix[column]![column]!) * (1 + 1e-6);
      const [here, mirrored] = [line[column]!, matrix[column]![row]!];
      if (Math.abs(here - mirrored) > 1e-9 * most + 1e-12)
        return { row, column, expected: `the same as [${column}][${row}] (${mirrored})` };
      if (Math.abs(here) > most + 1e-12)
        return { row, column, expected: `at most ${most}, from the variances on the diagonal` };
    }
  }
  return undefined;
}
