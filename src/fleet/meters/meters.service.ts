import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, notThere, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { show, tenthsOf } from '../../platform/http/views.js';
import type { MeterKind } from '../../rules/index.js';
import { Aircraft } from '../aircraft/aircraft.entity.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { readingStands } from './standing-readings.js';
import { latestReadings, meterViews } from './latest-readings.js';
import {
  type MeterList,
  type NewReading,
  type ReadingPage,
  type ReadingQuery,
  ReadingView,
  type VoidReading,
} from './meter.dto.js';
import { readInFuture, replacementInUse, takenBackAlready } from './meter.problems.js';
import { MeterReading } from './meter-reading.entity.js';
import { MeterReadingVoid } from './meter-reading-void.entity.js';
import { type Neighbours, placeReading, type ReadingToPlace } from './place-reading.js';

const READINGS = { entity: MeterReading, noun: 'meter reading' };

/** A reading of one of an aircraft's meters. */
export interface ReadingOf extends ReadingToPlace {
  clubId: string;
  aircraftId: string;
  kind: MeterKind;
  note?: string | null;
}

const readingView = (row: MeterReading, taken: MeterReadingVoid | undefined): ReadingView =>
  show(ReadingView, row, {
    voidedAt: taken?.recordedAt ?? null,
    voidReason: taken?.reason ?? null,
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
      const voids = await em.findBy(MeterReadingVoid, { clubId, readingId: In(items.map(({ id }) => id)) });
      const views = items.map((row) =>
        readingView(
          row,
          voids.find(({ readingId }) => readingId === row.id),
        ),
      );
      return { items: views, nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  add({ clubId, memberId }: SignedIn, aircraftId: string, body: NewReading): Promise<ReadingView> {
    const { kind, source = 'coordinator', note, confirmJump } = body;
    const readAt = body.readAt ?? this.clock.now();
    const tenths = { shownTenths: tenthsOf(body.shownH), replacedTenths: tenthsOf(body.replacedMeterH) };
    const reading: ReadingOf = { clubId, aircraftId, kind, readAt, source, note, confirmJump, ...tenths };
    const work = async (em: EntityManager) => readingView(await this.record(em, reading), undefined);
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /**
   * Takes a wrong reading back by an entry of its own; nothing is deleted.
   * @throws ProblemException 409 when it was taken back before, or later readings go on from a replacement.
   */
  takeBack(
    { clubId, memberId }: SignedIn,
    place: { aircraftId: string; id: string },
    { reason }: VoidReading,
  ): Promise<ReadingView> {
    const work = async (em: EntityManager) => {
      const lock = { mode: 'for_no_key_update' as const };
      await em.findOne(Aircraft, { where: { clubId, id: place.aircraftId }, lock });
      const reading = await findRecord(em, READINGS, { clubId, ...place });
      const key = { clubId, readingId: reading.id };
      if (await em.existsBy(MeterReadingVoid, key)) throw takenBackAlready();
      const { next } = await this.neighbours(em, reading);
      if (reading.source === 'replacement' && next) throw replacementInUse(next);
      await em.insert(MeterReadingVoid, { ...key, reason, voidedBy: memberId });
      return readingView(reading, await em.findOneByOrFail(MeterReadingVoid, key));
    };
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
    { clubId, aircraftId, kind, readAt }: Pick<ReadingOf, 'clubId' | 'aircraftId' | 'kind' | 'readAt'>,
  ): Promise<Neighbours> {
    const standing = () =>
      em
        .createQueryBuilder(MeterReading, 'm')
        .where('m.clubId = :clubId AND m.aircraftId = :aircraftId AND m.kind = :kind', {
          clubId,
          aircraftId,
          kind,
        })
        .andWhere(readingStands('m'));
    const last = await standing()
      .andWhere('m.readAt <= :readAt', { readAt })
      .orderBy('m.readAt', 'DESC')
      .getOne();
    const next = await standing()
      .andWhere('m.readAt > :readAt', { readAt })
      .orderBy('m.readAt', 'ASC')
      .getOne();
    return { last, next };
  }
}
