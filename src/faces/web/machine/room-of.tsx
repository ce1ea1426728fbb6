import type { Template } from '../../../contract/template.ts';
import type { Machine, MachineDimension, MachineSlide } from '../../../core/order/machine.ts';
import { blankBody, blankDimension, blankSlide, blankWay, moved } from '../../../shop/order/machine-draft.ts';
import { ItemList, NumberField, PickField, TextField } from './fields.tsx';

interface RoomProps {
  readonly machine: Machine;
  readonly onChange: (machine: Machine) => void;
}

/** Name, words, and the sizes that everything else may be a sum over. */
export const SizesRoom = ({ machine, onChange }: RoomProps) => (
  <>
    <TextField label="Machine" value={machine.title} onChange={(title) => onChange({ ...machine, title })} />
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
      note={(one) => `${one.key}: ${one.value} ${one.unit === 'um' ? 'µm' : one.unit}`}
      onChange={(dimensions) => onChange({ ...machine, dimensions })}
      blank={() => blankDimension(machine)}
      move={moved}
    >
      {(one, set) => (
        <>
          <TextField label="Called" value={one.label} onChange={(label) => set({ ...one, label })} />
          <TextField label="Key in sums" value={one.key} onChange={(key) => set({ ...one, key })} />
          <div className="machine-three">
            <NumberField
              label={`Size, ${one.unit === 'um' ? 'µm' : one.unit}`}
              value={one.value}
              onChange={(value) => set({ ...one, value: value as number })}
            />
            <NumberField
              label="At least"
              value={one.low}
              onChange={(low) => set({ ...one, low: low as number })}
            />
            <NumberField
              label="At most"
              value={one.high}
              onChange={(high) => set({ ...one, high: high as number })}
            />
          </div>
          <PickField
            label="Unit"
            value={one.unit}
            among={[
              { value: 'mm', words: 'mm' },
              { value: 'um', words: 'µm' },
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

const without = <T extends object, K extends keyof T>(item: T, key: K, value: T[K] | ''): T => {
  const { [key]: _was, ...rest } = item;
  return (value === '' ? rest : { ...rest, [key]: value }) as T;
};

/** Castings, and the faces on them. */
export const WaysRoom = ({ machine, onChange }: RoomProps) => (
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
          <TextField label="Short name" value={one.id} onChange={(id) => set({ ...one, id })} />
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
          <TextField label="Short name" value={one.id} onChange={(id) => set({ ...one, id })} />
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

/** Bodies on bodies, with the pads they bear on: sizes, and the bands they are brought into. */
export const SlidesRoom = ({
  machine,
  onChange,
  templates,
}: RoomProps & { readonly templates: readonly Template[] }) => (
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
          <TextField label="Short name" value={one.id} onChange={(id) => set({ ...one, id })} />
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
                  <NumberField
                    key={size.key}
                    sum
                    label={`${size.label}, ${size.unit === 'um' ? 'µm' : size.unit === 'deg' ? '°' : 'mm'}${size.value === undefined ? '' : ` (${size.value})`}`}
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
              <h3>Bands it is brought into, µm; empty: as the template</h3>
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
                const over = shown.over_mm === undefined ? '' : ` in ${shown.over_mm} mm`;
                return (
                  <fieldset key={target.feature} className="machine-three">
                    <legend>
                      {target.feature}
                      {over}
                    </legend>
                    <NumberField
                      sum
                      label="From"
                      value={shown.low_um}
                      onChange={(low_um) => put({ low_um: low_um ?? '' })}
                    />
                    <NumberField
                      sum
                      label="To"
                      value={shown.high_um}
                      onChange={(high_um) => put({ high_um: high_um ?? '' })}
                    />
                    <NumberField
                      sum
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
