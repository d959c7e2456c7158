import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { gatherSheets, requireAircraft } from '../../decisions/gather/sheets.js';
import { assertMayAsk } from '../../decisions/may-read.js';
import { Clock } from '../../platform/clock.js';
import { EXCLUSION_VIOLATION, sqlStateOf } from '../../platform/database/constraint-problems.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { defineProblems, ProblemException } from '../../platform/problems/index.js';
import { judge, type Fit } from '../../rules/index.js';
import { BookService } from '../book.service.js';
import { BookingDto } from '../booking.dto.js';
import type { StoredAnswer } from '../idempotency.js';
import { type Done, underKey } from '../keyed.js';
import type { BookAnyDto, BookedAnyDto } from './any-aircraft.dto.js';
import { bestFirst } from './best-first.js';

defineProblems({
  code: 'no-aircraft-will-do',
  status: 409,
  title: 'No aircraft will do',
  detail: 'None of them may be booked for the flight as asked. Ask about one of them to read why.',
});

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
        const work = (em: EntityManager): Promise<Done> => this.bookIn(em, user, body);
        return await underKey(this.db, user, key, { request: { any: body }, work });
      } catch (error) {
        // Somebody took the best one without waiting for its lock: look again.
        if (sqlStateOf(error) !== EXCLUSION_VIOLATION || attempt === ATTEMPTS) throw error;
      }
    }
  }

  private async bookIn(em: EntityManager, user: SignedIn, body: BookAnyDto): Promise<Done> {
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
      return { status: 201, body: made };
    }
    return { refused: new ProblemException('no-aircraft-will-do', { extensions: { order } }) };
  }

  /** All aircraft asked about, judged as they stand and put in order. Only the one that is booked is judged again, and kept. */
  private async order(
    em: EntityManager,
    user: SignedIn,
    { aircraftIds, note: _note, ...request }: BookAnyDto,
  ): Promise<Fit[]> {
    const memberId = this.decisions.mayAsk(user, request);
    const now = this.clock.now();
    await assertMayAsk(em, user, { memberId, instructorId: request.instructorId }, now);
    const { sheets, policy } = await gatherSheets(em, {
      ...{ request, memberId, knownAt: now, aircraftIds: null },
    });
    requireAircraft(
      aircraftIds ?? null,
      sheets.map(({ aircraft }) => aircraft.id),
    );
    const judged = sheets
      .filter(({ aircraft }) => !aircraftIds || aircraftIds.includes(aircraft.id))
      .map((sheet) => ({ sheet, decision: judge(sheet, policy) }));
    return bestFirst(judged, { sheets, policy, now });
  }
}
