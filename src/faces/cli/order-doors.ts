import type { Machine } from '../../core/order/machine.ts';

/** What verbs about whole machines need beyond the usual doors. */
export interface OrderDoors {
  /** The whole machines that come with the package. */
  readonly machines: () => readonly Machine[];
}
