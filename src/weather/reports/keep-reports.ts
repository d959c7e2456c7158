import type { EntityManager } from 'typeorm';
import { newId } from '../../platform/ids.js';
import { toSeconds, type Instant } from '../../rules/index.js';
import type { ReadReport } from '../decode/read-report.js';

/** Older reports say nothing about any flight to come: no forecast holds longer. */
export const OLDEST_HOURS = 36;
/** Clocks differ, and reports are written a little ahead of their time. */
const AHEAD_SECONDS = 15 * 60;
/** Decisions keep what they read; the texts themselves may go. */
const KEPT_DAYS = 14;

/** Is the report of about now? */
export function isCurrent({ issuedAt }: Pick<ReadReport, 'issuedAt'>, now: Instant): boolean {
  const age = toSeconds(now) - toSeconds(issuedAt);
  return age >= -AHEAD_SECONDS && age < OLDEST_HOURS * 3600;
}

/** Keeps reports of airfields of the running transaction's club, each once; those of other places are passed over. `idOf` gives a report its id. */
export async function keepReports(
  em: EntityManager,
  reports: readonly ReadReport[],
  of: { obtainedAt: Instant; pasted: { memberId: string; pastedBy: string } | null },
  idOf: (report: ReadReport) => string = newId,
): Promise<void> {
  if (reports.length === 0) return;
  const rows = reports.map((report) => {
    const { kind, airfield, text, issuedAt, from, to } = report;
    return { id: idOf(report), kind, airfield, text, issuedAt, from, to };
  });
  await em.query(
    `INSERT INTO weather_reports (club_id, id, airfield_id, kind, text, issued_at, valid_from, valid_to, member_id, pasted_by, obtained_at)
     SELECT f.club_id, r.id, f.id, r.kind, r.text, r."issuedAt", r."from", r."to", $2, $3, $4::timestamptz
       FROM jsonb_to_recordset($1::jsonb) AS r (id uuid, kind text, airfield text, text text, "issuedAt" timestamptz,
              "from" timestamptz, "to" timestamptz)
       JOIN airfields f ON f.club_id = bellcrank_club() AND f.code = r.airfield
     ON CONFLICT ON CONSTRAINT weather_reports_once DO NOTHING`,
    [JSON.stringify(rows), of.pasted?.memberId ?? null, of.pasted?.pastedBy ?? null, of.obtainedAt],
  );
  await em.query(
    `DELETE FROM weather_reports WHERE club_id = bellcrank_club() AND issued_at < $1::timestamptz - $2 * interval '1 day'`,
    [of.obtainedAt, KEPT_DAYS],
  );
}
