/** Scans beside some papers of the demo club: one page each, plainly made up. */
import { PDFDocument, degrees, rgb, StandardFonts } from 'pdf-lib';
import { cleanPdf } from '../../platform/images/pdf.js';
import { sha256 } from '../../platform/sha256.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { DemoRows } from '../rows.js';
import type { DocumentRow } from '../rows/members.js';

/** A postcard, in points. */
const PAGE: [number, number] = [420, 298];

/** Medicals and pilot certificates of members whose papers wait to be verified, and of each third member besides. */
export async function scanRows(rows: DemoRows): Promise<DocumentRow[]> {
  const names = new Map(rows.members.map(({ id, name }) => [id, name]));
  const waiting = new Set(
    rows.medicals.flatMap(({ verified_by, member_id }) => (verified_by === null ? member_id : [])),
  );
  const scanned = new Set(
    rows.members.flatMap(({ id }, index) => (index % 3 === 0 || waiting.has(id) ? id : [])),
  );
  const papers = [
    ...rows.medicals.map((paper) => ({
      ...{ paper, key: 'medical_id', title: `Medical certificate, class ${paper.class}` },
      facts: [`Examined on ${paper.exam_on}`, ...paper.limitations],
    })),
    ...rows.certificates.map((paper) => ({
      ...{ paper, key: 'certificate_id', title: `Pilot certificate, ${paper.level}` },
      facts: [`Issued on ${paper.issued_on}`, ...paper.limitations],
    })),
  ].filter(({ paper }) => scanned.has(paper.member_id));

  const documents: DocumentRow[] = [];
  for (const { paper, key, title, facts } of papers) {
    const content = await specimen(title, [names.get(paper.member_id)!, ...facts]);
    documents.push({
      ...{ club_id: DEMO_CLUB_ID, id: demoId(paper.id, 'scan'), recorded_at: paper.recorded_at },
      ...{ member_id: paper.member_id, added_by: paper.member_id },
      ...{ medical_id: null, certificate_id: null, [key]: paper.id },
      ...{ media_type: 'application/pdf', size_bytes: content.length, sha256: sha256(content) },
      content: `\\x${content.toString('hex')}`,
    });
  }
  return documents;
}

/** A page that nobody can take for a paper; passed through what every PDF that is sent in passes through. */
async function specimen(title: string, facts: readonly string[]): Promise<Buffer> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const page = pdf.addPage(PAGE);
  const font = await pdf.embedFont(StandardFonts.Helvetica);
  const ink = rgb(0.09, 0.15, 0.18);
  page.drawRectangle({
    ...{ x: 14, y: 14, width: PAGE[0] - 28, height: PAGE[1] - 28 },
    ...{ borderColor: rgb(0.91, 0.63, 0.23), borderWidth: 3 },
  });
  page.drawText('MADE UP', {
    ...{ x: 110, y: 62, size: 64, font, rotate: degrees(24), color: rgb(0.93, 0.9, 0.84) },
  });
  page.drawText(title, { x: 34, y: 236, size: 20, font, color: ink });
  facts.forEach((fact, index) =>
    page.drawText(fact, { x: 34, y: 200 - 22 * index, size: 13, font, color: ink }),
  );
  page.drawText('Drawn for the demonstration club. No such person, no such paper.', {
    ...{ x: 34, y: 34, size: 10, font, color: rgb(0.55, 0.12, 0.12) },
  });
  const clean = await cleanPdf(Buffer.from(await pdf.save({ useObjectStreams: false })));
  if (clean === null) throw new Error('a drawn scan is not taken for a PDF');
  return clean;
}
