import type { EntityManager } from 'typeorm';
import { METER_KINDS } from '../vocabulary.js';
import { Aircraft } from '../aircraft/aircraft.entity.js';
import { readingStands } from './standing-readings.js';
import type { MeterView } from './meter.dto.js';
import { MeterReading } from './meter-reading.entity.js';

/** The newest reading of each meter of some aircraft, with one query. */
export async function latestReadings(
  em: EntityManager,
  clubId: string,
  aircraftIds: string[],
): Promise<MeterReading[]> {
  if (aircraftIds.length === 0) return [];
  return em
    .createQueryBuilder(MeterReading, 'm')
    .distinctOn(['m.aircraftId', 'm.kind'])
    .where('m.clubId = :clubId AND m.aircraftId IN (:...aircraftIds)', { clubId, aircraftIds })
    .andWhere(readingStands('m'))
    .orderBy('m.aircraftId')
    .addOrderBy('m.kind')
    .addOrderBy('m.readAt', 'DESC')
    .getMany();
}

/** What the meter that inspections count by has run in all, tenths of an hour; null without a reading. */
export async function inspectionTenthsNow(
  em: EntityManager,
  { clubId, aircraftId }: { clubId: string; aircraftId: string },
): Promise<number | null> {
  const { inspectionMeter } = await em.findOneByOrFail(Aircraft, { clubId, id: aircraftId });
  const readings = await latestReadings(em, clubId, [aircraftId]);
  return readings.find(({ kind }) => kind === inspectionMeter)?.totalTenths ?? null;
}

/** One aircraft's meters, in the same order everywhere. */
export function meterViews(aircraft: Aircraft, readings: MeterReading[]): MeterView[] {
  return METER_KINDS.flatMap((kind) => {
    const reading = readings.find((one) => one.aircraftId === aircraft.id && one.kind === kind);
    if (!reading) return [];
    return [
      {
        kind,
        shownH: reading.shownTenths / 10,
        totalH: reading.totalTenths / 10,
        readAt: reading.readAt,
        readingId: reading.id,
        countsForInspections: aircraft.inspectionMeter === kind,
      },
    ];
  });
}
