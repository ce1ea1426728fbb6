import { Link } from 'wouter';
import { Mark } from './mark.tsx';

/** This device has no key, or not any more. */
export const NotLetIn = () => (
  <>
    <p className="wrong" role="alert">
      <Mark name="caution" size={20} />
      <span>
        This device has not been let into the workshop, or was taken off its list. What you entered is kept on
        this device, and sent when it is let in again.
      </span>
    </p>
    <Link href="/join" className="second">
      Come in with a code
    </Link>
  </>
);
