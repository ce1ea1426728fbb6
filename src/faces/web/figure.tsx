import { createElement, type MouseEvent, memo, type ReactNode } from 'react';
import type { Shape } from '../../draw/shape.ts';

/** SVG attributes that React spells differently; the rest go through as written. */
const spelled = (name: string): string => {
  if (name === 'class') return 'className';
  if (name.startsWith('data-') || name.startsWith('aria-')) return name;
  return name.replace(/[-:]([a-z])/g, (_, letter: string) => letter.toUpperCase());
};

const styleOf = (text: string): Record<string, string> =>
  Object.fromEntries(
    text
      .split(';')
      .map((part) => part.split(':'))
      .filter((pair) => pair.length === 2)
      .map(([name, value]) => [spelled(name!.trim()), value!.trim()]),
  );

/** A drawing's tree as React elements: the same tree that becomes SVG text on paper. */
export function shapeElement(node: Shape | string, key?: number): ReactNode {
  if (typeof node === 'string') return node;
  const attributes = Object.fromEntries(
    Object.entries(node.attributes).map(([name, value]) => [
      spelled(name),
      name === 'style' ? styleOf(String(value)) : value,
    ]),
  );
  return createElement(
    node.tag,
    { ...attributes, ...(key === undefined ? {} : { key }) },
    ...node.children.map((child, i) => shapeElement(child, i)),
  );
}

/** A zone of a drawing: which pad, and which zone of it from the minus end. */
export interface ZonePlace {
  readonly pad: string;
  readonly zone: number;
}

const zoneUnder = (target: EventTarget | null): ZonePlace | undefined => {
  const hit = target instanceof Element ? target.closest('[data-zone]') : null;
  const pad = hit?.getAttribute('data-pad');
  const zone = hit?.getAttribute('data-zone');
  return pad && zone !== null && zone !== undefined ? { pad, zone: Number(zone) } : undefined;
};

/**
 * Shows a figure of draw/. A tap on anything with data-pad and data-zone is told to `onZone`; the keyboard's way to the
 * same deed stands beside the figure (a grid of buttons), so the drawing itself holds no focus.
 */
export const Figure = memo(function Figure(props: {
  readonly shape: Shape;
  readonly className?: string;
  readonly onZone?: (place: ZonePlace) => void;
}) {
  const { shape, className, onZone } = props;
  const onClick = onZone
    ? (event: MouseEvent) => {
        const place = zoneUnder(event.target);
        if (place) onZone(place);
      }
    : undefined;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: every zone has a button of its own beside the figure
    <div className={['figure', className].filter(Boolean).join(' ')} onClick={onClick}>
      {shapeElement(shape)}
    </div>
  );
});
