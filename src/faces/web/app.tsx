import { useEffect, useRef } from 'react';
import { Link, Redirect, Route, Switch, useLocation } from 'wouter';
import { BenchScreen } from './bench/bench.tsx';
import { FetchedScreen, fetchAhead } from './frame/fetched-screen.tsx';
import { NotHere } from './frame/not-here.tsx';
import { Top } from './frame/top.tsx';
import { JobsScreen } from './jobs/jobs.tsx';
import { queries, useJobLines } from './keep/jobs.ts';
import { changeSettings, useSettings } from './keep/settings.ts';

/** Photos bring a corner finder and drawings of their own: fetched when they are asked for. */
const photoScreen = async () => (await import('./photo/photo.tsx')).PhotoScreen;
const newPractice = async () => (await import('./practice/new-practice.tsx')).NewPracticeScreen;
const truthScreen = async () => (await import('./practice/truth-screen.tsx')).TruthScreen;
const partsScreen = async () => (await import('./parts/parts.tsx')).PartsScreen;

/** What is done at the bench day by day; fetched as soon as the first screen stands, so that no tap waits for it. */
const measureScreen = async () => (await import('./measure/measure.tsx')).MeasureScreen;
const setupScreen = async () => (await import('./measure/measure.tsx')).SetupScreen;
const printScreen = async () => (await import('./print/print.tsx')).PrintScreen;
const scrapeScreen = async () => (await import('./scrape/scrape.tsx')).ScrapeScreen;
const ledgerScreen = async () => (await import('./ledger/ledger.tsx')).LedgerScreen;
const newJobScreen = async () => (await import('./new/new-job.tsx')).NewJobScreen;
const settingsScreen = async () => (await import('./settings/settings.tsx')).SettingsScreen;
const signsScreen = async () => (await import('./signs/signs.tsx')).SignsScreen;
const daily = [
  scrapeScreen,
  measureScreen,
  setupScreen,
  printScreen,
  ledgerScreen,
  newJobScreen,
  settingsScreen,
  signsScreen,
];

/** Sums, kit, charts and surveys bring tables and sums of their own. */
const sumRooms = async () => (await import('./sums/rooms.tsx')).SumRooms;
const kitRooms = async () => (await import('./kit/rooms.tsx')).KitRooms;
const chartScreen = async () => (await import('./chart/chart.tsx')).ChartScreen;
const orderRooms = async () => (await import('./order/rooms.tsx')).OrderRooms;
const machineRooms = async () => (await import('./machine/rooms.tsx')).MachineRooms;
const heightsScreen = async () => (await import('./heights/heights.tsx')).HeightsScreen;
const axisScreen = async () => (await import('./axis/axis.tsx')).AxisScreen;
const gibScreen = async () => (await import('./gib/gib.tsx')).GibScreen;
const newMachine = async () => (await import('./machine/new-machine.tsx')).NewMachineScreen;
const shareScreen = async () => (await import('./share/rooms.ts')).ShareScreen;
const joinScreen = async () => (await import('./share/rooms.ts')).JoinScreen;
const workshopScreen = async () => (await import('./workshop/workshop.tsx')).WorkshopScreen;
const surveyRooms = async () => (await import('./survey/rooms.tsx')).SurveyRooms;

/** The workshop's page: the screen of its address, from its top. */
export function App() {
  const [path] = useLocation();
  const before = useRef(path);
  const goesBack = useRef(false);
  useEffect(() => {
    const back = () => {
      goesBack.current = true;
    };
    addEventListener('popstate', back);
    return () => removeEventListener('popstate', back);
  }, []);
  useEffect(() => {
    // Back and forth, the browser itself finds the place again.
    if (before.current !== path && !goesBack.current) scrollTo(0, 0);
    before.current = path;
    goesBack.current = false;
  }, [path]);
  useEffect(() => {
    const timer = setInterval(() => {
      if (queries.isFetching() > 0) return;
      clearInterval(timer);
      void fetchAhead(daily);
    }, quiet_ms);
    return () => clearInterval(timer);
  }, []);
  return <Screens />;
}

/** How often it is looked whether the first screen has all it asked for, ms. */
const quiet_ms = 1_000;

