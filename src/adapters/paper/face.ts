import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** The weights that are embedded: the screen's face, Archivo, whole, under the SIL Open Font License 1.1. */
const faces = [
  [400, '400Regular'],
  [500, '500Medium'],
  [600, '600SemiBold'],
  [700, '700Bold'],
] as const;

const require = createRequire(import.meta.url);
const folder = dirname(require.resolve('@expo-google-fonts/archivo/package.json'));

/** The name a weight is registered under: the nearest that is embedded. */
export function faceOf(weight: number): string {
  const [nearest] = [...faces].sort((a, b) => Math.abs(a[0] - weight) - Math.abs(b[0] - weight));
  return nearest![1];
}

/** Makes the weights known to a document. */
export function registerFaces(pdf: PDFKit.PDFDocument): void {
  for (const [, name] of faces) pdf.registerFont(name, join(folder, name, `Archivo_${name}.ttf`));
}

/** Figures of one width, and the narrow no-break space as the thin one: the face has no glyph for it. */
export const figures: PDFKit.Mixins.TextOptions = { features: ['tnum', 'lnum', 'kern'], lineBreak: false };
export const printable = (text: string): string => text.replaceAll('\u202f', '\u2009');

/** The face as a rule for a drawing that stands alone, so that its words keep the places they were measured for. */
export function faceRule(): string {
  const file = require.resolve('@fontsource-variable/archivo/files/archivo-latin-wght-normal.woff2');
  const data = readFileSync(file).toString('base64');
  return `@font-face{font-family:Archivo;font-weight:100 900;src:url(data:font/woff2;base64,${data}) format('woff2')}`;
}
