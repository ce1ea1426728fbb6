import { type ReactNode, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { KitItem } from '../../../core/ledger/kit-ledger.ts';
import {
  fieldsOf,
  type ThingField,
  type ThingKind,
  textOf,
  thingKinds,
} from '../../../shop/kit/thing-fields.ts';
import { readThing, thingTexts } from '../../../shop/kit/thing-typed.ts';
import { onToNext } from '../frame/cells.ts';
import { GoButton } from '../frame/go.tsx';
import { Mark } from '../frame/mark.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { sameMeaning } from '../frame/same-meaning.ts';
import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { newItem, type OpenKit, useKit, writeKit } from '../keep/kit.ts';
import { changeSettings, type Units, useSettings } from '../keep/settings.ts';
import { ThingCell } from './cell.tsx';
import './kit.css';

/** A new thing of a kind. */
export function NewThingScreen({ kind }: { readonly kind: string }) {
  const { kit, failure } = useKit();
  const known = thingKinds.find((one) => one.kind === kind);
  if (!known) return <Nothing>{say('There is no such kind of thing in a kit.')}</Nothing>;
  // What is typed is kept on the phone and sent by itself, so a shop out of reach does not stop it.
  if (!kit && !failure)
    return (
      <Nothing title={known.words}>
        <NotHere what="the kit" failure={undefined} />
      </Nothing>
    );
  return <ThingForm key={kind} kind={known.kind} title={`New: ${known.words.toLowerCase()}`} kit={kit} />;
}

/** A thing that is in the kit, to be changed or taken out. */
export function ThingScreen({ item }: { readonly item: string }) {
  const { kit, failure } = useKit();
  const there = kit?.items.find((one) => one.item === item);
  if (there)
    return <ThingForm key={item} kind={there.thing.kind} title={there.thing.name} kit={kit} there={there} />;
  if (kit)
    return (
      <Nothing>{say('This thing is not in the kit now. What was done to it can be undone there.')}</Nothing>
    );
  return (
    <Nothing>
      <NotHere what="the kit" failure={failure} />
    </Nothing>
  );
}

const say = (words: string) => <p className="say">{words}</p>;

const Nothing = ({ children, title = 'Kit' }: { readonly children: ReactNode; readonly title?: string }) => (
  <>
    <Top title={title} />
    <main className="page narrow">
      {children}
      <Link className="third" href="/kit">
        Back to the kit
      </Link>
    </main>
  </>
);

interface ThingDraft {
  readonly system: Units;
  readonly typed: Readonly<Record<string, string>>;
}

function ThingForm(props: {
  readonly kind: ThingKind;
  readonly title: string;
  readonly kit: OpenKit | undefined;
  readonly there?: KitItem;
}) {
  const { kind, title, kit, there } = props;
  const { units } = useSettings();
  const [, go] = useLocation();
  const [tried, setTried] = useState(false);
  const start: ThingDraft = { system: units, typed: there ? thingTexts(there.thing, units) : {} };
  const [held, hold, finish] = useDraft<ThingDraft>(draftKey('kit', there?.item ?? kind), start);
  const draft = inSystem(kind, held, units);
  const used = (kit?.items ?? []).filter((one) => one.item !== there?.item).map((one) => one.thing.name);
  const read = readThing(kind, draft.typed, draft.system, used);
  const fields = fieldsOf(kind, draft.typed);
  const type = (key: string, text: string) => hold({ system: units, typed: { ...draft.typed, [key]: text } });

  const keep = () => {
    setTried(true);
    if (!read.thing) {
      const first = fields.find((field) => stands(field, read.fields[field.key]!.state));
      if (first) document.getElementById(`thing-${first.key}`)?.focus();
      return;
    }
    writeKit({ kind: 'put', item: there?.item ?? newItem(), thing: read.thing });
    finish();
    go('/kit');
  };
  const takeOut = () => {
    if (!there) return;
    writeKit({ kind: 'taken out', item: there.item });
    finish();
    go('/kit');
  };
  const left = fields.filter((field) => stands(field, read.fields[field.key]!.state)).length;

  return (
    <>
      <Top title={title} />
      <main className="page narrow with-foot">
        <form
          className="kit-form"
          aria-label={title}
          onSubmit={(event) => {
            event.preventDefault();
            keep();
          }}
        >
          <Segments
            label="Sizes in"
            choices={[
              { value: 'inch', words: 'inches, thou' },
              { value: 'metric', words: 'mm, µm' },
            ]}
            chosen={units}
            onChoose={(value) => changeSettings({ units: value })}
          />
          {fields.map((field) => (
            <ThingCell
              key={field.key}
              field={field}
              system={draft.system}
              text={textOf(field, draft.typed)}
              read={read.fields[field.key]!}
              tried={tried}
              onChange={(text) => type(field.key, text)}
              onKeyDown={onToNext}
            />
          ))}
        </form>
        {there ? (
          <button type="button" className="third" onClick={takeOut}>
            <Mark name="cross" size={20} />
            Take it out of the kit
          </button>
        ) : null}
        <Link className="third" href="/kit">
          Back to the kit; what is typed stays here
        </Link>
      </main>
      <footer className="foot">
        <p role="status">
          {left === 0
            ? 'All of it can be read.'
            : `${left === 1 ? 'One cell' : `${left} cells`} still to be filled or put right.`}
        </p>
        <GoButton onPress={keep}>{there ? 'Keep the change' : 'Add it to the kit'}</GoButton>
      </footer>
    </>
  );
}

/** Whether a field stands in the way of keeping the thing. */
const stands = (field: ThingField, state: string): boolean =>
  state === 'wrong' || (field.needed && state === 'empty');

/** The draft for another system: every text keeps its meaning. */
function inSystem(kind: ThingKind, draft: ThingDraft, system: Units): ThingDraft {
  if (draft.system === system) return draft;
  const units = new Map(fieldsOf(kind, draft.typed).map((field) => [field.key, field.unit]));
  const typed = Object.fromEntries(
    Object.entries(draft.typed).map(([key, text]) => {
      const unit = units.get(key);
      return [key, unit === undefined ? text : sameMeaning(text, unit, draft.system, system)];
    }),
  );
  return { system, typed };
}