/** Every screen has an address; a new one is a route here and a line in the menu. */
const Screens = () => (
  <Switch>
    <Route path="/">
      <Front />
    </Route>
    <Route path="/jobs">
      <JobsScreen />
    </Route>
    <Route path="/new">
      <FetchedScreen key="new" title="New job" fetchIt={newJobScreen} />
    </Route>
    <Route path="/whole">
      <FetchedScreen key="whole" title="A whole machine" fetchIt={newMachine} />
    </Route>
    <Route path="/practise">
      <FetchedScreen key="practise" title="Practise" fetchIt={newPractice} />
    </Route>
    <Route path="/settings">
      <FetchedScreen key="settings" title="Settings" fetchIt={settingsScreen} />
    </Route>
    <Route path="/share">
      <FetchedScreen key="share" title="Share" fetchIt={shareScreen} />
    </Route>
    <Route path="/join">
      <FetchedScreen key="join" title="Come in" fetchIt={joinScreen} />
    </Route>
    <Route path="/workshop">
      <FetchedScreen key="workshop" title="The workshop’s file" fetchIt={workshopScreen} />
    </Route>
    <Route path="/signs">
      <FetchedScreen key="signs" title="How signs work" fetchIt={signsScreen} />
    </Route>
    <Route path="/sums/*?">
      <FetchedScreen key="sums" title="Sums" fetchIt={sumRooms} />
    </Route>
    <Route path="/kit/*?">
      <FetchedScreen key="kit" title="Kit" fetchIt={kitRooms} />
    </Route>
    <Route path="/job/:id">{({ id }) => <Remembered id={id} />}</Route>
    <Route path="/job/:id/measure">
      {({ id }) => <FetchedScreen key="measure" title="Measure" fetchIt={measureScreen} given={{ id }} />}
    </Route>
    <Route path="/job/:id/measure/:setup">
      {({ id, setup }) => (
        <FetchedScreen key="set-up" title="Set-up" fetchIt={setupScreen} given={{ id, setup, repeat: 0 }} />
      )}
    </Route>
    <Route path="/job/:id/measure/:setup/:repeat">
      {({ id, setup, repeat }) => (
        <FetchedScreen
          key="set-up"
          title="Set-up"
          fetchIt={setupScreen}
          given={{ id, setup, repeat: Number(repeat) || 0 }}
        />
      )}
    </Route>
    <Route path="/job/:id/survey/*?">
      <FetchedScreen key="survey" title="Survey" fetchIt={surveyRooms} />
    </Route>
    <Route path="/job/:id/order/*?">
      <FetchedScreen key="order" title="Order of work" fetchIt={orderRooms} />
    </Route>
    <Route path="/job/:id/heights">
      <FetchedScreen key="heights" title="Heights" fetchIt={heightsScreen} />
    </Route>
    <Route path="/job/:id/axis">
      <FetchedScreen key="axis" title="Axes" fetchIt={axisScreen} />
    </Route>
    <Route path="/job/:id/gib">
      <FetchedScreen key="gib" title="Gibs" fetchIt={gibScreen} />
    </Route>
    <Route path="/job/:id/machine">
      <FetchedScreen key="machine" title="Machine" fetchIt={machineRooms} />
    </Route>
    <Route path="/job/:id/parts">
      {({ id }) => <FetchedScreen key="parts" title="Parts" fetchIt={partsScreen} given={{ id }} />}
    </Route>
    <Route path="/job/:id/chart">
      <FetchedScreen key="chart" title="Chart" fetchIt={chartScreen} />
    </Route>
    <Route path="/job/:id/print">
      {({ id }) => <FetchedScreen key="print" title="Print" fetchIt={printScreen} given={{ id }} />}
    </Route>
    <Route path="/job/:id/photo/:pad">
      {({ id, pad }) => <FetchedScreen key="photo" title="Photo" fetchIt={photoScreen} given={{ id, pad }} />}
    </Route>
    <Route path="/job/:id/scrape">
      {({ id }) => <FetchedScreen key="scrape" title="Scrape" fetchIt={scrapeScreen} given={{ id }} />}
    </Route>
    <Route path="/job/:id/truth">
      {({ id }) => <FetchedScreen key="truth" title="Truth" fetchIt={truthScreen} given={{ id }} />}
    </Route>
    <Route path="/job/:id/ledger">
      {({ id }) => <FetchedScreen key="ledger" title="Ledger" fetchIt={ledgerScreen} given={{ id }} />}
    </Route>
    <Route>
      <Top title="Waywright" />
      <main className="page narrow">
        <p className="say">There is no such screen. The address may be mistyped, or from an older version.</p>
        <Link className="second" href="/jobs">
          All jobs
        </Link>
      </main>
    </Route>
  </Switch>
);

/** The bench, remembered as the job to open next time. */
function Remembered({ id }: { readonly id: string }) {
  useEffect(() => changeSettings({ lastJob: id }), [id]);
  return <BenchScreen key={id} id={id} />;
}

/** The workshop's door: the job that was open last, or the demo, or the list. */
function Front() {
  const { lastJob } = useSettings();
  const { data, error } = useJobLines();
  if (error)
    return <Redirect to={lastJob === undefined ? '/jobs' : `/job/${encodeURIComponent(lastJob)}`} replace />;
  if (!data)
    return (
      <>
        <Top title="Waywright" />
        <main className="page narrow">
          <NotHere what="the list of jobs" failure={undefined} />
        </main>
      </>
    );
  const open =
    data.jobs.find((job) => job.id === lastJob) ?? data.jobs.find((job) => job.demo) ?? data.jobs[0];
  return <Redirect to={open ? `/job/${encodeURIComponent(open.id)}` : '/jobs'} replace />;
}
