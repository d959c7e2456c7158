import { type EntityManager, In } from 'typeorm';
import { Squawk } from './squawk.entity.js';
import { OPEN_STATES } from './squawk-states.js';

/** The squawks of an aircraft that are open now, deferred ones among them, the newest first. */
export const openSquawks = (em: EntityManager, clubId: string, aircraftId: string): Promise<Squawk[]> =>
  em.find(Squawk, { where: { clubId, aircraftId, state: In(OPEN_STATES) }, order: { id: 'DESC' } });
