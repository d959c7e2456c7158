import type { EntityManager } from 'typeorm';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { latestReadings } from '../../fleet/meters/latest-readings.js';
import type { MeterReading } from '../../fleet/meters/meter-reading.entity.js';
import type { MetersService } from '../../fleet/meters/meters.service.js';
import { tenthsOf } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/index.js';
import type { MeterOutDto } from './dispatch.dto.js';

/** A meter before departure, held against its last reading. Tenths of an hour; the total is over all meters it replaced. */
export interface MeterOut {
  kind: MeterReading['kind'];
  readingId: string;
  totalTenths: number;
  gapTenths: number;
  gapBecause: string | null;
  gapNote: string | null;
}

/**
 * Confirms every meter against its last reading. One that shows more needs a word about the hours between and gives a new
 * reading; one that shows less is refused, since either figure is wrong.
 * @throws ProblemException 422 naming the meter.
 */
export async function confirmMeters(
  em: EntityManager,
  meters: MetersService,
  of: { clubId: string; aircraftId: string; told: MeterOutDto[]; now: string },
): Promise<MeterOut[]> {
  const { clubId, aircraftId, told, now } = of;
  const last = await latestReadings(em, clubId, [aircraftId]);
  const aircraft = await em.findOneByOrFail(Aircraft, { clubId, id: aircraftId });
  requireAll(
    told.map(({ kind }) => kind),
    last.length > 0 ? last.map(({ kind }) => kind) : [aircraft.inspectionMeter],
  );
  const confirmed: MeterOut[] = [];
  for (const [index, one] of told.entries()) {
    const before = last.find(({ kind }) => kind === one.kind);
    const gapTenths = before ? gapOf(one, before, index) : 0;
    const reading =
      before && gapTenths === 0
        ? before
        : await meters.record(em, {
            ...{ clubId, aircraftId, kind: one.kind, shownTenths: tenthsOf(one.shownH), readAt: now },
            ...{ source: 'dispatch' as const, confirmJump: true },
            note: one.gap ? `Before departure; since the last reading: ${one.gap.note}` : 'Before departure',
          });
    confirmed.push({
      ...{ kind: one.kind, readingId: reading.id, totalTenths: reading.totalTenths, gapTenths },
      gapBecause: gapTenths > 0 ? one.gap!.because : null,
      gapNote: gapTenths > 0 ? one.gap!.note : null,
    });
  }
  return confirmed;
}

function gapOf({ shownH, gap }: MeterOutDto, before: MeterReading, index: number): number {
  const tenths = tenthsOf(shownH) - before.shownTenths;
  const last = `The last reading was ${(before.shownTenths / 10).toFixed(1)} h at ${before.readAt}`;
  const extensions = { last: { kind: before.kind, shownH: before.shownTenths / 10, readAt: before.readAt } };
  if (tenths < 0)
    throw new ProblemException('meter-below-last', {
      status: 422,
      field: `meters[${index}].shownH`,
      detail: `${last}; ${shownH.toFixed(1)} h is less. Read the meter again. If it is right, have the coordinator take the last reading back first.`,
      extensions,
    });
  if (tenths > 0 && !gap)
    throw new ProblemException('meter-gap', {
      field: `meters[${index}].gap`,
      detail: `${last}, so ${(tenths / 10).toFixed(1)} h are not accounted for. Read the meter again; if it is right, say what they are.`,
      extensions,
    });
  return tenths;
}

/** Every meter that is needed, each once. @throws ProblemException 422 */
export function requireAll(told: readonly string[], needed: readonly string[]): void {
  const missing = needed.filter((kind) => !told.includes(kind));
  const strange = told.filter((kind) => !needed.includes(kind));
  const twice = told.filter((kind, index) => told.indexOf(kind) !== index);
  if (missing.length + strange.length + twice.length === 0) return;
  const says = [
    missing.length > 0 ? `Missing: ${missing.join(', ')}.` : '',
    strange.length > 0 ? `The aircraft has no reading of: ${strange.join(', ')}.` : '',
    twice.length > 0 ? `Given twice: ${twice.join(', ')}.` : '',
  ];
  throw new ProblemException('meters-not-confirmed', {
    field: 'meters',
    detail: `Send what every meter shows, each once. ${says.filter(Boolean).join(' ')}`,
  });
}
