import { type EntityManager, IsNull } from 'typeorm';
import { Aircraft } from '../aircraft/aircraft.entity.js';
import { Weighing } from './weighing.entity.js';

/** The empty weight that counts: of the newest day, the newest entry that is not void. */
export function currentWeighing(
  em: EntityManager,
  clubId: string,
  aircraftId: string,
): Promise<Weighing | null> {
  return em.findOne(Weighing, {
    where: { clubId, aircraftId, voidedAt: IsNull() },
    order: { effectiveOn: 'DESC', id: 'DESC' },
  });
}

/** Keeps what the aircraft says of its weight in step with the weighings. */
export async function keepWeightInStep(em: EntityManager, clubId: string, aircraftId: string): Promise<void> {
  const newest = await currentWeighing(em, clubId, aircraftId);
  await em.update(Aircraft, { clubId, id: aircraftId }, { emptyWeightLb: newest?.emptyWeightLb ?? null });
}
