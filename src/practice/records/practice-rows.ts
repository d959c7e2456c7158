import { type EntityManager, In } from 'typeorm';
import { Member } from '../../members/member.entity.js';
import { addRecord } from '../../platform/database/records.js';
import type { PagePosition } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import type { LocalDate } from '../../rules/index.js';
import { TASK_NAMES } from '../rust/words.js';
import {
  judgeManoeuvre,
  type Level,
  type Measure,
  STANDARDS,
  type Task,
  type Verdict,
} from '../tolerances/index.js';
import { PracticeRecord, type Spans } from './practice-record.entity.js';
import { type PracticeRecordDto, PracticeRecordView, PracticeVerdictView } from './practice.dto.js';
import { MEASURES } from './words.js';

export const PRACTICE = { entity: PracticeRecord, noun: 'practice record' };

/** SQL condition under an alias: nothing took its place, and it is itself no withdrawal. */
export const practiceStands = (alias: string): string =>
  `NOT ${alias}.withdraws AND NOT EXISTS (SELECT 1 FROM practice_records n WHERE n.club_id = ${alias}.club_id AND n.corrects = ${alias}.id)`;

/** Records from a position on, newest flight first. */
export function listRecords(
  em: EntityManager,
  of: { clubId: string; memberId: string; corrected: boolean; signedOnly: boolean },
  after: PagePosition | null,
  count: number,
): Promise<PracticeRecord[]> {
  const query = em
    .createQueryBuilder(PracticeRecord, 'record')
    .where('record.clubId = :clubId AND record.memberId = :memberId', of)
    .orderBy('record.flownOn', 'DESC')
    .addOrderBy('record.id', 'DESC')
    .limit(count);
  if (of.signedOnly) query.andWhere("record.seenBy = 'instructor'");
  if (!of.corrected) query.andWhere(practiceStands('record'));
  if (after?.key !== undefined)
    query.andWhere('(record.flownOn, record.id) < (CAST(:key AS date), CAST(:id AS uuid))', after);
  return query.getMany();
}

/** Levels whose standards hold for the member, the highest first: by the certificates on record. */
export async function levelsOf(em: EntityManager, clubId: string, memberId: string): Promise<Level[]> {
  return (await levelsByMember(em, clubId, [memberId])).get(memberId) ?? ['private'];
}

/** The same for several members in one statement; who has no certificate on record is not in it. */
export async function levelsByMember(
  em: EntityManager,
  clubId: string,
  memberIds: readonly string[],
): Promise<Map<string, Level[]>> {
  const rows = await em.query<{ memberId: string; commercial: boolean; instrument: boolean }[]>(
    `SELECT c.member_id AS "memberId", bool_or(c.level IN ('commercial', 'atp')) AS commercial,
            bool_or(EXISTS (SELECT 1 FROM certificate_ratings r WHERE r.club_id = c.club_id
              AND r.certificate_id = c.id AND r.kind = 'instrument')) AS instrument
       FROM certificates c WHERE c.club_id = $1 AND c.member_id = ANY ($2::uuid[]) GROUP BY c.member_id`,
    [clubId, memberIds],
  );
  return new Map(
    rows.map(({ memberId, commercial, instrument }) => [
      memberId,
      [
        ...(commercial ? (['commercial'] as const) : []),
        'private',
        ...(instrument ? (['instrument'] as const) : []),
      ],
    ]),
  );
}

/** The first of the levels that asks for the manoeuvre, else any that does; the first one where none asks. */
function levelFor(task: Task, levels: readonly Level[]): Level {
  const asks = (level: Level): boolean => STANDARDS[level].some(({ tasks }) => tasks[task] !== undefined);
  return levels.find(asks) ?? (['instrument', 'commercial'] as const).find(asks) ?? levels[0]!;
}

/** Who records it, and where it comes from. */
export interface Recording {
  clubId: string;
  memberId: string;
  recordedBy: string;
  instructorId: string | null;
  today: LocalDate;
  track?: { trackSha256: string; trackEvent: string };
  correction?: { corrects: string; because: string };
  /** Where the fields lie in the request: 'record.'. */
  at?: string;
}

