import { Route, Switch } from 'wouter';
import { SurveyScreen } from './overview.tsx';
import { SheetScreen } from './sheet.tsx';

/** The screens of a job's surveys, fetched together: they answer with the shop out of reach. */
export const SurveyRooms = () => (
  <Switch>
    <Route path="/job/:id/survey/:name">{({ id, name }) => <SheetScreen id={id} name={name} />}</Route>
    <Route path="/job/:id/survey">{({ id }) => <SurveyScreen id={id} />}</Route>
  </Switch>
);
