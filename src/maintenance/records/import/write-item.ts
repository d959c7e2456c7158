/** An airworthiness item of a file, and what was last done of it. */
import { AirworthinessItem } from '../../../fleet/airworthiness/airworthiness-item.entity.js';
import { Compliance } from '../../../fleet/airworthiness/compliance.entity.js';
import type { NewCompliance } from '../../../fleet/airworthiness/compliance.dto.js';
import { requireInterval } from '../../../fleet/airworthiness/items.service.js';
import { newId } from '../../../platform/ids.js';
import { tenthsOf } from '../../../platform/http/views.js';
import { localDateOf, toSeconds } from '../../../rules/index.js';
import { complianceBody, itemBody, NO_STATEMENT, NOT_SIGNED, RowRefused } from './bodies.js';
import type { FileRow } from './read-file.js';
import {
  inHours,
  itemsOf,
  meterOf,
  piecesOf,
  type Place,
  requireNotToCome,
  requireSame,
  same,
  written,
  type Written,
} from './place.js';

type ItemValues = Partial<AirworthinessItem> & { clubId: string };

/** What an item on record has to agree in with the file. */
const ITEM_FACTS = [
  ...(['scope', 'calendarMonths', 'plainMonths', 'days', 'intervalTenths', 'fixedDueOn'] as const),
  ...(['fixedDueTenths', 'toleranceTenths', 'recurring', 'ferryProhibited', 'equipmentId'] as const),
];

export async function writeItem(place: Place, row: FileRow): Promise<Written> {
  const { em, taken } = place;
  const values = await itemValues(place, row);
  requireInterval(values);
  const done = complianceBody(row);
  const warnings = await warningsOf(place, row, values, done);
  const there = (await itemsOf(place)).find(
    (item) =>
      !taken.has(item.id) &&
      item.kind === values.kind &&
      same(item.title, values.title!) &&
      same(item.reference ?? '', values.reference ?? '') &&
      item.retiredOn === (values.retiredOn ?? null),
  );
  if (there) return again(place, there, { values, done, warnings });
  const item = { ...values, id: newId() };
  await em.insert(AirworthinessItem, item);
  taken.add(item.id);
  const writes = [itemSays(item)];
  if (done) writes.push(await addDone(place, item, done));
  return written('added', { id: item.id, writes, warnings });
}

async function itemValues(place: Place, row: FileRow): Promise<ItemValues> {
  const { intervalH, fixedDueH, toleranceH, ...rest } = itemBody(row);
  return {
    ...rest,
    ...{ clubId: place.clubId, aircraftId: place.aircraftId },
    intervalTenths: tenthsOf(intervalH),
    fixedDueTenths: tenthsOf(fixedDueH),
    toleranceTenths: tenthsOf(toleranceH),
    equipmentId: await pieceOf(place, row),
  };
}

/** The piece it hangs on, by name and, where that is not enough, serial number. */
async function pieceOf(place: Place, { values }: FileRow): Promise<string | null> {
  const { equipment: name, equipment_serial: serial } = values;
  if (typeof name !== 'string') return null;
  const found = (await piecesOf(place)).filter(
    (piece) =>
      piece.removedOn === null &&
      same(piece.name, name) &&
      (serial === undefined || piece.serialNumber === serial),
  );
  if (found.length === 1) return found[0]!.id;
  throw new RowRefused(
    found.length === 0
      ? `It hangs on “${name}”, which is not in the aircraft. Add a row for the piece, or leave the cell empty.`
      : `It hangs on “${name}”, of which the aircraft has ${found.length}. Give equipment_serial.`,
  );
}

