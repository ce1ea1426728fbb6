/** A sheet's foot: where its entry stands, and the button that keeps it; grey while there is nothing to keep, or it cannot be. */
export const KeepFoot = (props: {
  readonly status: string;
  readonly can: boolean;
  readonly words: string;
  readonly onKeep: () => void;
}) => (
  <footer className="foot">
    <p role="status">{props.status}</p>
    {/* One button in both states: what has the focus when it is kept has it still. */}
    <button
      type="button"
      className="go"
      aria-disabled={props.can ? undefined : true}
      onClick={() => (props.can ? props.onKeep() : undefined)}
    >
      {props.words}
    </button>
  </footer>
);
