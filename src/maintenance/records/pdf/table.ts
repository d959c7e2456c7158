/** A table that goes on over pages, its headings on each. */
import type PDFDocument from 'pdfkit';

export type Doc = InstanceType<typeof PDFDocument>;

/** A column: its heading and its part of the width. */
export interface Column {
  heading: string;
  part: number;
}

const SIZE = 7.5;
const PAD = 3;

/** The lowest point a row may reach. */
export const floorOf = (doc: Doc): number => doc.page.height - doc.page.margins.bottom;
export const widthOf = (doc: Doc): number => doc.page.width - doc.page.margins.left - doc.page.margins.right;

export function table(doc: Doc, columns: readonly Column[], rows: readonly string[][]): void {
  const whole = columns.reduce((sum, { part }) => sum + part, 0);
  const widths = columns.map(({ part }) => (part / whole) * widthOf(doc));
  const head = (): void =>
    row(
      doc,
      widths,
      columns.map(({ heading }) => heading),
      'bold',
    );
  const first = rows[0];
  // The headings never stand alone at the foot of a page.
  if (first && doc.y + heightOf(doc, widths, first, 'text') + 2 * (SIZE + 2 * PAD) > floorOf(doc))
    doc.addPage();
  head();
  for (const cells of rows) {
    if (doc.y + heightOf(doc, widths, cells, 'text') > floorOf(doc)) {
      doc.addPage();
      head();
    }
    row(doc, widths, cells, 'text');
  }
}

function heightOf(doc: Doc, widths: readonly number[], cells: readonly string[], font: string): number {
  doc.font(font).fontSize(SIZE);
  const heights = cells.map((cell, index) =>
    doc.heightOfString(cell || ' ', { width: widths[index]! - 2 * PAD }),
  );
  return Math.max(...heights) + 2 * PAD;
}

function row(doc: Doc, widths: readonly number[], cells: readonly string[], font: string): void {
  const height = heightOf(doc, widths, cells, font);
  const top = doc.y;
  let left = doc.page.margins.left;
  if (font === 'bold') doc.rect(left, top, widthOf(doc), height).fill('#e8e4d8');
  doc.fillColor('#000');
  for (const [index, cell] of cells.entries()) {
    doc.text(cell, left + PAD, top + PAD, { width: widths[index]! - 2 * PAD });
    left += widths[index]!;
  }
  doc
    .moveTo(doc.page.margins.left, top + height)
    .lineTo(left, top + height)
    .lineWidth(0.5)
    .stroke('#999');
  doc.x = doc.page.margins.left;
  doc.y = top + height;
}
