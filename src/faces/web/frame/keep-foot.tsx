import { GoButton } from './go.tsx';

/** A sheet's foot: where its entry stands, and the button that keeps it; grey while there is nothing to keep, or it cannot be. */
export const KeepFoot = (props: {
  readonly status: string;
  readonly can: boolean;
  readonly words: string;
  readonly onKeep: () => void;
}) => (
  <footer className="foot">
    <p role="status">{props.status}</p>
    {props.can ? (
      <GoButton onPress={props.onKeep}>{props.words}</GoButton>
    ) : (
      <button type="button" className="go" aria-disabled="true">
        {props.words}
      </button>
    )}
  </footer>
);
