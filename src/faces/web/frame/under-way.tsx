import { percent } from '../../../shop/phrase.ts';
import { Mark } from './mark.tsx';

/**
 * Long work: what is being done, how far it is where that can be known, and the way to stop it.
 * @param share  0 to 1 of what is to be sent
 */
export function UnderWay(props: {
  readonly words: string;
  readonly share?: number | undefined;
  readonly stop?: string;
  readonly onStop: () => void;
}) {
  const { words, share, stop = 'Stop', onStop } = props;
  return (
    <div className="under-way">
      <p role="status">
        <Mark name="waiting" size={20} />
        <span>{words}</span>
      </p>
      {share === undefined ? null : <span className="num">{percent(share)} sent</span>}
      <button type="button" className="third" onClick={onStop}>
        {stop}
      </button>
    </div>
  );
}
