import type { EntityManager } from 'typeorm';
import type { ClubRow } from '../platform/database/columns.js';
import type { Records, Where } from '../platform/database/records.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { Equipment } from './equipment/equipment.entity.js';

/**
 * Holds an id in a body against the club's records. Undefined and null pass.
 * @throws ProblemException 422 naming the field.
 */
export async function requireReference<T extends ClubRow>(
  em: EntityManager,
  of: Records<T>,
  where: { clubId: string; id: string | null | undefined },
  field: string,
): Promise<void> {
  if (where.id === null || where.id === undefined) return;
  if (await em.existsBy(of.entity, where as Where<T>)) return;
  throw new ProblemException('value-refused', {
    field,
    detail: `Your club has no ${of.noun} with the id ${where.id}. Choose one of those the club has.`,
  });
}

/** As above, for equipment, which must be the same aircraft's. */
export async function requireEquipment(
  em: EntityManager,
  where: { clubId: string; aircraftId: string; id: string | null | undefined },
): Promise<Equipment | null> {
  const { clubId, aircraftId, id } = where;
  if (id === null || id === undefined) return null;
  const equipment = await em.findOneBy(Equipment, { clubId, aircraftId, id });
  if (equipment) return equipment;
  throw new ProblemException('value-refused', {
    field: 'equipmentId',
    detail: `This aircraft has no equipment with the id ${id}. Choose one of the pieces recorded for it.`,
  });
}
