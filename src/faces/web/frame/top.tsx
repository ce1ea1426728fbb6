import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useOutbox } from '../keep/jobs.ts';
import { changeSettings, useSettings } from '../keep/settings.ts';
import { Drawer } from './dialog.tsx';
import { Kept } from './kept.tsx';
import { Mark } from './mark.tsx';
import { OnPaper } from './on-paper.tsx';
import { Segments } from './segments.tsx';

interface Place {
  readonly to: string;
  readonly words: string;
}

const everywhere: readonly Place[] = [
  { to: '/jobs', words: 'Jobs' },
  { to: '/new', words: 'New job' },
  { to: '/whole', words: 'A whole machine' },
  { to: '/practise', words: 'Practise' },
  { to: '/sums', words: 'Sums' },
  { to: '/kit', words: 'Kit' },
  { to: '/signs', words: 'How signs work' },
  { to: '/share', words: 'Share' },
  { to: '/workshop', words: 'The workshop’s file' },
  { to: '/settings', words: 'Settings' },
];

/** The screens of one job, in the order of the menu; a new screen is one line here. */
export const jobPlaces = (id: string, practice = false, order?: string): readonly Place[] => {
  const base = `/job/${encodeURIComponent(id)}`;
  return [
    ...(order === undefined ? [] : [{ to: `/job/${encodeURIComponent(order)}/order`, words: 'Order' }]),
    { to: base, words: 'Bench' },
    { to: `${base}/survey`, words: 'Survey' },
    { to: `${base}/measure`, words: 'Measure' },
    { to: `${base}/print`, words: 'Print' },
    { to: `${base}/parts`, words: 'Parts' },
    { to: `${base}/chart`, words: 'Chart' },
    { to: `${base}/ledger`, words: 'Ledger' },
    ...(practice ? [{ to: `${base}/truth`, words: 'Truth' }] : []),
  ];
};

/** Menu, where we are, the mark of a demo or a practice machine, and whether all is kept. */
export function Top(props: {
  readonly title: string;
  /** The job's own name, which stands on paper. */
  readonly name?: string | undefined;
  readonly demo?: string | undefined;
  readonly practice?: boolean;
  /** The job whose machine's order of work this job belongs to, its own or another's. */
  readonly order?: string | undefined;
  readonly job?: string | undefined;
  readonly last?: string | undefined;
}) {
  const [open, setOpen] = useState(false);
  const [here] = useLocation();
  const box = useOutbox();
  const { units } = useSettings();
  useEffect(() => {
    document.title = `${props.title} · Waywright`;
  }, [props.title]);
  const places = props.job === undefined ? [] : jobPlaces(props.job, props.practice, props.order);
  const link = ({ to, words }: Place) => (
    <Link key={to} href={to} aria-current={here === to ? 'page' : undefined} onClick={() => setOpen(false)}>
      {words}
    </Link>
  );
  return (
    <header className="top">
      <button type="button" aria-label="Job and screens" onClick={() => setOpen(true)}>
        <Mark name="menu" size={24} />
      </button>
      <h1>{props.title}</h1>
      {props.demo ? (
        <span className="demo" title={props.demo}>
          demo
        </span>
      ) : null}
      {props.practice ? (
        <span className="demo" title="A practice machine: simulated, not metal">
          practice
        </span>
      ) : null}
      {places.length > 0 ? <nav aria-label="Screens of this job">{places.map(link)}</nav> : null}
      <OnPaper job={props.name} demo={props.demo} />
      <Kept box={box} job={props.job} last={props.last} />
      <Drawer label="Job and screens" open={open} onOpenChange={setOpen}>
        <button type="button" className="third" onClick={() => setOpen(false)}>
          Close
        </button>
        {props.name === undefined ? null : (
          <p>
            Open: <b>{props.name}</b>
          </p>
        )}
        <nav aria-label="All screens" className="rows">
          {[...places, ...everywhere].map(link)}
        </nav>
        <span className="label">Show lengths in</span>
        <Segments
          label="Show lengths in"
          choices={[
            { value: 'inch', words: 'thou, tenths' },
            { value: 'metric', words: 'mm, µm' },
          ]}
          chosen={units}
          onChoose={(value) => changeSettings({ units: value })}
        />
      </Drawer>
    </header>
  );
}
