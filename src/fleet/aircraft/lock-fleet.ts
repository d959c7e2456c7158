import { type EntityManager, In } from 'typeorm';
import { Aircraft } from './aircraft.entity.js';

/** Some aircraft, or all, locked until the transaction ends; in order of id, so that two at once do not wait for each other. */
export const lockFleet = (
  em: EntityManager,
  clubId: string,
  ids: readonly string[] | null = null,
): Promise<Aircraft[]> =>
  em.find(Aircraft, {
    where: { clubId, ...(ids === null ? {} : { id: In([...ids]) }) },
    order: { id: 'ASC' },
    lock: { mode: 'for_no_key_update' },
  });