async function warningsOf(
  place: Place,
  { section, values }: FileRow,
  item: ItemValues,
  done: NewCompliance | null,
): Promise<string[]> {
  const warnings: string[] = [];
  if (section === 'item' && values['kind'] === undefined)
    warnings.push(
      'It does not say what kind of item it is: taken as the club’s own, which meets no rule of the law.',
    );
  if (values['scope'] === undefined) warnings.push('It does not say which flights it binds: taken as all.');
  if (values['months'] !== undefined && values['calendar_months'] !== undefined)
    warnings.push('It has months and calendar months: whichever ends first counts.');
  if (!done) {
    warnings.push('It was never done, as far as the file goes.');
    return warnings;
  }
  if (done.signedBy === NOT_SIGNED) warnings.push('Who signed is not said, and is recorded so.');
  if (countsHours(item) && (done.doneH === null || done.doneH === undefined))
    throw new RowRefused(
      'It counts hours, but does not say what the inspection meter stood at when it was done (last_done_h).',
    );
  const meter = await meterOf(place);
  const doneTenths = tenthsOf(done.doneH ?? null);
  if (meter && doneTenths !== null && doneTenths > meter.totalTenths) {
    const readOn = localDateOf(toSeconds(meter.readAt), place.zone);
    const says = `It was done at ${inHours(doneTenths)}, but the ${place.inspectionMeter} stood at ${inHours(meter.totalTenths)} on ${readOn}`;
    if (done.doneOn <= readOn) throw new RowRefused(`${says}, later. One of the two is wrong.`);
    warnings.push(`${says}. Record a newer reading.`);
  }
  return warnings;
}

const countsHours = ({ kind, intervalTenths }: ItemValues): boolean =>
  kind === 'hours-100' || (intervalTenths ?? null) !== null;

/** An item on record: nothing of it is changed; a newer compliance is added. */
async function again(
  place: Place,
  item: AirworthinessItem,
  of: { values: ItemValues; done: NewCompliance | null; warnings: string[] },
): Promise<Written> {
  const { done } = of;
  place.taken.add(item.id);
  requireSame(item, of.values, ITEM_FACTS);
  if (!done) return written('unchanged', { id: item.id });
  const last = place.known.last!.get(item.id);
  const doneTenths = tenthsOf(done.doneH ?? null);
  if (!last || done.doneOn > last.doneOn)
    return written('done-again', {
      ...{ id: item.id, warnings: of.warnings },
      writes: [await addDone(place, item, done)],
    });
  if (done.doneOn < last.doneOn)
    return written('unchanged', {
      id: item.id,
      warnings: [`On record it was last done on ${last.doneOn}, later than the file says.`],
    });
  if (last.doneTenths !== doneTenths || last.dueTenths !== tenthsOf(done.dueH ?? null))
    throw new RowRefused(
      `On record it was done on ${last.doneOn} at other hours. Void that record if it is wrong, or leave the row out.`,
    );
  return written('unchanged', { id: item.id });
}

async function addDone(place: Place, item: { id: string }, done: NewCompliance): Promise<string> {
  requireNotToCome(place, done.doneOn);
  const { doneH, dueH, detail, ...rest } = done;
  const doneTenths = tenthsOf(doneH ?? null);
  await place.em.insert(Compliance, {
    ...rest,
    ...{ clubId: place.clubId, id: newId(), itemId: item.id, doneTenths, dueTenths: tenthsOf(dueH ?? null) },
    detail: detail ? { ...detail } : null,
  });
  const at = doneTenths === null ? '' : ` at ${inHours(doneTenths)}`;
  const entry = done.statement === NO_STATEMENT ? '' : `, “${done.statement}”`;
  return `last done ${done.doneOn}${at}${entry}, signed by: ${done.signedBy}`;
}

/** 'Oil change (club), every 50.0 h or 4 calendar months'. */
function itemSays(item: ItemValues): string {
  const limits = [
    item.intervalTenths && `every ${inHours(item.intervalTenths)}`,
    item.calendarMonths && `every ${item.calendarMonths} calendar months`,
    item.plainMonths && `every ${item.plainMonths} months`,
    item.days && `every ${item.days} days`,
    item.fixedDueOn && `due on ${item.fixedDueOn}`,
    item.fixedDueTenths && `due at ${inHours(item.fixedDueTenths)}`,
  ].filter(Boolean);
  const once = item.recurring ? '' : ', once';
  const reference = item.reference ? `, ${item.reference}` : '';
  return `${item.title} (${item.kind}${reference})${limits.length > 0 ? `, ${limits.join(' or ')}` : ''}${once}, binds: ${item.scope}`;
}
