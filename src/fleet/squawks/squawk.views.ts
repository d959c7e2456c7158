import { type EntityManager, In } from 'typeorm';
import { findRecord } from '../../platform/database/records.js';
import { show } from '../../platform/http/views.js';
import type { Aircraft } from '../aircraft/aircraft.entity.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { DeferralView } from './deferral.dto.js';
import { Deferral } from './deferral.entity.js';
import { openSteps } from './deferral-steps.js';
import { SquawkView } from './squawk.dto.js';
import type { Squawk } from './squawk.entity.js';

export const deferralView = (row: Deferral, aircraft: Aircraft): DeferralView =>
  show(DeferralView, row, { openSteps: openSteps(row, aircraft) });

/** Squawks of one aircraft with their deferrals, which are read with one query. */
export async function squawkViews(
  em: EntityManager,
  aircraft: Aircraft,
  rows: Squawk[],
): Promise<SquawkView[]> {
  const { clubId } = aircraft;
  const deferrals = await em.findBy(Deferral, { clubId, squawkId: In(rows.map(({ id }) => id)) });
  return rows.map((row) => {
    const deferral = deferrals.find(({ squawkId }) => squawkId === row.id);
    return show(SquawkView, row, { deferral: deferral ? deferralView(deferral, aircraft) : null });
  });
}

/** One squawk with its deferral. */
export async function squawkView(em: EntityManager, row: Squawk): Promise<SquawkView> {
  const aircraft = await findRecord(em, AIRCRAFT, { clubId: row.clubId, id: row.aircraftId });
  return (await squawkViews(em, aircraft, [row]))[0]!;
}
