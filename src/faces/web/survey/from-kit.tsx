import { Link } from 'wouter';
import type { Kit } from '../../../core/kit/kit.ts';
import type { SurveySheet } from '../../../core/ledger/survey-record.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { thingLine } from '../../../shop/kit/thing-words.ts';
import {
  type KitRole,
  kindsFor,
  kitOffers,
  kitRoles,
  kitWords,
  withKit,
} from '../../../shop/survey/sheet-kit.ts';

const asked: Readonly<Record<KitRole, string>> = {
  instrument: 'Read with',
  reference: 'Held against',
};

/** Instrument and reference by their names in the kit: doubt and step come from there, and the sheet says so. */
export function FromKit(props: {
  readonly sheet: SurveySheet;
  /** Left out while it is on its way. */
  readonly kit: Kit | undefined;
  readonly system: UnitSystem;
  readonly onPick: (sheet: SurveySheet, words: string) => void;
}) {
  const { sheet, kit, system, onPick } = props;
  const words = kitWords(sheet, kit);
  return (
    <div className="survey-kit">
      {kitRoles(sheet.how).map((role) => {
        const offers = kit ? kitOffers(sheet.how, role, kit) : [];
        const picked = sheet.kit?.[role];
        const isGone = picked !== undefined && !offers.some(({ name }) => name === picked);
        return (
          <div className="field" key={role}>
            <label htmlFor={`survey-${role}`}>{asked[role]}</label>
            <select
              id={`survey-${role}`}
              value={picked ?? ''}
              onChange={(event) =>
                kit &&
                onPick(withKit(sheet, role, event.target.value || undefined, kit), 'the pick from the kit')
              }
            >
              <option value="">
                {offers.length === 0 && kit
                  ? `nothing of the kit: no ${kindsFor(sheet.how, role)} in it yet`
                  : 'nothing of the kit: typed by hand'}
              </option>
              {isGone ? <option value={picked}>{picked}</option> : null}
              {offers.map((thing) => (
                <option key={thing.name} value={thing.name}>
                  {thing.name}: {thingLine(thing, system)}
                </option>
              ))}
            </select>
          </div>
        );
      })}
      {words.map((one) => (
        <p className="quiet" key={one}>
          {one}
        </p>
      ))}
      {kit &&
      words.length === 0 &&
      kitRoles(sheet.how).every((role) => kitOffers(sheet.how, role, kit).length === 0) ? (
        <Link className="third" href="/kit/new">
          Add to the kit
        </Link>
      ) : null}
    </div>
  );
}
