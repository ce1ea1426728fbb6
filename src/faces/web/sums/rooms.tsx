import { Route, Switch } from 'wouter';
import { SumsScreen } from './list.tsx';
import { SumScreen } from './sum.tsx';

/** The screens of sums, fetched together: they answer with the shop out of reach. */
export const SumRooms = () => (
  <Switch>
    <Route path="/sums/:name">{({ name }) => <SumScreen name={name} />}</Route>
    <Route>
      <SumsScreen />
    </Route>
  </Switch>
);
