import Pdf from 'pdfkit';
import { nodesOf, type Shape } from '../../draw/shape.ts';

/** A point of PDF is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const points_per_mm = 72 / 25.4;

const number = (node: Shape, name: string): number => Number(node.attributes[name] ?? 0);

const sheetSide = (root: Shape, name: 'width' | 'height'): number =>
  Number.parseFloat(String(root.attributes[name])) * points_per_mm;

function put(pdf: PDFKit.PDFDocument, node: Shape): void {
  const { fill, stroke } = node.attributes;
  const at = (name: string) => number(node, name);
  switch (node.tag) {
    case 'rect':
      pdf.rect(at('x'), at('y'), at('width'), at('height'));
      break;
    case 'circle':
      pdf.circle(at('cx'), at('cy'), at('r'));
      break;
    case 'line':
      pdf.moveTo(at('x1'), at('y1')).lineTo(at('x2'), at('y2'));
      break;
    case 'text':
      pdf
        .fillColor(String(fill))
        .fontSize(at('font-size'))
        .text(String(node.children[0]), at('x'), at('y'), { baseline: 'alphabetic', lineBreak: false });
      return;
    default:
      return;
  }
  if (stroke !== undefined) pdf.lineWidth(at('stroke-width'));
  if (fill !== undefined && stroke !== undefined) pdf.fillAndStroke(String(fill), String(stroke));
  else if (fill !== undefined) pdf.fill(String(fill));
  else pdf.stroke(String(stroke));
}

/** A sheet drawn in mm, as PDF of the same size: rectangles, circles, lines and lines of text. */
export async function pdfOf(sheet: Shape): Promise<Uint8Array> {
  const pdf = new Pdf({
    size: [sheetSide(sheet, 'width'), sheetSide(sheet, 'height')],
    margin: 0,
    font: 'Helvetica',
    info: { Title: 'Corner card' },
  });
  const parts: Buffer[] = [];
  const whole = new Promise<Buffer>((done, failed) => {
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => done(Buffer.concat(parts)));
    pdf.on('error', failed);
  });
  pdf.scale(points_per_mm);
  for (const node of nodesOf(sheet)) put(pdf, node);
  pdf.end();
  return whole;
}
