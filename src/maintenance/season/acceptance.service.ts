import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { withBookingEffects } from '../../bookings/standing-answers.js';
import { lockFleet } from '../../fleet/aircraft/lock-fleet.js';
import { clubZone } from '../../clubs/club-time.js';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { addDays, digestOf, startOfDay, toInstant } from '../../rules/index.js';
import { previewStale } from '../equipment-changes/equipment-changes.problems.js';
import { ORDERS, type Stepped } from '../work-orders/step.js';
import { workOrderViews } from '../work-orders/views.js';
import { WorkOrdersService } from '../work-orders/work-orders.service.js';
import type { AcceptedSeason, AcceptedVisit, AcceptSeason } from './season.dto.js';
import { SEASON_CAUTION } from './words.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/** Puts visits of a plan into the calendar: a work order for each, all of them or none. */
@Injectable()
export class AcceptanceService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly orders: WorkOrdersService,
  ) {}

  /** @throws ProblemException 409 for flights in the way unless `displace`, and when it is not what its preview showed; 422 naming the visit. */
  accept(user: SignedIn, body: AcceptSeason, { rehearse }: { rehearse: boolean }): Promise<AcceptedSeason> {
    const { clubId, memberId } = user;
    const { visits, displace = false, preview } = body;
    if (visits.length === 0) throw valueRefused('visits', 'Send at least one visit.');
    const work = async (em: EntityManager): Promise<AcceptedSeason> => {
      const now = this.clock.now();
      const aircraftIds = [...new Set(visits.map(({ aircraftId }) => aircraftId))].sort();
      const fleet = await lockFleet(em, clubId, aircraftIds);
      const unknown = visits.findIndex(({ aircraftId }) => !fleet.some(({ id }) => id === aircraftId));
      if (unknown !== -1)
        throw valueRefused(`visits[${unknown}].aircraftId`, 'The club has no such aircraft. Check the id.');
      const zone = await clubZone(em, clubId);
      const { result, bookings, changed } = await withBookingEffects(em, { aircraftIds, now }, async () => {
        const done: Stepped[] = [];
        for (const [index, visit] of visits.entries())
          done.push(await this.planOne(em, user, visit, { at: `visits[${index}].`, zone, displace, now }));
        return done;
      });
      const displaced = result.flatMap((one) => one.displaced);
      const told = { displaced, bookingsJudged: bookings, bookings: changed };
      const digest = digestOf({ ...told, visits: visits.length });
      if (!rehearse && preview !== undefined && preview !== digest) throw previewStale();
      const orders = await em.find(ORDERS.entity, {
        where: { clubId, id: In(result.map(({ orderId }) => orderId)) },
        order: { id: 'ASC' },
      });
      const views = await workOrderViews(em, clubId, orders);
      return { orders: views, preview: digest, ...told, caution: SEASON_CAUTION };
    };
    return this.db.run(clubId, work, { actorId: memberId, rehearse });
  }

  private async planOne(
    em: EntityManager,
    user: SignedIn,
    visit: AcceptedVisit,
    of: { at: string; zone: string; displace: boolean; now: string },
  ): Promise<Stepped> {
    const { at, zone, displace, now } = of;
    const { aircraftId, firstDay, lastDay, work } = visit;
    if (lastDay < firstDay)
      throw valueRefused(`${at}lastDay`, `${lastDay} lies before ${firstDay}. Change one of the two.`);
    const begins = toInstant(startOfDay(firstDay, zone));
    const to = toInstant(startOfDay(addDays(lastDay, 1), zone));
    if (to <= now) throw valueRefused(`${at}lastDay`, `${lastDay} has passed. Plan again.`);
    const lines = work.map(({ kind, id }) => ({
      kind: kind === 'need' ? ('item' as const) : ('wish' as const),
      aboutId: id,
    }));
    const title = await titleOf(em, user.clubId, work);
    const from = begins > now ? begins : now;
    return this.orders.planIn(em, user, aircraftId, { title, lines, from, to, displace }, at);
  }
}

/** 'Annual inspection and 2 more'. */
async function titleOf(em: EntityManager, clubId: string, work: AcceptedVisit['work']): Promise<string> {
  const ids = work.filter(({ kind }) => kind === 'need').map(({ id }) => id);
  const items = await em.findBy(AirworthinessItem, { clubId, id: In(ids) });
  const rank = ['annual', 'hours-100'];
  const first = items.sort((a, b) => rankIn(rank, a.kind) - rankIn(rank, b.kind))[0];
  const more = work.length - 1;
  const title = first?.title ?? 'Shop visit';
  return more > 0 && first ? `${title} and ${more} more` : title;
}

const rankIn = (rank: readonly string[], kind: string): number =>
  rank.includes(kind) ? rank.indexOf(kind) : rank.length;
