import type { Drawn } from '../../shop/chart/paper.ts';
import { faceOf, figures, printable } from './face.ts';
import { type Paint, paintOf, plainPaint } from './paint.ts';

type Pdf = PDFKit.PDFDocument;

const number = (node: Drawn, name: string, fallback = 0): number => {
  const value = node.attributes[name];
  return value === undefined ? fallback : Number.parseFloat(String(value));
};

/** Moves what follows as an SVG `transform` does. */
function transform(pdf: Pdf, text: string): void {
  for (const [, name, given] of text.matchAll(/(\w+)\(([^)]*)\)/g)) {
    const [a = 0, b, c, d, e, f] = (given ?? '')
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    if (name === 'translate') pdf.translate(a, b ?? 0);
    else if (name === 'scale') pdf.scale(a, b ?? a);
    else if (name === 'rotate') pdf.rotate(a, b === undefined || c === undefined ? {} : { origin: [b, c] });
    else if (name === 'matrix') pdf.transform(a, b!, c!, d!, e!, f!);
    else throw new RangeError(`transform "${name}"; expected translate, scale, rotate or matrix`);
  }
}

/** Lays the outline of a node down, without painting it; false when the node has none. */
function outline(pdf: Pdf, node: Drawn): boolean {
  switch (node.tag) {
    case 'path':
      pdf.path(String(node.attributes.d));
      return true;
    case 'rect': {
      const [x, y] = [number(node, 'x'), number(node, 'y')];
      const [width, height, r] = [number(node, 'width'), number(node, 'height'), number(node, 'rx')];
      if (r > 0) pdf.roundedRect(x, y, width, height, r);
      else pdf.rect(x, y, width, height);
      return true;
    }
    case 'circle':
      pdf.circle(number(node, 'cx'), number(node, 'cy'), number(node, 'r'));
      return true;
    case 'ellipse':
      pdf.ellipse(number(node, 'cx'), number(node, 'cy'), number(node, 'rx'), number(node, 'ry'));
      return true;
    case 'line':
      pdf.moveTo(number(node, 'x1'), number(node, 'y1')).lineTo(number(node, 'x2'), number(node, 'y2'));
      return true;
    default:
      return false;
  }
}

const isSeen = (paint: string, opacity: number): boolean => paint !== 'none' && opacity > 0;

function strokeStyle(pdf: Pdf, paint: Paint): void {
  pdf.lineWidth(paint['stroke-width']);
  const dashes = paint['stroke-dasharray'];
  if (dashes && dashes !== 'none') {
    const lengths = dashes
      .trim()
      .split(/[\s,]+/)
      .map((one) => Math.max(Number(one), 0.01));
    // pdfkit refuses a length of nothing, which is how dots are written.
    pdf.dash(lengths as unknown as number, {});
  } else pdf.undash();
  pdf.lineCap(
    paint['stroke-linecap'] === 'round' ? 'round' : paint['stroke-linecap'] === 'square' ? 'square' : 'butt',
  );
  pdf.lineJoin(
    paint['stroke-linejoin'] === 'round' ? 'round' : paint['stroke-linejoin'] === 'bevel' ? 'bevel' : 'miter',
  );
}

function body(pdf: Pdf, node: Drawn, paint: Paint): void {
  const fills = node.tag !== 'line' && isSeen(paint.fill, paint['fill-opacity'] * paint.opacity);
  const strokes = isSeen(paint.stroke, paint['stroke-opacity'] * paint.opacity);
  if (!fills && !strokes) return;
  outline(pdf, node);
  if (strokes) strokeStyle(pdf, paint);
  const fill = () => pdf.fillColor(paint.fill, paint['fill-opacity'] * paint.opacity);
  const stroke = () => pdf.strokeColor(paint.stroke, paint['stroke-opacity'] * paint.opacity);
  const rule = node.attributes['fill-rule'] === 'evenodd' ? 'even-odd' : 'non-zero';
  if (fills && strokes) {
    fill();
    stroke();
    pdf.fillAndStroke(undefined, undefined, rule);
  } else if (fills) {
    fill();
    pdf.fill(rule);
  } else {
    stroke();
    pdf.stroke();
  }
}

const textOf = (node: Drawn): string =>
  node.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('');

function letters(pdf: Pdf, node: Drawn, paint: Paint): void {
  const text = printable(textOf(node));
  if (text === '') return;
  const size = paint['font-size'];
  pdf.font(faceOf(paint['font-weight'])).fontSize(size);
  const width = pdf.widthOfString(text, figures);
  const anchor = paint['text-anchor'];
  const x = number(node, 'x') - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
  const baseline = node.attributes['dominant-baseline'];
  // A third of the size: half the height of the figures.
  const y = number(node, 'y') + (baseline === 'central' || baseline === 'middle' ? size * 0.35 : 0);
  const put = (more: PDFKit.Mixins.TextOptions): unknown =>
    pdf.text(text, x, y, { ...figures, baseline: 'alphabetic', ...more });
  if (isSeen(paint.stroke, paint['stroke-opacity'])) {
    // A rim behind the letters, so that they read over a drawing.
    strokeStyle(pdf, paint);
    pdf.strokeColor(paint.stroke, paint['stroke-opacity']);
    put({ stroke: true, fill: false });
  }
  pdf.fillColor(paint.fill, paint['fill-opacity'] * paint.opacity);
  put({});
}

/** Puts a drawing down with its top left corner where the pen stands, at the size the units of the page have. */
export function drawVector(pdf: Pdf, node: Drawn, parent: Paint = plainPaint): void {
  if (node.tag === 'title' || node.tag === 'desc') return;
  const paint = paintOf(node.attributes, parent);
  if (node.tag === 'text') {
    pdf.save();
    if (node.attributes.transform !== undefined) transform(pdf, String(node.attributes.transform));
    letters(pdf, node, paint);
    pdf.restore();
    return;
  }
  if (node.tag !== 'svg' && node.tag !== 'g') {
    if (node.tag === 'image')
      throw new RangeError('a drawing with a photo in it; expected photos as pieces of their own');
    pdf.save();
    if (node.attributes.transform !== undefined) transform(pdf, String(node.attributes.transform));
    body(pdf, node, paint);
    pdf.restore();
    return;
  }
  pdf.save();
  if (node.tag === 'svg') {
    pdf.translate(number(node, 'x'), number(node, 'y'));
    const box = String(node.attributes.viewBox ?? '')
      .split(/\s+/)
      .map(Number);
    if (box.length === 4) {
      const [x, y, width, height] = box as [number, number, number, number];
      const scale = Math.min(number(node, 'width', width) / width, number(node, 'height', height) / height);
      pdf.scale(scale).translate(-x, -y);
    }
  }
  if (node.attributes.transform !== undefined) transform(pdf, String(node.attributes.transform));
  for (const child of node.children) if (typeof child !== 'string') drawVector(pdf, child, paint);
  pdf.restore();
}
