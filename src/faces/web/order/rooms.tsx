import { Route, Switch } from 'wouter';
import { OrderScreen } from './order.tsx';
import { StepScreen } from './step.tsx';
import './order.css';

/** The order of work of a job's machine, fetched together: it answers with the shop out of reach. */
export const OrderRooms = () => (
  <Switch>
    <Route path="/job/:id/order/:step">
      {({ id, step }) => <StepScreen key={step} id={id} step={step} />}
    </Route>
    <Route path="/job/:id/order">{({ id }) => <OrderScreen id={id} />}</Route>
  </Switch>
);
