/** Writes the rows of a file, each behind a savepoint, so that one refused row does not hide what is wrong with the next. */
import { Equipment } from '../../../fleet/equipment/equipment.entity.js';
import { MeterReading } from '../../../fleet/meters/meter-reading.entity.js';
import { latestReadings } from '../../../fleet/meters/latest-readings.js';
import { readingStands } from '../../../fleet/meters/standing-readings.js';
import { keepWeightInStep } from '../../../fleet/weighings/current-weight.js';
import { Weighing } from '../../../fleet/weighings/weighing.entity.js';
import { WEIGHINGS } from '../../../fleet/weighings/weighings.service.js';
import {
  databaseProblem,
  RETRYABLE_STATES,
  sqlStateOf,
} from '../../../platform/database/constraint-problems.js';
import { addRecord } from '../../../platform/database/records.js';
import { tenthsOf } from '../../../platform/http/views.js';
import type { MeterKind } from '../../../rules/index.js';
import { currentSource } from '../weight-source.js';
import { equipmentBody, NO_STATEMENT, RowRefused, weighingBody } from './bodies.js';
import type { Section } from './fields.js';
import { piecesOf, type Place, requireNotToCome, requireSame, same, written, type Written } from './place.js';
import { writeItem } from './write-item.js';
import type { FileRow } from './read-file.js';

/** Equipment first, since items hang on it; meters before what was done at their hours. */
export const ORDER: readonly Section[] = ['equipment', 'meter', 'weight', 'item', 'directive'];

const WRITERS: Record<Section, (place: Place, row: FileRow) => Promise<Written>> = {
  equipment: writeEquipment,
  meter: writeMeter,
  weight: writeWeight,
  item: writeItem,
  directive: writeItem,
};

/** @returns what was written, or why the row is refused; then nothing of it is left. */
export async function writeRow(place: Place, row: FileRow): Promise<Written> {
  if (row.faults.length > 0) return written('refused', { because: row.faults.join(' ') });
  const { em } = place;
  await em.query('SAVEPOINT import_row');
  try {
    const done = await WRITERS[row.section](place, row);
    await em.query('RELEASE SAVEPOINT import_row');
    return done;
  } catch (error) {
    const because = reasonOf(error);
    if (because === null) throw error;
    await em.query('ROLLBACK TO SAVEPOINT import_row');
    return written('refused', { because });
  }
}

/** Null: not the row's fault. */
function reasonOf(error: unknown): string | null {
  if (error instanceof RowRefused) return error.message;
  if (RETRYABLE_STATES.has(sqlStateOf(error) ?? '')) return null;
  const problem = databaseProblem(error);
  return problem !== null && [404, 409, 422].includes(problem.getStatus()) ? problem.detail : null;
}

async function writeEquipment(place: Place, row: FileRow): Promise<Written> {
  const { em, clubId, aircraftId, taken } = place;
  const body = equipmentBody(row);
  const values = { ...body, portable: body.basis === 'portable' };
  const there = (await piecesOf(place)).find(
    (piece) =>
      !taken.has(piece.id) &&
      piece.kind === body.kind &&
      (body.serialNumber || piece.serialNumber
        ? piece.serialNumber === body.serialNumber && piece.installedOn === body.installedOn
        : same(piece.name, body.name) && piece.removedOn === body.removedOn),
  );
  const warnings = equipmentWarnings(row);
  if (there) {
    taken.add(there.id);
    requireSame(there, values, EQUIPMENT_FACTS);
    return written('unchanged', { id: there.id });
  }
  requireNotToCome(place, body.installedOn);
  const piece = await addRecord(
    em,
    { entity: Equipment, noun: 'piece of equipment' },
    { ...values, clubId, aircraftId },
  );
  taken.add(piece.id);
  place.known.pieces!.push(piece);
  const weight = piece.weightLb === null ? 'weight not known' : `${piece.weightLb} lb`;
  const arm = piece.armIn === null ? '' : ` at ${piece.armIn} in`;
  const numbers = [
    piece.partNumber && `part ${piece.partNumber}`,
    piece.serialNumber && `serial ${piece.serialNumber}`,
  ];
  return written('added', {
    id: piece.id,
    warnings,
    writes: [
      [
        `${piece.name} (${piece.kind}, ${piece.basis})`,
        ...numbers,
        weight + arm,
        `there since ${piece.installedOn}`,
      ]
        .filter(Boolean)
        .join(', '),
    ],
  });
}

const EQUIPMENT_FACTS = [
  ...(['name', 'basis', 'document', 'partNumber', 'weightLb', 'armIn', 'requiredByTypeDesign'] as const),
  ...(['satisfies', 'installedOn', 'removedOn'] as const),
];

