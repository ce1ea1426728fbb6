import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { createPortal } from 'react-dom';

/**
 * The drawer behind the menu button: the browser's own modal dialog, which holds the focus while it is open and gives it back; it
 * closes on Escape and on a tap beside it.
 */
export function Drawer(props: {
  readonly label: string;
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly children: ReactNode;
}) {
  return props.open ? createPortal(<OpenDrawer {...props} />, document.body) : null;
}

function OpenDrawer(props: Parameters<typeof Drawer>[0]) {
  const { label, onOpenChange, children } = props;
  const shade = useRef<HTMLDialogElement>(null);
  const drawer = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const dialog = shade.current;
    // Telephones of 2021 know no modal dialog: there it lies open over the page, and a tap closes it.
    if (dialog && 'showModal' in dialog) dialog.showModal();
    else shade.current?.setAttribute('open', '');
    // The drawer itself, not its first button: the next Tab leads there.
    drawer.current?.focus();
    return () => dialog?.close?.();
  }, []);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes it by key
    <dialog
      ref={shade}
      className="drawer-shade"
      aria-label={label}
      onCancel={(event) => {
        event.preventDefault();
        onOpenChange(false);
      }}
      onClick={({ target }) => {
        if (target === shade.current) onOpenChange(false);
      }}
    >
      <div className="drawer" ref={drawer} tabIndex={-1}>
        {children}
      </div>
    </dialog>
  );
}