/** Judges and writes one record. @throws 422 */
export async function addPractice(
  em: EntityManager,
  draft: PracticeRecordDto,
  of: Recording,
): Promise<PracticeRecord> {
  const { at = '', today, track, correction, instructorId, ...who } = of;
  if (draft.flownOn > today)
    throw valueRefused(`${at}flownOn`, `Practice is recorded after the flight; today is ${today}.`);
  const measured = spansOf(draft, at);
  const level = draft.level ?? levelFor(draft.manoeuvre, await levelsOf(em, of.clubId, of.memberId));
  const verdict = judgeManoeuvre(level, draft.manoeuvre, measured, draft.flownOn);
  if (draft.logEntryId) await assertOwnFlight(em, of, draft, at);
  const { crosswindKt = null, gustSpreadKt = null, night = null, runwayFt = null, equipment = null } = draft;
  return addRecord(em, PRACTICE, {
    ...{
      ...who,
      ...track,
      ...correction,
      instructorId,
      seenBy: instructorId === null ? 'self' : 'instructor',
    },
    ...{
      flownOn: draft.flownOn,
      manoeuvre: draft.manoeuvre,
      measured,
      level,
      verdict,
      within: withinOf(verdict),
    },
    ...{ crosswindKt, gustSpreadKt, night, runwayFt, equipment, toStandard: draft.toStandard ?? null },
    ...{ note: draft.note ?? '', logEntryId: draft.logEntryId ?? null },
  });
}

const withinOf = (verdict: Verdict): boolean | null => (verdict.status === 'judged' ? verdict.within : null);

function spansOf({ measured = {} }: PracticeRecordDto, at: string): Spans {
  const spans: Spans = {};
  for (const [measure, most] of Object.entries(MEASURES) as [Measure, number][]) {
    const span = measured[measure];
    if (!span) continue;
    const field = `${at}measured.${measure}`;
    if (span.least > span.most) throw valueRefused(field, `${measure}: the least is not above the most.`);
    if (Math.max(Math.abs(span.least), Math.abs(span.most)) > most)
      throw valueRefused(field, `${measure} lies within ±${most}. Check the unit.`);
    spans[measure] = { least: span.least, most: span.most };
  }
  return spans;
}

async function assertOwnFlight(
  em: EntityManager,
  { clubId, memberId }: Recording,
  { logEntryId, flownOn }: PracticeRecordDto,
  at: string,
): Promise<void> {
  const [flight] = await em.query<{ near: boolean }[]>(
    `SELECT abs(flown_on - $4::date) <= 1 AS near FROM log_entries
      WHERE club_id = $1 AND member_id = $2 AND id = $3 AND voided_at IS NULL`,
    [clubId, memberId, logEntryId, flownOn],
  );
  if (!flight) throw valueRefused(`${at}logEntryId`, 'The member’s log has no such flight.');
  if (!flight.near)
    throw valueRefused(`${at}logEntryId`, `That flight was not flown on ${flownOn}. Check both.`);
}

/** Records as the API shows them. */
export async function viewsOf(em: EntityManager, rows: PracticeRecord[]): Promise<PracticeRecordView[]> {
  if (rows[0] === undefined) return [];
  const { clubId } = rows[0];
  const ids = new Set(
    rows.flatMap(({ instructorId, recordedBy }) => [recordedBy, ...(instructorId ? [instructorId] : [])]),
  );
  const people = await em.find(Member, {
    where: { clubId, id: In([...ids]) },
    select: { id: true, name: true },
  });
  const person = (id: string | null) => {
    const found = people.find((one) => one.id === id);
    return found ? { id: found.id, name: found.name } : null;
  };
  const later = await em.find(PracticeRecord, {
    where: { clubId, corrects: In(rows.map(({ id }) => id)) },
    select: { id: true, corrects: true },
  });
  return rows.map((row) =>
    show(PracticeRecordView, row, {
      title: TASK_NAMES[row.manoeuvre],
      instructor: person(row.instructorId),
      recordedBy: person(row.recordedBy)!,
      verdict: show(PracticeVerdictView, { measures: [], missing: [], ...row.verdict }),
      correctedBy: later.find(({ corrects }) => corrects === row.id)?.id ?? null,
    }),
  );
}
