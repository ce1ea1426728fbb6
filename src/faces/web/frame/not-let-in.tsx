import { Link } from 'wouter';
import { Wrong } from './notice.tsx';

/** This device has no key, or not any more. */
export const NotLetIn = () => (
  <>
    <Wrong role="alert">
      This device has not been let into the workshop, or was taken off its list. What you entered is kept on
      this device, and sent when it is let in again.
    </Wrong>
    <Link href="/join" className="second">
      Come in with a code
    </Link>
  </>
);
