import type { SweepSetup } from '../../../core/ledger/setup.ts';
import { Caution } from '../frame/notice.tsx';
import { Segments } from '../frame/segments.tsx';

/** From which side a sweep is made: drawing and words follow it, and what a climbing number means is said once more. */
export const WhichSide = (props: {
  /** The set-up as it is made. */
  readonly setup: SweepSetup;
  readonly other: boolean;
  readonly onOther: (other: boolean) => void;
}) => {
  const { setup, other, onOther } = props;
  return (
    <section className="which-side" aria-label="Which side">
      <p>
        <b>Where does the indicator stand?</b>
      </p>
      <Segments
        label="The indicator stands"
        choices={[
          { value: 'card', words: 'as the card has it' },
          { value: 'other', words: 'on the other side' },
        ]}
        chosen={other ? 'other' : 'card'}
        onChoose={(value) => onOther(value === 'other')}
      />
      {other ? (
        <Caution>
          From the other side signs mean the opposite: <b>climbing is {setup.climbs_words}</b>, falling is{' '}
          {setup.falls_words}. Drawing and words here are turned; type what you see.
        </Caution>
      ) : null}
    </section>
  );
};
