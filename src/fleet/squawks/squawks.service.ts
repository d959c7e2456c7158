import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, editRecord, findRecord, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PartPlace } from '../aircraft-records.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { requireEquipment } from '../references.js';
import { requireFlight } from './reported-flight.js';
import type { SquawkChanges, SquawkPage, SquawkQuery, SquawkReport, SquawkView } from './squawk.dto.js';
import { Squawk } from './squawk.entity.js';
import { OPEN_STATES, requireOpen } from './squawk-states.js';
import { squawkView, squawkViews } from './squawk.views.js';

/** How squawks are found, and what they are called in problems. */
export const SQUAWKS = { entity: Squawk, noun: 'squawk' };

/** Reporting and reading squawks. */
@Injectable()
export class SquawksService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn, aircraftId: string, query: SquawkQuery): Promise<SquawkPage> {
    const work = async (em: EntityManager) => {
      const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const { state } = query;
      const wanted = state === undefined ? {} : { state: state === 'open' ? In(OPEN_STATES) : state };
      const { items, nextCursor } = await pageOfRecords(
        em,
        SQUAWKS,
        { clubId, aircraftId, ...wanted },
        query,
        true,
      );
      return { items: await squawkViews(em, aircraft, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, place: PartPlace): Promise<SquawkView> {
    const work = async (em: EntityManager) =>
      squawkView(em, await findRecord(em, SQUAWKS, { clubId, ...place }));
    return this.db.run(clubId, work, { readOnly: true });
  }

  report(user: SignedIn, aircraftId: string, body: SquawkReport): Promise<SquawkView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      await requireFlight(em, user, { aircraftId, bookingId: body.bookingId });
      return this.reportIn(em, { ...body, clubId, aircraftId, reportedBy: memberId });
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** Reports in the caller's transaction; a return from a flight reports with it. */
  async reportIn(
    em: EntityManager,
    squawk: SquawkReport & Pick<Squawk, 'clubId' | 'aircraftId' | 'reportedBy'>,
  ): Promise<SquawkView> {
    const { clubId, aircraftId, equipmentId } = squawk;
    await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
    await requireEquipment(em, { clubId, aircraftId, id: equipmentId });
    return squawkView(em, await addRecord(em, SQUAWKS, { ...squawk, reportedAt: this.clock.now() }));
  }

  /** @throws ProblemException 409 once it is closed. */
  edit(
    { clubId, memberId }: SignedIn,
    place: PartPlace,
    version: number,
    changes: SquawkChanges,
  ): Promise<SquawkView> {
    const work = async (em: EntityManager) => {
      const change = async (row: Squawk) => {
        requireOpen(row.state);
        await requireEquipment(em, { clubId, aircraftId: place.aircraftId, id: changes.equipmentId });
        return { ...changes };
      };
      return squawkView(em, await editRecord(em, SQUAWKS, { where: { clubId, ...place }, version, change }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}
