import { type CentresTyped, centresBy } from '../../../shop/order/axis-typed.ts';
import { PickField } from '../machine/fields.tsx';
import { MeasureField } from '../machine/measure-field.tsx';

const plus = 'plus: the tailstock is high, or toward you.';
const ways = {
  'two bars': `Each is the tailstock’s reading less the headstock’s; ${plus}`,
  'swung indicator':
    'The indicator sits on a bracket in the spindle, its plunger toward the barrel; plus: plunger in. Swing the same bracket round something true first: what it reads too much, top less underside, is its own sag.',
} as const;

/** How the tailstock was held against the spindle, what was read, and its band. */
export function CentresFields(props: {
  readonly one: CentresTyped;
  readonly set: (one: CentresTyped) => void;
}) {
  const { one, set } = props;
  const measure = (label: string, value: number | undefined, change: (um: number) => CentresTyped) => (
    <MeasureField
      key={label}
      label={label}
      unit="um"
      signed
      value={value}
      onChange={(um) => set(change(um ?? 0))}
    />
  );
  return (
    <section className="machine-list">
      <h2>The tailstock against the spindle</h2>
      <PickField
        label="Read with"
        value={one.kind}
        among={[
          { value: 'two bars', words: 'two bars alike, one in each bore, then exchanged' },
          { value: 'swung indicator', words: 'an indicator in the spindle, swung round the barrel' },
        ]}
        onChange={(kind) => set(centresBy(one, kind as CentresTyped['kind'], one.plane))}
      />
      <PickField
        label="Plane"
        value={one.plane}
        among={[
          { value: 'up', words: 'up and down' },
          { value: 'sideways', words: 'sideways' },
        ]}
        onChange={(plane) => set(centresBy(one, one.kind, plane as CentresTyped['plane']))}
      />
      <p className="quiet">{ways[one.kind]}</p>
      <div className="machine-three">
        {one.kind === 'two bars'
          ? [
              measure('As first fitted', one.first_um, (first_um) => ({ ...one, first_um })),
              measure('Bars exchanged', one.exchanged_um, (exchanged_um) => ({ ...one, exchanged_um })),
            ]
          : [
              measure(one.plane === 'up' ? 'On top' : 'On your side', one.first_um, (first_um) => ({
                ...one,
                first_um,
              })),
              measure(one.plane === 'up' ? 'Underneath' : 'At the back', one.opposite_um, (opposite_um) => ({
                ...one,
                opposite_um,
              })),
              ...(one.plane === 'up'
                ? [
                    measure('Bracket reads too much', one.bracket_sag_um, (bracket_sag_um) => ({
                      ...one,
                      bracket_sag_um,
                    })),
                  ]
                : []),
            ]}
      </div>
      <div className="machine-three">
        {measure('Band, from', one.low_um, (low_um) => ({ ...one, low_um }))}
        {measure('to', one.high_um, (high_um) => ({ ...one, high_um }))}
        {measure('Aim', one.aim_um, (aim_um) => ({ ...one, aim_um }))}
      </div>
      <p className="quiet">
        The tailstock stands high, never low: its base only wears down. Remembered limits; put your own in.
      </p>
    </section>
  );
}
