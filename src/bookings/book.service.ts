import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import type { Decided } from '../decisions/decision-store.js';
import { DecisionsService } from '../decisions/decisions.service.js';
import { flagOn } from '../decisions/policy-flag.js';
import { clubZone } from '../clubs/club-time.js';
import { sqlStateOf } from '../platform/database/constraint-problems.js';
import { TenantDb } from '../platform/database/tenant.js';
import { newId } from '../platform/ids.js';
import { ProblemException } from '../platform/problems/index.js';
import { blocks, type Policy } from '../rules/index.js';
import { BookDto, BookingDto } from './booking.dto.js';
import { noAircraft, notBookable, slotTaken } from './bookings.problems.js';
import {
  conflictsOf,
  findBooking,
  insertBooking,
  lockAircraft,
  lockPeople,
  type NewBooking,
} from './bookings.sql.js';
import { claimKey, keepAnswer, releaseKey, type StoredAnswer } from './idempotency.js';

/** SQLSTATE of an exclusion constraint's refusal (PostgreSQL manual, appendix A). */
const EXCLUSION_VIOLATION = '23P01';

type Outcome = { answer: StoredAnswer } | { refused: ProblemException };

/**
 * Judges and books in one transaction.
 *
 * The aircraft's row is locked first, so bookings of one aircraft are judged one after another and hours booked before
 * an inspection are counted once; then the crew's rows, in order of id. The exclusion constraints stay the last judge of
 * overlaps. A refusal commits too: the decision behind it is kept.
 */
@Injectable()
export class BookService {
  constructor(
    private readonly db: TenantDb,
    private readonly decisions: DecisionsService,
  ) {}

  /** Books, or gives the stored answer of an earlier request with the same key. */
  async book(user: SignedIn, key: string, request: BookDto): Promise<StoredAnswer> {
    await this.decisions.bringWeather(user, request, [request.aircraftId]);
    const outcome = await this.attempt(user, key, request);
    if ('refused' in outcome) throw outcome.refused;
    return outcome.answer;
  }

  private async attempt(user: SignedIn, key: string, request: BookDto): Promise<Outcome> {
    try {
      return await this.db.run(user.clubId, (em) => this.judgeAndBook(em, user, key, request), {
        actorId: user.memberId,
      });
    } catch (error) {
      // The database refused an overlap that was not there when we looked: tell it as the conflict it is.
      if (sqlStateOf(error) !== EXCLUSION_VIOLATION) throw error;
      const conflict = await this.db.run(user.clubId, (em) => this.conflictIn(em, request, user), {
        readOnly: true,
      });
      if (conflict) throw conflict;
      throw error;
    }
  }

  private async judgeAndBook(
    em: EntityManager,
    user: SignedIn,
    key: string,
    request: BookDto,
  ): Promise<Outcome> {
    const earlier = await claimKey(em, user.memberId, key, request);
    if (earlier) return { answer: earlier };
    this.decisions.mayAsk(user, request);
    if (!(await lockAircraft(em, request.aircraftId))) throw noAircraft(request.aircraftId);
    await lockPeople(em, crewOf(user, request));
    // Whoever lost the slot is told at once; judging takes longer, and others wait for this lock.
    const taken = await this.conflictIn(em, request, user);
    if (taken) return this.refuse(em, user, key, taken);
    const { aircraftId, note = '', override, ...flight } = request;
    const { decided, policy } = await this.decisions.decideIn(em, user, flight, [aircraftId]);
    const [one] = decided as [Decided];
    const refused = refusal(one, policy, user, override !== undefined);
    if (refused) return this.refuse(em, user, key, refused);
    // Pasted reports are kept as weather reports; they say nothing of the flight by its booking's day.
    const { reports: _reports, ...booked } = flight;
    const booking = newBooking(one, note, booked);
    await insertBooking(em, booking);
    if (override && one.decision.answer === 'ask-officer')
      await this.override(em, user, booking.id, one, override.reason);
    const answer = {
      status: 201,
      body: JSON.stringify(BookingDto.from((await findBooking(em, booking.id))!, user)),
    };
    await keepAnswer(em, user.memberId, key, answer);
    return { answer };
  }

