import type { SetupRecord } from '../../../core/ledger/entry.ts';
import type { Push } from './push-test.tsx';

/** A set-up card half filled in: as typed, and in which unit its bare numbers are. */
export interface CardDraft<Unit extends string> {
  readonly unit: Unit;
  readonly typed: readonly string[];
  readonly push?: Push;
  readonly other_side?: boolean;
  readonly turned_over?: boolean;
  readonly support?: string;
  readonly temperature?: string;
  /** Points off the line that the person said to keep, by place and as typed. */
  readonly kept_off?: Readonly<Record<number, string>>;
  /** What was typed when the person said that it is in this unit, however unlikely. */
  readonly kept_unit?: readonly string[];
}

/** The push test answered, or asked again. */
export function withPush<Draft extends { readonly push?: Push }>(
  draft: Draft,
  answer: Push | undefined,
): Omit<Draft, 'push'> & { readonly push?: Push } {
  const { push: _, ...rest } = draft;
  return answer ? { ...rest, push: answer } : rest;
}

/** What is recorded of the set-up with its readings. @throws nothing: a temperature that is no number is told by `temperatureOf` */
export const recordOf = (draft: CardDraft<string>): SetupRecord => {
  const temperature_C = temperatureOf(draft.temperature);
  const support = draft.support?.trim();
  return {
    ...(draft.push ? { push: draft.push } : {}),
    ...(draft.other_side ? { other_side: true } : {}),
    ...(draft.turned_over ? { turned_over: true } : {}),
    ...(support ? { support } : {}),
    ...(typeof temperature_C === 'number' ? { temperature_C } : {}),
  };
};

/** °C as typed; undefined when nothing was; a sentence when it cannot be read. */
export function temperatureOf(typed: string | undefined): number | string | undefined {
  const text = (typed ?? '').replace(/°|c$/gi, '').replace('−', '-').trim();
  if (text === '') return undefined;
  const value = Number(text);
  return Number.isFinite(value) && value > -40 && value < 80
    ? value
    : `I cannot read “${typed}” as a room’s temperature. Write 20.4.`;
}

/** Whether the person said of just these readings that they are in the card's unit. */
export const unitIsKept = ({ typed, kept_unit }: CardDraft<string>): boolean =>
  kept_unit?.length === typed.length && kept_unit.every((text, i) => text === typed[i]);
