import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { gatherSheets } from '../../decisions/gather/sheets.js';
import { Clock } from '../../platform/clock.js';
import { sqlStateOf } from '../../platform/database/constraint-problems.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { defineProblems, ProblemException } from '../../platform/problems/index.js';
import { judge, type Fit } from '../../rules/index.js';
import { BookService } from '../book.service.js';
import { BookingDto } from '../booking.dto.js';
import { claimKey, keepAnswer, releaseKey, type StoredAnswer } from '../idempotency.js';
import type { BookAnyDto, BookedAnyDto } from './any-aircraft.dto.js';
import { bestFirst } from './best-first.js';

defineProblems({
  code: 'no-aircraft-will-do',
  status: 409,
  title: 'No aircraft will do',
  detail: 'None of them may be booked for the flight as asked. Ask about one of them to read why.',
});

/** SQLSTATE of an exclusion constraint's refusal. */
const EXCLUSION_VIOLATION = '23P01';
const ATTEMPTS = 3;

/** Books a flight in whichever aircraft fits it best. */
@Injectable()
export class AnyAircraftService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly decisions: DecisionsService,
    private readonly booker: BookService,
  ) {}

  async book(user: SignedIn, key: string, body: BookAnyDto): Promise<StoredAnswer> {
    await this.decisions.bringWeather(user, body, body.aircraftIds ?? null);
    for (let attempt = 1; ; attempt += 1) {
      try {
        const outcome = await this.db.run(user.clubId, (em) => this.bookIn(em, user, key, body), {
          actorId: user.memberId,
        });
        if (outcome instanceof ProblemException) throw outcome;
        return outcome;
      } catch (error) {
        // Somebody took the best one without waiting for its lock: look again.
        if (sqlStateOf(error) !== EXCLUSION_VIOLATION || attempt === ATTEMPTS) throw error;
      }
    }
  }

  private async bookIn(
    em: EntityManager,
    user: SignedIn,
    key: string,
    body: BookAnyDto,
  ): Promise<StoredAnswer | ProblemException> {
    const earlier = await claimKey(em, user.memberId, key, { any: body });
    if (earlier) return earlier;
    const { aircraftIds: _among, note, ...request } = body;
    const order = await this.order(em, user, body);
    const missedIds: string[] = [];
    for (const { aircraftId } of order.filter(({ bookable }) => bookable)) {
      const booked = await this.booker.lockAndBookIn(em, user, {
        ...{ ...request, aircraftId },
        ...(note === undefined ? {} : { note }),
      });
      if ('refused' in booked) {
        missedIds.push(aircraftId);
        continue;
      }
      const made: BookedAnyDto = { booking: BookingDto.from(booked.booking, user), order, missedIds };
      const answer = { status: 201, body: JSON.stringify(made) };
      await keepAnswer(em, user.memberId, key, answer);
      return answer;
    }
    await releaseKey(em, user.memberId, key);
    return new ProblemException('no-aircraft-will-do', { extensions: { order } });
  }

  /** All aircraft asked about, judged as they stand and put in order. Only the one that is booked is judged again, and kept. */
  private async order(
    em: EntityManager,
    user: SignedIn,
    { aircraftIds, note: _note, ...request }: BookAnyDto,
  ): Promise<Fit[]> {
    const memberId = this.decisions.mayAsk(user, request);
    const now = this.clock.now();
    const of = { request, memberId, knownAt: now };
    const { sheets, policy } = await gatherSheets(em, { ...of, aircraftIds: null });
    // Names an aircraft that is not there, as everywhere else.
    if (aircraftIds) await gatherSheets(em, { ...of, aircraftIds });
    const judged = sheets
      .filter(({ aircraft }) => !aircraftIds || aircraftIds.includes(aircraft.id))
      .map((sheet) => ({ sheet, decision: judge(sheet, policy) }));
    return bestFirst(judged, { sheets, policy, now });
  }
}
