import { Route, Switch } from 'wouter';
import { KitKindsScreen } from './kinds.tsx';
import { KitScreen } from './kit.tsx';
import { NewThingScreen, ThingScreen } from './thing.tsx';

/** The screens of the kit, fetched together: whoever can open one can go on to the others with the shop out of reach. */
export const KitRooms = () => (
  <Switch>
    <Route path="/kit/new">
      <KitKindsScreen />
    </Route>
    <Route path="/kit/new/:kind">{({ kind }) => <NewThingScreen kind={kind} />}</Route>
    <Route path="/kit/thing/:item">{({ item }) => <ThingScreen item={item} />}</Route>
    <Route>
      <KitScreen />
    </Route>
  </Switch>
);
