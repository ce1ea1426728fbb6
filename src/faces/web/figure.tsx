import { createElement, type KeyboardEvent, type MouseEvent, memo, type ReactNode, useRef } from 'react';
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

type Extra = Readonly<Record<string, unknown>>;

/** A drawing's tree as React elements: the same tree that becomes SVG text on paper. `more` may add to a node's props. */
export function shapeElement(
  node: Shape | string,
  more?: (node: Shape) => Extra | undefined,
  key?: number,
): ReactNode {
  if (typeof node === 'string') return node;
  const attributes = Object.fromEntries(
    Object.entries(node.attributes).map(([name, value]) => [
      spelled(name),
      name === 'style' ? styleOf(String(value)) : value,
    ]),
  );
  return createElement(
    node.tag,
    { ...attributes, ...more?.(node), ...(key === undefined ? {} : { key }) },
    ...node.children.map((child, i) => shapeElement(child, more, i)),
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

/** Shows a figure of draw/. */
export const Figure = memo(function Figure(props: { readonly shape: Shape; readonly className?: string }) {
  return (
    <div className={['figure', props.className].filter(Boolean).join(' ')}>{shapeElement(props.shape)}</div>
  );
});

const zoneIsImage = (node: Shape): Extra | undefined =>
  node.attributes['data-zone'] === undefined ? undefined : { role: 'img' };

/** A figure whose zones are read one by one, each by its own title: a picture is one thing to a screen reader, a group is gone through. */
export const ReadFigure = memo(function ReadFigure(props: { readonly shape: Shape; readonly label: string }) {
  const { shape, label } = props;
  return (
    <div className="figure">
      {shapeElement(shape, (node) =>
        node === shape ? { role: 'group', 'aria-label': label } : zoneIsImage(node),
      )}
    </div>
  );
});

/**
 * A figure whose zones are buttons: a tap, Enter or Space on one is told to `onZone`, the arrow keys go from zone to zone
 * as they lie on the screen, and any other key is offered to `onKey`. One zone at a time is in the order of Tab.
 */
export function ZoneFigure(props: {
  readonly shape: Shape;
  readonly label: string;
  readonly chosen?: ZonePlace | undefined;
  readonly pressed?: (place: ZonePlace) => boolean;
  readonly onZone: (place: ZonePlace) => void;
  readonly onKey?: (place: ZonePlace, key: string) => boolean;
}) {
  const { shape, label, chosen, pressed, onZone, onKey } = props;
  const holder = useRef<HTMLDivElement>(null);
  let first = true;
  const more = (node: Shape): Extra | undefined => {
    if (node === shape) return { role: 'group', 'aria-label': label };
    const pad = node.attributes['data-pad'];
    const zone = node.attributes['data-zone'];
    if (pad === undefined || zone === undefined) return undefined;
    const place = { pad: String(pad), zone: Number(zone) };
    const entry = chosen ? chosen.pad === place.pad && chosen.zone === place.zone : first;
    first = false;
    return {
      role: 'button',
      tabIndex: entry ? 0 : -1,
      // Named by its own <title>, which says more than the word that is drawn in it.
      ...(pressed ? { 'aria-pressed': pressed(place) } : {}),
    };
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const place = zoneUnder(event.target);
    if (!place || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onZone(place);
    } else if (event.key.startsWith('Arrow')) {
      event.preventDefault();
      neighbour(holder.current, event.target as Element, event.key)?.focus();
    } else if (onKey?.(place, event.key)) event.preventDefault();
  };
  const onClick = (event: MouseEvent) => {
    const place = zoneUnder(event.target);
    if (place) onZone(place);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the zones inside are the buttons; the holder only hears for them
    <div className="figure" ref={holder} onClick={onClick} onKeyDown={onKeyDown}>
      {shapeElement(shape, more)}
    </div>
  );
}

/** The nearest zone in the arrow's direction, by where the zones lie on the screen. */
function neighbour(holder: Element | null, from: Element, key: string): SVGElement | undefined {
  const start = from.closest('[data-zone]');
  if (!holder || !start) return undefined;
  const middle = (element: Element) => {
    const box = element.getBoundingClientRect();
    return [box.x + box.width / 2, box.y + box.height / 2] as const;
  };
  const [x0, y0] = middle(start);
  const across = key === 'ArrowLeft' || key === 'ArrowRight';
  const ahead = key === 'ArrowRight' || key === 'ArrowDown' ? 1 : -1;
  return [...holder.querySelectorAll<SVGElement>('[data-zone]')]
    .map((element) => {
      const [x, y] = middle(element);
      const [along, off] = across ? [x - x0, y - y0] : [y - y0, x - x0];
      return { element, along: along * ahead, off: Math.abs(off) };
    })
    .filter(({ along, off }) => along > 4 && off < along * 2)
    .sort((a, b) => a.along + 3 * a.off - (b.along + 3 * b.off))[0]?.element;
}
