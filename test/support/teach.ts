/** Makes somebody a student of an instructor, by practice the instructor signed on a day. */
import { newId } from '../../src/platform/ids.js';
import type { Api } from './api.js';
import { insertInto } from './ready-club.js';

export async function teach(
  api: Api,
  of: { clubId: string; instructorId: string; memberId: string; on?: string },
): Promise<void> {
  await insertInto(api.sql, of.clubId)('practice_records', {
    ...{ id: newId(), member_id: of.memberId, recorded_by: of.instructorId, instructor_id: of.instructorId },
    ...{ seen_by: 'instructor', flown_on: of.on ?? '2026-03-01', manoeuvre: 'go_around', level: 'private' },
    ...{ measured: '{}', within: null, to_standard: true },
    verdict: JSON.stringify({ status: 'judged', document: 'FAA-S-ACS-6C', known: 'seen', within: null }),
  });
}
