import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { MEMBERS } from '../../members/member-rows.js';
import { MemberRole } from '../../members/member.entity.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { Page, PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { minorPerUnit } from '../currency.js';
import { moneyUnit } from '../money-unit.js';
import { ChargeRate } from './charge-rate.entity.js';
import { rateInForce, type RateOf } from './rate-in-force.js';
import {
  AircraftRateView,
  InstructionRateView,
  type NewAircraftRate,
  type NewInstructionRate,
} from './rates.dto.js';

const RATES = { entity: ChargeRate, noun: 'rate' };
const AIRCRAFT = { entity: Aircraft, noun: 'aircraft' };

/** Rates, dated and never edited: a wrong one is followed by another from the same day. */
@Injectable()
export class RatesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 404 */
  ofAircraft({ clubId }: SignedIn, aircraftId: string, page: PageQuery): Promise<Page<AircraftRateView>> {
    return this.read(clubId, async (em) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      return this.page(em, { clubId, aircraftId }, page, AircraftRateView);
    });
  }

  /** @throws 404 */
  ofInstructor(
    { clubId }: SignedIn,
    instructorId: string,
    page: PageQuery,
  ): Promise<Page<InstructionRateView>> {
    return this.read(clubId, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: instructorId });
      return this.page(em, { clubId, instructorId }, page, InstructionRateView);
    });
  }

  /** @throws 404, 409 `currency-not-set` */
  setAircraft(by: SignedIn, aircraftId: string, body: NewAircraftRate): Promise<AircraftRateView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      return this.add(em, by, { ...body, aircraftId }, AircraftRateView);
    });
  }

  /** @throws 404, 409 `currency-not-set`, 422 `not-an-instructor` */
  setInstructor(by: SignedIn, instructorId: string, body: NewInstructionRate): Promise<InstructionRateView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: instructorId });
      const role = { clubId, memberId: instructorId, role: 'instructor' as const };
      if (!(await em.existsBy(MemberRole, role))) throw new ProblemException('not-an-instructor');
      return this.add(em, by, { ...body, instructorId }, InstructionRateView);
    });
  }

  private async add<V extends AircraftRateView | InstructionRateView>(
    em: EntityManager,
    { clubId, memberId }: SignedIn,
    values: Partial<ChargeRate> & RateOf,
    view: new () => V,
  ): Promise<V> {
    const today = await clubToday(em, clubId, this.clock.now());
    const { currency } = await moneyUnit(em, clubId, today);
    const row = await addRecord(em, RATES, { ...values, clubId, currency, setBy: memberId });
    const holds = await rateInForce(em, { clubId, on: today, ...rateOf(row) });
    return viewOf(view, row, holds);
  }

  private async page<V extends AircraftRateView | InstructionRateView>(
    em: EntityManager,
    where: { clubId: string } & RateOf,
    page: PageQuery,
    view: new () => V,
  ): Promise<Page<V>> {
    const { items, nextCursor } = await pageOfRecords(em, RATES, where, page, true);
    const on = await clubToday(em, where.clubId, this.clock.now());
    const holds = await rateInForce(em, { ...where, on });
    return { items: items.map((row) => viewOf(view, row, holds)), nextCursor };
  }

  private read<T>(clubId: string, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(clubId, work, { readOnly: true });
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(by.clubId, work, { actorId: by.memberId });
  }
}

const rateOf = ({ aircraftId, instructorId }: ChargeRate): RateOf =>
  aircraftId === null ? { instructorId: instructorId! } : { aircraftId };

function viewOf<V extends AircraftRateView | InstructionRateView>(
  view: new () => V,
  row: ChargeRate,
  holds: ChargeRate | null,
): V {
  const more = { minorPerUnit: minorPerUnit(row.currency)!, inForce: holds?.id === row.id };
  return show(view, row, more as Partial<V>);
}
