import { type EntityManager, In } from 'typeorm';
import { findRecord } from '../../platform/database/records.js';
import { show } from '../../platform/http/views.js';
import type { Aircraft } from '../aircraft/aircraft.entity.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { AttachmentView } from './attachments/attachment.dto.js';
import { Attachment } from './attachments/attachment.entity.js';
import { DeferralView } from './deferral.dto.js';
import { Deferral } from './deferral.entity.js';
import { openSteps } from './deferral-steps.js';
import { SquawkPart } from './part.entity.js';
import { PartUsed } from './parts.dto.js';
import { SquawkView } from './squawk.dto.js';
import { Squawk } from './squawk.entity.js';

export const deferralView = (row: Deferral, aircraft: Aircraft): DeferralView =>
  show(DeferralView, row, { openSteps: openSteps(row, aircraft) });

/** Squawks of one aircraft with all that hangs on them, each kind read with one query. */
export async function squawkViews(
  em: EntityManager,
  aircraft: Aircraft,
  rows: Squawk[],
): Promise<SquawkView[]> {
  const { clubId } = aircraft;
  if (rows.length === 0) return [];
  const ids = In(rows.map(({ id }) => id));
  const deferrals = await em.findBy(Deferral, { clubId, squawkId: ids });
  const parts = await em.find(SquawkPart, { where: { clubId, squawkId: ids }, order: { id: 'ASC' } });
  const photos = await em.find(Attachment, { where: { clubId, squawkId: ids }, order: { id: 'ASC' } });
  const duplicates = await em.find(Squawk, {
    select: { id: true, clubId: true, duplicateOf: true },
    where: { clubId, duplicateOf: ids },
    order: { id: 'ASC' },
  });
  return rows.map((row) => {
    const deferral = deferrals.find(({ squawkId }) => squawkId === row.id);
    const closed = row.closedAt !== null;
    return show(SquawkView, row, {
      deferral: deferral ? deferralView(deferral, aircraft) : null,
      parts: parts
        .filter(({ squawkId, closing }) => closed && squawkId === row.id && closing === row.closings)
        .map((part) => show(PartUsed, part)),
      photos: photos
        .filter(({ squawkId }) => squawkId === row.id)
        .map((photo) => show(AttachmentView, photo)),
      duplicates: duplicates.filter(({ duplicateOf }) => duplicateOf === row.id).map(({ id }) => id),
    });
  });
}

/** One squawk with its deferral. */
export async function squawkView(em: EntityManager, row: Squawk): Promise<SquawkView> {
  const aircraft = await findRecord(em, AIRCRAFT, { clubId: row.clubId, id: row.aircraftId });
  return (await squawkViews(em, aircraft, [row]))[0]!;
}
