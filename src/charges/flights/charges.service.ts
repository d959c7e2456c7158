import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { findBooking } from '../../bookings/bookings.sql.js';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { MEMBERS } from '../../members/member-rows.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { pageOf, type PageQuery, readCursor } from '../../platform/http/pages.js';
import { show, tenthsOf } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { toInstant, toSeconds } from '../../rules/index.js';
import { chargeNotPossible, missingSays } from '../charges.problems.js';
import { minorPerUnit } from '../currency.js';
import { entryCounts } from '../ledger/unpaid-charges.js';
import { EntryView } from '../ledger/ledger.dto.js';
import { chargeFlight } from './charge-flight.js';
import type {
  ChargeFlightDto,
  EstimateQuery,
  EstimatesView,
  UnchargedPage,
  UnchargedView,
} from './charges.dto.js';
import { priceFlight } from './price-flight.js';

const LONGEST_SECONDS = 400 * 86_400;

/** What flights cost: before, by what is planned; after, by what was flown. */
@Injectable()
export class ChargesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 404, 409, 422 `charge-not-possible` */
  charge(by: SignedIn, bookingId: string, body: ChargeFlightDto): Promise<EntryView> {
    const { clubId, memberId } = by;
    assertTimes(body.departedAt, body.arrivedAt, 'arrivedAt');
    const work = async (em: EntityManager): Promise<EntryView> => {
      const booking = await findBooking(em, bookingId);
      if (!booking) throw notThere('flight');
      await assertMember(em, clubId, body.payerId, 'payerId');
      await assertMember(em, clubId, body.instructorId, 'instructorId');
      const charged = await chargeFlight(
        em,
        {
          ...{ bookingId, aircraftId: booking.aircraftId, pilotId: booking.memberId },
          ...{ payerId: body.payerId ?? booking.memberId, instructorId: body.instructorId ?? null },
          ...{ departedAt: body.departedAt, arrivedAt: body.arrivedAt },
          ...{ hobbsTenths: tenthsOf(body.hobbsH ?? null), tachTenths: tenthsOf(body.tachH ?? null) },
          instructionMinutes: body.instructionMinutes ?? null,
          ...{ fuelBoughtUsGal: body.fuelBoughtUsGal ?? 0, fuelPaidMinor: body.fuelPaidMinor ?? 0 },
          fuelClubUsGal: body.fuelClubUsGal ?? 0,
        },
        { clubId, memberId, now: this.clock.now() },
      );
      if ('missing' in charged) throw chargeNotPossible(charged.missing);
      return show(EntryView, charged.charge);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws 404, 422 */
  estimates({ clubId }: SignedIn, of: EstimateQuery): Promise<EstimatesView> {
    const departs = of.departs ?? this.clock.now();
    const later = toInstant(toSeconds(departs) + Math.max(60, Math.round((of.hours ?? 1) * 3600)));
    const arrives = of.arrives ?? later;
    assertTimes(departs, arrives, 'arrives');
    const minutes = Math.round(
      of.hours === undefined ? (toSeconds(arrives) - toSeconds(departs)) / 60 : of.hours * 60,
    );
    const tenths = Math.round(minutes / 6);
    const work = async (em: EntityManager): Promise<EstimatesView> => {
      await assertMember(em, clubId, of.instructorId, 'instructorId');
      const fleet = await em.find(Aircraft, { where: { clubId }, order: { registration: 'ASC' } });
      let currency: string | null = null;
      const estimates: EstimatesView['estimates'] = [];
      for (const { id: aircraftId } of fleet) {
        const priced = await priceFlight(em, clubId, {
          ...{
            aircraftId,
            instructorId: of.instructorId ?? null,
            departedAt: departs,
            arrivedAt: arrives,
          },
          ...{ hobbsTenths: tenths, tachTenths: tenths, instructionMinutes: minutes },
          ...{ fuelBoughtUsGal: 0, fuelPaidMinor: 0, fuelClubUsGal: 0 },
        });
        if ('missing' in priced) {
          estimates.push({ aircraftId, amountMinor: null, lines: [], missing: missingSays(priced.missing) });
          continue;
        }
        currency = priced.currency;
        estimates.push({ aircraftId, amountMinor: priced.amountMinor, lines: priced.lines, missing: null });
      }
      return { currency, minorPerUnit: currency === null ? null : minorPerUnit(currency), estimates };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Flights that came back and have no charge that stands. */
  uncharged({ clubId }: SignedIn, page: PageQuery): Promise<UnchargedPage> {
    const work = async (em: EntityManager): Promise<UnchargedPage> => {
      const rows: (UnchargedView & { id: string })[] = await em.query(
        `SELECT b.id, b.id AS "bookingId", b.aircraft_id AS "aircraftId", a.registration, b.member_id AS "memberId",
                m.name AS "memberName",
                (SELECT p.member_id FROM booking_people p WHERE p.club_id = b.club_id AND p.booking_id = b.id
                    AND p.role = 'instructor' LIMIT 1) AS "instructorId",
                to_char(lower(b.during) AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS departs,
                to_char(upper(b.during) AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS arrives
           FROM bookings b JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
           JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
          WHERE b.club_id = $1 AND b.kind = 'flight' AND b.status = 'returned' AND ($2::uuid IS NULL OR b.id > $2)
            AND NOT EXISTS (SELECT 1 FROM ledger_entries e WHERE e.club_id = b.club_id AND e.booking_id = b.id
                              AND ${entryCounts('e')})
          ORDER BY b.id LIMIT $3`,
        [clubId, readCursor(page.cursor), page.limit + 1],
      );
      const { items, nextCursor } = pageOf(rows, page.limit);
      return { items: items.map(({ id: _id, ...flight }) => flight), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}

/** Somebody named in a field is of the club, where anybody is named. */
async function assertMember(
  em: EntityManager,
  clubId: string,
  id: string | null | undefined,
  field: string,
): Promise<void> {
  if (!id || (await em.existsBy(MEMBERS.entity, { clubId, id }))) return;
  throw new ProblemException('not-found', {
    ...{ field, detail: `Your club has no member ${id}. Check the id.` },
  });
}

function assertTimes(departs: string, arrives: string, field: string): void {
  const seconds = toSeconds(arrives) - toSeconds(departs);
  if (seconds <= 0)
    throw valueRefused(field, 'The end lies after the beginning. Change one of the two times.');
  if (seconds > LONGEST_SECONDS)
    throw valueRefused(field, 'A flight ends within 400 days. Change one of the two times.');
}
