import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import type { PartPlace } from '../../fleet/aircraft-records.js';
import { clubZone } from '../../clubs/club-time.js';
import { Clock } from '../../platform/clock.js';
import { writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { localDateOf, toSeconds } from '../../rules/index.js';
import { ORDERS, runStep } from './step.js';
import type { CheckFlight, WorkOrderResult } from './work-order.dto.js';
import { WorkOrdersService } from './work-orders.service.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/** Levels that hold at least a private pilot certificate (14 CFR 91.407(b)(1)). */
const PRIVATE_OR_MORE = ['private', 'commercial', 'airline-transport'];

/** Check flights after work, logged by who flew them or by the coordinator. */
@Injectable()
export class CheckFlightsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly orders: WorkOrdersService,
  ) {}

  /** @throws ProblemException 403 for somebody else's flight; 409 where none is due; 422 for a pilot or a time that cannot be. */
  log(user: SignedIn, place: PartPlace, body: CheckFlight): Promise<WorkOrderResult> {
    const { aircraftId } = place;
    const now = this.clock.now();
    const pilotId = body.pilotId ?? user.memberId;
    if (pilotId !== user.memberId && !hasAnyRole(user, 'maintenance-coordinator', 'administrator'))
      throw new ProblemException('forbidden', {
        status: 403,
        detail:
          'You log a check flight of your own; one of somebody else is logged by the maintenance coordinator.',
      });
    return runStep(this.db, user, { now, aircraftId, rehearse: false, preview: undefined }, async (em) => {
      const order = await this.orders.locked(em, user, place, ['signed']);
      if (order.checkFlightBecause === null)
        throw new ProblemException('work-not-in-that-state', {
          detail: `No check flight is due after “${order.title}”.`,
        });
      if (order.checkFlownAt !== null)
        throw new ProblemException('work-not-in-that-state', {
          detail: `The check flight after “${order.title}” was logged; it was over at ${order.checkFlownAt}.`,
        });
      const { flownAt, entry } = body;
      if (flownAt > now) throw valueRefused('flownAt', `${flownAt} is still to come; it is ${now} now.`);
      // Entries may be made later than things were done, so the day that was signed for counts.
      const on = localDateOf(toSeconds(flownAt), await clubZone(em, user.clubId));
      if (on < order.signedOn! || flownAt < order.begunAt!)
        throw valueRefused(
          'flownAt',
          `The work was signed on ${order.signedOn}; the check flight comes after that.`,
        );
      await requirePilot(em, user.clubId, pilotId);
      await writeRecord(em, ORDERS, order, {
        ...{ checkFlownAt: flownAt, checkFlownBy: pilotId, checkEntry: entry },
      });
      return { orderId: order.id, displaced: [], cautions: [] };
    });
  }
}

async function requirePilot(em: EntityManager, clubId: string, pilotId: string): Promise<void> {
  const [found]: { known: boolean; holds: boolean }[] = await em.query(
    `SELECT EXISTS (SELECT 1 FROM members WHERE club_id = $1 AND id = $2) AS known,
        EXISTS (SELECT 1 FROM certificates WHERE club_id = $1 AND member_id = $2 AND level = ANY ($3)) AS holds`,
    [clubId, pilotId, PRIVATE_OR_MORE],
  );
  if (!found!.known) throw valueRefused('pilotId', 'The club has no such member. Check the id.');
  if (!found!.holds)
    throw valueRefused(
      'pilotId',
      'A check flight is made with at least a private pilot certificate (14 CFR 91.407(b)); none is on record of this member.',
    );
}
