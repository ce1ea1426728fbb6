/** One of a few, side by side: a group of buttons of which one is pressed. */
export function Segments<T extends string>(props: {
  readonly label: string;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly chosen: T | undefined;
  readonly onChoose: (value: T) => void;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw a box and a legend; the group only needs its name
    <div className="segments" role="group" aria-label={props.label}>
      {props.choices.map(({ value, words }) => (
        <button
          key={value}
          type="button"
          aria-pressed={props.chosen === value}
          onClick={() => props.onChoose(value)}
        >
          {words}
        </button>
      ))}
    </div>
  );
}
