import type { Shape } from './shape.ts';

/**
 * A drawing in which every part that is as it was in the one before is the very same object: whoever shows it passes such parts by.
 * It draws what `now` draws.
 */
export function withSameParts(before: Shape, now: Shape): Shape {
  if (before === now) return before;
  const children = now.children.map((child, k) => {
    const was = before.children[k];
    return typeof child === 'string' || typeof was !== 'object' ? child : withSameParts(was, child);
  });
  const isSame =
    before.tag === now.tag &&
    before.children.length === children.length &&
    children.every((child, k) => child === before.children[k]) &&
    hasSameAttributes(before, now);
  return isSame ? before : { ...now, children };
}

function hasSameAttributes(before: Shape, now: Shape): boolean {
  const names = Object.keys(now.attributes);
  return (
    names.length === Object.keys(before.attributes).length &&
    names.every((name) => before.attributes[name] === now.attributes[name])
  );
}
