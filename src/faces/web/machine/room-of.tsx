import type { Template } from '../../../contract/template.ts';
import type { Machine, MachineDimension, MachineSlide } from '../../../core/order/machine.ts';
import { blankBody, blankDimension, blankSlide, blankWay, moved } from '../../../shop/order/machine-draft.ts';
import type { HeldNames } from '../../../shop/order/machine-rename.ts';
import {
  bandScale,
  type MeasureScale,
  measureScale,
  measureShown,
} from '../../../shop/order/measure-typed.ts';
import { useSettings } from '../keep/settings.ts';
import { ItemList, PickField, ScaledField, ShortName, TextField } from './fields.tsx';

interface RoomProps {
  readonly machine: Machine;
  /** Short names that the job's ledger refers to. */
  readonly held: HeldNames;
  readonly onChange: (machine: Machine) => void;
}

/** Name, words, and the sizes that everything else may be a sum over. */
export function SizesRoom({ machine, held, onChange }: RoomProps) {
  const { units } = useSettings();
  return (
    <>
      <TextField
        label="Machine"
        value={machine.title}
        onChange={(title) => onChange({ ...machine, title })}
      />
      <TextField
        label="In words"
        long
        value={machine.description}
        onChange={(description) => onChange({ ...machine, description })}
      />
      <ItemList<MachineDimension>
        title="Sizes"
        one="a size"
        items={machine.dimensions}
        name={(one) => one.label}
        note={(one) => {
          const scale = measureScale(one.unit, units);
          return `${one.key}: ${measureShown(one.value, scale)} ${scale.sign}`;
        }}
        onChange={(dimensions) => onChange({ ...machine, dimensions })}
        blank={() => blankDimension(machine)}
        move={moved}
      >
        {(one, set) => (
          <>
            <TextField label="Called" value={one.label} onChange={(label) => set({ ...one, label })} />
            <ShortName
              label="Key in sums"
              machine={machine}
              list="dimensions"
              name={one.key}
              held={held}
              onChange={onChange}
            />
            <div className="machine-three">
              {(
                [
                  ['value', 'Size'],
                  ['low', 'At least'],
                  ['high', 'At most'],
                ] as const
              ).map(([key, label]) => (
                <ScaledField
                  key={key}
                  label={label}
                  scale={measureScale(one.unit, units)}
                  value={one[key]}
                  onChange={(value) => set({ ...one, [key]: value as number })}
                />
              ))}
            </div>
            <PickField
              label="Unit"
              value={one.unit}
              among={[
                { value: 'mm', words: measureScale('mm', units).sign },
                { value: 'um', words: measureScale('um', units).sign },
                { value: 'deg', words: 'degrees' },
                { value: 'kg', words: 'kg' },
              ]}
              onChange={(unit) => set({ ...one, unit: unit as MachineDimension['unit'] })}
            />
            <TextField
              label="Where it is measured"
              value={one.where}
              onChange={(where) => set({ ...one, where })}
            />
          </>
        )}
      </ItemList>
    </>
  );
}

const without = <T extends object, K extends keyof T>(item: T, key: K, value: T[K] | ''): T => {
  const { [key]: _was, ...rest } = item;
  return (value === '' ? rest : { ...rest, [key]: value }) as T;
};

/** Castings, and the faces on them. */
export const WaysRoom = ({ machine, held, onChange }: RoomProps) => (
  <>
    <ItemList
      title="Bodies"
      one="a body"
      items={machine.bodies}
      name={(one) => one.name}
      note={(one) => one.caution}
      onChange={(bodies) => onChange({ ...machine, bodies })}
      blank={() => blankBody(machine)}
      move={moved}
    >
      {(one, set) => (
        <>
          <TextField label="Called" value={one.name} onChange={(name) => set({ ...one, name })} />
          <ShortName machine={machine} list="bodies" name={one.id} held={held} onChange={onChange} />
          <TextField
            label="Caution before it is lifted or turned, if any"
            value={one.caution ?? ''}
            onChange={(text) => set(without(one, 'caution', text))}
          />
        </>
      )}
    </ItemList>
    <ItemList
      title="Ways"
      one="a way"
      items={machine.ways}
      name={(one) => `${machine.bodies.find((body) => body.id === one.body)?.name ?? one.body}: ${one.name}`}
      note={(one) => (one.as_found === undefined ? undefined : `trusted as found: ${one.as_found}`)}
      onChange={(ways) => onChange({ ...machine, ways })}
      blank={() => blankWay(machine)}
      move={moved}
    >
      {(one, set) => (
        <>
          <TextField label="Called" value={one.name} onChange={(name) => set({ ...one, name })} />
          <ShortName machine={machine} list="ways" name={one.id} held={held} onChange={onChange} />
          <PickField
            label="On"
            value={one.body}
            among={machine.bodies.map((body) => ({ value: body.id, words: body.name }))}
            onChange={(body) => set({ ...one, body })}
          />
          <TextField
            label="Why it may be trusted as found, when no step makes it"
            value={one.as_found ?? ''}
            onChange={(text) => set(without(one, 'as_found', text))}
          />
        </>
      )}
    </ItemList>
  </>
);

