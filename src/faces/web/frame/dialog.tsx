import type { ReactNode } from 'react';
import { Dialog, Modal, ModalOverlay } from 'react-aria-components';

/** The drawer behind the menu button: holds the focus while it is open, closes on Escape and on a tap beside it. */
export const Drawer = (props: {
  readonly label: string;
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly children: ReactNode;
}) => (
  <ModalOverlay className="drawer-shade" isOpen={props.open} onOpenChange={props.onOpenChange} isDismissable>
    <Modal>
      <Dialog className="drawer" aria-label={props.label}>
        {props.children}
      </Dialog>
    </Modal>
  </ModalOverlay>
);
