import { Route, Switch } from 'wouter';
import { EditScreen } from './edit.tsx';
import './machine.css';

/** The editor of a job's machine; fetched when it is asked for. */
export const MachineRooms = () => (
  <Switch>
    <Route path="/job/:id/machine">{({ id }) => <EditScreen key={id} id={id} />}</Route>
  </Switch>
);
