import { useRef, useState } from 'react';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { saveAs } from '../frame/save-as.ts';
import { Segments } from '../frame/segments.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import { isStopped } from '../keep/server.ts';
import type { Units } from '../keep/settings.ts';
import { type ChartFileAsked, chartPdf, whyNoPaper } from './asked.ts';

/** Which paper, and the button that makes it. */
export function PaperMaker(props: {
  readonly id: string;
  readonly title: string;
  readonly file: ChartFileAsked;
  readonly units: Units;
  readonly paper: 'a4' | 'letter';
  readonly onPaper: (paper: 'a4' | 'letter') => void;
  /** What is typed was refused: no paper can be made of it. */
  readonly refused: boolean;
}) {
  const { id, file, units, paper, onPaper, refused } = props;
  const [state, setState] = useState<
    { readonly is: 'idle' | 'making' | 'made' | 'stopped' } | { readonly why: string }
  >({
    is: 'idle',
  });
  const stopper = useRef<AbortController>(undefined);
  const isMaking = 'is' in state && state.is === 'making';
  const make = async (): Promise<void> => {
    if (isMaking) return;
    setState({ is: 'making' });
    stopper.current = new AbortController();
    try {
      saveAs(await chartPdf(id, file, units, paper, stopper.current.signal), `${id}-chart.pdf`);
      setState({ is: 'made' });
    } catch (failure) {
      setState(isStopped(failure) ? { is: 'stopped' } : { why: whyNoPaper(failure as Error) });
    }
  };
  return (
    <section className="chart-paper">
      <h2>On paper</h2>
      <div className="chart-paper-row">
        <Segments
          label="Paper"
          choices={[
            { value: 'a4', words: 'A4' },
            { value: 'letter', words: 'letter' },
          ]}
          chosen={paper}
          onChoose={onPaper}
        />
        <button
          type="button"
          className="go small"
          aria-disabled={isMaking || refused || undefined}
          onClick={() => (refused ? undefined : void make())}
        >
          Make the PDF
        </button>
        <button type="button" className="third" onClick={() => window.print()}>
          <Mark name="print" size={20} />
          Print this page
        </button>
      </div>
      <div aria-live="polite">
        {'why' in state ? (
          <Wrong>{state.why}</Wrong>
        ) : isMaking ? (
          <UnderWay
            words="The PDF is being made: lines, prints and photos."
            onStop={() => stopper.current?.abort()}
          />
        ) : state.is === 'stopped' ? (
          <p className="quiet">Stopped. No PDF was made.</p>
        ) : state.is === 'made' ? (
          <p className="quiet">Made and handed to the browser as {id}-chart.pdf.</p>
        ) : (
          <p className="quiet">Machine, lines, what was done, prints, instruments, sources, cautions.</p>
        )}
      </div>
    </section>
  );
}
