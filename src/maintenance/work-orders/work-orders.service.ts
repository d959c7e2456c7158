import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { type DisplacedFlight, endShopTime, takeShopTime } from '../../bookings/displacements/displace.js';
import type { PartPlace } from '../../fleet/aircraft-records.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/versions.js';
import { addLine, LINES } from './new-lines.js';
import { ORDERS, runStep, type Stepped } from './step.js';
import { workOrderViews } from './views.js';
import type {
  NewLine,
  NewShopTimes,
  NewWorkOrder,
  ShopTimes,
  WorkBegun,
  WorkCancelled,
  WorkOrderPage,
  WorkOrderQuery,
  WorkOrderResult,
  WorkOrderView,
} from './work-order.dto.js';
import type { WorkOrder, WorkState } from './work-order.entity.js';
import { notInState } from './work-orders.problems.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

const OPEN: WorkState[] = ['planned', 'in-work'];

/** A step, or only its preview. */
export interface Rehearsal {
  rehearse: boolean;
}

/** Visits to the shop up to the signature. */
@Injectable()
export class WorkOrdersService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn, aircraftId: string, query: WorkOrderQuery): Promise<WorkOrderPage> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const { state } = query;
      const states = state === undefined ? {} : { state: state === 'open' ? In(OPEN) : state };
      const page = await pageOfRecords(em, ORDERS, { clubId, aircraftId, ...states }, query, true);
      return { items: await workOrderViews(em, clubId, page.items), nextCursor: page.nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, place: PartPlace): Promise<WorkOrderView> {
    const work = async (em: EntityManager) =>
      this.view(em, await findRecord(em, ORDERS, { clubId, ...place }));
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Plans a visit, with its time in the calendar where one is given. */
  plan(
    user: SignedIn,
    aircraftId: string,
    body: NewWorkOrder,
    { rehearse }: Rehearsal,
  ): Promise<WorkOrderResult> {
    const now = this.clock.now();
    return runStep(this.db, user, { now, aircraftId, rehearse, preview: body.preview }, (em) =>
      this.planIn(em, user, aircraftId, body),
    );
  }

  /** The same in the caller's transaction, the aircraft locked. @param at stands before field names in refusals: 'visits[0].' */
  async planIn(
    em: EntityManager,
    { clubId, memberId }: SignedIn,
    aircraftId: string,
    body: NewWorkOrder,
    at = '',
  ): Promise<Stepped> {
    const { title, shop = '', lines } = body;
    const order = await addRecord(em, ORDERS, {
      ...{ clubId, aircraftId, title, shop, madeBy: memberId, state: 'planned' },
    });
    for (const [index, line] of lines.entries()) await addLine(em, order, line, `${at}lines[${index}].`);
    const displaced = await this.setTimes(em, order, memberId, body);
    return { orderId: order.id, displaced, cautions: [] };
  }

  /** Gives it another time in the calendar, or none. */
  reschedule(
    user: SignedIn,
    place: PartPlace,
    version: number,
    body: NewShopTimes,
    { rehearse }: Rehearsal,
  ): Promise<WorkOrderResult> {
    const { aircraftId } = place;
    const now = this.clock.now();
    return runStep(this.db, user, { now, aircraftId, rehearse, preview: body.preview }, async (em) => {
      const order = await this.locked(em, user, place, OPEN);
      requireVersion(order.rowVersion, version);
      await this.freeTime(em, order);
      const displaced = await this.setTimes(em, order, user.memberId, body);
      return { orderId: order.id, displaced, cautions: [] };
    });
  }

  /** The shop has begun: until somebody signs, nobody flies. */
  begin(
    user: SignedIn,
    place: PartPlace,
    { begunAt = null }: WorkBegun,
    { rehearse }: Rehearsal,
  ): Promise<WorkOrderResult> {
    const { aircraftId } = place;
    const now = this.clock.now();
    if (begunAt !== null && begunAt > now)
      throw valueRefused('begunAt', `${begunAt} is still to come; it is ${now} now.`);
    return runStep(this.db, user, { now, aircraftId, rehearse, preview: undefined }, async (em) => {
      const order = await this.locked(em, user, place, ['planned']);
      await writeRecord(em, ORDERS, order, { state: 'in-work', begunAt: begunAt ?? now });
      return { orderId: order.id, displaced: [], cautions: [] };
    });
  }

  /** Calls it off before it begins; its time in the calendar is free again. Flights displaced by it stay cancelled. */
  cancel(user: SignedIn, place: PartPlace, { because }: WorkCancelled): Promise<WorkOrderResult> {
    const { aircraftId } = place;
    const now = this.clock.now();
    return runStep(this.db, user, { now, aircraftId, rehearse: false, preview: undefined }, async (em) => {
      const order = await this.locked(em, user, place, ['planned']);
      await this.freeTime(em, order);
      await writeRecord(em, ORDERS, order, { state: 'cancelled', cancelledBecause: because });
      return { orderId: order.id, displaced: [], cautions: [] };
    });
  }

  addLine(user: SignedIn, place: PartPlace, line: NewLine): Promise<WorkOrderView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      const order = await this.locked(em, user, place, OPEN);
      await addLine(em, order, line, '');
      return this.view(em, order);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  removeLine(user: SignedIn, place: PartPlace, lineId: string): Promise<WorkOrderView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      const order = await this.locked(em, user, place, OPEN);
      const line = await findRecord(em, LINES, { clubId, orderId: order.id, id: lineId });
      await em.delete(LINES.entity, { clubId, id: line.id });
      return this.view(em, order);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** The order, locked, in one of some states. @throws ProblemException 409 in another. */
  async locked(
    em: EntityManager,
    { clubId }: SignedIn,
    place: PartPlace,
    states: readonly WorkState[],
  ): Promise<WorkOrder> {
    const order = await findRecord(em, ORDERS, { clubId, ...place }, { lock: true });
    if (!states.includes(order.state)) throw notInState(order, states);
    return order;
  }

  private async freeTime(em: EntityManager, order: WorkOrder): Promise<void> {
    if (order.bookingId === null) return;
    await endShopTime(em, order.bookingId, this.clock.now());
    await em.update(ORDERS.entity, { clubId: order.clubId, id: order.id }, { bookingId: null });
  }

  private async setTimes(
    em: EntityManager,
    { clubId, aircraftId, id: orderId, title }: WorkOrder,
    memberId: string,
    { from = null, to = null, displace = false }: ShopTimes,
  ): Promise<DisplacedFlight[]> {
    if (from === null && to === null) return [];
    if (from === null || to === null)
      throw valueRefused(
        from === null ? 'from' : 'to',
        'Give both ends of the time in the shop, or neither.',
      );
    const { bookingId, displaced } = await takeShopTime(em, {
      ...{ clubId, aircraftId, memberId, orderId, from, to, displace },
      ...{ note: title, now: this.clock.now() },
    });
    await em.update(ORDERS.entity, { clubId, id: orderId }, { bookingId });
    return displaced;
  }

  private async view(em: EntityManager, order: WorkOrder): Promise<WorkOrderView> {
    return (await workOrderViews(em, order.clubId, [order]))[0]!;
  }
}
