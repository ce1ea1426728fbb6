/** A node of a drawing: what SVG calls an element. The same tree becomes text for paper and elements for the screen. */
export interface Shape {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Shape | string)[];
}

/** Makes a node; attributes that are undefined are left out. */
export function shape(
  tag: string,
  attributes: Record<string, string | number | undefined>,
  ...children: (Shape | string | readonly (Shape | string)[])[]
): Shape {
  const kept = Object.entries(attributes).filter(
    (pair): pair is [string, string | number] => pair[1] !== undefined,
  );
  return { tag, attributes: Object.fromEntries(kept), children: children.flat() };
}

const escapes: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escapeText = (text: string): string => text.replace(/[&<>"]/g, (c) => escapes[c]!);

/** Numbers rounded to 0.01, so that drawings compare and files stay small. */
const written = (value: string | number): string =>
  typeof value === 'number' ? String(Math.round(value * 100) / 100 + 0) : value;

/** The drawing as SVG text. */
export function svgText(node: Shape | string): string {
  if (typeof node === 'string') return escapeText(node);
  const attributes = Object.entries(node.attributes).map(
    ([name, value]) => ` ${name}="${escapeText(written(value))}"`,
  );
  const open = `<${node.tag}${attributes.join('')}`;
  return node.children.length ? `${open}>${node.children.map(svgText).join('')}</${node.tag}>` : `${open}/>`;
}

/**
 * The drawing as a file of its own: colours and face as they stand behind the screen's variables, which not every program that
 * opens an SVG knows.
 *
 * @param face  a style rule that brings the face along
 */
export function svgFile(node: Shape, face?: string): string {
  const whole =
    face === undefined ? node : { ...node, children: [shape('style', {}, face), ...node.children] };
  return `${svgText(whole).replace(/var\(--[\w-]+, ([^()]+)\)/g, '$1')}\n`;
}

/** All nodes of a drawing, the root first, each before its children. */
export const nodesOf = (node: Shape): Shape[] => [
  node,
  ...node.children.flatMap((child) => (typeof child === 'string' ? [] : nodesOf(child))),
];
