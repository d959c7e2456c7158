import type { EntityManager } from 'typeorm';
import type { LocalDate } from '../../rules/index.js';
import { ChargeRate } from './charge-rate.entity.js';

/** Whose rate: an aircraft's or an instructor's. */
export type RateOf = { aircraftId: string } | { instructorId: string };

/** The rate of a day in the club's zone: the newest first day counts, and of the same day the row written last. */
export function rateInForce(
  em: EntityManager,
  of: { clubId: string; on: LocalDate } & RateOf,
): Promise<ChargeRate | null> {
  const { clubId, on, ...whose } = of;
  const query = em
    .createQueryBuilder(ChargeRate, 'rate')
    .where('rate.clubId = :clubId AND rate.validFrom <= :on', { clubId, on })
    .orderBy('rate.validFrom', 'DESC')
    .addOrderBy('rate.recordedAt', 'DESC')
    .addOrderBy('rate.id', 'DESC')
    .limit(1);
  if ('aircraftId' in whose) query.andWhere('rate.aircraftId = :aircraftId', whose);
  else query.andWhere('rate.instructorId = :instructorId', whose);
  return query.getOne();
}
