import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { endShopTime } from '../../bookings/displacements/displace.js';
import { clubToday } from '../../clubs/club-time.js';
import type { PartPlace } from '../../fleet/aircraft-records.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { MetersService } from '../../fleet/meters/meters.service.js';
import { notToCome } from '../../fleet/not-to-come.js';
import { ClosingService } from '../../fleet/squawks/closing.service.js';
import type { MeterKind } from '../../rules/index.js';
import { keepWeightInStep } from '../../fleet/weighings/current-weight.js';
import { Weighing } from '../../fleet/weighings/weighing.entity.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { tenthsOf } from '../../platform/http/views.js';
import { writeChange } from '../equipment-changes/change-in-hand.js';
import { Signer } from '../signers/signer.entity.js';
import { closeLines, type Signature } from './close-lines.js';
import type { ReturnToService } from './return-to-service.dto.js';
import { ORDERS, runStep, type Stepped } from './step.js';
import type { WorkOrderResult } from './work-order.dto.js';
import type { WorkOrder } from './work-order.entity.js';
import { type Rehearsal, WorkOrdersService } from './work-orders.service.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/**
 * Approval for return to service: meters, items, squawks, upgrades, equipment, weight and signature in one transaction, after which
 * the aircraft may be flown and booked. The record grants nobody authority; whoever signs answers for it.
 */
@Injectable()
export class ReturnToServiceService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly meters: MetersService,
    private readonly closing: ClosingService,
    private readonly orders: WorkOrdersService,
  ) {}

  /** @throws ProblemException 409 for work that is not in hand; 422 for a line without an outcome, a signer whose record does not do. */
  sign(
    user: SignedIn,
    place: PartPlace,
    body: ReturnToService,
    { rehearse }: Rehearsal,
  ): Promise<WorkOrderResult> {
    const { aircraftId } = place;
    const run = { now: this.clock.now(), aircraftId, rehearse, preview: body.preview };
    return runStep(this.db, user, run, (em) => this.signIn(em, user, place, body));
  }

  private async signIn(
    em: EntityManager,
    user: SignedIn,
    place: PartPlace,
    body: ReturnToService,
  ): Promise<Stepped> {
    const { clubId } = user;
    const now = this.clock.now();
    const order = await this.orders.locked(em, user, place, ['in-work']);
    const { checkFlightNeeded, checkFlightBecause = null } = body;
    if (checkFlightNeeded && checkFlightBecause === null)
      throw valueRefused('checkFlightBecause', 'Say what makes a check flight necessary.');
    if (!checkFlightNeeded && checkFlightBecause !== null)
      throw valueRefused(
        'checkFlightNeeded',
        'A reason is given for a check flight that is not needed. Change one of the two.',
      );
    const on = body.signedOn ?? (await clubToday(em, clubId, now));
    await notToCome(em, clubId, { field: 'signedOn', on, now });
    const signature = await this.signature(em, clubId, on, body);
    const begunOn = await clubToday(em, clubId, order.begunAt!);
    if (on < begunOn)
      throw valueRefused('signedOn', `The work began on ${begunOn}; it cannot have been signed before that.`);
    const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: order.aircraftId });
    const doneTenths = await this.readMeters(em, order, aircraft.inspectionMeter, body);
    // The change first: an item that hangs on a piece that went is not signed any more, one that came is.
    const equipmentChangeId = await this.changeEquipment(em, user, order, body, signature);
    const weighingId = equipmentChangeId === null ? await this.weigh(em, order, body, on) : null;
    const cautions = await closeLines(em, {
      ...{ user, order, results: body.lines, signature, doneTenths },
      ...{ weighed: Boolean(body.weighing), now, closing: this.closing },
    });
    await endShopTime(em, order.bookingId, now);
    await writeRecord(em, ORDERS, order, {
      ...{ state: 'signed', signedAt: now, signedOn: on, statement: body.statement },
      ...{ signerId: body.signerId, signedBy: signature.signedBy, checkFlightBecause },
      ...{ equipmentChangeId, weighingId },
    });
    if (aircraft.status === 'out-of-service')
      cautions.push('The fleet list says “out of service”; the signature leaves that as it is.');
    return { orderId: order.id, displaced: [], cautions };
  }

  private async signature(
    em: EntityManager,
    clubId: string,
    on: string,
    { signerId, statement }: ReturnToService,
  ): Promise<Signature> {
    const signer = await em.findOneBy(Signer, { clubId, id: signerId });
    if (!signer) throw valueRefused('signerId', 'The club has no such signer on record. Check the id.');
    const { name, certificate, holds, validFrom, validThrough } = signer;
    if (on < validFrom || (validThrough !== null && on > validThrough))
      throw valueRefused(
        'signerId',
        `What is on record of ${name} holds from ${validFrom}${validThrough === null ? '' : ` through ${validThrough}`}, not on ${on}.`,
      );
    return { on, statement, name, certificate, holds, signedBy: `${name}, ${certificate}` };
  }

  /** @returns the total of the meter that inspections count by, in tenths. */
  private async readMeters(
    em: EntityManager,
    order: WorkOrder,
    inspectionMeter: MeterKind,
    { readings }: ReturnToService,
  ): Promise<number> {
    const { clubId, aircraftId } = order;
    let total: number | null = null;
    for (const [index, reading] of readings.entries()) {
      if (readings.findIndex(({ kind }) => kind === reading.kind) !== index)
        throw valueRefused(`readings[${index}].kind`, 'The meter is named twice.');
      const { kind, shownH, readAt = this.clock.now(), confirmJump } = reading;
      const row = await this.meters.record(em, {
        ...{ clubId, aircraftId, kind, readAt, confirmJump, source: 'coordinator' },
        ...{ shownTenths: tenthsOf(shownH), note: order.title },
      });
      if (kind === inspectionMeter) total = row.totalTenths;
    }
    if (total === null)
      throw valueRefused(
        'readings',
        `Give what the meter shows that inspections count by (${inspectionMeter}): intervals run from it.`,
      );
    return total;
  }

  private async changeEquipment(
    em: EntityManager,
    { memberId }: SignedIn,
    { clubId, aircraftId }: WorkOrder,
    { equipmentChange, weighing, statement }: ReturnToService,
    { on, signedBy }: Signature,
  ): Promise<string | null> {
    if (!equipmentChange) return null;
    if (equipmentChange.removes.length + equipmentChange.installs.length === 0)
      throw valueRefused(
        'equipmentChange.installs',
        'A change removes or installs something. Name at least one piece.',
      );
    const place = { clubId, aircraftId, memberId, now: this.clock.now() };
    const body = { ...equipmentChange, doneOn: on, statement, signedBy, weighing: weighing ?? null };
    return (await writeChange(em, this.meters, place, body)).changeId;
  }

  private async weigh(
    em: EntityManager,
    { clubId, aircraftId, title }: WorkOrder,
    { weighing }: ReturnToService,
    on: string,
  ): Promise<string | null> {
    if (!weighing) return null;
    const row = await addRecord(
      em,
      { entity: Weighing, noun: 'weighing' },
      { ...weighing, clubId, aircraftId, effectiveOn: on, source: 'weighing', note: title },
    );
    await keepWeightInStep(em, clubId, aircraftId);
    return row.id;
  }
}
