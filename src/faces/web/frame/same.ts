import { useEffect, useRef } from 'react';

/** The value that was there before as long as the new one says the same: what is worked out from it is then not worked out again. */
export function useSame<T>(value: T): T {
  const before = useRef(value);
  const same = JSON.stringify(before.current) === JSON.stringify(value) ? before.current : value;
  useEffect(() => {
    before.current = same;
  }, [same]);
  return same;
}