/** What a size of the template is called, its unit, and what it is when it is left empty. */
const sizeLabel = (size: Template['dimensions'][number], scale: MeasureScale): string =>
  `${size.label}, ${scale.sign}${size.value === undefined ? '' : ` (${typeof size.value === 'number' ? measureShown(size.value, scale) : size.value})`}`;

/** Bodies on bodies, with the pads they bear on: sizes, and the bands they are brought into. */
export function SlidesRoom({
  machine,
  held,
  onChange,
  templates,
}: RoomProps & { readonly templates: readonly Template[] }) {
  const { units } = useSettings();
  return (
    <ItemList<MachineSlide>
      title="Slides and their pads"
      one="a slide"
      items={machine.slides}
      name={(one) => one.name}
      note={(one) => templates.find((template) => template.id === one.template)?.title ?? one.template}
      onChange={(slides) => onChange({ ...machine, slides })}
      blank={() => blankSlide(machine, templates[0]?.id ?? '')}
      move={moved}
    >
      {(one, set) => {
        const template = templates.find((its) => its.id === one.template);
        const bodies = machine.bodies.map((body) => ({ value: body.id, words: body.name }));
        return (
          <>
            <TextField label="Called" value={one.name} onChange={(name) => set({ ...one, name })} />
            <ShortName machine={machine} list="slides" name={one.id} held={held} onChange={onChange} />
            <PickField
              label="What moves"
              value={one.moves}
              among={bodies}
              onChange={(moves) => set({ ...one, moves })}
            />
            <PickField label="On what" value={one.on} among={bodies} onChange={(on) => set({ ...one, on })} />
            <PickField
              label="Pads like those of"
              value={one.template}
              among={templates.map((its) => ({ value: its.id, words: its.title }))}
              onChange={(id) => {
                const {
                  dimensions: _sizes,
                  targets: _bands,
                  setups: _cards,
                  words: _words,
                  pads: _pads,
                  ...rest
                } = one;
                set({ ...rest, template: id });
              }}
            />
            {template ? (
              <>
                <h3>Sizes of its pads: a number, or a sum over the machine’s sizes</h3>
                <div className="machine-three">
                  {template.dimensions.map((size) => (
                    <ScaledField
                      key={size.key}
                      bare
                      scale={measureScale(size.unit ?? 'mm', units)}
                      label={sizeLabel(size, measureScale(size.unit ?? 'mm', units))}
                      value={one.dimensions?.[size.key]}
                      onChange={(value) => {
                        const { [size.key]: _was, ...rest } = one.dimensions ?? {};
                        set({
                          ...one,
                          dimensions: value === undefined ? rest : { ...rest, [size.key]: value },
                        });
                      }}
                    />
                  ))}
                </div>
                <h3>Bands it is brought into; empty: as the template</h3>
                {template.targets.map((target) => {
                  const own = one.targets?.find((its) => its.feature === target.feature);
                  const put = (change: Partial<NonNullable<typeof own>>) => {
                    const now = { ...(own ?? target), ...change } as NonNullable<typeof own>;
                    const { feature, low_um, high_um, aim_um, over_mm } = now;
                    const next = {
                      feature,
                      low_um,
                      high_um,
                      ...(aim_um === undefined ? {} : { aim_um }),
                      ...(over_mm === undefined ? {} : { over_mm }),
                    };
                    const others = (one.targets ?? []).filter((its) => its.feature !== target.feature);
                    set({ ...one, targets: [...others, next] });
                  };
                  const shown = own ?? target;
                  const scale = bandScale(shown.over_mm, units);
                  return (
                    <fieldset key={target.feature} className="machine-three">
                      <legend>
                        {target.feature}, {scale.sign}
                      </legend>
                      <ScaledField
                        bare
                        scale={scale}
                        label="From"
                        value={shown.low_um}
                        onChange={(low_um) => put({ low_um: low_um ?? '' })}
                      />
                      <ScaledField
                        bare
                        scale={scale}
                        label="To"
                        value={shown.high_um}
                        onChange={(high_um) => put({ high_um: high_um ?? '' })}
                      />
                      <ScaledField
                        bare
                        scale={scale}
                        label="Aim"
                        value={shown.aim_um}
                        onChange={(aim_um) => put(aim_um === undefined ? {} : { aim_um })}
                      />
                    </fieldset>
                  );
                })}
              </>
            ) : null}
          </>
        );
      }}
    </ItemList>
  );
}
