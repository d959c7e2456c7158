import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../platform/problems/index.js';
import type { Instant } from '../../rules/index.js';
import { readReport, UnreadableReport, type Kind, type ReadReport } from '../decode/read-report.js';
import { isCurrent, keepReports, OLDEST_HOURS } from './keep-reports.js';

/** Reports a member pasted with a question, word for word. */
export interface PastedReports {
  metar?: string[];
  taf?: string[];
}

/**
 * Keeps pasted reports for the flights of a member.
 * @throws ProblemException 422 naming the text: not a report, of another time, or of a place the club does not have.
 */
export async function keepPasted(
  em: EntityManager,
  pasted: PastedReports,
  of: { memberId: string; pastedBy: string; now: Instant },
): Promise<void> {
  const all: { field: string; report: ReadReport }[] = (['metar', 'taf'] as const).flatMap((kind) =>
    (pasted[kind] ?? []).map((text, index) => {
      const field = `reports.${kind}[${index}]`;
      return { field, report: readPasted(kind, text, of.now, field) };
    }),
  );
  const codes: { code: string }[] = await em.query(
    'SELECT code FROM airfields WHERE club_id = bellcrank_club()',
  );
  for (const { field, report } of all)
    if (!codes.some(({ code }) => code === report.airfield))
      throw refuse(
        field,
        `It is for ${report.airfield}, and the club has no such airfield. Paste those of the route.`,
      );
  await keepReports(
    em,
    all.map(({ report }) => report),
    { obtainedAt: of.now, pasted: of },
  );
}

function readPasted(kind: Kind, text: string, now: Instant, field: string): ReadReport {
  try {
    const report = readReport(kind, text, now);
    if (isCurrent(report, now)) return report;
    throw refuse(
      field,
      `It is of ${report.issuedAt}; paste one that is no older than ${OLDEST_HOURS} hours and not of a time to come.`,
    );
  } catch (error) {
    if (error instanceof UnreadableReport) throw refuse(field, error.message);
    throw error;
  }
}

const refuse = (field: string, detail: string): ProblemException =>
  new ProblemException('report-unreadable', {
    ...{ status: 422, title: 'The weather report cannot be used', detail, field },
  });
