import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { type Course, course } from '../../../draw/course.ts';
import { counted } from '../../../shop/phrase.ts';
import { pct, spotsPerSquare, squareWords } from '../../../shop/print/reading-words.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';
import type { RoundPhoto } from './compare.tsx';

/** Count and share of a pad's photos, round by round. */
export function Progress(props: {
  readonly before: readonly RoundPhoto[];
  readonly round: number;
  readonly density_per_25mm: number;
  readonly bearing_pct: number;
  readonly units: UnitSystem;
}) {
  const { before, round, units } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const all = [
    ...before.map((one) => ({ round: one.round, ...one.taken })),
    { round, density_per_25mm: props.density_per_25mm, bearing_pct: props.bearing_pct },
  ];
  const two = width >= 700;
  const each = two ? Math.floor((width - 32) / 2) : width;
  const figure = (
    name: string,
    of: (one: (typeof all)[number]) => number,
    text: (value: number) => string,
  ) => {
    const points = all.map((one): Course['points'][number] => ({
      label: `R${one.round}`,
      value: of(one),
      text: text(of(one)),
    }));
    return <Figure shape={course({ title: `${name}, round by round`, name, width: each, points })} />;
  };
  return (
    <section>
      <h2>Round by round</h2>
      <div ref={ref} className={two ? 'two' : undefined}>
        {figure(
          `Spots, ${squareWords(units)}`,
          (one) => spotsPerSquare(one.density_per_25mm, units),
          (value) => counted(Math.round(value), 'spot'),
        )}
        {figure(
          'Bears, %',
          (one) => one.bearing_pct,
          (value) => pct(value),
        )}
      </div>
    </section>
  );
}
