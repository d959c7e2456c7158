import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr, READERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { CAUTION } from '../../rules/index.js';
import { loadProgress } from './load-progress.js';
import type { MemberProgressView, ProgressView, StudentsView } from './progress.dto.js';
import { viewsOf } from './progress-views.js';
import { findStudents, type Student } from './students.js';

/** How far members are with their checkouts. */
@Injectable()
export class ProgressService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404 */
  ofMember(by: SignedIn, memberId: string): Promise<MemberProgressView> {
    assertOwnOr(by, memberId, READERS);
    const { clubId } = by;
    return this.db.run(
      clubId,
      async (em) => {
        const { id, name } = await findRecord(em, MEMBERS, { clubId, id: memberId });
        const loaded = await loadProgress(em, { clubId, memberIds: [id], now: this.clock.now() });
        return {
          ...{ member: { id, name }, asOf: loaded.asked.today, caution: CAUTION },
          checkouts: viewsOf(loaded, id, by),
        };
      },
      { readOnly: true },
    );
  }

  /** The instructor's students, and what is left for each. */
  students(by: SignedIn): Promise<StudentsView> {
    const { clubId } = by;
    return this.db.run(
      clubId,
      async (em) => {
        const now = this.clock.now();
        const students = await findStudents(em, { clubId, instructorId: by.memberId, now });
        const memberIds = students.map(({ id }) => id);
        const loaded = await loadProgress(em, { clubId, memberIds, now });
        return {
          asOf: loaded.asked.today,
          students: students.map((student) => ({
            ...{ member: { id: student.id, name: student.name }, because: student.because },
            nextFlightAt: student.nextFlightAt,
            left: viewsOf(loaded, student.id, by).filter((one) => isLeft(one, student)),
          })),
          caution: CAUTION,
        };
      },
      { readOnly: true },
    );
  }
}

/** What an instructor sees to: not what stands, nor what nobody has begun or booked. */
function isLeft(one: ProgressView, { bookedModelIds }: Student): boolean {
  if (one.difference !== null || one.kind === 'annual-check') return one.state !== 'standing';
  if (one.state === 'in-progress' || one.state === 'ending' || one.state === 'ended') return true;
  if (one.items.some(({ mark }) => mark !== null)) return true;
  const booked = one.kind === 'model' && one.modelId !== null && bookedModelIds.includes(one.modelId);
  return booked && one.state !== 'standing';
}
