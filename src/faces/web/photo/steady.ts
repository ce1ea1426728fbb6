import { useEffect, useState } from 'react';

/** A value once it has not changed for a while: what is asked of the shop does not follow every press. No wait: as it is. */
export function useSteady<T>(value: T, wait_ms: number): T {
  const [held, hold] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => hold(value), wait_ms);
    return () => clearTimeout(timer);
  }, [value, wait_ms]);
  return wait_ms === 0 ? value : held;
}
