import type { Basis, Machine, Step, StepPlace, StepProof } from '../../../core/order/machine.ts';
import { stepScreens } from '../../../core/order/machine.ts';
import { blankStep, moved } from '../../../shop/order/machine-draft.ts';
import type { HeldNames } from '../../../shop/order/machine-rename.ts';
import { ItemList, NumberField, PickField, ShortName, TextField } from './fields.tsx';

const lines = (text: string): string[] => text.split('\n').filter((line) => line.trim() !== '');

/** The steps, in the order they are told: what each makes, from what, and how it is shown to be right. */
export const StepsRoom = (props: {
  readonly machine: Machine;
  readonly held: HeldNames;
  readonly onChange: (machine: Machine) => void;
}) => {
  const { machine, held, onChange } = props;
  return (
    <ItemList<Step>
      title="Steps"
      one="a step"
      items={machine.steps}
      name={(step) => step.title}
      note={(step) => `${step.hours.likely} h usually`}
      onChange={(steps) => onChange({ ...machine, steps })}
      blank={() => blankStep(machine)}
      move={moved}
    >
      {(step, set) => <StepFields machine={machine} held={held} step={step} set={set} onChange={onChange} />}
    </ItemList>
  );
};

function StepFields(props: {
  readonly machine: Machine;
  readonly held: HeldNames;
  readonly step: Step;
  readonly set: (step: Step) => void;
  readonly onChange: (machine: Machine) => void;
}) {
  const { machine, held, step, set, onChange } = props;
  const ways = machine.ways.map((way) => ({
    value: way.id,
    words: `${machine.bodies.find((body) => body.id === way.body)?.name ?? way.body}: ${way.name}`,
  }));
  const others = machine.steps
    .filter((one) => one.id !== step.id)
    .map((one) => ({ value: one.id, words: one.title }));
  return (
    <>
      <TextField label="Title" value={step.title} onChange={(title) => set({ ...step, title })} />
      <ShortName machine={machine} list="steps" name={step.id} held={held} onChange={onChange} />
      <TextField
        label="Why, and why here"
        long
        value={step.reason}
        onChange={(reason) => set({ ...step, reason })}
      />
      <div className="machine-three">
        <NumberField
          label="Hours, usually"
          value={step.hours.likely}
          onChange={(likely) => set({ ...step, hours: { ...step.hours, likely: likely as number } })}
        />
        <NumberField
          label="Hours to prove again"
          value={step.hours.again}
          onChange={(again) => {
            const { likely } = step.hours;
            set({ ...step, hours: again === undefined ? { likely } : { likely, again: again as number } });
          }}
        />
      </div>
      <fieldset className="machine-checks">
        <legend>Makes true</legend>
        {ways.map(({ value, words }) => (
          <label key={value}>
            <input
              type="checkbox"
              checked={step.makes.includes(value)}
              onChange={({ target }) =>
                set({
                  ...step,
                  makes: target.checked ? [...step.makes, value] : step.makes.filter((one) => one !== value),
                })
              }
            />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
      <ItemList<Basis>
        title="Made true from"
        one="what it is made from"
        items={step.from}
        name={(basis) =>
          'way' in basis ? (ways.find((one) => one.value === basis.way)?.words ?? basis.way) : basis.master
        }
        note={(basis) => basis.why}
        onChange={(from) => set({ ...step, from })}
        blank={() => ({ way: ways[0]?.value ?? '', why: 'say why from this one' })}
        move={moved}
      >
        {(basis, put) => (
          <>
            <PickField
              label="A way of the machine, or a master"
              value={'way' in basis ? basis.way : ''}
              among={[{ value: '', words: 'a master from outside' }, ...ways]}
              onChange={(way) =>
                put(way === '' ? { master: 'straightedge', why: basis.why } : { way, why: basis.why })
              }
            />
            {'master' in basis ? (
              <TextField
                label="Which master"
                value={basis.master}
                onChange={(master) => put({ ...basis, master })}
              />
            ) : null}
            <TextField label="Why this one" value={basis.why} onChange={(why) => put({ ...basis, why })} />
          </>
        )}
      </ItemList>
      <ItemList
        title="Comes after"
        one="a step before it"
        items={step.after ?? []}
        name={(one) => others.find((its) => its.value === one.step)?.words ?? one.step}
        note={(one) => one.why}
        onChange={(after) => set({ ...step, after })}
        blank={() => ({ step: others[0]?.value ?? '', why: 'say why' })}
        move={moved}
      >
        {(one, put) => (
          <>
            <PickField
              label="Step"
              value={one.step}
              among={others}
              onChange={(its) => put({ ...one, step: its })}
            />
            <TextField label="Why" value={one.why} onChange={(why) => put({ ...one, why })} />
          </>
        )}
      </ItemList>
      <PickField
        label="Bench"
        value={step.bench?.slide ?? ''}
        among={[
          { value: '', words: 'not scraped on a bench' },
          ...machine.slides.map((one) => ({ value: one.id, words: one.name })),
        ]}
        onChange={(slide) => {
          const { bench: _bench, ...rest } = step;
          set(slide === '' ? rest : { ...rest, bench: { slide } });
        }}
      />
      <ItemList<StepPlace>
        title="Other screens it opens"
        one="a screen"
        items={step.opens ?? []}
        name={(one) => one.screen}
        note={(one) => one.what}
        onChange={(opens) => set({ ...step, opens })}
        blank={() => ({ screen: 'survey', what: 'say what for' })}
        move={moved}
      >
        {(one, put) => (
          <>
            <PickField
              label="Screen"
              value={one.screen}
              among={stepScreens.map((screen) => ({ value: screen, words: screen }))}
              onChange={(screen) => {
                const { sum: _sum, ...rest } = one;
                put({ ...rest, screen: screen as StepPlace['screen'] });
              }}
            />
            <TextField label="What for" value={one.what} onChange={(what) => put({ ...one, what })} />
            {one.screen === 'sum' ? (
              <TextField label="Which sum" value={one.sum ?? ''} onChange={(sum) => put({ ...one, sum })} />
            ) : null}
          </>
        )}
      </ItemList>
      <ItemList<StepProof>
        title="Shown to be right by"
        one="a proof"
        items={step.proofs}
        name={(proof) => proof.what}
        note={(proof) => proof.with}
        onChange={(proofs) => set({ ...step, proofs })}
        blank={() => ({ what: 'say what', with: 'say with what, and how' })}
        move={moved}
      >
        {(proof, put) => (
          <>
            <TextField label="What" value={proof.what} onChange={(what) => put({ ...proof, what })} />
            <TextField
              label="With what, and how"
              value={proof.with}
              onChange={(by) => put({ ...proof, with: by })}
            />
            <TextField
              label="Test of the chart that it answers, if any"
              value={proof.test ?? ''}
              onChange={(test) => {
                const { test: _test, ...rest } = proof;
                put(test === '' ? rest : { ...rest, test });
              }}
            />
          </>
        )}
      </ItemList>
      <TextField
        label="Cautions, one a line"
        long
        value={step.cautions.join('\n')}
        onChange={(text) =>
          set({ ...step, cautions: text.endsWith('\n') ? [...lines(text), ''] : lines(text) })
        }
      />
    </>
  );
}
