/** The demo club's scans: one beside each paper that waits, every one says that it is made up, and is kept as one sent in would be. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { generateClub } from '../../src/demo/generate.js';
import { DEMO_SEED } from '../../src/demo/ids.js';
import { scanRows } from '../../src/demo/people/scans.js';
import { cleanPdf } from '../../src/platform/images/pdf.js';

it('draws scans that say so, the same every time', async () => {
  const { rows } = generateClub({ seed: DEMO_SEED, asOf: '2026-11-25T15:00:00Z' });
  const scans = await scanRows(rows);
  expect(scans.length).toBeGreaterThan(20);
  expect(scans.length).toBeLessThan(80);
  const waiting = rows.medicals.filter(({ verified_by }) => verified_by === null);
  expect(waiting.length).toBeGreaterThan(0);
  for (const { id } of waiting) expect(scans.some(({ medical_id }) => medical_id === id)).toBe(true);
  expect(await scanRows(rows)).toEqual(scans);
  const first = Buffer.from(scans[0]!.content.slice(2), 'hex');
  expect(first.length).toBeLessThan(4096);
  expect(await cleanPdf(first)).not.toBeNull();
  const text = textOf(first);
  expect(text).toContain('No such person, no such paper.');
  expect(text).toContain(rows.members.find(({ id }) => id === scans[0]!.member_id)!.name);
});

/** What a second reader of PDF (PDF.js) finds written on it. */
function textOf(pdf: Buffer): string {
  const folder = mkdtempSync(join(tmpdir(), 'scan-'));
  const file = join(folder, 'scan.pdf');
  writeFileSync(file, pdf);
  const told = execFileSync(process.execPath, [join(__dirname, '../support/pdf-text.mjs'), file], {
    encoding: 'utf8',
  });
  rmSync(folder, { recursive: true });
  return (JSON.parse(told) as { pages: { text: string }[] }).pages.map(({ text }) => text).join('\n');
}