  private async refuse(
    em: EntityManager,
    user: SignedIn,
    key: string,
    refused: ProblemException,
  ): Promise<Outcome> {
    await releaseKey(em, user.memberId, key);
    return { refused };
  }

  private async conflictIn(
    em: EntityManager,
    request: BookDto,
    user: SignedIn,
  ): Promise<ProblemException | null> {
    const memberIds = crewOf(user, request);
    const { aircraftId, departs, arrives } = request;
    const [conflict] = await conflictsOf(em, { aircraftId, memberIds, departs, arrives, exceptId: null });
    if (!conflict) return null;
    return slotTaken(conflict, { aircraftId, memberIds }, await clubZone(em, user.clubId));
  }

  private async override(
    em: EntityManager,
    officer: SignedIn,
    bookingId: string,
    decided: Decided,
    reason: string,
  ): Promise<void> {
    const rules = decided.decision.findings.filter(blocks).map((finding) => finding.rule);
    await em.query(
      `INSERT INTO overrides (club_id, id, booking_id, decision_id, rule_id, weight, officer_id, reason)
       SELECT bellcrank_club(), o.id, $3, $4, o.rule_id, 'club', $5, $6 FROM unnest($1::uuid[], $2::text[]) AS o (id, rule_id)`,
      [rules.map(() => newId()), rules, bookingId, decided.id, officer.memberId, reason],
    );
    await em.query(
      `INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after)
       VALUES (bellcrank_club(), $1, 'override', 'bookings', $2, $3)`,
      [officer.memberId, bookingId, JSON.stringify({ rules, reason, decisionId: decided.id })],
    );
  }
}

/** The problem that refuses the booking, or null when it may be made. */
function refusal(
  decided: Decided,
  policy: Policy,
  user: SignedIn,
  wantsOverride: boolean,
): ProblemException | null {
  const { decision, sheet } = decided;
  if (decision.answer === 'yes' || decision.answer === 'yes-with-conditions') return null;
  // An answer that waits for an instructor's name leaves the law's findings open: no override makes up for the name.
  const officerCan =
    decision.answer === 'ask-officer' &&
    decision.findings.filter(blocks).every((finding) => finding.overridable);
  if (!officerCan || !wantsOverride) return notBookable(decided, officerCan, user);
  if (!hasAnyRole(user, 'safety-officer')) {
    return forbidden('Only a safety officer may set a club rule aside. Ask one to book it for you.');
  }
  const { memberId, instructorId, secondPilotId } = sheet.flight;
  if ([memberId, instructorId, secondPilotId].includes(user.memberId))
    return forbidden('Nobody sets a club rule aside for a flight of their own. Ask another safety officer.');
  if (!flagOn(policy, 'club.override.allowed', sheet))
    return forbidden("The club's policy does not allow overrides.");
  return null;
}

/** Everybody the flight takes up, each once. */
function crewOf(
  user: SignedIn,
  { memberId = user.memberId, instructorId, secondPilotId }: BookDto,
): string[] {
  return [memberId, instructorId, secondPilotId].filter((id): id is string => id !== undefined);
}

function newBooking({ id: decisionId, sheet }: Decided, note: string, request: object): NewBooking {
  const { flight, aircraft } = sheet;
  const people: NewBooking['people'] = [{ memberId: flight.memberId, role: 'pilot' }];
  if (flight.instructorId) people.push({ memberId: flight.instructorId, role: 'instructor' });
  if (flight.secondPilotId) people.push({ memberId: flight.secondPilotId, role: 'second-pilot' });
  return {
    id: newId(),
    kind: 'flight',
    aircraftId: aircraft.id,
    memberId: flight.memberId,
    departs: flight.departs,
    arrives: flight.arrives,
    expectedTenths: flight.plannedTenths,
    request,
    note,
    decisionId,
    people,
  };
}

const forbidden = (detail: string): ProblemException =>
  new ProblemException('forbidden', { status: 403, title: 'Override refused', detail, field: 'override' });
