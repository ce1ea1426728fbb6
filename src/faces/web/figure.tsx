import {
  createElement,
  type KeyboardEvent,
  type MouseEvent,
  memo,
  type ReactNode,
  useDeferredValue,
  useEffect,
  useMemo,
  useRef,
} from 'react';
import { withSameParts } from '../../draw/same-parts.ts';
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

/** A node's own attributes as React wants them. */
const propsOf = (node: Shape): Extra =>
  Object.fromEntries(
    Object.entries(node.attributes).map(([name, value]) => [
      spelled(name),
      name === 'style' ? styleOf(String(value)) : value,
    ]),
  );

interface Drawn {
  readonly key: number | undefined;
  readonly element: ReactNode;
}

/** Elements of nodes that were drawn before: React passes by what it is handed a second time. */
const drawn = new WeakMap<Shape, Drawn>();

/** A drawing's tree as React elements: the same tree that becomes SVG text on paper. `more` may add to a node's props. */
export function shapeElement(
  node: Shape | string,
  more?: (node: Shape) => Extra | undefined,
  key?: number,
): ReactNode {
  if (typeof node === 'string') return node;
  const before = more ? undefined : drawn.get(node);
  if (before && before.key === key) return before.element;
  const element = createElement(
    node.tag,
    { ...propsOf(node), ...more?.(node), ...(key === undefined ? {} : { key }) },
    ...node.children.map((child, k) => shapeElement(child, more, k)),
  );
  if (!more) drawn.set(node, { key, element });
  return element;
}

/** The drawing with the very parts of the one that was shown before, where they are the same. */
function useSameParts(shape: Shape): Shape {
  const shown = useRef(shape);
  const same = useMemo(() => withSameParts(shown.current, shape), [shape]);
  useEffect(() => {
    shown.current = same;
  }, [same]);
  return same;
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

/** Shows a figure of draw/. The tap that changes it is answered first: what was pressed shows at once, the drawing a moment later. */
export const Figure = memo(function Figure(props: { readonly shape: Shape; readonly className?: string }) {
  const shape = useSameParts(useDeferredValue(props.shape));
  return <div className={['figure', props.className].filter(Boolean).join(' ')}>{shapeElement(shape)}</div>;
});

/** A zone that is a button. Named by its own <title>, which says more than the word that is drawn in it. */
const Zone = memo(function Zone(props: {
  readonly shape: Shape;
  readonly entry: boolean;
  readonly pressed: boolean | undefined;
}) {
  const { shape, entry, pressed } = props;
  return createElement(
    shape.tag,
    {
      ...propsOf(shape),
      role: 'button',
      tabIndex: entry ? 0 : -1,
      ...(pressed === undefined ? {} : { 'aria-pressed': pressed }),
    },
    ...shape.children.map((child, k) => shapeElement(child, undefined, k)),
  );
});

const placeOf = ({ attributes }: Shape): ZonePlace | undefined => {
  const { 'data-pad': pad, 'data-zone': zone } = attributes;
  return pad === undefined || zone === undefined ? undefined : { pad: String(pad), zone: Number(zone) };
};

const holdsZones = (node: Shape): boolean =>
  node.children.some((child) => typeof child !== 'string' && (placeOf(child) || holdsZones(child)));

/** The drawing as a group whose zones are pictures, each called by its own title. */
function readByZone(shape: Shape, label: string): Shape {
  const zoned = (node: Shape): Shape => {
    if (placeOf(node)) return { ...node, attributes: { ...node.attributes, role: 'img' } };
    if (!holdsZones(node)) return node;
    return {
      ...node,
      children: node.children.map((child) => (typeof child === 'string' ? child : zoned(child))),
    };
  };
  const { tag, attributes, children } = zoned(shape);
  return { tag, attributes: { ...attributes, role: 'group', 'aria-label': label }, children };
}

/** A figure whose zones are read one by one, each by its own title: a picture is one thing to a screen reader, a group is gone through. */
export const ReadFigure = (props: { readonly shape: Shape; readonly label: string }) => {
  const { shape, label } = props;
  const read = useMemo(() => readByZone(shape, label), [shape, label]);
  return <Figure shape={read} />;
};

/** Never drawn smaller than it asked to be: its zones are a thumb wide. Where the screen is narrower, the figure is swiped along. */
const thumbWide = ({ attributes }: Shape) => ({
  ...styleOf(String(attributes.style)),
  minWidth: Number(attributes.width),
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
  const { label, chosen, pressed, onZone, onKey } = props;
  const shape = useSameParts(props.shape);
  const holder = useRef<HTMLDivElement>(null);
  let first = true;
  const zoned = (node: Shape | string, key?: number): ReactNode => {
    if (typeof node === 'string') return node;
    const place = placeOf(node);
    if (place) {
      const entry = chosen ? chosen.pad === place.pad && chosen.zone === place.zone : first;
      first = false;
      return <Zone key={key} shape={node} entry={entry} pressed={pressed?.(place)} />;
    }
    if (node !== shape && !holdsZones(node)) return shapeElement(node, undefined, key);
    return createElement(
      node.tag,
      {
        ...propsOf(node),
        ...(node === shape ? { role: 'group', 'aria-label': label, style: thumbWide(shape) } : {}),
        ...(key === undefined ? {} : { key }),
      },
      ...node.children.map(zoned),
    );
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
      {zoned(shape)}
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
