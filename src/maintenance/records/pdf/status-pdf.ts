/** A status on paper: A4 or Letter, fonts embedded, text that can be selected and searched. */
import PDFDocument from 'pdfkit';
import { projectPath } from '../../../platform/paths.js';
import { toSeconds } from '../../../rules/index.js';
import type { Paper, StatusView } from '../status.dto.js';
import { type Column, type Doc, floorOf, table, widthOf } from './table.js';
import { itemCells, momentIn, pieceCells, squawkCells, timeCells, weightCells } from './words.js';

const font = (name: string): string => projectPath('node_modules', 'dejavu-fonts-ttf', 'ttf', name);
const MARGINS = { top: 40, left: 40, right: 40, bottom: 70 };

const ITEMS: Column[] = [
  { heading: 'Item', part: 30 },
  { heading: 'Interval', part: 20 },
  { heading: 'Last done', part: 22 },
  { heading: 'Next due', part: 16 },
  { heading: 'Left', part: 14 },
];

/** The document's bytes. */
export function statusPdf(status: StatusView, paper: Paper): Promise<Buffer> {
  const doc = new PDFDocument({
    size: paper === 'letter' ? 'LETTER' : 'A4',
    margins: MARGINS,
    bufferPages: true,
    lang: 'en',
    displayTitle: true,
    info: {
      Title: `Status of ${status.aircraft.registration}, ${status.on}`,
      Author: status.printedBy,
      // Of the service's clock, so that the same print gives the same bytes.
      CreationDate: new Date(toSeconds(status.printedAt) * 1000),
    },
  });
  doc.registerFont('text', font('DejaVuSans.ttf'));
  doc.registerFont('bold', font('DejaVuSans-Bold.ttf'));
  const done = collected(doc);
  head(doc, status);
  section(
    doc,
    'Times',
    TIMES,
    status.times.map((time) => timeCells(time, status.zone)),
  );
  section(doc, 'Inspections, checks and the club’s own items', ITEMS, status.items.map(itemCells));
  section(doc, 'Airworthiness directives', ITEMS, status.directives.map(itemCells));
  section(
    doc,
    'Open and deferred squawks',
    SQUAWKS,
    status.squawks.map((squawk) => squawkCells(squawk, status.zone)),
  );
  section(
    doc,
    'Empty weight and balance',
    WEIGHT,
    status.weight === null ? [] : [weightCells(status.weight)],
  );
  section(doc, 'Equipment list', EQUIPMENT, status.equipment.map(pieceCells));
  foot(doc, status);
  doc.end();
  return done;
}

const TIMES: Column[] = [
  { heading: 'Meter', part: 40 },
  { heading: 'Shows', part: 18 },
  { heading: 'Running total', part: 18 },
  { heading: 'Read (club time)', part: 24 },
];
const SQUAWKS: Column[] = [
  { heading: 'Squawk', part: 50 },
  { heading: 'Reported (club time)', part: 20 },
  { heading: 'State', part: 30 },
];
const WEIGHT: Column[] = [
  { heading: 'Empty weight', part: 18 },
  { heading: 'Arm, aft of datum', part: 20 },
  { heading: 'Moment', part: 20 },
  { heading: 'Useful load', part: 18 },
  { heading: 'Found by', part: 26 },
];
const EQUIPMENT: Column[] = [
  { heading: 'Piece', part: 32 },
  { heading: 'Basis', part: 22 },
  { heading: 'Part, serial number', part: 22 },
  { heading: 'Weight', part: 12 },
  { heading: 'Arm', part: 12 },
  { heading: 'Installed', part: 14 },
];

function head(doc: Doc, { aircraft, on, cautions, caution }: StatusView): void {
  doc.font('bold').fontSize(16).text(`${aircraft.registration}  ${aircraft.makeModel}`);
  const facts = [
    aircraft.serialNumber && `serial number ${aircraft.serialNumber}`,
    aircraft.manufacturedOn && `manufactured ${aircraft.manufacturedOn}`,
  ].filter(Boolean);
  doc
    .font('text')
    .fontSize(9)
    .text([`Status as of ${on}`, ...facts].join(', '));
  doc.moveDown(0.5);
  for (const says of cautions) doc.font('bold').fontSize(8).text(`• ${says}`);
  doc.font('text').fontSize(8).text(caution);
}

function section(doc: Doc, title: string, columns: readonly Column[], rows: readonly string[][]): void {
  doc.moveDown(0.8);
  if (doc.y + 50 > floorOf(doc)) doc.addPage();
  doc.font('bold').fontSize(10).fillColor('#000').text(title);
  doc.moveDown(0.2);
  if (rows.length === 0) doc.font('text').fontSize(8).text('None on record.');
  else table(doc, columns, rows);
}

/** On every page: whose, of when, who printed it when, which page of how many. */
function foot(doc: Doc, status: StatusView): void {
  const { start, count } = doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    doc.switchToPage(start + page);
    // Below the margin nothing may be written, so it goes while the footer is.
    const { bottom } = doc.page.margins;
    doc.page.margins.bottom = 0;
    const printed = `${momentIn(status.zone, status.printedAt)} (${status.zone})`;
    const says =
      `${status.aircraft.registration}, status as of ${status.on}. Printed by ${status.printedBy}, ${printed}. ` +
      `A copy of the records on that day, worthless once anything changes. Page ${page + 1} of ${count}`;
    doc
      .font('text')
      .fontSize(7)
      .fillColor('#333')
      .text(says, MARGINS.left, doc.page.height - 48, { width: widthOf(doc) });
    doc.page.margins.bottom = bottom;
  }
}

function collected(doc: Doc): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
}
