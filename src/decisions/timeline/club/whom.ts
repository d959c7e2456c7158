import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../../platform/problems/index.js';
import type { LocalDate } from '../../../rules/index.js';

/** Whom and what a whole-club question is about. */
export interface Whom {
  members: { id: string; name: string }[];
  aircraftIds: string[];
}

// By name as people read it, in byte order whatever the server's locale. A membership that touches the span is enough:
// on which of its days it holds is for the rule on membership to say.
const SQL = `SELECT
  (SELECT coalesce(jsonb_agg(jsonb_build_object('id', m.id, 'name', m.name) ORDER BY lower(m.name) COLLATE "C", m.id), '[]'::jsonb)
     FROM members m WHERE m.club_id = bellcrank_club() AND CASE WHEN $1::uuid[] IS NULL
       THEN m.membership_from <= $4::date AND (m.membership_through IS NULL OR m.membership_through >= $3::date)
       ELSE m.id = ANY ($1::uuid[]) END) AS members,
  (SELECT coalesce(jsonb_agg(a.id ORDER BY a.registration), '[]'::jsonb)
     FROM aircraft a WHERE a.club_id = bellcrank_club() AND ($2::uuid[] IS NULL OR a.id = ANY ($2::uuid[]))) AS "aircraftIds"`;

/**
 * Who and what, in one statement: those named, or everybody whose membership touches the days `first` to `last` and the whole
 * fleet.
 *
 * @throws ProblemException 404 naming the field, for somebody or something the club does not have.
 */
export async function whom(
  em: EntityManager,
  of: { memberIds: string[] | null; aircraftIds: string[] | null; first: LocalDate; last: LocalDate },
): Promise<Whom> {
  const [found]: Whom[] = await em.query(SQL, [of.memberIds, of.aircraftIds, of.first, of.last]);
  const { members, aircraftIds } = found!;
  const memberIds = new Set(members.map(({ id }) => id));
  requireAll('memberIds', 'member', of.memberIds, memberIds);
  requireAll('aircraftIds', 'aircraft', of.aircraftIds, new Set(aircraftIds));
  return { members, aircraftIds };
}

function requireAll(field: string, noun: string, named: string[] | null, found: ReadonlySet<string>): void {
  const missing = named?.find((id) => !found.has(id));
  if (missing === undefined) return;
  throw new ProblemException('not-found', {
    detail: `The club has no ${noun} ${missing}. Check the id.`,
    field,
  });
}
