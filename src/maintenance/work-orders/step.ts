import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import type { DisplacedFlight } from '../../bookings/displacements/displace.js';
import { withBookingEffects } from '../../bookings/standing-answers.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { findRecord } from '../../platform/database/records.js';
import type { TenantDb } from '../../platform/database/tenant.js';
import { CAUTION, digestOf } from '../../rules/index.js';
import { previewStale } from '../equipment-changes/equipment-changes.problems.js';
import { workOrderViews } from './views.js';
import { WorkOrder } from './work-order.entity.js';
import type { WorkOrderResult } from './work-order.dto.js';

export const ORDERS = { entity: WorkOrder, noun: 'work order' };

/** What a step left behind. */
export interface Stepped {
  orderId: string;
  displaced: DisplacedFlight[];
  /** What to look at before relying on it. */
  cautions: string[];
}

/** How a step is run. */
export interface StepRun {
  now: string;
  aircraftId: string;
  /** Undone afterwards: a preview. */
  rehearse: boolean;
  /** Of the preview that was looked at. */
  preview: string | undefined;
}

/**
 * Runs a step of a work order in one transaction with the aircraft locked, and tells what it does to everybody's flights.
 * @throws ProblemException 409 when it does something else than its preview showed.
 */
export function runStep(
  db: TenantDb,
  { clubId, memberId }: SignedIn,
  { now, aircraftId, rehearse, preview }: StepRun,
  step: (em: EntityManager) => Promise<Stepped>,
): Promise<WorkOrderResult> {
  const work = async (em: EntityManager): Promise<WorkOrderResult> => {
    await findRecord(em, AIRCRAFT, { clubId, id: aircraftId }, { lock: true });
    const of = { aircraftIds: [aircraftId], now };
    const { result, bookings, changed } = await withBookingEffects(em, of, () => step(em));
    const order = await findRecord(em, ORDERS, { clubId, id: result.orderId });
    const { displaced, cautions } = result;
    const told = { displaced, bookingsJudged: bookings, bookings: changed, cautions };
    const digest = digestOf(told);
    if (!rehearse && preview !== undefined && preview !== digest) throw previewStale();
    const view = (await workOrderViews(em, clubId, [order]))[0]!;
    return { order: view, preview: digest, ...told, caution: CAUTION };
  };
  return db.run(clubId, work, { actorId: memberId, rehearse });
}
