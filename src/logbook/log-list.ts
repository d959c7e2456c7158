import { setImmediate as othersFirst } from 'node:timers/promises';
import type { EntityManager } from 'typeorm';
import { decodeCursor, pageOf, type Page, type PagePosition } from '../platform/http/pages.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { checked, placesOf } from './log-checked.js';
import type { CheckedEntryView, LogQuery } from './log-list.dto.js';
import { LogEntry } from './log-entry.entity.js';

/** Whose log. */
export interface Owner {
  clubId: string;
  memberId: string;
}

type Narrowed = Omit<LogQuery, 'limit' | 'cursor' | 'flagged'>;

/** Entries looked through at a time where those with a flag are looked for. */
const PIECE = 200;

/**
 * A page of a member's entries, newest flight first. Flags are worked out anew each time, since airfields that become known
 * change them; where they narrow the list it is looked through piece by piece until the page is full.
 *
 * @throws 404 for a model the club does not have
 */
export async function listChecked(
  em: EntityManager,
  of: Owner,
  query: LogQuery,
): Promise<Page<CheckedEntryView>> {
  const { limit, cursor, flagged, ...narrowed } = query;
  await requireModel(em, of.clubId, narrowed.modelId);
  const places = await placesOf(em, of.clubId);
  const piece = flagged === undefined ? limit + 1 : PIECE;
  const found: CheckedEntryView[] = [];
  let after = decodeCursor(cursor);
  for (;;) {
    const rows = await entriesAfter(em, of, narrowed, after, piece);
    for (const row of rows) {
      const entry = checked(row, places);
      if (flagged === undefined || flagged === isFlagged(entry)) found.push(entry);
    }
    const last = rows.at(-1);
    if (found.length > limit || rows.length < piece || !last) break;
    after = { id: last.id, key: last.departedAt };
    await othersFirst();
  }
  return pageOf(found, limit, ({ departedAt }) => departedAt);
}

async function requireModel(em: EntityManager, clubId: string, id: string | undefined): Promise<void> {
  if (id === undefined) return;
  const found = await em.query<unknown[]>('SELECT 1 FROM aircraft_models WHERE club_id = $1 AND id = $2', [
    ...[clubId, id],
  ]);
  if (found.length > 0) return;
  throw new ProblemException('not-found', {
    ...{ detail: `The club has no model ${id}. Check the id.`, field: 'modelId' },
  });
}

const isFlagged = ({ checks }: CheckedEntryView): boolean =>
  checks.some(({ outcome }) => outcome === 'flagged');

/** Entries from a position on, newest flight first. Instants are whole seconds, so they serve as the cursor's key. */
function entriesAfter(
  em: EntityManager,
  of: Owner,
  { from, to, modelId, role, ids, voided }: Narrowed,
  after: PagePosition | null,
  count: number,
): Promise<LogEntry[]> {
  const query = em
    .createQueryBuilder(LogEntry, 'entry')
    .where('entry.clubId = :clubId AND entry.memberId = :memberId', of)
    .orderBy('entry.departedAt', 'DESC')
    .addOrderBy('entry.id', 'DESC')
    .limit(count);
  if (!(voided ?? ids !== undefined)) query.andWhere('entry.voidedAt IS NULL');
  if (from !== undefined) query.andWhere('entry.flownOn >= :from', { from });
  if (to !== undefined) query.andWhere('entry.flownOn <= :to', { to });
  if (modelId !== undefined) query.andWhere('entry.modelId = :modelId', { modelId });
  if (role !== undefined) query.andWhere('entry.role = :role', { role });
  if (ids !== undefined) query.andWhere('entry.id = ANY (:ids)', { ids });
  if (after?.key !== undefined)
    query.andWhere('(entry.departedAt, entry.id) < (CAST(:key AS timestamptz), CAST(:id AS uuid))', after);
  return query.getMany();
}
