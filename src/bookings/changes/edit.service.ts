import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { clubZone } from '../../clubs/club-time.js';
import type { Decided } from '../../decisions/decision-store.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { OFFICERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import { toSeconds } from '../../rules/index.js';
import { isYes, keepOverride, refusal } from '../allowed.js';
import { BookingDto } from '../booking.dto.js';
import { bringWeatherOf } from '../bring-weather.js';
import type { BookingRow } from '../booking.entity.js';
import type { Booked } from '../book.service.js';
import { slotTaken, timesRefused } from '../bookings.problems.js';
import { conflictsOf, findBooking } from '../bookings.sql.js';
import { crewJudged, crewOf } from '../crew.js';
import { endLapsedHolds } from '../holds/lapsed.js';
import type { StoredAnswer } from '../idempotency.js';
import { underKey } from '../keyed.js';
import { expectBack } from '../overdue/aircraft-out.js';
import { keptForOthers } from '../standby/kept-slots.sql.js';
import { changedFlight, type ChangedFlight } from './changed-flight.js';
import type { EditBookingDto } from './changes.dto.js';
import { notOpen, notYours } from './changes.problems.js';
import { lockForChange, noteChange, openBooking, writeState, type OpenBooking } from './changes.sql.js';

/**
 * Changes a booked flight: other times, another aircraft, another crew beside the member. It is judged as the flight it becomes, in
 * one transaction under the locks a booking takes, and stands on the new decision. Only time given back needs no yes: an aircraft
 * is not kept longer because its flight is no longer allowed.
 */
@Injectable()
export class EditService {
  constructor(
    readonly db: TenantDb,
    readonly decisions: DecisionsService,
    private readonly clock: Clock,
  ) {}

  async edit(
    user: SignedIn,
    key: string,
    of: { id: string; ifMatch: number; edit: EditBookingDto },
  ): Promise<StoredAnswer> {
    const { id, ifMatch, edit } = of;
    await bringWeatherOf(this, user, id, edit);
    return underKey(this.db, user, key, {
      request: { edit: id, ifMatch, ...edit },
      conflict: async (em) => {
        const open = await openBooking(em, id);
        return this.conflictIn(em, user, open.row, changedFlight(open, edit));
      },
      work: async (em) => {
        const open = await this.lock(em, id, edit);
        const { row } = open;
        if (!mayEdit(user, row))
          throw notYours(
            'Not yours to change',
            'Whoever flies it, its instructor, or an officer changes a flight. A block is changed by a coordinator.',
          );
        requireVersion(row.rowVersion, ifMatch);
        const done = await this.editIn(em, user, open, edit);
        return 'refused' in done ? done : { status: 200, body: BookingDto.from(done.booking, user) };
      },
    });
  }

  /** Queues for the booking as it is and as it is to be. */
  lock(em: EntityManager, id: string, edit: EditBookingDto): Promise<OpenBooking> {
    const { aircraftId, instructorId, secondPilotId } = edit;
    return lockForChange(em, id, {
      aircraftIds: aircraftId === undefined ? [] : [aircraftId],
      memberIds: [instructorId, secondPilotId].filter((one): one is string => typeof one === 'string'),
    });
  }

  /** Changes it for who holds the locks. */
  async editIn(em: EntityManager, user: SignedIn, open: OpenBooking, edit: EditBookingDto): Promise<Booked> {
    const { row } = open;
    const now = this.clock.now();
    requireOpen(row, now);
    const begun = row.status === 'dispatched' || row.departs <= now;
    const next = changedFlight(open, edit);
    if (!next.judged && next.also.length === 0) throw new ProblemException('nothing-to-change');
    if (begun) requireOnlyTheEnd(next, now);
    const taken = next.judged ? await this.takenFrom(em, user, row, next) : null;
    if (taken) return { refused: taken };
    const judged = next.judged ? await this.judge(em, user, row, { next, edit, begun }) : null;
    if (judged?.refused) return { refused: judged.refused };
    const one = judged?.decided;
    const stands = one === undefined || (!isYes(one) && next.givesBack) ? row.decisionId : one.id;
    const { memberId: _memberId, ...asked } = next.request;
    await writeState(em, row, {
      ...{ kind: row.kind, aircraftId: next.aircraftId, memberId: row.memberId, note: next.note },
      ...{ departs: next.after.departs, arrives: next.after.arrives },
      expectedTenths: one === undefined ? row.expectedTenths : one.sheet.flight.plannedTenths,
      request: { ...asked, memberId: row.memberId },
      decisionId: stands,
      crew: one === undefined ? row.people : crewJudged(one.sheet),
    });
    // Of an aircraft that is out the time due back goes with the end of the booking.
    if (row.status === 'dispatched' && next.after.arrives !== row.arrives)
      await expectBack(em, { bookingId: row.id, dueBackAt: next.after.arrives });
    if (one && stands === one.id)
      await keepOverride(em, user, { bookingId: row.id, decided: one, reason: edit.override?.reason });
    await noteChange(em, {
      ...{ bookingId: row.id, act: 'edited', byId: user.memberId, at: now },
      ...{ before: next.before, after: next.after, also: next.also, decisionId: one?.id ?? null },
    });
    return { booking: (await findBooking(em, row.id))! };
  }

