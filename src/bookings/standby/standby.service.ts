import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { requireKnown } from '../../decisions/gather/known.js';
import { gatherSheets } from '../../decisions/gather/sheets.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { BookService } from '../book.service.js';
import type { BookingRow } from '../booking.entity.js';
import { findBooking, lockAircraft } from '../bookings.sql.js';
import type { StoredAnswer } from '../idempotency.js';
import { underKey } from '../keyed.js';
import { GoOnStandbyDto, StandbyDto } from './standby.dto.js';
import { offerOver, standbyOver } from './standby.problems.js';
import {
  answerOffer,
  findOffer,
  findStandby,
  insertStandby,
  listStandby,
  lockStandby,
  setStandby,
  type OfferToAnswer,
  type StandbyRow,
} from './standby.sql.js';

/** A member's own entries on standby, and their answers to offers. */
@Injectable()
export class StandbyService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly decisions: DecisionsService,
    private readonly booker: BookService,
  ) {}

  list({ clubId, memberId }: SignedIn, afterId: string | null, limit: number): Promise<StandbyRow[]> {
    return this.db.run(clubId, (em) => listStandby(em, { memberId, now: this.clock.now(), afterId, limit }), {
      readOnly: true,
    });
  }

  async find({ clubId, memberId }: SignedIn, id: string): Promise<StandbyRow> {
    const row = await this.db.run(clubId, (em) => findStandby(em, { id, memberId }), { readOnly: true });
    if (!row) throw notThere('entry of yours on standby');
    return row;
  }

  /** @throws ProblemException 403 for somebody else, 404 and 422 for a flight that cannot be read, 409 for shared time */
  add(user: SignedIn, key: string, body: GoOnStandbyDto): Promise<StoredAnswer> {
    const { memberId = user.memberId, aircraftId, note = '', ...request } = body;
    if (memberId !== user.memberId)
      throw new ProblemException('forbidden', {
        status: 403,
        title: 'Only for yourself',
        detail:
          'Everybody goes on standby for themselves, since an offer is theirs to take. Leave memberId out.',
        field: 'memberId',
      });
    return underKey(this.db, user, key, {
      request: { standby: body },
      work: async (em) => {
        this.decisions.mayAsk(user, request);
        const now = this.clock.now();
        await requireKnown(em, { aircraftId });
        // Read once, so that what cannot be read is refused now and not left to wait.
        await gatherSheets(em, {
          ...{ request, memberId, aircraftIds: aircraftId ? [aircraftId] : null, knownAt: now },
        });
        const id = newId();
        const { departs, arrives } = request;
        await insertStandby(em, {
          ...{ id, memberId, aircraftId: aircraftId ?? null, departs, arrives, note, request, now },
        });
        return { status: 201, body: StandbyDto.from((await findStandby(em, { id, memberId }))!) };
      },
    });
  }

  /** @throws ProblemException 404, 409 when it no longer waits, 412 */
  withdraw({ clubId, memberId }: SignedIn, id: string, ifMatch: number): Promise<StandbyRow> {
    return this.db.run(
      clubId,
      async (em) => {
        // Whoever passes slots on sees either the entry waiting or it withdrawn, and an offer made meanwhile is ended here.
        await lockStandby(em, id);
        const row = await findStandby(em, { id, memberId });
        if (!row) throw notThere('entry of yours on standby');
        requireVersion(row.rowVersion, ifMatch);
        if (row.state !== 'waiting') throw standbyOver();
        await setStandby(em, id, 'withdrawn');
        if (row.offer?.state === 'open')
          await answerOffer(em, { id: row.offer.id, state: 'withdrawn', now: this.clock.now() });
        return (await findStandby(em, { id, memberId }))!;
      },
      { actorId: memberId },
    );
  }

  /** @throws ProblemException 404, 409 when the offer is over or the answer is no longer yes; an offer refused stays open */
  async accept(user: SignedIn, offerId: string): Promise<BookingRow> {
    const { clubId, memberId } = user;
    const outcome = await this.db.run(
      clubId,
      async (em) => {
        const seen = await findOffer(em, { id: offerId, memberId, lock: false });
        if (!seen) throw notThere('offer of yours');
        // The aircraft first, as everybody who books it; then the entry and the offer, so that it is answered once.
        await lockAircraft(em, seen.aircraftId);
        await lockStandby(em, seen.entryId);
        const offer = (await findOffer(em, { id: offerId, memberId, lock: true }))!;
        if (offer.state === 'accepted') return { booking: (await findBooking(em, offer.bookingId!))! };
        requireOpen(offer, this.clock.now());
        const { aircraftId, request, note } = offer;
        const booked = await this.booker.lockAndBookIn(em, user, { ...request, aircraftId, note });
        if ('booking' in booked) {
          await answerOffer(em, {
            ...{ id: offerId, state: 'accepted', bookingId: booked.booking.id, now: this.clock.now() },
          });
          await setStandby(em, offer.entryId, 'booked');
        }
        return booked;
      },
      { actorId: memberId },
    );
    if ('refused' in outcome) throw outcome.refused;
    return outcome.booking;
  }

  /** @throws ProblemException 404, 409 when the offer is over */
  decline({ clubId, memberId }: SignedIn, offerId: string): Promise<StandbyRow> {
    return this.db.run(
      clubId,
      async (em) => {
        const offer = await findOffer(em, { id: offerId, memberId, lock: true });
        if (!offer) throw notThere('offer of yours');
        const now = this.clock.now();
        requireOpen(offer, now);
        await answerOffer(em, { id: offerId, state: 'declined', now });
        return (await findStandby(em, { id: offer.entryId, memberId }))!;
      },
      { actorId: memberId },
    );
  }
}

/** @throws ProblemException 409 for an offer that was answered or whose time is over */
function requireOpen({ state, expiresAt }: OfferToAnswer, now: string): void {
  if (state !== 'open' || expiresAt <= now) throw offerOver();
}
