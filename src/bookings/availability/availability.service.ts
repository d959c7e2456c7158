import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday, clubZone } from '../../clubs/club-time.js';
import { requireKnown } from '../../decisions/gather/known.js';
import { flightTimes } from '../../decisions/flight-facts.js';
import { assertOwnOr } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { localDateOf, addDays, windowsBetween, type LocalDate } from '../../rules/index.js';
import type { FreeInstructorView, TeachingHoursDto, TeachingHoursView } from './availability.dto.js';
import {
  deleteHours,
  hoursSince,
  insertHours,
  instructorsOver,
  isInstructor,
  lockHours,
  type HoursRow,
} from './availability.sql.js';

/** When instructors teach, and who is free for a lesson. */
@Injectable()
export class AvailabilityService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Hours that hold today or later; any member may read them. */
  list({ clubId }: SignedIn, memberId: string): Promise<TeachingHoursView[]> {
    return this.db.run(
      clubId,
      async (em) => {
        await requireKnown(em, { memberId });
        return this.shown(em, clubId, memberId);
      },
      { readOnly: true },
    );
  }

  /** @throws ProblemException 403, 404, 422 for hours that make no sense or somebody who is no instructor */
  add(by: SignedIn, memberId: string, body: TeachingHoursDto): Promise<TeachingHoursView[]> {
    assertOwnOr(by, memberId, ['administrator']);
    return this.db.run(
      by.clubId,
      async (em) => {
        await requireKnown(em, { memberId });
        if (!(await isInstructor(em, memberId)))
          throw new ProblemException('not-an-instructor', { detail: 'Only instructors keep hours.' });
        const today = await clubToday(em, by.clubId, this.clock.now());
        await insertHours(em, { id: newId(), memberId, ...rowOf(body, today) });
        return this.shown(em, by.clubId, memberId);
      },
      { actorId: by.memberId },
    );
  }

  /** @throws ProblemException 403, 404, 412 */
  remove(by: SignedIn, of: { memberId: string; id: string }, ifMatch: number): Promise<void> {
    assertOwnOr(by, of.memberId, ['administrator']);
    return this.db.run(
      by.clubId,
      async (em) => {
        const row = await lockHours(em, of);
        if (!row) throw notThere('teaching hours');
        requireVersion(row.rowVersion, ifMatch);
        await deleteHours(em, of.id);
      },
      { actorId: by.memberId },
    );
  }

  /** The club's instructors, those first who have nothing else and teach at that time. */
  free({ clubId }: SignedIn, asked: { departs: string; arrives: string }): Promise<FreeInstructorView[]> {
    const span = flightTimes(asked);
    return this.db.run(
      clubId,
      async (em) => {
        const zone = await clubZone(em, clubId);
        const first = addDays(localDateOf(span.departs, zone), -1);
        const last = addDays(localDateOf(span.arrives, zone), 1);
        const today = await clubToday(em, clubId, this.clock.now());
        const [all, hours] = [
          await instructorsOver(em, { ...asked, today }),
          await hoursSince(em, { memberId: null, since: first }),
        ];
        return all
          .map((one): FreeInstructorView => {
            const own = hours.filter(({ memberId }) => memberId === one.memberId);
            const within = windowsBetween(own, { first, last, zone }).some(
              ({ from, to }) => from <= span.departs && span.arrives <= to,
            );
            const kept = own.length === 0 ? 'none-kept' : within ? 'within' : 'outside';
            return { ...one, hours: kept, free: one.busyUntil === null && kept !== 'outside' };
          })
          .sort((a, b) => Number(b.free) - Number(a.free));
      },
      { readOnly: true },
    );
  }

  private async shown(em: EntityManager, clubId: string, memberId: string): Promise<TeachingHoursView[]> {
    const since = await clubToday(em, clubId, this.clock.now());
    return (await hoursSince(em, { memberId, since })).map(viewOf);
  }
}

function rowOf(body: TeachingHoursDto, today: LocalDate): Omit<HoursRow, 'id' | 'memberId' | 'rowVersion'> {
  const { kind, weekday = null, on = null, opens = null, closes = null } = body;
  const weekly = kind === 'weekly';
  if (weekly && weekday === null) throw valueRefused('weekday', 'Say which day of the week it is.');
  if (weekly && on !== null) throw valueRefused('on', 'Weekly hours name no date; leave it out.');
  if (weekly && opens === null)
    throw valueRefused('opens', 'Say from when to when; a day without hours needs no entry.');
  if (!weekly && on === null) throw valueRefused('on', 'Say which date it is.');
  if (!weekly && on! < today) throw valueRefused('on', 'That date is past; give one to come.');
  if (!weekly && weekday !== null)
    throw valueRefused('weekday', 'A date needs no day of the week; leave it out.');
  if ((opens === null) !== (closes === null))
    throw valueRefused(opens === null ? 'opens' : 'closes', 'Give both times, or neither when away all day.');
  const [opensMinutes, closesMinutes] = [minutesOf(opens), minutesOf(closes)];
  if (opensMinutes !== null && closesMinutes! <= opensMinutes)
    throw valueRefused('closes', 'The end lies after the beginning, on the same day; midnight is 24:00.');
  const from = weekly ? (body.validFrom ?? today) : null;
  const through = weekly ? (body.validThrough ?? null) : null;
  if (!weekly && (body.validFrom ?? body.validThrough))
    throw valueRefused('validFrom', 'A date needs no first and last day; leave them out.');
  if (from !== null && through !== null && through < from)
    throw valueRefused('validThrough', 'The last day is the first or a later one.');
  return { kind, weekday, on, opensMinutes, closesMinutes, from, through };
}

const minutesOf = (clock: string | null): number | null =>
  clock === null ? null : Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

const clockOf = (minutes: number | null): string | null =>
  minutes === null
    ? null
    : `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

function viewOf(row: HoursRow): TeachingHoursView {
  const { id, kind, weekday, on, opensMinutes, closesMinutes, from, through, rowVersion } = row;
  return {
    ...{ id, kind, weekday, on, opens: clockOf(opensMinutes), closes: clockOf(closesMinutes) },
    ...{ validFrom: from, validThrough: through, rowVersion },
  };
}