function equipmentWarnings({ values }: FileRow): string[] {
  return [
    ...(values['kind'] === undefined
      ? ['It does not say what kind of equipment it is: taken as other, which meets no requirement.']
      : []),
    ...(values['required_by_type_design'] === undefined
      ? [
          'Whether the type design requires it is not said: taken as no. Look at it before anything is deferred.',
        ]
      : []),
    ...(values['weight_lb'] === undefined
      ? ['Without its weight nothing can be worked out when it goes.']
      : []),
  ];
}

async function writeMeter(place: Place, { values }: FileRow): Promise<Written> {
  const { em, clubId, aircraftId, taken } = place;
  const { kind, read_at: readAt, shown_h: shown, total_h: total } = values;
  if (typeof kind !== 'string')
    throw new RowRefused('It does not say which meter was read: hobbs, tachometer or airframe.');
  if (typeof readAt !== 'string') throw new RowRefused('It does not say when the meter was read.');
  const shownTenths = tenths(shown ?? total, 'shown_h');
  const totalTenths = total === undefined ? null : tenths(total, 'total_h');
  const meter = kind as MeterKind;
  const equal = await em
    .createQueryBuilder(MeterReading, 'm')
    .where('m.clubId = :clubId AND m.aircraftId = :aircraftId AND m.kind = :kind AND m.readAt = :readAt', {
      ...{ clubId, aircraftId, kind, readAt },
    })
    .andWhere(readingStands('m'))
    .getOne();
  if (
    equal &&
    equal.shownTenths === shownTenths &&
    (totalTenths ?? equal.totalTenths) === equal.totalTenths
  ) {
    taken.add(equal.id);
    return written('unchanged', { id: equal.id });
  }
  const last = (await latestReadings(em, clubId, [aircraftId])).find((one) => one.kind === meter);
  const offset = last?.offsetTenths ?? 0;
  const differs = totalTenths !== null && totalTenths !== shownTenths + offset;
  if (differs && last)
    throw new RowRefused(
      `Its total, ${totalTenths / 10} h, does not go on from the readings on record, by which a meter showing ${shownTenths / 10} h makes ${(shownTenths + offset) / 10} h.`,
    );
  const reading = await place.meters.record(em, {
    ...{ clubId, aircraftId, kind: meter, readAt, shownTenths, note: NO_STATEMENT },
    // A first reading whose total is another: meters were replaced before.
    ...(differs
      ? { source: 'replacement' as const, replacedTenths: totalTenths, confirmJump: true }
      : { source: 'coordinator' as const }),
  });
  taken.add(reading.id);
  const sum = differs ? `, ${totalTenths / 10} h in all` : '';
  return written('added', {
    id: reading.id,
    writes: [`${kind}: ${shownTenths / 10} h${sum}, read ${readAt}`],
  });
}

/** Hours to a tenth. */
function tenths(value: unknown, name: string): number {
  if (typeof value !== 'number') throw new RowRefused('It does not say what the meter showed.');
  const found = tenthsOf(value);
  if (found < 0 || found > 999_999 || Math.abs(found - value * 10) > 1e-6)
    throw new RowRefused(`${name} must be hours to a tenth, from 0 to 99999.9.`);
  return found;
}

async function writeWeight(place: Place, row: FileRow): Promise<Written> {
  const { em, clubId, aircraftId, taken } = place;
  if (row.values['source'] === 'as-entered')
    return written('left-out', {
      because: 'It was entered with the aircraft and is of no known day. Record a weighing instead.',
    });
  const body = weighingBody(row);
  const there = (await em.findBy(Weighing, { clubId, aircraftId, effectiveOn: body.effectiveOn })).find(
    (one) =>
      one.voidedAt === null &&
      !taken.has(one.id) &&
      one.emptyWeightLb === body.emptyWeightLb &&
      one.emptyArmIn === (body.emptyArmIn ?? null) &&
      currentSource(one.source) === body.source,
  );
  if (there) {
    taken.add(there.id);
    return written('unchanged', { id: there.id });
  }
  requireNotToCome(place, body.effectiveOn);
  const weighing = await addRecord(em, WEIGHINGS, { ...body, clubId, aircraftId });
  await keepWeightInStep(em, clubId, aircraftId);
  taken.add(weighing.id);
  const arm = weighing.emptyArmIn === null ? ', arm not known' : ` at ${weighing.emptyArmIn} in`;
  return written('added', {
    id: weighing.id,
    writes: [
      `Empty weight ${weighing.emptyWeightLb} lb${arm} from ${weighing.effectiveOn} (${weighing.source})`,
    ],
    warnings: row.values['source'] === undefined ? ['How it was found is not said: taken as computed.'] : [],
  });
}
