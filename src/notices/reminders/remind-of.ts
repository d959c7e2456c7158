import type { EntityManager } from 'typeorm';

/** Notes what a person is reminded of, and leaves those that they were not before. */
export async function remindOf<T extends { subject: string; lead: string }>(
  em: EntityManager,
  memberId: string,
  due: readonly T[],
): Promise<T[]> {
  const fresh: { subject: string; lead: string }[] = await em.query(
    `INSERT INTO reminders (club_id, member_id, subject, lead)
     SELECT bellcrank_club(), $1, r.subject, r.lead FROM jsonb_to_recordset($2::jsonb) AS r (subject text, lead text)
     ON CONFLICT DO NOTHING RETURNING subject, lead`,
    [memberId, JSON.stringify(due.map(({ subject, lead }) => ({ subject, lead })))],
  );
  const known = new Set(fresh.map(({ subject, lead }) => `${subject} ${lead}`));
  return due.filter(({ subject, lead }) => known.has(`${subject} ${lead}`));
}
