import Pdf from 'pdfkit';
import { type Drawn, type PaperDocument, type Piece, type Press, papers } from '../../shop/chart/paper.ts';
import { faceOf, figures, printable, registerFaces } from './face.ts';
import { drawVector } from './vector.ts';

/** A point of PDF is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const points_per_mm = 72 / 25.4;
const margin_mm = 15;
const foot_mm = 9;
/** Photos to a row. */
const photosAcross = 3;
const ink2 = '#44535c';

const heightOf = (drawing: Drawn): number => Number.parseFloat(String(drawing.attributes.height));
const widthOf = (drawing: Drawn): number => Number.parseFloat(String(drawing.attributes.width));

interface Sheet {
  readonly pdf: PDFKit.PDFDocument;
  readonly left: number;
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
  /** Points to one px of a drawing. */
  readonly scale: number;
}

/** A drawing that is wider than the page is made as small as the page. */
const fitted = (sheet: Sheet, drawing: Drawn): number =>
  Math.min(sheet.scale, sheet.width / widthOf(drawing), (sheet.bottom - sheet.top) / heightOf(drawing));

function put(sheet: Sheet, drawing: Drawn, y: number): number {
  const scale = fitted(sheet, drawing);
  sheet.pdf.save();
  sheet.pdf.translate(sheet.left, y).scale(scale);
  drawVector(sheet.pdf, drawing);
  sheet.pdf.restore();
  return y + heightOf(drawing) * scale;
}

/** How much room a piece asks for, with those it must stand with. */
function room(sheet: Sheet, pieces: readonly Piece[], k: number): number {
  const piece = pieces[k];
  if (piece?.kind !== 'drawing') return piece ? (sheet.width / photosAcross) * 0.9 : 0;
  const its = heightOf(piece.drawing) * fitted(sheet, piece.drawing) + (piece.above ?? 0) * sheet.scale;
  return its + (piece.keep ? room(sheet, pieces, k + 1) : 0);
}

/** The pieces one below the other, a new page where one would not fit. */
function flow(sheet: Sheet, pieces: readonly Piece[]): void {
  let y = sheet.top;
  const turn = (): void => {
    sheet.pdf.addPage();
    y = sheet.top;
  };
  pieces.forEach((piece, k) => {
    if (piece.kind === 'photos') {
      y = photoRows(sheet, piece.photos, y, turn);
      return;
    }
    const above = y === sheet.top ? 0 : (piece.above ?? 0) * sheet.scale;
    const isHeld = k > 0 && pieces[k - 1]!.kind === 'drawing' && (pieces[k - 1] as { keep?: true }).keep;
    if (!isHeld && y > sheet.top && y + room(sheet, pieces, k) > sheet.bottom) {
      turn();
      if (piece.head) y = put(sheet, piece.head, y);
      y = put(sheet, piece.drawing, y);
    } else y = put(sheet, piece.drawing, y + above);
  });
}

type Photos = Extract<Piece, { kind: 'photos' }>['photos'];

function photoRows(sheet: Sheet, photos: Photos, from: number, turn: () => void): number {
  const gap = 8;
  const wide = (sheet.width - gap * (photosAcross - 1)) / photosAcross;
  const tall = wide * 0.75;
  let y = from;
  for (let k = 0; k < photos.length; k += photosAcross) {
    if (y + tall + 18 > sheet.bottom) {
      turn();
      y = sheet.top;
    }
    photos.slice(k, k + photosAcross).forEach((photo, column) => {
      const x = sheet.left + column * (wide + gap);
      sheet.pdf.image(Buffer.from(photo.jpeg), x, y, {
        fit: [wide, tall],
        align: 'center',
        valign: 'center',
      });
      sheet.pdf
        .font(faceOf(400))
        .fontSize(8)
        .fillColor(ink2, 1)
        .text(printable(photo.words), x, y + tall + 10, { ...figures, baseline: 'alphabetic' });
    });
    y += tall + 18;
  }
  return y;
}

function feet(pdf: PDFKit.PDFDocument, sheet: Sheet, document: PaperDocument): void {
  const { start, count } = pdf.bufferedPageRange();
  for (let page = start; page < start + count; page++) {
    pdf.switchToPage(page);
    const y = sheet.bottom + foot_mm * points_per_mm * 0.75;
    const number = `page ${page + 1} of ${count}`;
    pdf.font(faceOf(400)).fontSize(8).fillColor(ink2, 1);
    const width = pdf.widthOfString(number, figures);
    let foot = printable(document.foot);
    while (pdf.widthOfString(foot, figures) > sheet.width - width - 20) foot = `${foot.slice(0, -2)}…`;
    pdf.text(foot, sheet.left, y, { ...figures, baseline: 'alphabetic' });
    pdf.text(number, sheet.left + sheet.width - width, y, { ...figures, baseline: 'alphabetic' });
  }
}

/**
 * A document as PDF: drawings as vectors, letters as letters with their face embedded, photos as they are.
 * @throws RangeError  a drawing with something that paper cannot take
 */
export const pressPdf: Press = async (document, paper) => {
  const { width_mm, height_mm } = papers[paper];
  const [width, height] = [width_mm * points_per_mm, height_mm * points_per_mm];
  const pdf = new Pdf({
    size: [width, height],
    margin: 0,
    bufferPages: true,
    lang: 'en',
    displayTitle: true,
    pdfVersion: '1.7',
    info: { Title: document.title, Creator: 'Waywright', CreationDate: new Date(document.made) },
  });
  const parts: Buffer[] = [];
  const whole = new Promise<Buffer>((done, failed) => {
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => done(Buffer.concat(parts)));
    pdf.on('error', failed);
  });
  registerFaces(pdf);
  const margin = margin_mm * points_per_mm;
  const sheet: Sheet = {
    pdf,
    left: margin,
    top: margin,
    bottom: height - margin - foot_mm * points_per_mm,
    width: width - 2 * margin,
    scale: (width - 2 * margin) / document.width,
  };
  flow(sheet, document.pieces);
  feet(pdf, sheet, document);
  pdf.end();
  return whole;
};
