import type { EntityManager } from 'typeorm';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { Squawk } from '../../fleet/squawks/squawk.entity.js';
import { OPEN_STATES } from '../../fleet/squawks/squawk-states.js';
import { addRecord } from '../../platform/database/records.js';
import { UpgradeWish } from '../wishes/wish.entity.js';
import { type LineKind, WorkLine } from './work-line.entity.js';
import type { NewLine } from './work-order.dto.js';
import type { WorkOrder } from './work-order.entity.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

export const LINES = { entity: WorkLine, noun: 'line of the work order' };

type Linked = Exclude<LineKind, 'weighing' | 'other'>;
const COLUMNS: Record<Linked, 'itemId' | 'squawkId' | 'wishId'> = {
  item: 'itemId',
  squawk: 'squawkId',
  wish: 'wishId',
};

/** Adds a line; `at` stands before its fields' names in refusals: 'lines[0].'. @throws ProblemException 422 where what it is about is not there, or over. */
export async function addLine(
  em: EntityManager,
  order: Pick<WorkOrder, 'clubId' | 'id' | 'aircraftId'>,
  line: NewLine,
  at: string,
): Promise<WorkLine> {
  const { clubId, id: orderId, aircraftId } = order;
  const { kind, aboutId = null, title = null } = line;
  const base = { clubId, orderId, aircraftId, kind };
  if (kind === 'weighing' || kind === 'other') {
    if (aboutId !== null)
      throw valueRefused(`${at}aboutId`, `A line of kind ${kind} is about no record. Leave it out.`);
    if (kind === 'other' && title === null) throw valueRefused(`${at}title`, 'Say what is to be done.');
    return addRecord(em, LINES, { ...base, title: title ?? 'Weighing' });
  }
  if (aboutId === null) throw valueRefused(`${at}aboutId`, `Name the ${kind} it is about.`);
  const about = await titleOf(em, kind, { clubId, aircraftId, id: aboutId }, `${at}aboutId`);
  const column = COLUMNS[kind];
  if (await em.existsBy(WorkLine, { clubId, orderId, [column]: aboutId }))
    throw valueRefused(`${at}aboutId`, `“${about}” is on the work order already.`);
  return addRecord(em, LINES, { ...base, [column]: aboutId, title: title ?? about });
}

async function titleOf(
  em: EntityManager,
  kind: Linked,
  where: { clubId: string; aircraftId: string; id: string },
  field: string,
): Promise<string> {
  const none = () => valueRefused(field, `The aircraft has no such ${kind}. Check the id.`);
  if (kind === 'item') {
    const item = await em.findOneBy(AirworthinessItem, where);
    if (!item) throw none();
    if (item.retiredOn !== null) throw valueRefused(field, `“${item.title}” is not asked for any more.`);
    return item.title;
  }
  if (kind === 'squawk') {
    const squawk = await em.findOneBy(Squawk, where);
    if (!squawk) throw none();
    if (!OPEN_STATES.includes(squawk.state)) throw valueRefused(field, `“${squawk.title}” is closed.`);
    return squawk.title;
  }
  const wish = await em.findOneBy(UpgradeWish, where);
  if (!wish) throw none();
  if (wish.doneOn !== null) throw valueRefused(field, `“${wish.title}” was done on ${wish.doneOn}.`);
  return wish.title;
}