  private async judge(
    em: EntityManager,
    user: SignedIn,
    row: BookingRow,
    { next, edit, begun }: { next: ChangedFlight; edit: EditBookingDto; begun: boolean },
  ): Promise<{ decided: Decided; refused: ProblemException | null }> {
    // How far ahead it was booked was asked when it was; it is asked anew of another departure.
    const planned = next.before.departs === next.after.departs;
    const request = { ...next.request, memberId: row.memberId, ...(planned ? { planned } : {}) };
    const already = { exceptBookingId: row.id, begun };
    const { decided, policy } = await this.decisions.decideIn(em, user, request, [next.aircraftId], already);
    const [one] = decided as [Decided];
    if (next.givesBack) return { decided: one, refused: null };
    return { decided: one, refused: refusal(one, policy, user, edit.override !== undefined) };
  }

  private async takenFrom(
    em: EntityManager,
    user: SignedIn,
    row: BookingRow,
    next: ChangedFlight,
  ): Promise<ProblemException | null> {
    // Read before anything is looked up by them: the database would not take an interval that ends before it begins.
    this.decisions.mayAsk(user, { ...next.request, memberId: row.memberId }, true);
    const { departs, arrives } = next.after;
    const memberIds = crewOf({ ...next.request, memberId: row.memberId });
    const { aircraftId } = next;
    const now = this.clock.now();
    await endLapsedHolds(em, { aircraftId, memberIds, departs, arrives, now });
    const { clubId } = user;
    const { memberId } = row;
    return (
      (await this.conflictIn(em, user, row, next)) ??
      (await keptForOthers(em, { clubId, aircraftId, memberId, departs, arrives, now }))
    );
  }

  private async conflictIn(
    em: EntityManager,
    user: SignedIn,
    row: BookingRow,
    next: ChangedFlight,
  ): Promise<ProblemException | null> {
    const memberIds = crewOf({ ...next.request, memberId: row.memberId });
    const { departs, arrives } = next.after;
    const { aircraftId } = next;
    const [conflict] = await conflictsOf(em, { aircraftId, memberIds, departs, arrives, exceptId: row.id });
    if (!conflict) return null;
    return slotTaken(conflict, { aircraftId, memberIds }, await clubZone(em, user.clubId));
  }
}

/** Whoever flies it, its instructor, or an officer. */
export const mayEdit = (user: SignedIn, row: BookingRow): boolean =>
  row.kind === 'flight' &&
  (row.memberId === user.memberId ||
    row.people.some(({ memberId, role }) => memberId === user.memberId && role === 'instructor') ||
    hasAnyRole(user, ...OFFICERS));

/** @throws ProblemException 409 for what was given back, has been flown or has ended. */
export function requireOpen(row: BookingRow, now: string): void {
  if (row.status !== 'booked' && row.status !== 'dispatched')
    throw notOpen('It can no longer be changed', `The booking is ${row.status}.`);
  if (row.arrives <= now)
    throw notOpen('It can no longer be changed', `The booking ended at ${row.arrives}.`);
}

/** @throws ProblemException 409, 422 for anything but another end of a flight that has begun. */
function requireOnlyTheEnd({ before, after, also }: ChangedFlight, now: string): void {
  const fields = (Object.keys(after) as (keyof typeof after)[]).filter((one) => before[one] !== after[one]);
  const others = [...fields, ...also].filter((one) => !['arrives', 'note', 'plannedHours'].includes(one));
  if (others.length > 0)
    throw notOpen(
      'It has begun',
      'Of a flight that has begun only its end can be changed: make it longer or shorter.',
    );
  if (toSeconds(after.arrives) < toSeconds(now) && fields.length > 0)
    throw timesRefused('arrives', `Time that has passed is not given back (it is ${now}); give a later end.`);
}
