import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** The width of an element in CSS px, kept up to date: figures are drawn at the width they are shown, so labels keep their size. */
export function useWidth<T extends HTMLElement>(first: number): readonly [RefObject<T | null>, number] {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const look = () => setWidth(Math.max(200, Math.floor(element.clientWidth)));
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
