import { Injectable } from '@nestjs/common';
import { type EntityManager, LessThanOrEqual, MoreThan } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, notThere, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { show, tenthsOf } from '../../platform/http/views.js';
import type { MeterKind } from '../../rules/index.js';
import { Aircraft } from '../aircraft/aircraft.entity.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { latestReadings, meterViews } from './latest-readings.js';
import {
  type MeterList,
  type NewReading,
  type ReadingPage,
  type ReadingQuery,
  ReadingView,
} from './meter.dto.js';
import { readInFuture } from './meter.problems.js';
import { MeterReading } from './meter-reading.entity.js';
import { type Neighbours, placeReading, type ReadingToPlace } from './place-reading.js';

const READINGS = { entity: MeterReading, noun: 'meter reading' };

/** A reading of one of an aircraft's meters. */
export interface ReadingOf extends ReadingToPlace {
  clubId: string;
  aircraftId: string;
  kind: MeterKind;
  note?: string | null;
}

const readingView = (row: MeterReading): ReadingView =>
  show(ReadingView, row, {
    shownH: row.shownTenths / 10,
    offsetH: row.offsetTenths / 10,
    totalH: row.totalTenths / 10,
  });

/** Meter readings: events that are never edited, with a running total that never falls. */
@Injectable()
export class MetersService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  latest({ clubId }: SignedIn, aircraftId: string): Promise<MeterList> {
    const work = async (em: EntityManager) => {
      const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      return { items: meterViews(aircraft, await latestReadings(em, clubId, [aircraftId])) };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  list({ clubId }: SignedIn, aircraftId: string, query: ReadingQuery): Promise<ReadingPage> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const where = { clubId, aircraftId, ...(query.kind ? { kind: query.kind } : {}) };
      const { items, nextCursor } = await pageOfRecords(em, READINGS, where, query, true);
      return { items: items.map(readingView), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  add({ clubId, memberId }: SignedIn, aircraftId: string, body: NewReading): Promise<ReadingView> {
    const { kind, source = 'coordinator', note, confirmJump } = body;
    const readAt = body.readAt ?? this.clock.now();
    const tenths = { shownTenths: tenthsOf(body.shownH), replacedTenths: tenthsOf(body.replacedMeterH) };
    const reading: ReadingOf = { clubId, aircraftId, kind, readAt, source, note, confirmJump, ...tenths };
    const work = async (em: EntityManager) => readingView(await this.record(em, reading));
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /**
   * Writes a reading in the caller's transaction; dispatch and return write theirs with it.
   * @throws ProblemException 404 without the aircraft; 422 `meter-below-last`, `meter-above-next`, `meter-jump`,
   *   `meter-replacement`, or a time to come.
   */
  async record(em: EntityManager, reading: ReadingOf): Promise<MeterReading> {
    const { clubId, aircraftId, kind, shownTenths, readAt, source, note } = reading;
    if (readAt > this.clock.now()) throw readInFuture(readAt, this.clock.now());
    // Readings of one aircraft queue here, as in the database's own check, so the neighbours stay what they are.
    const lock = { mode: 'for_no_key_update' as const };
    if (!(await em.findOne(Aircraft, { where: { clubId, id: aircraftId }, lock })))
      throw notThere(AIRCRAFT.noun);
    const { offsetTenths } = placeReading(reading, await this.neighbours(em, reading));
    const values = {
      clubId,
      aircraftId,
      kind,
      shownTenths,
      offsetTenths,
      readAt,
      source,
      note: note ?? null,
    };
    return addRecord(em, READINGS, values);
  }

  private async neighbours(
    em: EntityManager,
    { clubId, aircraftId, kind, readAt }: ReadingOf,
  ): Promise<Neighbours> {
    const meter = { clubId, aircraftId, kind };
    const last = await em.findOne(MeterReading, {
      where: { ...meter, readAt: LessThanOrEqual(readAt) },
      order: { readAt: 'DESC' },
    });
    const next = await em.findOne(MeterReading, {
      where: { ...meter, readAt: MoreThan(readAt) },
      order: { readAt: 'ASC' },
    });
    return { last, next };
  }
}
